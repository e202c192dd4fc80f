namespace RepairOrders.Api.Drawing;

/// <summary>
/// A drawing or chart before anything is drawn: marks in millimetres of paper, x to the right and y down, in the order they are
/// laid down. The screen and the papers are both made from it.
/// </summary>
/// <param name="Code">Lower-case words joined by hyphens.</param>
/// <param name="Title">What it shows; read out to who cannot see it.</param>
/// <param name="Width">Width, mm.</param>
/// <param name="Height">Height, mm.</param>
/// <param name="Marks">What is drawn.</param>
internal sealed record Picture(string Code, string Title, double Width, double Height, IReadOnlyList<Mark> Marks);

/// <summary>One mark of a picture.</summary>
internal abstract record Mark
{
    /// <summary>The part of the bill of material it belongs to; empty for none.</summary>
    public string Part { get; init; } = "";
}

/// <summary>Lines and areas; where contours overlap, the inner one is a hole.</summary>
internal sealed record Shape(IReadOnlyList<Contour> Contours, Pen Pen, Fill Fill) : Mark;

/// <summary>A line of text; <paramref name="Y"/> is its baseline, <paramref name="Size"/> its height in mm.</summary>
internal sealed record Label(double X, double Y, string Text, double Size) : Mark
{
    public Align Align { get; init; }
    public bool Bold { get; init; }
    public Pen Ink { get; init; } = Pen.Outline;

    /// <summary>Clears what lies under it, so that it can be read over lines.</summary>
    public bool Clear { get; init; }

    /// <summary>Turned, degrees clockwise.</summary>
    public double Turn { get; init; }
}

/// <summary>A place on the paper, mm.</summary>
internal readonly record struct Spot(double X, double Y)
{
    /// <summary>The place at a distance from here in a clock direction, degrees from 12 o'clock.</summary>
    public Spot Polar(double clockDegrees, double distance)
    {
        var a = clockDegrees * Math.PI / 180;
        return new(X + distance * Math.Sin(a), Y - distance * Math.Cos(a));
    }
}

/// <summary>A line from spot to spot, with arcs.</summary>
internal sealed record Contour(Spot Start, IReadOnlyList<Leg> Legs, bool Closed);

/// <summary>One leg of a contour, ending at <paramref name="To"/>.</summary>
internal abstract record Leg(Spot To);

internal sealed record Straight(Spot To) : Leg(To);

/// <summary>An arc about a centre; degrees from 12 o'clock, a positive sweep runs clockwise.</summary>
internal sealed record Arc(Spot Centre, double Radius, double From, double Sweep)
    : Leg(Centre.Polar(From + Sweep, Radius));

internal enum Align
{
    Left,
    Middle,
    Right,
}

/// <summary>How a line is drawn, and in which ink a text is set.</summary>
internal enum Pen
{
    None,
    Outline,
    Heavy,
    Thin,
    Hidden,
    Centre,
    Dimension,
    Alarm,
    Quiet,
}

/// <summary>How an area is filled. Each can be told from the others without colour.</summary>
internal enum Fill
{
    None,
    Paper,
    Pipe,
    Wall,
    Plate,
    Putty,
    Band,
    Laminate,
    Shell,
    Seal,
    Weld,
    NewPipe,
    Alarm,
    Arrow,
    Scale0,
    Scale1,
    Scale2,
    Scale3,
    Scale4,
    Scale5,
    Scale6,
}
