using RepairOrders.Api.Drawing;

namespace RepairOrders.Api.Tests.Drawing;

internal sealed record PaperBox(double Left, double Top, double Right, double Bottom)
{
    public bool Overlaps(PaperBox other) =>
        Left < other.Right - 0.2 && other.Left < Right - 0.2 && Top < other.Bottom - 0.2 && other.Top < Bottom - 0.2;
}

internal static class Pictures
{
    /// <summary>Writes a picture where <c>LOOK</c> names a folder, so that a person can look at it.</summary>
    public static void Show(Picture picture, string name)
    {
        if (Environment.GetEnvironmentVariable("LOOK") is { Length: > 0 } folder)
            File.WriteAllText(Path.Combine(folder, name + ".svg"), picture.Svg());
    }

    /// <summary>The extent of every mark; texts by the width of their letters, with what they say.</summary>
    public static IEnumerable<(string What, PaperBox Box)> Boxes(Picture picture)
    {
        foreach (var mark in picture.Marks)
            if (mark is Label t)
                yield return (t.Text, Box(t));
            else if (mark is Shape s)
                yield return ("", Box(s));
    }

    private static PaperBox Box(Label t)
    {
        var wide = TextWidth.Of(t.Text, t.Size);
        var left = t.Align switch
        {
            Align.Left => t.X,
            Align.Middle => t.X - wide / 2,
            _ => t.X - wide,
        };
        return t.Turn == 0
            ? new(left, t.Y - 0.75 * t.Size, left + wide, t.Y + 0.2 * t.Size)
            : new(t.X - 0.75 * t.Size, t.Y - wide / 2, t.X + 0.2 * t.Size, t.Y + wide / 2);
    }

    public static PaperBox Box(Shape s)
    {
        var spots = s.Contours.SelectMany(Spots).ToList();
        return new(spots.Min(p => p.X), spots.Min(p => p.Y), spots.Max(p => p.X), spots.Max(p => p.Y));
    }

    private static IEnumerable<Spot> Spots(Contour c)
    {
        yield return c.Start;
        foreach (var leg in c.Legs)
            if (leg is Arc arc)
                for (var i = 0; i <= 24; i++)
                    yield return arc.Centre.Polar(arc.From + arc.Sweep * i / 24, arc.Radius);
            else
                yield return leg.To;
    }
}
