using System.Globalization;

namespace RepairOrders.Api.Wire;

/// <summary>The version the caller had on his screen, of an order or of anything else that is kept, from <c>If-Match</c>.</summary>
internal sealed record SeenVersion(uint Value)
{
    public static ValueTask<SeenVersion?> BindAsync(HttpContext context)
    {
        var header = context.Request.Headers.IfMatch.ToString().Trim().Trim('"');
        if (header.Length == 0)
            throw new RequestRefusal(
                428,
                "version-missing",
                "Send the version you saw as If-Match, so that nobody's work is overwritten unseen."
            );
        return uint.TryParse(header, NumberStyles.None, CultureInfo.InvariantCulture, out var value)
            ? ValueTask.FromResult<SeenVersion?>(new SeenVersion(value))
            : throw new RequestRefusal(412, "stale", "That is no version of this. Read it again.");
    }
}
