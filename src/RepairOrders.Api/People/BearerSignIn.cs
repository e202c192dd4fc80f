using System.Security.Claims;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;

namespace RepairOrders.Api.People;

/// <summary>Opaque bearer tokens: 256 random bits, stored hashed; looked up on every call, so that a revoked one ends at once.</summary>
internal sealed class BearerSignIn(
    IOptionsMonitor<AuthenticationSchemeOptions> options,
    ILoggerFactory logs,
    UrlEncoder encoder,
    RepairStore store,
    TimeProvider clock
) : AuthenticationHandler<AuthenticationSchemeOptions>(options, logs, encoder)
{
    public const string SchemeName = "Bearer";
    private const int TokenLength = 64;

    public static string NewToken() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));

    public static string Hash(string token) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(token)));

    /// <summary>The token sent with the call; nothing when there is none.</summary>
    public static string? TokenOf(HttpRequest request) =>
        request.Headers.Authorization.ToString() is var header
        && header.StartsWith("Bearer ", StringComparison.OrdinalIgnoreCase)
            ? header["Bearer ".Length..].Trim()
            : null;

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        // Health must be told without the store, whatever is sent along.
        if (!Request.Path.StartsWithSegments("/api") || TokenOf(Request) is not { Length: > 0 } token)
            return AuthenticateResult.NoResult();
        var hash = Hash(token);
        var now = clock.Now();
        var session =
            token.Length == TokenLength
                ? await store
                    .Sessions.AsNoTracking()
                    .Include(s => s.Person)
                    .SingleOrDefaultAsync(
                        s => s.TokenHash == hash && s.RevokedAt == null && s.Until > now,
                        Context.RequestAborted
                    )
                : null;
        if (session is null || !session.Person.IsLetIn(now))
            return AuthenticateResult.Fail("The sign-in has ended.");
        var person = session.Person;
        if (session.OnDeviceOf is { } owner)
            person.OnDeviceOf = await store
                .Users.Where(p => p.Id == owner)
                .Select(p => p.FullName)
                .SingleAsync(Context.RequestAborted);
        Context.Items[typeof(Person)] = person;
        Context.Items[typeof(Session)] = session;
        var identity = new ClaimsIdentity(
            [new Claim(ClaimTypes.NameIdentifier, person.Id.ToString()), new Claim(ClaimTypes.Name, person.UserName!)],
            SchemeName
        );
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), SchemeName));
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers.WWWAuthenticate = SchemeName;
        return Refusals
            .Problem(401, "not-signed-in", "You are not signed in, or the sign-in has ended. Sign in again.")
            .ExecuteAsync(Context);
    }
}
