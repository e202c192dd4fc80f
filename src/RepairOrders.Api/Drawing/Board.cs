using System.Globalization;

namespace RepairOrders.Api.Drawing;

/// <summary>A drawing board: marks are laid on it one after the other, with the draughtsman's helps.</summary>
internal sealed class Board
{
    public const double TextSize = 3.1;
    private const double ArrowLength = 2.2;

    private readonly List<Mark> marks = [];

    public IReadOnlyList<Mark> Marks => marks;

    public void Put(IReadOnlyList<Contour> contours, Pen pen, Fill fill, string part = "") =>
        marks.Add(new Shape(contours, pen, fill) { Part = part });

    public void Put(Contour contour, Pen pen, Fill fill = Fill.None, string part = "") =>
        Put([contour], pen, fill, part);

    public void Line(Pen pen, params Spot[] spots) => Put(Trace.Line(spots), pen);

    public void Text(
        double x,
        double y,
        string text,
        Align align = Align.Left,
        double size = TextSize,
        bool bold = false,
        Pen ink = Pen.Outline,
        bool clear = false,
        double turn = 0,
        string part = ""
    ) =>
        marks.Add(
            new Label(x, y, text, size)
            {
                Align = align,
                Bold = bold,
                Ink = ink,
                Clear = clear,
                Turn = turn,
                Part = part,
            }
        );

    /// <summary>A dimension along x at a height, with lines up or down to what it measures.</summary>
    public void Across(double left, double right, double y, double fromY, string text)
    {
        var over = Math.Sign(y - fromY) * 1.2;
        foreach (var x in new[] { left, right })
            Line(Pen.Dimension, new(x, fromY + over / 2), new(x, y + over));
        var width = TextWidth.Of(text, TextSize) + 1.5;
        var outside = right - left < 2 * ArrowLength + 1.5;
        if (outside)
        {
            Line(Pen.Dimension, new(left - 4.5, y), new(right + 4.5, y));
            Arrow(new(left, y), 90);
            Arrow(new(right, y), 270);
        }
        else
        {
            Line(Pen.Dimension, new(left, y), new(right, y));
            Arrow(new(left, y), 270);
            Arrow(new(right, y), 90);
        }
        var gap = outside ? 5.2 : 1.4;
        if (right - left > width)
            Text((left + right) / 2, y - 1, text, Align.Middle, ink: Pen.Dimension);
        else if (right + gap + width < OrderPicture.Width)
            Text(right + gap, y + 1.1, text, ink: Pen.Dimension);
        else
            Text(left - gap, y + 1.1, text, Align.Right, ink: Pen.Dimension);
    }

    /// <summary>A dimension along y at a place across, with lines to what it measures.</summary>
    public void Upright(double top, double bottom, double x, double fromX, string text)
    {
        var over = Math.Sign(x - fromX) * 1.2;
        foreach (var y in new[] { top, bottom })
            Line(Pen.Dimension, new(fromX + over / 2, y), new(x + over, y));
        var outside = bottom - top < 2 * ArrowLength + 1.5;
        if (outside)
        {
            Line(Pen.Dimension, new(x, top - 4), new(x, bottom + 4));
            Arrow(new(x, top), 180);
            Arrow(new(x, bottom), 0);
        }
        else
        {
            Line(Pen.Dimension, new(x, top), new(x, bottom));
            Arrow(new(x, top), 0);
            Arrow(new(x, bottom), 180);
        }
        // Along the line, to be read from the right, and clear of an axis that runs there.
        Text(x - 0.9, (top + bottom) / 2, text, Align.Middle, ink: Pen.Dimension, clear: true, turn: -90);
    }

    /// <summary>An angle with an arrow at each end; the text stands at its middle, outside.</summary>
    public void Around(Spot centre, double radius, double from, double sweep, string text)
    {
        foreach (var at in new[] { from, from + sweep })
            Line(Pen.Dimension, centre.Polar(at, radius - 2.5), centre.Polar(at, radius + 1));
        Put(Trace.ArcOf(centre, radius, from, sweep), Pen.Dimension);
        var tip = Math.Min(sweep / 3, ArrowLength / radius * 180 / Math.PI / 2);
        Arrow(centre.Polar(from, radius), from - 90 + tip);
        Arrow(centre.Polar(from + sweep, radius), from + sweep + 90 - tip);
        Beside(centre, radius + 1.6, from + sweep / 2, text, Pen.Dimension);
    }

    /// <summary>A text outside a circle, set so that it grows away from it.</summary>
    public void Beside(Spot centre, double radius, double at, string text, Pen ink, bool bold = false)
    {
        var spot = centre.Polar(at, radius);
        var side = Math.Sin(at * Math.PI / 180);
        var up = Math.Cos(at * Math.PI / 180);
        var align =
            side > 0.35 ? Align.Left
            : side < -0.35 ? Align.Right
            : Align.Middle;
        Text(spot.X, spot.Y + TextSize * (0.36 - 0.42 * up), text, align, ink: ink, bold: bold);
    }

    /// <summary>An arrow head whose tip is at a spot and points in a clock direction.</summary>
    public void Arrow(Spot tip, double towards, Fill fill = Fill.Arrow)
    {
        var back = tip.Polar(towards + 180, ArrowLength);
        Put(Trace.Area(tip, back.Polar(towards + 90, 0.42), back.Polar(towards - 90, 0.42)), Pen.None, fill);
    }

    /// <summary>A heading that goes on in a second line where it must; answers how much higher that makes it.</summary>
    public double Wrapped(double x, double y, string text, double width, double size = 3.7)
    {
        var lines = TextWidth.Wrap(text, size, width / 1.08);
        for (var i = 0; i < lines.Count; i++)
            Text(x, y + i * size * 1.25, lines[i], size: size, bold: true);
        return (lines.Count - 1) * size * 1.25;
    }

    /// <summary>A number as a dimension shows it.</summary>
    public static string Number(double value) =>
        Math.Abs(value) >= 100
            ? value.ToString("0.#", CultureInfo.InvariantCulture)
            : value.ToString("0.##", CultureInfo.InvariantCulture);

    public static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

/// <summary>How wide a text will be, near enough to keep texts apart; no font is asked.</summary>
internal static class TextWidth
{
    public static double Of(string text, double size) => size * text.Sum(Share);

    /// <summary>Breaks a text into lines that fit.</summary>
    public static IReadOnlyList<string> Wrap(string text, double size, double width)
    {
        List<string> lines = [];
        foreach (var word in text.Split(' '))
            if (lines.Count > 0 && Of(lines[^1] + " " + word, size) <= width)
                lines[^1] += " " + word;
            else
                lines.Add(word);
        return lines;
    }

    private static double Share(char c) =>
        c switch
        {
            ' ' or '.' or ',' or ':' or ';' or 'i' or 'l' or 'j' or '\'' or '|' or '·' or '(' or ')' => 0.32,
            'f' or 't' or 'r' or 'I' or '-' or '/' => 0.38,
            'm' or 'w' or 'M' or 'W' or '–' or '—' => 0.86,
            _ when char.IsUpper(c) => 0.64,
            _ => 0.57,
        };
}
