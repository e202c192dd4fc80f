using Microsoft.Extensions.Configuration;
using RepairOrders.Api.Wire;

namespace RepairOrders.Api.Papers;

/// <summary>
/// Where people open the screens: what the code on a tag leads to. The setting <c>PublicAddress</c> decides; else the screens tell
/// their own, since a call from them comes by an inner address.
/// </summary>
internal static class PublicAddress
{
    public static string Of(IConfiguration settings, HttpRequest request, string? told)
    {
        var address = settings["PublicAddress"] is { Length: > 0 } set
            ? set
            : told ?? $"{request.Scheme}://{request.Host}";
        return
            Uri.TryCreate(address, UriKind.Absolute, out var uri)
            && uri.Scheme is "http" or "https"
            && uri.UserInfo.Length == 0
            && uri is { PathAndQuery: "/", Fragment.Length: 0 }
            ? uri.GetLeftPart(UriPartial.Authority)
            : throw new MalformedAsk(
                "address",
                $"address is \"{address}\"; allowed is http or https with a host, such as https://repairs.example."
            );
    }
}
