using SkiaSharp;

namespace RepairOrders.Host.Demo;

/// <summary>Capitals of five by seven dots: a bare machine has no font to write with.</summary>
internal static class PixelWords
{
    // Five columns a letter, the top dot in the lowest bit.
    private static readonly Dictionary<char, string> Letters = new()
    {
        [' '] = "0000000000",
        ['-'] = "0808080808",
        ['.'] = "0060600000",
        [','] = "0050300000",
        [':'] = "0036360000",
        ['/'] = "2010080402",
        ['0'] = "3E5149453E",
        ['1'] = "00427F4000",
        ['2'] = "4261514946",
        ['3'] = "2141454B31",
        ['4'] = "1814127F10",
        ['5'] = "2745454539",
        ['6'] = "3C4A494930",
        ['7'] = "0171090503",
        ['8'] = "3649494936",
        ['9'] = "064949291E",
        ['A'] = "7E1111117E",
        ['B'] = "7F49494936",
        ['C'] = "3E41414122",
        ['D'] = "7F4141221C",
        ['E'] = "7F49494941",
        ['F'] = "7F09090901",
        ['G'] = "3E4149497A",
        ['H'] = "7F0808087F",
        ['I'] = "00417F4100",
        ['J'] = "2040413F01",
        ['K'] = "7F08142241",
        ['L'] = "7F40404040",
        ['M'] = "7F020C027F",
        ['N'] = "7F0408107F",
        ['O'] = "3E4141413E",
        ['P'] = "7F09090906",
        ['Q'] = "3E4151215E",
        ['R'] = "7F09192946",
        ['S'] = "4649494931",
        ['T'] = "01017F0101",
        ['U'] = "3F4040403F",
        ['V'] = "1F2040201F",
        ['W'] = "3F4038403F",
        ['X'] = "6314081463",
        ['Y'] = "0708700807",
        ['Z'] = "6151494543",
    };

    public static void Write(SKCanvas canvas, string words, float left, float top, float dot)
    {
        using var ink = new SKPaint { Color = new SKColor(0x23, 0x2A, 0x2D) };
        foreach (var letter in words.ToUpperInvariant())
        {
            var columns = Convert.FromHexString(Letters.GetValueOrDefault(letter, Letters['-']));
            for (var x = 0; x < columns.Length; x++)
            for (var y = 0; y < 7; y++)
                if ((columns[x] >> y & 1) == 1)
                    canvas.DrawRect(left + x * dot, top + y * dot, dot, dot, ink);
            left += 6 * dot;
        }
    }
}
