using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.Configuration;

namespace RepairOrders.Ui.Session;

/// <summary>Where the API is: as set, or the host's own loopback address when both run in one process.</summary>
internal sealed class ApiAddress(IConfiguration settings, IServer server)
{
    public Uri Value
    {
        get
        {
            var address =
                settings["Api:Address"]
                ?? server.Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault()
                ?? throw new InvalidOperationException("Api:Address is not set. It says where the API is.");
            var uri = new Uri(
                address
                    .Replace("://+", "://127.0.0.1", StringComparison.Ordinal)
                    .Replace("://*", "://127.0.0.1", StringComparison.Ordinal)
            );
            return uri.Host is "0.0.0.0" or "[::]" ? new UriBuilder(uri) { Host = "127.0.0.1" }.Uri : uri;
        }
    }
}
