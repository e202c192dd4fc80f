using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
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

    /// <summary>A client with the token of the person signed in.</summary>
    public async Task<RepairOrdersClient> Client()
    {
        var state = await signedIn.GetAuthenticationStateAsync();
        return With(state.User.FindFirstValue(TokenClaim));
    }

    public RepairOrdersClient With(string? token)
    {
        var http = clients.CreateClient(ClientName);
        http.BaseAddress = address.Value;
        return new RepairOrdersClient(http) { Token = token };
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
