using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;
using Microsoft.Extensions.Logging;
using RepairOrders.Contract;

namespace RepairOrders.Ui.Session;

/// <summary>Asks the API every few seconds whether the token still speaks for somebody: a disabled person's open page ends.</summary>
internal sealed class SignInWatch(ILoggerFactory logs, IHttpClientFactory clients, ApiAddress address)
    : RevalidatingServerAuthenticationStateProvider(logs)
{
    protected override TimeSpan RevalidationInterval => TimeSpan.FromSeconds(7);

    protected override async Task<bool> ValidateAuthenticationStateAsync(
        AuthenticationState authenticationState,
        CancellationToken cancellationToken
    )
    {
        var token = authenticationState.User.FindFirstValue(ApiConnection.TokenClaim);
        if (token is null)
            return false;
        var http = clients.CreateClient(ApiConnection.ClientName);
        http.BaseAddress = address.Value;
        try
        {
            await new RepairOrdersClient(http) { Token = token }.Me(cancellationToken);
            return true;
        }
        catch (Refused no)
        {
            // Only a 401 ends the page; a store that is away for a moment does not.
            return no.Status != 401;
        }
        catch (HttpRequestException)
        {
            return true;
        }
    }
}
