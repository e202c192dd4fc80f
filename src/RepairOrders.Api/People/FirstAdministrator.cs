using Microsoft.AspNetCore.Http.HttpResults;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.People;

/// <summary>The one-time leave to make the first administrator of an empty store; there is one at most.</summary>
internal sealed class FirstAdministrator
{
    public static readonly TimeSpan Length = TimeSpan.FromHours(24);

    public int Id { get; init; } = 1;
    public string TokenHash { get; set; } = "";
    public DateTimeOffset Until { get; set; }
    public DateTimeOffset? UsedAt { get; set; }

    /// <summary>A new token for an empty store; nothing when there are people already.</summary>
    public static async Task<string?> Offer(RepairStore store, DateTimeOffset at)
    {
        if (await store.Users.AnyAsync())
            return null;
        var token = BearerSignIn.NewToken();
        var offer = await store.FirstAdministrators.SingleOrDefaultAsync();
        if (offer is null)
            store.FirstAdministrators.Add(offer = new FirstAdministrator());
        (offer.TokenHash, offer.Until, offer.UsedAt) = (BearerSignIn.Hash(token), at + Length, null);
        await store.SaveChangesAsync();
        return token;
    }

    public static void Map(IEndpointRouteBuilder api) =>
        api.MapPost("/first-administrator", Make)
            .AllowAnonymous()
            .RequireRateLimiting(Limits.SignIn)
            .WithSummary("Make the first administrator of an empty store");

    private static async Task<Ok<MeView>> Make(
        MakeFirstAdministrator ask,
        RepairStore store,
        Passwords passwords,
        TimeProvider clock
    )
    {
        var at = clock.Now();
        var hash = BearerSignIn.Hash(ask.Token);
        await using var transaction = await store.Database.BeginTransactionAsync(CancellationToken.None);
        var used = await store
            .FirstAdministrators.Where(o => o.TokenHash == hash && o.UsedAt == null && o.Until > at)
            .ExecuteUpdateAsync(o => o.SetProperty(x => x.UsedAt, at), CancellationToken.None);
        if (used != 1 || await store.Users.AnyAsync(CancellationToken.None))
            throw new RequestRefusal(
                401,
                "token-failed",
                "The link is wrong, used or older than a day, or there are people in the store already. Start the host as first-administrator for a new one."
            );
        var person = new Person
        {
            UserName = ask.Name,
            NormalizedUserName = ask.Name.ToUpperInvariant(),
            FullName = ask.FullName.Trim(),
            Roles = [Role.Administrator],
        };
        await passwords.Set(person, ask.Password, null);
        store.Users.Add(person);
        store.Changed(person, "first administrator made", null, person.Details(), person, at);
        await store.SaveChangesAsync(CancellationToken.None);
        await transaction.CommitAsync(CancellationToken.None);
        return TypedResults.Ok(person.Me());
    }
}
