using SkiaSharp;

namespace RepairOrders.Host.Demo;

/// <summary>A drawn picture that says it is no photograph: a pipe, what is to be seen on it, and the words.</summary>
internal static class Placeholder
{
    private const int Width = 360;
    private const int Height = 240;

    public static byte[] Draw(string order, string shows, DateOnly day, bool covered)
    {
        using var bitmap = new SKBitmap(Width, Height);
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(new SKColor(0xE4, 0xE7, 0xE6));
            Pipe(canvas);
            if (covered)
                Plate(canvas);
            else
                Spot(canvas, order);
            Frame(canvas);
            PixelWords.Write(canvas, "placeholder photograph", 22, 26, 2.3f);
            PixelWords.Write(canvas, $"{order}  {day:yyyy-MM-dd}", 22, 190, 1.7f);
            PixelWords.Write(canvas, shows, 22, 209, 1.7f);
        }
        using var data = bitmap.Encode(SKEncodedImageFormat.Jpeg, 80);
        return data.ToArray();
    }

    private static void Pipe(SKCanvas canvas)
    {
        using var shade = SKShader.CreateLinearGradient(
            new SKPoint(0, 66),
            new SKPoint(0, 172),
            [new SKColor(0x6E, 0x76, 0x7A), new SKColor(0xB9, 0xC0, 0xC2), new SKColor(0x52, 0x59, 0x5C)],
            [0, 0.35f, 1],
            SKShaderTileMode.Clamp
        );
        using var paint = new SKPaint { Shader = shade };
        canvas.DrawRect(0, 66, Width, 106, paint);
    }

    private static void Spot(SKCanvas canvas, string order)
    {
        // The same spot on every picture of an order, as from one viewpoint.
        var x = 120 + order.Sum(c => c) * 37 % 120;
        using var rust = new SKPaint { Color = new SKColor(0x8A, 0x4B, 0x2A), IsAntialias = true };
        using var hole = new SKPaint { Color = new SKColor(0x23, 0x1A, 0x15), IsAntialias = true };
        canvas.DrawOval(x, 120, 28, 18, rust);
        canvas.DrawCircle(x + 4, 122, 5, hole);
    }

    private static void Plate(SKCanvas canvas)
    {
        using var plate = new SKPaint { Color = new SKColor(0xD6, 0xDA, 0xDB) };
        using var band = new SKPaint { Color = new SKColor(0x8F, 0x97, 0x9A) };
        using var screw = new SKPaint { Color = new SKColor(0x3B, 0x41, 0x44), IsAntialias = true };
        canvas.DrawRect(105, 63, 150, 112, plate);
        for (var x = 117; x <= 225; x += 36)
        {
            canvas.DrawRect(x, 60, 20, 118, band);
            canvas.DrawCircle(x + 10, 78, 6, screw);
        }
    }

    private static void Frame(SKCanvas canvas)
    {
        using var edge = new SKPaint
        {
            Color = new SKColor(0x3B, 0x41, 0x44),
            Style = SKPaintStyle.Stroke,
            StrokeWidth = 4,
            PathEffect = SKPathEffect.CreateDash([14, 8], 0),
        };
        canvas.DrawRect(8, 8, Width - 16, Height - 16, edge);
    }
}
