using System.Buffers;
using RepairOrders.Api.Calculations.Survey;

namespace RepairOrders.Api.Wire;

/// <summary>The endpoint's body is a picture of at most so many bytes.</summary>
internal sealed record TakesPicture(long MostBytes);

/// <summary>
/// JSON and CSV are read whole before anybody looks at them: so that a repeat with the same key can be told from another write,
/// an error can name what was sent, and what the store cannot keep (the NUL character) is refused at the edge.
/// </summary>
internal static class Bodies
{
    public const int MostJsonBytes = 1_000_000;
    public const int MostCsvBytes = 5_000_000;

    public static async Task Check(HttpContext context, RequestDelegate next)
    {
        var request = context.Request;
        if (Has(request.Path.Value, '\0') || Has(Uri.UnescapeDataString(request.QueryString.Value ?? ""), '\0'))
            throw new MalformedAsk("address", "The address holds a NUL character; allowed is text without one.");
        var most =
            context.GetEndpoint()?.Metadata.GetMetadata<StreamsBody>() is not null ? 0
            : request.HasJsonContentType() ? MostJsonBytes
            : IsCsv(request) ? MostCsvBytes
            : 0;
        if (most > 0 && request.Path.StartsWithSegments("/api"))
            await Read(request, most);
        else if (context.GetEndpoint()?.Metadata.GetMetadata<TakesPicture>() is { } picture)
            await Spool(request, picture.MostBytes);
        await next(context);
    }

    public static bool IsCsv(HttpRequest request) =>
        request.ContentType?.StartsWith("text/csv", StringComparison.OrdinalIgnoreCase) == true;

    private static bool Has(string? text, char letter) => text?.Contains(letter, StringComparison.Ordinal) == true;

    private static async Task Read(HttpRequest request, int most)
    {
        if (request.ContentLength > most)
            throw TooLarge(most);
        request.EnableBuffering(bufferThreshold: most);
        var block = ArrayPool<byte>.Shared.Rent(16 * 1024);
        try
        {
            var scan = new NulScan();
            int read;
            while ((read = await request.Body.ReadAsync(block, request.HttpContext.RequestAborted)) > 0)
                if (request.Body.Position > most)
                    throw TooLarge(most);
                else if (scan.Finds(block.AsSpan(0, read)))
                    throw new MalformedAsk("body", "The body holds a NUL character; allowed is text without one.");
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(block);
        }
        request.Body.Position = 0;
    }

    // A picture goes to disk as it comes in, before any transaction is open: however slow the phone, nobody waits for it, and a
    // write that is tried again can read it again.
    private static async Task Spool(HttpRequest request, long most)
    {
        if (request.ContentLength > most)
            throw TooLarge(most);
        request.EnableBuffering(bufferThreshold: 64 * 1024);
        var block = ArrayPool<byte>.Shared.Rent(64 * 1024);
        try
        {
            for (int read; (read = await request.Body.ReadAsync(block, request.HttpContext.RequestAborted)) > 0; )
                if (request.Body.Position > most)
                    throw TooLarge(most);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(block);
        }
        request.Body.Position = 0;
    }

    private static RequestRefusal TooLarge(long most) =>
        new(413, "too-large", $"The body is larger than {most / 1_000_000} MB, which is the most that is taken here.");

    // A zero byte, or \u0000 where the backslash is not itself escaped.
    private struct NulScan
    {
        private bool escaped;
        private int matched;

        public bool Finds(ReadOnlySpan<byte> bytes)
        {
            foreach (var letter in bytes)
            {
                if (letter == 0)
                    return true;
                if (matched > 0)
                {
                    matched = letter == '0' ? matched + 1 : 0;
                    if (matched == 5)
                        return true;
                }
                else if (escaped && letter == 'u')
                {
                    matched = 1;
                }
                escaped = !escaped && letter == '\\';
            }
            return false;
        }
    }
}
