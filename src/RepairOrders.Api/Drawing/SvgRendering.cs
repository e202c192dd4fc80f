using System.Globalization;
using System.Security;
using System.Text;

namespace RepairOrders.Api.Drawing;

/// <summary>
/// A picture as SVG for the screen: the page's own inks by day and night, and its own where it stands alone. Marks of a part
/// carry <c>data-part</c>.
/// </summary>
internal static class SvgRendering
{
    private const double DotShare = 2;

    public static string Svg(this Picture picture)
    {
        var svg = new StringBuilder();
        // Several pictures may stand on one page: ids and class names carry the picture's code.
        var id = picture.Code;
        svg.Append(
            Say(
                $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {picture.Width:0.##} {picture.Height:0.##}\" role=\"img\" aria-label=\"{Escaped(picture.Title)}\" class=\"picture p-{id}\" style=\"--wide:{picture.Width:0.##}\">"
            )
        );
        svg.Append("<style>").Append(Styles(id)).Append("</style><defs>");
        foreach (var fill in Fills(picture))
            svg.Append(PatternOf(id, fill));
        svg.Append("</defs>");
        foreach (var mark in picture.Marks)
            svg.Append(MarkOf(id, mark));
        return svg.Append("</svg>").ToString();
    }

    private static string Styles(string id)
    {
        var at = ".p-" + id;
        var css = new StringBuilder(at)
            .Append("{--p-ink:var(--ink,#1c2733);--p-sheet:var(--sheet,#fff);")
            .Append("font-family:Sheet,\"DejaVu Sans Condensed\",\"DejaVu Sans\",sans-serif;letter-spacing:0}");
        foreach (var pen in Enum.GetValues<Pen>().Where(p => p != Pen.None))
        {
            var (width, dashes) = Inks.Line(pen);
            var dashed =
                dashes.Length == 0 ? "" : ";stroke-dasharray:" + string.Join(' ', dashes.Select(d => Say($"{d}")));
            css.Append(
                    Say($"{at} .l{(int)pen}{{stroke:{Colour(pen)};stroke-width:{width};stroke-linejoin:round{dashed}}}")
                )
                .Append(Say($"{at} text.t{(int)pen}{{fill:{Colour(pen)}}}"));
        }
        css.Append(Say($"{at} .l0{{stroke:none}}{at} .f0{{fill:none}}"))
            .Append(Say($"{at} .c{{paint-order:stroke;stroke:var(--p-sheet);stroke-width:1.1;stroke-linejoin:round}}"));
        foreach (var fill in Enum.GetValues<Fill>().Where(f => f != Fill.None && Inks.Area(f).Pattern == Pattern.None))
            css.Append(Say($"{at} .f{(int)fill}{{{Flat(fill)}}}"));
        return css.ToString();
    }

    private static string Colour(Pen pen) =>
        pen switch
        {
            Pen.Dimension => "var(--draw,#23497f)",
            Pen.Alarm => "var(--stop,#a0322a)",
            Pen.Quiet => "var(--ink2,#55626d)",
            _ => "var(--p-ink)",
        };

    private static string Flat(Fill fill) =>
        fill switch
        {
            Fill.Alarm => "fill:var(--stop,#a0322a)",
            Fill.Arrow => "fill:var(--draw,#23497f)",
            // The accent's hue for walls, so that a thin one is not taken for a shadow; on paper it is grey.
            >= Fill.Scale0 and <= Fill.Scale6 => Mixed(Inks.Area(fill).Tone, "var(--draw,#23497f)"),
            _ => Mixed(Inks.Area(fill).Tone),
        };

    // The plain grey first, for a viewer that mixes no colours.
    private static string Mixed(double tone, string ink = "var(--p-ink)")
    {
        var grey = (int)Math.Round(255 - tone * 215);
        return Say($"fill:rgb({grey},{grey},{grey});fill:color-mix(in srgb,{ink} {tone * 100:0}%,var(--p-sheet))");
    }

    private static IEnumerable<Fill> Fills(Picture picture) =>
        picture
            .Marks.OfType<Shape>()
            .Select(s => s.Fill)
            .Distinct()
            .Where(f => Inks.Area(f).Pattern != Pattern.None)
            .Order();

    private static string PatternOf(string id, Fill fill)
    {
        var (tone, p) = Inks.Area(fill);
        var marks = p.Dots
            ? Say(
                $"<circle cx=\"{p.Every / 2}\" cy=\"{p.Every / 2}\" r=\"{p.Width / DotShare}\" style=\"fill:var(--p-ink)\"/>"
            )
            : Say(
                $"<line x1=\"0\" y1=\"{p.Every / 2}\" x2=\"{p.Every}\" y2=\"{p.Every / 2}\" style=\"stroke:var(--p-ink);stroke-width:{p.Width}\"/>"
            );
        return Say(
            $"<pattern id=\"{id}-f{(int)fill}\" width=\"{p.Every}\" height=\"{p.Every}\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate({p.Turn})\"><rect width=\"{p.Every}\" height=\"{p.Every}\" style=\"{Mixed(tone)}\"/>{marks}</pattern>"
        );
    }

    private static string MarkOf(string id, Mark mark)
    {
        var part = mark.Part.Length > 0 ? $" data-part=\"{Escaped(mark.Part)}\"" : "";
        return mark switch
        {
            Shape s => Inks.Area(s.Fill).Pattern == Pattern.None
                ? $"<path class=\"l{(int)s.Pen} f{(int)s.Fill}\" fill-rule=\"evenodd\" d=\"{Path(s)}\"{part}/>"
                : $"<path class=\"l{(int)s.Pen}\" fill-rule=\"evenodd\" fill=\"url(#{id}-f{(int)s.Fill})\" d=\"{Path(s)}\"{part}/>",
            Label t => TextOf(t, part),
            _ => "",
        };
    }

    private static string TextOf(Label t, string part)
    {
        var anchor = t.Align switch
        {
            Align.Middle => " text-anchor=\"middle\"",
            Align.Right => " text-anchor=\"end\"",
            _ => "",
        };
        var ink = t.Ink == Pen.None ? "" : $"t{(int)t.Ink}";
        var paper = t.Ink == Pen.None ? ";fill:var(--p-sheet)" : "";
        var turn = t.Turn == 0 ? "" : Say($" transform=\"rotate({t.Turn} {t.X:0.##} {t.Y:0.##})\"");
        return Say(
            $"<text class=\"{ink}{(t.Clear ? " c" : "")}\" x=\"{t.X:0.##}\" y=\"{t.Y:0.##}\" style=\"font-size:{t.Size}px{(t.Bold ? ";font-weight:700" : "")}{paper}\"{anchor}{turn}{part}>{Escaped(t.Text)}</text>"
        );
    }

    private static string Path(Shape shape)
    {
        var d = new StringBuilder();
        foreach (var contour in shape.Contours)
        {
            d.Append(Say($"M{contour.Start.X:0.###} {contour.Start.Y:0.###}"));
            foreach (var leg in contour.Legs)
                d.Append(leg is Arc arc ? ArcOf(arc) : Say($"L{leg.To.X:0.###} {leg.To.Y:0.###}"));
            if (contour.Closed)
                d.Append('Z');
        }
        return d.ToString();
    }

    // A whole circle has no direction to a renderer: it is drawn as two halves.
    private static string ArcOf(Arc arc)
    {
        if (Math.Abs(arc.Sweep) > 359.9)
            return ArcOf(new Arc(arc.Centre, arc.Radius, arc.From, arc.Sweep / 2))
                + ArcOf(new Arc(arc.Centre, arc.Radius, arc.From + arc.Sweep / 2, arc.Sweep / 2));
        var (large, clockwise) = (Math.Abs(arc.Sweep) > 180 ? 1 : 0, arc.Sweep > 0 ? 1 : 0);
        return Say($"A{arc.Radius:0.###} {arc.Radius:0.###} 0 {large} {clockwise} {arc.To.X:0.###} {arc.To.Y:0.###}");
    }

    private static string Escaped(string text) => SecurityElement.Escape(text)!;

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
