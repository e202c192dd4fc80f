using System.Net;
using Microsoft.AspNetCore.HttpOverrides;

namespace RepairOrders.Host;

/// <summary>
/// Whose word counts for where a call comes from: that of this machine, the screens in <c>both</c> among it, and of the proxies
/// that <c>Proxies</c> names by address or network. Anybody else would choose his own address, and with it his own limit of tries.
/// </summary>
internal static class Proxies
{
    public static void AddProxies(this IHostApplicationBuilder builder) =>
        builder.Services.Configure<ForwardedHeadersOptions>(options =>
        {
            options.ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto;
            foreach (var proxy in builder.Configuration.GetSection("Proxies").Get<string[]>() ?? [])
                Trust(options, proxy);
        });

    private static void Trust(ForwardedHeadersOptions options, string proxy)
    {
        if (IPAddress.TryParse(proxy, out var address))
            options.KnownProxies.Add(address);
        else if (System.Net.IPNetwork.TryParse(proxy, out var network))
            options.KnownIPNetworks.Add(network);
        else
            throw new InvalidOperationException(
                $"Proxies names \"{proxy}\"; allowed are addresses and networks of proxies, such as 10.0.0.7 and 10.0.0.0/24."
            );
    }
}
