using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Http;
using RepairOrders.Contract;

namespace RepairOrders.Ui.Session;

/// <summary>
/// The API's client, speaking for the person of this circuit. Scoped: the token belongs to the circuit, and a handler of the
/// client factory lives in a scope of its own.
/// </summary>
internal sealed class ApiConnection(
    IHttpClientFactory clients,
    ApiAddress address,
    AuthenticationStateProvider signedIn
)
{
    public const string ClientName = "api";
    public const string TokenClaim = "token";

    /// <summary>A client with the token of the person signed in; its first write goes under the form's key.</summary>
    public async Task<RepairOrdersClient> Client(string? key = null)
    {
        var state = await signedIn.GetAuthenticationStateAsync();
        var client = With(state.User.FindFirstValue(TokenClaim));
        client.NextKey = key;
        return client;
    }

    public RepairOrdersClient With(string? token)
    {
        var http = clients.CreateClient(ClientName);
        http.BaseAddress = address.Value;
        return new RepairOrdersClient(http) { Token = token };
    }

    /// <summary>A client for a call without a token: it tells where the browser is, or all of them would share one limit of tries.</summary>
    public RepairOrdersClient From(HttpContext browser)
    {
        var http = clients.CreateClient(ClientName);
        http.BaseAddress = address.Value;
        if (browser.Connection.RemoteIpAddress is { } from)
            http.DefaultRequestHeaders.Add("X-Forwarded-For", from.ToString());
        return new RepairOrdersClient(http);
    }

    public async Task SignOut(string token)
    {
        try
        {
            await With(token).SignOut();
        }
        catch (Refused)
        {
            // The token had ended already.
        }
    }
}
