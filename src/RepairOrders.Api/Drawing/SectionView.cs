using RepairOrders.Contract;
using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Drawing;

/// <summary>The pipe in section through the defect, looking with the flow.</summary>
internal sealed class SectionView(Board board, Subject s, Fit fit, Spot centre, double scale)
{
    private const double LeastLayer = 0.55;
    private const double LeastWall = 1.8;

    // A wide pipe's wall would vanish: all thicknesses are enlarged alike, and the heading says so.
    private readonly double enlarged = Enlargement(s, scale);
    private readonly Heights heights = new(Heights.Of(s, fit), scale * Enlargement(s, scale), LeastLayer);

    private double Radius(double height) => s.Radius * scale + heights.At(height);

    public static double Enlargement(Subject s, double scale) =>
        s.Wall * scale >= LeastWall ? 1 : Math.Ceiling(LeastWall / (s.Wall * scale) * 2) / 2;

    /// <summary>Thicknesses are drawn to another scale than the pipe.</summary>
    public string Remark =>
        enlarged > 1 ? Say($", thicknesses × {enlarged:0.#}")
        : heights.Stretched ? ", thin parts drawn thicker"
        : "";

    /// <summary>The outermost thing drawn, mm of paper from the axis.</summary>
    public double Outermost =>
        fit
            .Fasteners.Select(f => Radius(f.Base) + Math.Max(2, f.Height * scale))
            .Append(Radius(fit.Pieces.Select(p => p.Outer).Append(0).Max()))
            .Max();

    /// <summary>How far below the axis the diameter is dimensioned: below an angle that is told there, mm of paper.</summary>
    public double Foot => Math.Max(Outermost, s.Radius * scale) + (fit.Round.Any(ToldBelow) ? 13.5 : 7);

    private bool ToldBelow(RoundSize size) => Math.Abs((s.Clock + (size.From + size.To) / 2) % 360 - 180) < 35;

    public void Draw()
    {
        Wall();
        Loss();
        foreach (var piece in Cut())
            Body(piece);
        foreach (var fastener in fit.Fasteners.DistinctBy(f => (f.Kind, Math.Round(f.At))))
            Fastened(fastener);
        ClockAndCross();
        foreach (var size in fit.Round)
            board.Around(centre, Outermost + 2.5, s.Clock + size.From, size.To - size.From, size.Text);
        board.Across(
            centre.X - s.Radius * scale,
            centre.X + s.Radius * scale,
            centre.Y + Foot,
            centre.Y,
            Say($"Ø {Number(s.Outside)}")
        );
    }

    private void Wall()
    {
        if (!fit.Replaces)
            board.Put(Trace.Ring(centre, Radius(-s.Wall), Radius(0), 0, 360), Pen.Outline, Fill.Wall, "pipe");
        if (s.Nominal - s.Wall > 0.05)
            board.Put(Trace.Circle(centre, Radius(-s.Nominal)), Pen.Hidden);
    }

    private void Loss()
    {
        if (s.Defect is null)
            return;
        var (inner, outer) = Depth(s);
        var half = Math.Max(s.HalfAngle, 0.9 / Radius(0) * 180 / Math.PI);
        if (fit.Replaces || s.Thinnest is null || s.Defect.ThroughWall)
        {
            board.Put(Trace.Ring(centre, Radius(-s.Wall), Radius(0), s.Clock - half, 2 * half), Pen.Hidden, Fill.None);
            Hole();
            return;
        }
        board.Put(
            Trace.Ring(centre, Radius(inner), Radius(outer), s.Clock - half, 2 * half),
            Pen.Alarm,
            Fill.Paper,
            "defect"
        );
    }

    private void Hole()
    {
        if (s.Defect is not { ThroughWall: true } || fit.Replaces)
            return;
        var hole = Math.Max(s.Hole / 2 / s.Radius * 180 / Math.PI, 0.5 / Radius(0) * 180 / Math.PI);
        board.Put(
            Trace.Ring(centre, Radius(-s.Wall), Radius(0), s.Clock - hole, 2 * hole),
            Pen.Alarm,
            Fill.Alarm,
            "defect"
        );
    }

    /// <summary>Between which heights the metal is gone; round a hole the depth is not known, and the whole wall stands for it.</summary>
    public static (double Inner, double Outer) Depth(Subject s)
    {
        if (s.Defect?.ThroughWall == true)
            return (-s.Wall, 0);
        var left = Math.Clamp(s.Thinnest ?? s.Wall, 0, s.Wall);
        return s.Outer ? (left - s.Wall, 0) : (-s.Wall, -left);
    }

    // What lies in the plane of the section, and one band for all.
    private IEnumerable<Piece> Cut() =>
        fit
            .Pieces.Where(p => (p.From <= 0 && p.To >= 0) || p.Part == "band")
            .DistinctBy(p => (p.Part, p.Inner, p.Outer, p.HalfAngle, p.At));

    private void Body(Piece p)
    {
        var at = s.Clock + p.At;
        if (p.RunsDownFrom is { } half && Band(p, half, at) is { } band)
            board.Put(band, Pen.Outline, p.Fill, p.Part);
        else
            board.Put(
                Trace.Ring(centre, Radius(p.Inner), Radius(p.Outer), at - p.HalfAngle, 2 * p.HalfAngle),
                Pen.Outline,
                p.Fill,
                p.Part
            );
    }

    private List<Contour>? Band(Piece p, double half, double at)
    {
        var thick = p.Outer - p.Inner;
        var outer = OffThePlate(Radius(p.Outer), Radius(thick), half, at);
        var inner = OffThePlate(Radius(p.Inner), Radius(0), half, at);
        return outer is null || inner is null ? null : [outer, inner];
    }

