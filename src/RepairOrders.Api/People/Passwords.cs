using Microsoft.AspNetCore.Identity;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;

namespace RepairOrders.Api.People;

/// <summary>
/// Passwords and short codes. A try is counted before it is judged, so that a hundred at once are no way round the lock; and a
/// name that does not exist costs as long as one that does.
/// </summary>
internal sealed class Passwords(RepairStore store, UserManager<Person> people)
{
    public const int Tries = 5;
    public static readonly TimeSpan Lock = TimeSpan.FromMinutes(10);
    public static readonly TimeSpan OneTimeLength = TimeSpan.FromDays(7);

    private static readonly string Nobody = new PasswordHasher<Person>().HashPassword(new Person(), "nobody");

    /// <summary>Whether this is his password and he may try.</summary>
    public async Task<bool> IsRight(Person? person, string password, DateTimeOffset at)
    {
        var mayTry = person is not null && await TakeTry(person, at);
        var hash = person?.PasswordHash ?? Nobody;
        var right = people.PasswordHasher.VerifyHashedPassword(person ?? new Person(), hash, password);
        if (!mayTry || right == PasswordVerificationResult.Failed || hash == Nobody)
            return false;
        await store
            .Users.Where(p => p.Id == person!.Id)
            .ExecuteUpdateAsync(
                p => p.SetProperty(x => x.AccessFailedCount, 0).SetProperty(x => x.LockoutEnd, (DateTimeOffset?)null),
                CancellationToken.None
            );
        return person!.OneTimePasswordUntil is null || person.OneTimePasswordUntil > at;
    }

    /// <summary>Whether this is his short code; after five wrong ones it is gone until he sets it again.</summary>
    public async Task<bool> IsRightCode(Person? person, string code)
    {
        var mayTry =
            person is not null
            && await store
                .Users.Where(p => p.Id == person.Id && p.ShortCodeHash != null && p.ShortCodeTries < Tries)
                .ExecuteUpdateAsync(
                    p => p.SetProperty(x => x.ShortCodeTries, x => x.ShortCodeTries + 1),
                    CancellationToken.None
                ) == 1;
        var hash = person?.ShortCodeHash ?? Nobody;
        var right = people.PasswordHasher.VerifyHashedPassword(person ?? new Person(), hash, code);
        if (!mayTry || right == PasswordVerificationResult.Failed)
            return false;
        await store
            .Users.Where(p => p.Id == person!.Id)
            .ExecuteUpdateAsync(p => p.SetProperty(x => x.ShortCodeTries, 0), CancellationToken.None);
        return true;
    }

    /// <summary>Sets a password; nothing is saved yet.</summary>
    /// <exception cref="MalformedAsk">It is too weak.</exception>
    public async Task Set(Person person, string password, DateTimeOffset? oneTimeUntil)
    {
        var problems = new List<string>();
        foreach (var rule in people.PasswordValidators)
            problems.AddRange((await rule.ValidateAsync(people, person, password)).Errors.Select(e => e.Description));
        if (password.Contains(person.UserName!, StringComparison.OrdinalIgnoreCase))
            problems.Add("Passwords must not contain the sign-in name.");
        if (problems.Count > 0)
            throw new MalformedAsk("password", string.Join(" ", problems));
        person.PasswordHash = people.PasswordHasher.HashPassword(person, password);
        person.SecurityStamp = Guid.NewGuid().ToString("N");
        person.OneTimePasswordUntil = oneTimeUntil;
        person.AccessFailedCount = 0;
        person.LockoutEnd = null;
    }

    /// <summary>Sets the short code; nothing is saved yet.</summary>
    /// <exception cref="MalformedAsk">It is one of those everybody would try first.</exception>
    public void SetCode(Person person, string code)
    {
        var steps = code.Zip(code.Skip(1), (a, b) => b - a).Distinct().ToList();
        if (steps is [0] or [1] or [-1])
            throw new MalformedAsk("code", "code must not be six equal digits or six in a row.");
        person.ShortCodeHash = people.PasswordHasher.HashPassword(person, code);
        person.ShortCodeTries = 0;
    }

    /// <summary>Ends every sign-in of a person but one.</summary>
    public Task EndSignIns(Guid person, DateTimeOffset at, Guid? but = null) =>
        store
            .Sessions.Where(s => s.PersonId == person && s.RevokedAt == null && s.Until > at && s.Id != but)
            .ExecuteUpdateAsync(s => s.SetProperty(x => x.RevokedAt, at), CancellationToken.None);

    private async Task<bool> TakeTry(Person person, DateTimeOffset at)
    {
        DateTimeOffset? until = at + Lock;
        return await store
                .Users.Where(p => p.Id == person.Id && (p.LockoutEnd == null || p.LockoutEnd <= at))
                .ExecuteUpdateAsync(
                    p =>
                        p.SetProperty(
                                x => x.LockoutEnd,
                                x => x.AccessFailedCount + 1 >= Tries ? until : (DateTimeOffset?)null
                            )
                            .SetProperty(
                                x => x.AccessFailedCount,
                                x => x.AccessFailedCount + 1 >= Tries ? 0 : x.AccessFailedCount + 1
                            ),
                    CancellationToken.None
                ) == 1;
    }
}
