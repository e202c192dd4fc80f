using System.Collections.Concurrent;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;
using RepairOrders.Api.Drawing;

namespace RepairOrders.Api.Papers;

/// <summary>
/// The one place that knows the PDF library: pages, text, lines, pictures, bookmarks. Places and sizes in mm, y down from the top
/// of the page; text stands on its baseline and its size is in mm too.
/// </summary>
internal sealed class Press : IDisposable
{
    private const double Pt = 72 / 25.4;

    private static readonly XPdfFontOptions Embedded = new(PdfFontEncoding.Unicode, PdfFontEmbedding.TryComputeSubset);

    private static readonly ConcurrentDictionary<(Face, char), double> Letters = [];

    private readonly PdfDocument document = new();
    private readonly Dictionary<(Face, double), XFont> fonts = [];
    private XGraphics page = null!;

    static Press() => GlobalFontSettings.FontResolver ??= new Faces();

    public Press(string title, string subject, string author)
    {
        document.Info.Title = title;
        document.Info.Subject = subject;
        document.Info.Author = author;
        document.Info.Creator = "RepairOrders";
        document.Language = "en-GB";
        document.PageMode = PdfPageMode.UseOutlines;
    }

    public int Pages => document.PageCount;

    public void NewPage(double width, double height)
    {
        page?.Dispose();
        var sheet = document.AddPage();
        (sheet.Width, sheet.Height) = (XUnit.FromMillimeter(width), XUnit.FromMillimeter(height));
        page = XGraphics.FromPdfPage(sheet);
    }

    /// <summary>Goes back to a page, to write its foot once all are there.</summary>
    public void Turn(int number)
    {
        page.Dispose();
        page = XGraphics.FromPdfPage(document.Pages[number], XGraphicsPdfPageOptions.Append);
    }

    public void Bookmark(string words) =>
        document.Outlines.Add(words, document.Pages[document.PageCount - 1], opened: true);

    /// <summary>How wide a text is; the faces have no kerning here, so the letters' own widths add up.</summary>
    public double Wide(string text, double size, Face face = Face.Text)
    {
        var wide = 0.0;
        foreach (var letter in text)
            wide += Letters.GetOrAdd((face, letter), Measured, page);
        return wide * size;
    }

    private static double Measured((Face Face, char Letter) key, XGraphics page) =>
        page.MeasureString($"{key.Letter}", new XFont(key.Face.ToString(), 100, XFontStyleEx.Regular, Embedded)).Width
        / 100;

    public void Text(
        double x,
        double y,
        string text,
        double size,
        Face face = Face.Text,
        Align align = Align.Left,
        double ink = 1
    )
    {
        if (text.Length == 0)
            return;
        var left = align switch
        {
            Align.Left => x,
            Align.Middle => x - Wide(text, size, face) / 2,
            _ => x - Wide(text, size, face),
        };
        page.DrawString(text, Font(face, size), Grey(ink), left * Pt, y * Pt);
    }

    /// <summary>Breaks a text into lines that fit; a word longer than a line is cut.</summary>
    public IReadOnlyList<string> Wrap(string text, double size, double width, Face face = Face.Text)
    {
        List<string> lines = [];
        foreach (var paragraph in text.ReplaceLineEndings("\n").Split('\n'))
        {
            var line = "";
            foreach (
                var word in paragraph
                    .Split(' ', StringSplitOptions.RemoveEmptyEntries)
                    .SelectMany(w => Cut(w, size, width, face))
            )
            {
                var longer = line.Length == 0 ? word : line + " " + word;
                if (Wide(longer, size, face) <= width)
                {
                    line = longer;
                    continue;
                }
                lines.Add(line);
                line = word;
            }
            lines.Add(line);
        }
        return lines;
    }

