using Microsoft.AspNetCore.Identity;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.People;

internal static class SessionEndpoints
{
    /// <summary>A shift and a little more, so that nobody signs in twice at the pipe.</summary>
    public static readonly TimeSpan SessionLength = TimeSpan.FromHours(12);

    public static void MapSession(this IEndpointRouteBuilder api)
    {
        api.MapPost("/session", SignIn).AllowAnonymous().RequireRateLimiting(Limits.SignIn).WithSummary("Sign in");
        api.MapGet("/session", Me).Needs(Permission.SeeOneself).WithSummary("Who the token speaks for");
        api.MapDelete("/session", SignOut).Needs(Permission.SeeOneself).WithSummary("Sign out: the token is revoked");
    }

    private static async Task<IResult> SignIn(
        SignIn ask,
        UserManager<Person> people,
        RepairStore store,
        TimeProvider clock
    )
    {
        var now = clock.Now();
        var person = await people.FindByNameAsync(ask.Name);
        if (person is null || person.Disabled || await people.IsLockedOutAsync(person))
            return Refusals.Problem(
                401,
                "sign-in-failed",
                "Name or password is wrong, or the account is locked for a while."
            );
        if (!await people.CheckPasswordAsync(person, ask.Password))
        {
            await people.AccessFailedAsync(person);
            return Refusals.Problem(
                401,
                "sign-in-failed",
                "Name or password is wrong, or the account is locked for a while."
            );
        }
        await people.ResetAccessFailedCountAsync(person);
        var token = BearerSignIn.NewToken();
        var session = new Session
        {
            TokenHash = BearerSignIn.Hash(token),
            PersonId = person.Id,
            Since = now,
            Until = now + SessionLength,
        };
        store.Sessions.Add(session);
        await store.SaveChangesAsync(CancellationToken.None);
        return TypedResults.Ok(new SessionView(token, session.Until, View(person)));
    }

    private static MeView Me(Person by) => View(by);

    private static async Task<IResult> SignOut(HttpRequest request, RepairStore store, TimeProvider clock)
    {
        var hash = BearerSignIn.Hash(BearerSignIn.TokenOf(request)!);
        var now = clock.Now();
        await store
            .Sessions.Where(s => s.TokenHash == hash)
            .ExecuteUpdateAsync(s => s.SetProperty(x => x.RevokedAt, now), CancellationToken.None);
        return TypedResults.NoContent();
    }

    private static MeView View(Person person) =>
        new(
            person.Id,
            person.UserName!,
            person.FullName,
            person.Roles,
            person.Sites,
            [.. RoleRules.PermissionsOf(person).Select(p => p.ToString())]
        );
}
