namespace RepairOrders.Api.Drawing;

/// <summary>What pens and fills look like; the same numbers on screen and paper.</summary>
internal static class Inks
{
    /// <summary>Width and dashes of a line, mm.</summary>
    public static (double Width, double[] Dashes) Line(Pen pen) =>
        pen switch
        {
            Pen.Heavy => (0.7, []),
            Pen.Outline => (0.4, []),
            Pen.Alarm => (0.6, []),
            Pen.Hidden => (0.25, [1.4, 0.9]),
            Pen.Centre => (0.2, [4, 1, 0.8, 1]),
            Pen.Dimension => (0.2, []),
            _ => (0.22, []),
        };

    /// <summary>Share of ink in an area, and the pattern over it.</summary>
    public static (double Tone, Pattern Pattern) Area(Fill fill) =>
        fill switch
        {
            Fill.Pipe => (0.05, Pattern.None),
            Fill.Wall => (0, new(45, 1.1, 0.18)),
            Fill.NewPipe => (0, new(-45, 0.8, 0.18)),
            Fill.Plate => (0.14, new(-45, 1.6, 0.2)),
            Fill.Putty => (0.1, new(0, 0.9, 0.3, Dots: true)),
            Fill.Band => (0.34, Pattern.None),
            Fill.Laminate => (0.08, new(0, 0.7, 0.16)),
            Fill.Shell => (0.12, new(60, 1.4, 0.18)),
            Fill.Seal => (0.75, Pattern.None),
            Fill.Weld => (1, Pattern.None),
            Fill.Scale0 => (0.95, Pattern.None),
            Fill.Scale1 => (0.8, Pattern.None),
            Fill.Scale2 => (0.45, Pattern.None),
            Fill.Scale3 => (0.34, Pattern.None),
            Fill.Scale4 => (0.23, Pattern.None),
            Fill.Scale5 => (0.12, Pattern.None),
            _ => (0, Pattern.None),
        };

    /// <summary>Text that is read on a dark area is set in paper.</summary>
    public static bool Dark(Fill fill) => Area(fill).Tone > 0.45;
}

/// <summary>Lines over an area: their direction, degrees clockwise from level, distance and width in mm.</summary>
internal sealed record Pattern(double Turn, double Every, double Width, bool Dots = false)
{
    public static readonly Pattern None = new(0, 0, 0);
}
