using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Configuration;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.People;

internal static class SessionEndpoints
{
    public static void MapSession(this IEndpointRouteBuilder api)
    {
        api.MapPost("/session", SignIn).AllowAnonymous().RequireRateLimiting(Limits.SignIn).WithSummary("Sign in");
        api.MapGet("/session", Me).Needs(Permission.SeeOneself).WithSummary("Who the token speaks for");
        api.MapDelete("/session", SignOut).Needs(Permission.SeeOneself).WithSummary("Sign out: the token is revoked");
        api.MapPut("/session/password", ChangePassword)
            .Needs(Permission.ChangeOwnPassword)
            .WithSummary("Set a password of one's own; every other sign-in ends");
        api.MapGet("/session/sign-ins", SignIns)
            .Needs(Permission.KeepOwnSignIns)
            .WithSummary("One's own sign-ins of the last 30 days");
        api.MapDelete("/session/sign-ins/{id:guid}", EndSignIn)
            .Needs(Permission.KeepOwnSignIns)
            .WithSummary("End one of one's own sign-ins");
        api.MapPut("/session/short-code", SetShortCode)
            .Needs(Permission.KeepOwnSignIns)
            .WithSummary("Set the code for signing on somebody else's device");
        api.MapPost("/session/short-code", SignHere)
            .Needs(Permission.SignOnThisDevice)
            .RequireRateLimiting(Limits.ShortCode)
            .WithSummary("Let another person sign one order on this device");
    }

    private static async Task<Ok<SessionView>> SignIn(
        SignIn ask,
        HttpContext http,
        RepairStore store,
        Passwords passwords,
        IConfiguration settings,
        TimeProvider clock
    )
    {
        var at = clock.Now();
        var person = await store.PersonNamed(ask.Name);
        if (!await passwords.IsRight(person, ask.Password, at) || !person!.IsLetIn(at))
            throw new RequestRefusal(
                401,
                "sign-in-failed",
                "Name or password is wrong, or the account is locked for a while."
            );
        var token = BearerSignIn.NewToken();
        var session = new Session
        {
            TokenHash = BearerSignIn.Hash(token),
            PersonId = person.Id,
            Since = at,
            Until = at.AddHours(settings.GetValue("Limits:SessionHours", Session.Length.TotalHours)),
            Device = ask.Device,
            Address = Limits.Address(http),
        };
        store.Sessions.Add(session);
        await store.SaveChangesAsync(CancellationToken.None);
        return TypedResults.Ok(new SessionView(token, session.Until, person.Me()));
    }

    private static MeView Me(Person by) => by.Me();

    private static async Task<NoContent> SignOut(Session session, RepairStore store, TimeProvider clock)
    {
        var at = clock.Now();
        await store
            .Sessions.Where(s => s.Id == session.Id)
            .ExecuteUpdateAsync(s => s.SetProperty(x => x.RevokedAt, at), CancellationToken.None);
        return TypedResults.NoContent();
    }

    private static async Task<NoContent> ChangePassword(
        ChangePassword ask,
        Person by,
        Session session,
        RepairStore store,
        Passwords passwords,
        TimeProvider clock
    )
    {
        var at = clock.Now();
        await MustBeRight(passwords, by, "current", ask.Current, at);
        if (ask.Password == ask.Current)
            throw new MalformedAsk("password", "password is the one you have; choose another.");
        await using var transaction = await store.Database.BeginTransactionAsync(CancellationToken.None);
        var person = await store.Users.SingleAsync(p => p.Id == by.Id, CancellationToken.None);
        await passwords.Set(person, ask.Password, null);
        store.Changed(person, "own password set", null, null, person, at);
        await store.SaveChangesAsync(CancellationToken.None);
        await passwords.EndSignIns(person.Id, at, but: session.Id);
        await transaction.CommitAsync(CancellationToken.None);
        return TypedResults.NoContent();
    }

    private static async Task<IReadOnlyList<SignInView>> SignIns(
        Person by,
        Session session,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop
    ) => await store.SignInsOf(by.Id, session, clock.Now(), stop);

    private static async Task<NoContent> EndSignIn(Guid id, Person by, RepairStore store, TimeProvider clock)
    {
        var at = clock.Now();
        var ended = await store
            .Sessions.Where(s => s.Id == id && s.PersonId == by.Id)
            .ExecuteUpdateAsync(s => s.SetProperty(x => x.RevokedAt, x => x.RevokedAt ?? at), CancellationToken.None);
        return ended == 1 ? TypedResults.NoContent() : throw new NotHere("There is no such sign-in of yours.");
    }

    private static async Task<NoContent> SetShortCode(
        SetShortCode ask,
        Person by,
        RepairStore store,
        Passwords passwords,
        TimeProvider clock
    )
    {
        var at = clock.Now();
        await MustBeRight(passwords, by, "password", ask.Password, at);
        var person = await store.Users.SingleAsync(p => p.Id == by.Id, CancellationToken.None);
        passwords.SetCode(person, ask.Code);
        store.Changed(person, "short code set", null, null, person, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return TypedResults.NoContent();
    }

    // The token speaks for the other person, on this order only and not for long; whose device it was stays on record.
    private static async Task<Ok<SigningTokenView>> SignHere(
        SignHere ask,
        Person by,
        HttpContext http,
        RepairStore store,
        Passwords passwords,
        TimeProvider clock,
        CancellationToken stop
    )
    {
        var at = clock.Now();
        await store.Order(ask.Order, by, null, stop);
        var signer = await store.PersonNamed(ask.Name, stop);
        if (!await passwords.IsRightCode(signer, ask.Code) || !signer!.IsLetIn(at) || signer.PasswordChangeOwed)
            throw new RequestRefusal(
                401,
                "code-failed",
                "Name or code is wrong, or the code was tried too often; then its owner sets it again on his own device."
            );
        await store.Order(ask.Order, signer, null, stop);
        var token = BearerSignIn.NewToken();
        var session = new Session
        {
            TokenHash = BearerSignIn.Hash(token),
            PersonId = signer.Id,
            Since = at,
            Until = at + Session.SigningLength,
            Address = Limits.Address(http),
            OrderNumber = ask.Order,
            OnDeviceOf = by.Id,
        };
        store.Sessions.Add(session);
        await store.SaveChangesAsync(CancellationToken.None);
        return TypedResults.Ok(new SigningTokenView(token, session.Until, ask.Order, signer.Me()));
    }

    private static async Task MustBeRight(
        Passwords passwords,
        Person by,
        string field,
        string password,
        DateTimeOffset at
    )
    {
        if (!await passwords.IsRight(by, password, at))
            throw new MalformedAsk(field, $"{field} is not your password, or you are locked for a while.");
    }
}
