using PdfSharp.Drawing;
using RepairOrders.Api.Drawing;

namespace RepairOrders.Api.Papers;

/// <summary>A picture's marks in black and grey on a page whose unit is the millimetre.</summary>
internal static class PdfRendering
{
    public static void Draw(XGraphics page, Shape shape)
    {
        var path = Path(shape);
        var (tone, pattern) = shape.Fill == Fill.None ? (0, Pattern.None) : Inks.Area(shape.Fill);
        if (shape.Fill is Fill.Alarm or Fill.Arrow)
            tone = 1;
        if (shape.Fill != Fill.None)
            page.DrawPath(new XSolidBrush(XColor.FromGrayScale(1 - tone)), path);
        if (pattern != Pattern.None)
            Cover(page, shape, path, pattern);
        if (shape.Pen == Pen.None)
            return;
        var (width, dashes) = Inks.Line(shape.Pen);
        var pen = new XPen(Ink(shape.Pen), width) { LineJoin = XLineJoin.Round };
        if (dashes.Length > 0)
            pen.DashPattern = [.. dashes.Select(d => d / width)];
        page.DrawPath(pen, path);
    }

    public static void Draw(XGraphics page, Label t, XFont font, double wide)
    {
        var x = t.Align switch
        {
            Align.Left => t.X,
            Align.Middle => t.X - wide / 2,
            _ => t.X - wide,
        };
        var state = page.Save();
        if (t.Turn != 0)
            page.RotateAtTransform(t.Turn, new XPoint(t.X, t.Y));
        if (t.Clear)
            page.DrawRectangle(XBrushes.White, x - 0.4, t.Y - t.Size * 0.8, wide + 0.8, t.Size * 1.05);
        page.DrawString(t.Text, font, new XSolidBrush(t.Ink == Pen.None ? XColors.White : Ink(t.Ink)), x, t.Y);
        page.Restore(state);
    }

    private static XColor Ink(Pen pen) => XColor.FromGrayScale(pen == Pen.Quiet ? 0.3 : 0);

    // Lines or dots over the whole extent, seen through the shape.
    private static void Cover(XGraphics page, Shape shape, XGraphicsPath path, Pattern p)
    {
        var spots = shape.Contours.SelectMany(Extent).ToList();
        var (left, right) = (spots.Min(s => s.X), spots.Max(s => s.X));
        var (top, bottom) = (spots.Min(s => s.Y), spots.Max(s => s.Y));
        var state = page.Save();
        page.IntersectClip(path);
        if (p.Dots)
            Dots(page, p, left, top, right, bottom);
        else
            Hatch(page, p, left, top, right, bottom);
        page.Restore(state);
    }

    private static void Hatch(XGraphics page, Pattern p, double left, double top, double right, double bottom)
    {
        var pen = new XPen(XColors.Black, p.Width);
        var a = p.Turn * Math.PI / 180;
        var (dx, dy) = (Math.Cos(a), Math.Sin(a));
        var (cx, cy) = ((left + right) / 2, (top + bottom) / 2);
        var half = Math.Sqrt(Math.Pow(right - left, 2) + Math.Pow(bottom - top, 2)) / 2;
        // On a grid of the whole page, so that neighbours of one kind match.
        var offset = -dy * cx + dx * cy;
        for (var k = Math.Ceiling((offset - half) / p.Every); k * p.Every <= offset + half; k++)
        {
            var d = k * p.Every - offset;
            var (x, y) = (cx - dy * d, cy + dx * d);
            page.DrawLine(pen, x - dx * half, y - dy * half, x + dx * half, y + dy * half);
        }
    }

    private static void Dots(XGraphics page, Pattern p, double left, double top, double right, double bottom)
    {
        var r = p.Width / 2;
        for (var y = Math.Floor(top / p.Every) * p.Every; y <= bottom; y += p.Every)
        for (var x = Math.Floor(left / p.Every) * p.Every; x <= right; x += p.Every)
            page.DrawRectangle(XBrushes.Black, x - r, y - r, 2 * r, 2 * r);
    }

    private static IEnumerable<Spot> Extent(Contour c)
    {
        yield return c.Start;
        foreach (var leg in c.Legs)
            if (leg is Arc arc)
                for (var i = 0; i <= 8; i++)
                    yield return arc.Centre.Polar(arc.From + arc.Sweep * i / 8, arc.Radius * 1.02);
            else
                yield return leg.To;
    }

    private static XGraphicsPath Path(Shape shape)
    {
        var path = new XGraphicsPath { FillMode = XFillMode.Alternate };
        foreach (var contour in shape.Contours)
        {
            path.StartFigure();
            var at = contour.Start;
            foreach (var leg in contour.Legs)
            {
                if (leg is Arc arc)
                    Bend(path, arc);
                else
                    path.AddLine(at.X, at.Y, leg.To.X, leg.To.Y);
                at = leg.To;
            }
            if (contour.Closed)
                path.CloseFigure();
        }
        return path;
    }

    // An arc as cubic curves of at most a quarter each.
    private static void Bend(XGraphicsPath path, Arc arc)
    {
        var pieces = (int)Math.Max(1, Math.Ceiling(Math.Abs(arc.Sweep) / 90 - 1e-9));
        var step = arc.Sweep / pieces;
        var reach = 4.0 / 3 * Math.Tan(step * Math.PI / 720) * arc.Radius;
        for (var i = 0; i < pieces; i++)
        {
            var (from, to) = (arc.From + i * step, arc.From + (i + 1) * step);
            var (a, b) = (arc.Centre.Polar(from, arc.Radius), arc.Centre.Polar(to, arc.Radius));
            var (p, q) = (a.Polar(from + 90, reach), b.Polar(to + 90, -reach));
            path.AddBezier(a.X, a.Y, p.X, p.Y, q.X, q.Y, b.X, b.Y);
        }
    }
}
