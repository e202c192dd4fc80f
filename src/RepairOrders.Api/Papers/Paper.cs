using RepairOrders.Api.Drawing;

namespace RepairOrders.Api.Papers;

/// <summary>A size of paper.</summary>
internal sealed record PaperSize(string Code, double Width, double Height)
{
    public static readonly PaperSize A4 = new("a4", 210, 297);
    public static readonly PaperSize Letter = new("letter", 215.9, 279.4);

    public static IReadOnlyList<PaperSize> All { get; } = [A4, Letter];
}

/// <summary>A column of a table; widths are shares of the whole.</summary>
internal sealed record Column(string Heading, double Share, Align Align = Align.Left, Face Face = Face.Text);

/// <summary>
/// A paper as it is written from top to bottom: blocks, tables and pictures, a new page where they no longer fit, the head on
/// every page and the foot once their number is known.
/// </summary>
internal sealed class Paper : IDisposable
{
    public const double Left = 12;
    public const double Body = 2.9;
    public const double Small = 2.45;
    private const double Foot = 9;
    private const double Lead = 1.3;

    private readonly bool landscape;
    private readonly string head;
    private readonly string foot;

    public Paper(PaperSize size, string title, string head, string foot, string author, bool landscape = false)
    {
        Size = size;
        this.landscape = landscape;
        this.head = head;
        this.foot = foot;
        Press = new Press(title, head, author);
        Next();
    }

    public PaperSize Size { get; }

    public Press Press { get; }

    /// <summary>Where the next block begins.</summary>
    public double Y { get; set; }

    public double PageWidth => landscape ? Size.Height : Size.Width;

    public double PageHeight => landscape ? Size.Width : Size.Height;

    public double Width => PageWidth - 2 * Left;

    public double Right => Left + Width;

    public double Bottom => PageHeight - Foot - 3;

    public double Room => Bottom - Y;

    /// <summary>Begins a new page; all but the first carry the head in one line.</summary>
    public void Next()
    {
        Press.NewPage(PageWidth, PageHeight);
        Y = Left - 2;
        if (Press.Pages == 1)
            return;
        Press.Text(Left, Y + 3.2, head, Body, Face.Bold);
        Press.Line(Left, Y + 4.6, Right, Y + 4.6, 0.4);
        Y += 7;
    }

    public void Need(double height)
    {
        if (Room < height)
            Next();
    }

    /// <summary>A heading with a bookmark, kept with what follows.</summary>
    public void Heading(string words, double keepWith = 14)
    {
        Need(keepWith);
        Press.Bookmark(words);
        Press.Text(Left, Y + 3.4, words, 3.3, Face.Bold);
        Press.Line(Left, Y + 4.8, Right, Y + 4.8, 0.35);
        Y += 6.4;
    }

    public void Paragraph(string text, double textSize = Body, Face face = Face.Text, double? width = null)
    {
        foreach (var line in Press.Wrap(text, textSize, width ?? Width, face))
        {
            Need(textSize * Lead);
            Press.Text(Left, Y + textSize, line, textSize, face);
            Y += textSize * Lead;
        }
        Y += 0.8;
    }

    /// <summary>Numbered or bulleted texts in columns of equal width, read down.</summary>
    public void Columns(IReadOnlyList<string> texts, int columns, double textSize, string bullet = "–")
    {
        var gap = 4.0;
        var each = (Width - gap * (columns - 1)) / columns;
        var blocks = texts.Select(t => Press.Wrap(t, textSize, each - 3.4)).ToList();
        var total = blocks.Sum(b => b.Count);
        var (column, line, top, deepest) = (0, 0, Y, Y);
        foreach (var block in blocks)
        {
            if (
                column < columns - 1
                && line > 0
                && line + block.Count / 2.0 > (double)total * (column + 1) / columns - Before(column)
            )
                (column, line) = (column + 1, 0);
            var x = Left + column * (each + gap);
            Press.Text(x, top + line * textSize * Lead + textSize, bullet, textSize, Face.Bold);
            foreach (var words in block)
            {
                Press.Text(x + 3.4, top + line * textSize * Lead + textSize, words, textSize);
                line++;
            }
            deepest = Math.Max(deepest, top + line * textSize * Lead);
        }
        Y = deepest + 1.2;

        double Before(int c) => (double)total * c / columns;
    }

    /// <summary>Height of a list in one column.</summary>
    public double Height(IReadOnlyList<string> texts, double textSize) =>
        texts.Sum(t => Press.Wrap(t, textSize, Width - 3.4).Count) * textSize * Lead + 1.2;

