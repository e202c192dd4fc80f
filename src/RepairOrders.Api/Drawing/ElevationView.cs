using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Drawing;

/// <summary>The pipe seen square to the defect, flow from left to right.</summary>
internal sealed class ElevationView(Board board, Subject s, Fit fit, Spot centre, double scale, double halfWidth)
{
    private const double LeastLayer = 0.4;
    private const double RowHeight = 6.2;

    /// <summary>A wide pipe is shown in part: this far up and down from its middle, mm of paper.</summary>
    public const double Part = 29;
    private readonly Heights heights = new(Heights.Of(s, fit), scale, LeastLayer);

    private double Radius(double height) => s.Radius * scale + heights.At(height);

    private double X(double along) => centre.X + along * scale;

    public void Draw()
    {
        Pipe();
        foreach (var piece in fit.Pieces)
            Body(piece);
        Ears();
        foreach (var fastener in fit.Fasteners)
            Fastened(fastener);
        Defect();
        board.Line(Pen.Centre, new(centre.X - halfWidth - 3, centre.Y), new(centre.X + halfWidth + 3, centre.Y));
        Clock();
        Sizes();
    }

    private bool InPart => Radius(0) > Part;

    /// <summary>Half the height drawn at a height over the pipe.</summary>
    private double Edge(double height) => InPart ? Part + (height > 0 ? 1.5 : 0) : Radius(height);

    private void Pipe()
    {
        var (left, right, r) = (centre.X - halfWidth, centre.X + halfWidth, Edge(0));
        var wave = Math.Min(1.6, r / 4);
        List<Spot> round =
        [
            .. Trace.Broken(left, centre.Y - r, centre.Y + r, wave),
            .. Trace.Broken(right, centre.Y - r, centre.Y + r, wave).Reverse(),
        ];
        board.Put(Trace.Area([.. round]), InPart ? Pen.None : Pen.Outline, Fill.Pipe, "pipe");
        if (!InPart)
            return;
        // The break above and below: the pipe goes on.
        board.Line(Pen.Outline, [.. Trace.Broken(left, centre.Y - r, centre.Y + r, wave)]);
        board.Line(Pen.Outline, [.. Trace.Broken(right, centre.Y - r, centre.Y + r, wave)]);
        foreach (var y in new[] { centre.Y - r, centre.Y + r })
            board.Line(Pen.Hidden, new(left, y), new(right, y));
    }

    // The part of a body that faces us: from its upper to its lower edge, as far as the pipe's own.
    private (double Top, double Bottom)? Facing(double at, double half, double height)
    {
        var (from, to) = (Math.Max(-90, at - half), Math.Min(90, at + half));
        if (half >= 180)
            (from, to) = (-90, 90);
        if (to - from < 0.01)
            return null;
        var top = centre.Y + Radius(height) * Math.Sin(from * Math.PI / 180);
        var bottom = centre.Y + Radius(height) * Math.Sin(to * Math.PI / 180);
        var edge = Edge(height);
        return top > centre.Y + edge || bottom < centre.Y - edge
            ? null
            : (Math.Max(top, centre.Y - edge), Math.Min(bottom, centre.Y + edge));
    }

    private void Body(Piece p)
    {
        if (Facing(p.At, p.HalfAngle, p.Outer) is not { } seen)
            return;
        var (left, right) = (X(p.From), X(p.To));
        if (p.Covered)
        {
            if (p.Part is "seal")
                board.Put(Trace.Box(left, seen.Top, right, seen.Bottom), Pen.Hidden, Fill.None, p.Part);
            return;
        }
        if (p.Taper > 0 && p.HalfAngle >= 180)
            Tapered(p, left, right, seen.Top, seen.Bottom);
        else
            board.Put(
                Trace.Rounded(left, seen.Top, right, seen.Bottom, p.Corner * scale),
                Pen.Outline,
                p.Fill == Fill.Laminate ? Fill.Laminate : p.Fill,
                p.Part
            );
    }