    private IEnumerable<string> Cut(string word, double size, double width, Face face)
    {
        while (word.Length > 1 && Wide(word, size, face) > width)
        {
            var fits = word.Length - 1;
            while (fits > 1 && Wide(word[..fits], size, face) > width)
                fits--;
            yield return word[..fits];
            word = word[fits..];
        }
        yield return word;
    }

    public void Line(double x1, double y1, double x2, double y2, double width = 0.2, double ink = 1) =>
        page.DrawLine(new XPen(Colour(ink), width * Pt), x1 * Pt, y1 * Pt, x2 * Pt, y2 * Pt);

    public void Box(double x, double y, double width, double height, double line = 0.2, double tone = 0, double ink = 1)
    {
        var pen = line > 0 ? new XPen(Colour(ink), line * Pt) : null;
        var fill = tone > 0 ? Grey(tone) : null;
        page.DrawRectangle(pen, fill, x * Pt, y * Pt, width * Pt, height * Pt);
    }

    /// <summary>Dark modules of a code, each a square of the same size; runs are drawn in one, so that no seam shows.</summary>
    public void Modules(double x, double y, double side, IReadOnlyList<System.Collections.BitArray> rows)
    {
        var each = side / rows.Count;
        for (var r = 0; r < rows.Count; r++)
        for (var c = 0; c < rows[r].Length; c++)
        {
            var from = c;
            while (c < rows[r].Length && rows[r][c])
                c++;
            if (c > from)
                page.DrawRectangle(
                    XBrushes.Black,
                    (x + from * each) * Pt,
                    (y + r * each) * Pt,
                    (c - from) * each * Pt,
                    (each + 0.01) * Pt
                );
        }
    }

    /// <summary>Draws a picture with its upper left corner at a place, as wide as asked.</summary>
    public void Picture(Picture picture, double x, double y, double width)
    {
        var scale = width / picture.Width;
        var state = page.Save();
        page.TranslateTransform(x * Pt, y * Pt);
        page.ScaleTransform(scale * Pt);
        foreach (var mark in picture.Marks)
            if (mark is Shape shape)
                PdfRendering.Draw(page, shape);
            else if (mark is Label label)
                PdfRendering.Draw(
                    page,
                    label,
                    Font(label.Bold ? Face.Bold : Face.Text, label.Size / Pt),
                    Wide(label.Text, label.Size, label.Bold ? Face.Bold : Face.Text)
                );
        page.Restore(state);
    }

    public byte[] Bytes()
    {
        page.Dispose();
        using var bytes = new MemoryStream();
        document.Save(bytes, closeStream: false);
        return bytes.ToArray();
    }

    public void Dispose()
    {
        page?.Dispose();
        document.Dispose();
    }

    private XFont Font(Face face, double size)
    {
        if (fonts.TryGetValue((face, size), out var font))
            return font;
        return fonts[(face, size)] = new XFont(face.ToString(), size * Pt, XFontStyleEx.Regular, Embedded);
    }

    private static XSolidBrush Grey(double ink) => new(Colour(ink));

    private static XColor Colour(double ink) => XColor.FromGrayScale(1 - ink);
}

/// <summary>Faces the papers are set in.</summary>
internal enum Face
{
    Text,
    Bold,
    Figures,
}

/// <summary>The embedded fonts; the library asks for them by name.</summary>
internal sealed class Faces : IFontResolver
{
    private static readonly Dictionary<string, byte[]> Read = new()
    {
        [nameof(Face.Text)] = Embedded("DejaVuSansCondensed"),
        [nameof(Face.Bold)] = Embedded("DejaVuSansCondensed-Bold"),
        [nameof(Face.Figures)] = Embedded("DejaVuSansMono"),
    };

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        Read.ContainsKey(familyName) ? new FontResolverInfo(familyName) : null;

    public byte[]? GetFont(string faceName) => Read.GetValueOrDefault(faceName);

    private static byte[] Embedded(string name)
    {
        using var stream = typeof(Faces).Assembly.GetManifestResourceStream(name)!;
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