    /// <summary>A table that goes on over pages, its heading repeated.</summary>
    public void Table(
        IReadOnlyList<Column> columns,
        IEnumerable<IReadOnlyList<string>> rows,
        double textSize = Small,
        double least = 0,
        bool boxed = false
    )
    {
        var whole = columns.Sum(c => c.Share);
        var widths = columns.Select(c => c.Share / whole * Width).ToList();
        Headed(columns, widths, textSize);
        foreach (var row in rows)
        {
            var cells = row.Select((t, i) => Press.Wrap(t, textSize, widths[i] - 2, columns[i].Face)).ToList();
            var height = Math.Max(least, cells.Max(c => c.Count) * textSize * Lead + 1.5);
            if (Room < height)
            {
                Next();
                Headed(columns, widths, textSize);
            }
            Row(columns, widths, cells, textSize, height, boxed);
        }
        Y += 2;
    }

    private void Headed(IReadOnlyList<Column> columns, List<double> widths, double textSize)
    {
        Need(2 * textSize * Lead + 4);
        if (columns.All(c => c.Heading.Length == 0))
            return;
        var x = Left;
        var lines = columns.Select((c, i) => Press.Wrap(c.Heading, textSize, widths[i] - 2, Face.Bold)).ToList();
        var deep = lines.Max(l => l.Count);
        for (var i = 0; i < columns.Count; i++)
        {
            for (var k = 0; k < lines[i].Count; k++)
                Set(columns[i].Align, x, widths[i], Y + textSize * (1 + k * Lead), lines[i][k], textSize, Face.Bold);
            x += widths[i];
        }
        Y += deep * textSize * Lead + 0.6;
        Press.Line(Left, Y, Right, Y, 0.35);
    }

    private void Row(
        IReadOnlyList<Column> columns,
        List<double> widths,
        List<IReadOnlyList<string>> cells,
        double textSize,
        double height,
        bool boxed
    )
    {
        var x = Left;
        for (var i = 0; i < cells.Count; i++)
        {
            var y = Y + 0.6 + textSize;
            foreach (var line in cells[i])
            {
                Set(columns[i].Align, x, widths[i], y, line, textSize, columns[i].Face);
                y += textSize * Lead;
            }
            if (boxed)
                Press.Line(x, Y, x, Y + height, 0.15, 0.5);
            x += widths[i];
        }
        Y += height;
        if (boxed)
            Press.Line(Right, Y - height, Right, Y, 0.15, 0.5);
        Press.Line(Left, Y, Right, Y, 0.15, 0.5);
    }

    private void Set(Align align, double x, double width, double y, string text, double textSize, Face face) =>
        Press.Text(
            align == Align.Left ? x + 1
                : align == Align.Right ? x + width - 1
                : x + width / 2,
            y,
            text,
            textSize,
            face,
            align
        );

    /// <summary>Boxes side by side, each with a label and what stands in it; empty ones are to be filled in by hand.</summary>
    public void Cells(double height, params (string Label, string Text, double Share)[] cells)
    {
        Need(height);
        var whole = cells.Sum(c => c.Share);
        var x = Left;
        foreach (var (label, text, share) in cells)
        {
            var width = share / whole * Width;
            Press.Box(x, Y, width, height, 0.2);
            Press.Text(x + 1, Y + 2.7, label, 2.1, ink: 0.75);
            var lines = Press.Wrap(text, Body, width - 2, Face.Bold);
            var most = Math.Max(1, (int)((height - 3) / (Body * 1.2)));
            for (var i = 0; i < Math.Min(most, lines.Count); i++)
                Press.Text(
                    x + 1,
                    Y + 3.2 + Body * (1 + i * 1.2),
                    i == most - 1 && lines.Count > most ? lines[i].TrimEnd() + " …" : lines[i],
                    Body,
                    Face.Bold
                );
            x += width;
        }
        Y += height;
    }

    /// <summary>The paper with the foot on each page.</summary>
    public byte[] Bytes()
    {
        for (var i = 0; i < Press.Pages; i++)
        {
            Press.Turn(i);
            Press.Line(Left, PageHeight - Foot, Right, PageHeight - Foot, 0.2);
            Press.Text(Left, PageHeight - Foot + 3.4, foot, 2.3, ink: 0.8);
            Press.Text(
                Right,
                PageHeight - Foot + 3.4,
                $"page {i + 1} of {Press.Pages}",
                2.3,
                align: Align.Right,
                ink: 0.8
            );
        }
        return Press.Bytes();
    }

    public void Dispose() => Press.Dispose();
}