    private void Tapered(Piece p, double left, double right, double top, double bottom)
    {
        var run = p.Taper * scale;
        var r = Edge(0);
        board.Put(
            Trace.Area(
                new(left, centre.Y - r),
                new(left + run, top),
                new(right - run, top),
                new(right, centre.Y - r),
                new(right, centre.Y + r),
                new(right - run, bottom),
                new(left + run, bottom),
                new(left, centre.Y + r)
            ),
            Pen.Outline,
            p.Fill,
            p.Part
        );
        board.Line(Pen.Thin, new(left + run, top), new(left + run, bottom));
        board.Line(Pen.Thin, new(right - run, top), new(right - run, bottom));
    }

    private void Ears()
    {
        var bolts = fit.Fasteners.Where(f => f.Kind == FastenerKind.Ears).ToList();
        if (bolts.Count == 0)
            return;
        var (left, right) = (X(bolts.Min(b => b.Along - 1.6 * b.Long)), X(bolts.Max(b => b.Along + 1.6 * b.Long)));
        var shell = fit.Pieces.Where(p => p.Part == "clamp").Select(p => (X(p.From), X(p.To))).First();
        (left, right) = (Math.Max(left, shell.Item1), Math.Min(right, shell.Item2));
        foreach (var side in bolts.Select(b => Math.Sign(b.At)).Distinct())
        {
            var foot = centre.Y + side * Radius(bolts[0].Base);
            var top = foot + side * EarHeight(bolts[0]);
            board.Put(
                Trace.Box(left, Math.Min(foot, top), right, Math.Max(foot, top)),
                Pen.Outline,
                Fill.Shell,
                "clamp"
            );
        }
    }

    private double EarHeight(Fastener bolt) => Math.Max(2.4, bolt.Height * scale);

    private void Fastened(Fastener f)
    {
        switch (f.Kind)
        {
            case FastenerKind.Ears:
                var out_ = Radius(f.Base) + EarHeight(f) / 2;
                var hole = new Spot(X(f.Along), centre.Y + Math.Sign(f.At) * out_);
                board.Put(
                    Trace.Circle(hole, Math.Clamp(f.Long * scale / 2, 0.6, EarHeight(f) / 2.6)),
                    Pen.Outline,
                    Fill.Seal,
                    f.Part
                );
                break;
            case FastenerKind.Rod:
                var y = centre.Y + Radius(f.Base) * Math.Sin(f.At * Math.PI / 180);
                var thick = Math.Max(0.7, f.Round * scale / 2);
                board.Put(
                    Trace.Box(X(f.Along - f.Long / 2), y - thick, X(f.Along + f.Long / 2), y + thick),
                    Pen.Outline,
                    Fill.Paper,
                    f.Part
                );
                break;
            default:
                OnTheBand(f);
                break;
        }
    }

    private void OnTheBand(Fastener f)
    {
        var turn = f.At * Math.PI / 180;
        if (Math.Cos(turn) < -0.05 || (InPart && Radius(f.Base) * Math.Abs(Math.Sin(turn)) > Part - 2))
            return;
        var wide = Math.Max(1.8, f.Long * scale) / 2;
        if (Math.Cos(turn) < 0.12)
        {
            var (foot, side) = (Radius(f.Base), Math.Sign(f.At));
            var top = foot + Math.Max(1.8, f.Height * scale);
            var (high, low) = (centre.Y + side * foot, centre.Y + side * top);
            board.Put(
                Trace.Box(X(f.Along) - wide, Math.Min(high, low), X(f.Along) + wide, Math.Max(high, low)),
                Pen.Outline,
                Fill.Paper,
                f.Part
            );
            return;
        }
        var y = centre.Y + Radius(f.Base) * Math.Sin(turn);
        var half = Math.Max(1.8, f.Round * scale * Math.Cos(turn)) / 2;
        board.Put(Trace.Box(X(f.Along) - wide, y - half, X(f.Along) + wide, y + half), Pen.Outline, Fill.Paper, f.Part);
        board.Put(Trace.Circle(new(X(f.Along), y), Math.Min(wide, half) * 0.45), Pen.Thin, Fill.None, f.Part);
    }