    // Over the plate, down the tangent, and round the pipe; nothing where the plate goes so far round that none is left.
    private Contour? OffThePlate(double over, double onPipe, double half, double at)
    {
        var down = Math.Acos(Math.Min(1, onPipe / over)) * 180 / Math.PI;
        var lands = half + down;
        if (lands >= 179)
            return null;
        return new(
            centre.Polar(at - half, over),
            [
                new Arc(centre, over, at - half, 2 * half),
                new Straight(centre.Polar(at + lands, onPipe)),
                new Arc(centre, onPipe, at + lands, 360 - 2 * lands),
                new Straight(centre.Polar(at - half, over)),
            ],
            true
        );
    }

    private void Fastened(Fastener f)
    {
        var at = s.Clock + f.At;
        var foot = Radius(f.Base);
        var top = foot + Math.Max(2, f.Height * scale);
        var wide = Math.Max(3.2, f.Round * scale) / 2;
        if (f.Kind == FastenerKind.Rod)
        {
            board.Put(
                Trace.Circle(centre.Polar(at, (foot + top) / 2), Math.Max(0.9, wide / 2)),
                Pen.Outline,
                Fill.Seal,
                f.Part
            );
            return;
        }
        if (f.Kind == FastenerKind.Band)
        {
            board.Put(Block(at, foot, top, -wide, wide), Pen.Outline, Fill.Paper, f.Part);
            board.Put(
                Trace.Circle(centre.Polar(at, (foot + top) / 2), Math.Min(0.7, (top - foot) / 3)),
                Pen.Thin,
                Fill.None,
                f.Part
            );
            return;
        }
        var thin = Math.Max(1.1, wide * 0.45);
        foot -= 0.3;
        board.Put(Block(at, foot, top, -thin - 0.25, -0.25), Pen.Outline, Fill.Shell, "clamp");
        board.Put(Block(at, foot, top, 0.25, thin + 0.25), Pen.Outline, Fill.Shell, "clamp");
        var middle = (foot + top) / 2;
        board.Put(Block(at, middle - 0.45, middle + 0.45, -thin - 2.2, thin + 2.2), Pen.Outline, Fill.Seal, f.Part);
    }

    /// <summary>A block on a radius: between two radii, from left to right of it.</summary>
    private Contour Block(double at, double foot, double top, double left, double right)
    {
        var (low, high) = (centre.Polar(at, foot), centre.Polar(at, top));
        return Trace.Area(
            low.Polar(at + 90, left),
            high.Polar(at + 90, left),
            high.Polar(at + 90, right),
            low.Polar(at + 90, right)
        );
    }

    private void ClockAndCross()
    {
        var bore = Radius(Math.Min(heights.Bottom < 0 ? -Math.Max(s.Nominal, s.Wall) : -s.Wall, -s.Wall));
        var inside = bore > 8;
        foreach (var hour in new[] { 12, 3, 6, 9 })
        {
            // The defect's own place is told in words; outside and below stands the diameter.
            var near = Math.Abs((hour * 30 - s.Clock + 540) % 360 - 180) < 25;
            if (inside ? near : hour == 6)
                continue;
            var spot = centre.Polar(hour * 30, inside ? bore - 2.6 : Outermost + 3);
            board.Text(spot.X, spot.Y + 0.95, Say($"{hour}"), Align.Middle, 2.7, ink: Pen.Quiet);
        }
        if (inside)
            Said(bore);
        board.Line(Pen.Centre, new(centre.X - 2.5, centre.Y), new(centre.X + 2.5, centre.Y));
        board.Line(Pen.Centre, new(centre.X, centre.Y - 2.5), new(centre.X, centre.Y + 2.5));
    }

    // Inside the bore where it has room; the cut along the pipe says it too.
    private void Said(double bore)
    {
        var lines = Words(s);
        var wide = lines.Count == 0 ? 0 : lines.Max(l => TextWidth.Of(l, TextSize));
        if (fit.Replaces || lines.Count == 0 || wide > 1.75 * (bore - 4) || lines.Count * 4.2 > 1.3 * (bore - 4))
            return;
        var below = Math.Cos(s.Clock * Math.PI / 180) > 0;
        var y = centre.Y + (below ? 5.5 : -3 - 4.2 * (lines.Count - 1));
        for (var i = 0; i < lines.Count; i++)
            board.Text(
                centre.X,
                y + 4.2 * i,
                lines[i],
                Align.Middle,
                bold: i == 0,
                ink: i == 0 ? Pen.Alarm : Pen.Quiet,
                clear: true
            );
        board.Line(Pen.Alarm, centre.Polar(s.Clock, 3), centre.Polar(s.Clock, Radius(-s.Wall) - 0.4));
    }

    /// <summary>The defect in words.</summary>
    public static IReadOnlyList<string> Words(Subject s)
    {
        if (s.Defect is not { } defect)
            return [];
        var clock = Say($"at {defect.ClockHours:0.#} o'clock");
        List<string> lines =
        [
            defect.ThroughWall ? Say($"through{(s.Hole > 0 ? Say($", Ø {Number(s.Hole)}") : "")}, {clock}")
            : s.Thinnest is { } left ? Say($"{Number(left)} mm left, {clock}")
            : $"wall not read, {clock}",
        ];
        lines.Add(
            s.Sound is { } sound
                ? Say($"wall beside {Number(sound)} of {Number(s.Nominal)}")
                : Say($"nominal wall {Number(s.Nominal)}")
        );
        if (defect.Side == DefectSide.Unknown)
            lines.Add("side not known");
        return lines;
    }
}
