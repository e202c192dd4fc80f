using RepairOrders.Api.Tests.Papers;
using RepairOrders.Contract;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace RepairOrders.Api.Tests.AtThePipe;

/// <summary>The tag is scanned as a phone scans it: from the printed page, by a reader that knows nothing of us.</summary>
public sealed class TagCode(Workshop workshop)
{
    [Theory]
    [InlineData("a4", 150)]
    [InlineData("letter", 100)]
    public async Task The_code_on_the_tag_leads_to_the_page_at_the_pipe(string size, int dpi)
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        var tag = await scene.Tove.Paper(number, "tag", size, "https://repairs.example");
        Scanned(await Pages.Picture(tag, dpi)).ShouldBe($"https://repairs.example/pipe/{number}");
    }

    private static string? Scanned(byte[] pgm)
    {
        var (width, height, from) = Head(pgm);
        var light = new RGBLuminanceSource(
            pgm[from..(from + width * height)],
            width,
            height,
            RGBLuminanceSource.BitmapFormat.Gray8
        );
        var hints = new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true };
        return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(light)), hints)?.Text;
    }

    // P5, width, height, greatest value, then a byte a pixel.
    private static (int Width, int Height, int From) Head(byte[] pgm)
    {
        var head = System.Text.Encoding.ASCII.GetString(pgm, 0, 40).Split((char[])['\n', ' '], 5);
        head[0].ShouldBe("P5");
        var from = head[0].Length + head[1].Length + head[2].Length + head[3].Length + 4;
        return (
            int.Parse(head[1], System.Globalization.CultureInfo.InvariantCulture),
            int.Parse(head[2], System.Globalization.CultureInfo.InvariantCulture),
            from
        );
    }
}