    // Seen through whatever lies on it.
    private void Defect()
    {
        if (s.Defect is null)
            return;
        var wide = Math.Max(0.9, s.Length / 2 * scale);
        var high = Math.Max(0.9, Radius(0) * Math.Sin(Math.Min(90, s.HalfAngle) * Math.PI / 180));
        var onIt = fit.Pieces.Count > 0;
        board.Put(Trace.Ellipse(centre, wide, high), onIt ? Pen.Hidden : Pen.Alarm, Fill.None, "defect");
        if (s.Defect.ThroughWall)
            board.Put(
                Trace.Circle(centre, Math.Max(0.7, s.Hole / 2 * scale)),
                Pen.Alarm,
                onIt ? Fill.None : Fill.Alarm,
                "defect"
            );
    }

    private void Clock()
    {
        var x = centre.X - halfWidth - 4;
        var turn = InPart ? Math.Asin(Part / Radius(0)) * 6 / Math.PI : 3;
        // So near that the figures would be the same: the middle alone.
        var sides = turn < 0.1 ? [0] : new[] { -1, 0, 1 };
        foreach (var side in sides)
        {
            var hour = (s.Clock / 30 + turn * side + 12) % 12;
            var words = Say($"{(hour < 0.05 ? 12 : hour):0.#}");
            board.Text(x, centre.Y + side * (Edge(0) - 1.2) + 1, words, Align.Right, 2.7, ink: Pen.Quiet);
        }
    }

    /// <summary>How far the outermost thing and its dimensions reach up or down from the middle, mm of paper.</summary>
    public double Reach(bool above) =>
        fit.Along.Any(a => a.Above == above)
            ? fit.Along.Where(a => a.Above == above).Max(Out) + (above ? 4.5 : 2)
            : Outermost + 1.5;

    private double Outermost
    {
        get
        {
            var bolts = fit.Fasteners.Where(f => f.Kind == FastenerKind.Ears).ToList();
            var edge = fit.Pieces.Select(p => Edge(p.Outer)).Append(Edge(0)).Max();
            if (bolts.Count > 0)
                edge = Radius(bolts[0].Base) + EarHeight(bolts[0]);
            var onEdge = fit.Fasteners.Where(f => f.Kind == FastenerKind.Band && Math.Abs(Math.Abs(f.At) - 90) < 7);
            if (!InPart && onEdge.FirstOrDefault() is { } band)
                edge = Math.Max(edge, Radius(band.Base) + Math.Max(1.8, band.Height * scale));
            return edge;
        }
    }

    private double Out(AlongSize size)
    {
        var inside = fit.Along.Where(a => a.Above == size.Above && a.Row < size.Row).Select(a => a.Row).Distinct();
        return Outermost + 4 + RowHeight * inside.Count() + (size.Above ? 0 : 1.5);
    }

    private void Sizes()
    {
        foreach (var size in fit.Along)
        {
            var side = size.Above ? -1 : 1;
            board.Across(X(size.From), X(size.To), centre.Y + side * Out(size), centre.Y + side * Outermost, size.Text);
        }
        foreach (var size in fit.Round)
            Bent(size);
    }

    // A length round the pipe is told where both its ends are seen.
    private void Bent(RoundSize size)
    {
        var over = Radius(fit.Pieces.Max(p => p.Outer));
        var (top, bottom) = (over * Math.Sin(size.From * Math.PI / 180), over * Math.Sin(size.To * Math.PI / 180));
        var seen = size is { From: > -90, To: < 90 } && Math.Max(-top, bottom) <= Edge(0);
        if (size.Arc is { } arc && seen)
            board.Upright(centre.Y + top, centre.Y + bottom, X(fit.Reach) + 4.5, X(fit.Reach), arc);
    }
}
