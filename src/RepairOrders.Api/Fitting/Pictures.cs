using RepairOrders.Api.Wire;
using SkiaSharp;

namespace RepairOrders.Api.Fitting;

/// <summary>What a picture is, told from its bytes, and the small one made of it.</summary>
/// <param name="Kind">Content type.</param>
/// <param name="Width">Width as it is meant to be seen, pixels.</param>
/// <param name="Height">Height, pixels.</param>
/// <param name="Thumbnail">JPEG with nothing in it but the picture.</param>
internal sealed record Picture(string Kind, int Width, int Height, byte[] Thumbnail);

internal static class Pictures
{
    public const int ThumbnailEdge = 480;

    // A small file can unfold into a picture that fills the memory.
    private const long MostPixels = 120_000_000;
    private const long MostPngPixels = 40_000_000;

    // One at a time: unfolding is what costs memory, and it takes a fraction of a second.
    private static readonly SemaphoreSlim Turn = new(1);

    /// <summary>Reads a picture from a stream that can be read again.</summary>
    /// <exception cref="RequestRefusal">It is no JPEG, PNG or WebP that can be read.</exception>
    public static async Task<Picture> Read(Stream stream)
    {
        stream.Position = 0;
        var head = new byte[12];
        var read = await stream.ReadAtLeastAsync(head, head.Length, throwOnEndOfStream: false);
        var kind =
            KindOf(head.AsSpan(0, read))
            ?? throw new RequestRefusal(
                415,
                "photo-kind",
                "This is no photograph of a kind that is taken here; allowed are JPEG, PNG and WebP, told from the bytes and not from the name."
            );
        stream.Position = 0;
        await Turn.WaitAsync();
        try
        {
            return Unfold(stream, kind);
        }
        finally
        {
            Turn.Release();
        }
    }

    public static string? KindOf(ReadOnlySpan<byte> head) =>
        head.StartsWith<byte>([0xFF, 0xD8, 0xFF]) ? "image/jpeg"
        : head.StartsWith<byte>([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]) ? "image/png"
        : head.Length >= 12 && head.StartsWith("RIFF"u8) && head[8..12].SequenceEqual("WEBP"u8) ? "image/webp"
        : null;

    private static Picture Unfold(Stream stream, string kind)
    {
        using var source = new SKManagedStream(stream);
        using var codec = SKCodec.Create(source) ?? throw Unreadable();
        var (width, height) = (codec.Info.Width, codec.Info.Height);
        if ((long)width * height > (kind == "image/png" ? MostPngPixels : MostPixels))
            throw new RequestRefusal(
                413,
                "photo-too-many-pixels",
                $"The picture has {width} × {height} pixels; allowed are {(kind == "image/png" ? MostPngPixels : MostPixels) / 1_000_000} million."
            );
        var scale = Math.Min(1f, (float)ThumbnailEdge / Math.Max(width, height));
        // JPEG unfolds in eighths: the next larger one, so that the small picture is never stretched.
        var size = codec.GetScaledDimensions(Math.Min(1f, MathF.Ceiling(scale * 8) / 8));
        using var bitmap = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888));
        var result = codec.GetPixels(bitmap.Info, bitmap.GetPixels());
        if (result is not SKCodecResult.Success)
            throw Unreadable();
        var turned = codec.EncodedOrigin >= SKEncodedOrigin.LeftTop;
        return new(kind, turned ? height : width, turned ? width : height, Small(bitmap, codec.EncodedOrigin));
    }

    private static byte[] Small(SKBitmap bitmap, SKEncodedOrigin origin)
    {
        var scale = Math.Min(1f, (float)ThumbnailEdge / Math.Max(bitmap.Width, bitmap.Height));
        var (w, h) = (Math.Max(1, (int)(bitmap.Width * scale)), Math.Max(1, (int)(bitmap.Height * scale)));
        var turned = origin >= SKEncodedOrigin.LeftTop;
        using var surface = SKSurface.Create(new SKImageInfo(turned ? h : w, turned ? w : h));
        var canvas = surface.Canvas;
        canvas.Clear(SKColors.White);
        canvas.SetMatrix(Upright(origin, w, h));
        using var image = SKImage.FromBitmap(bitmap);
        canvas.DrawImage(image, SKRect.Create(w, h), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        using var small = surface.Snapshot();
        using var data = small.Encode(SKEncodedImageFormat.Jpeg, 80);
        return data.ToArray();
    }

    /// <summary>Turns a picture of w × h stored in one of the eight orientations upright.</summary>
    private static SKMatrix Upright(SKEncodedOrigin origin, int w, int h) =>
        origin switch
        {
            SKEncodedOrigin.TopRight => new SKMatrix(-1, 0, w, 0, 1, 0, 0, 0, 1),
            SKEncodedOrigin.BottomRight => new SKMatrix(-1, 0, w, 0, -1, h, 0, 0, 1),
            SKEncodedOrigin.BottomLeft => new SKMatrix(1, 0, 0, 0, -1, h, 0, 0, 1),
            SKEncodedOrigin.LeftTop => new SKMatrix(0, 1, 0, 1, 0, 0, 0, 0, 1),
            SKEncodedOrigin.RightTop => new SKMatrix(0, -1, h, 1, 0, 0, 0, 0, 1),
            SKEncodedOrigin.RightBottom => new SKMatrix(0, -1, h, -1, 0, w, 0, 0, 1),
            SKEncodedOrigin.LeftBottom => new SKMatrix(0, 1, 0, -1, 0, w, 0, 0, 1),
            _ => SKMatrix.Identity,
        };

    private static RequestRefusal Unreadable() =>
        new(415, "photo-unreadable", "The picture is broken or cut off and cannot be read. Take it or send it again.");
}
