using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.People;

/// <summary>What is read of people. A person is seen by those who share a site with him; one without any site by all.</summary>
internal static class PeopleQuery
{
    public static IQueryable<Person> Seen(this IQueryable<Person> people, Person by) =>
        people.Where(p => p.Sites.Count == 0 || p.Sites.Any(s => by.Sites.Contains(s)));

    public static Task<Person?> PersonNamed(this RepairStore store, string name, CancellationToken stop = default)
    {
        var normal = name.ToUpperInvariant();
        return store.Users.AsNoTracking().SingleOrDefaultAsync(p => p.NormalizedUserName == normal, stop);
    }

    /// <summary>The person to be changed, if the caller may see him.</summary>
    /// <exception cref="NotHere">There is none that he may see.</exception>
    public static async Task<Person> PersonSeen(
        this RepairStore store,
        string name,
        Person by,
        CancellationToken stop = default
    )
    {
        var normal = name.ToUpperInvariant();
        return await store.Users.Seen(by).SingleOrDefaultAsync(p => p.NormalizedUserName == normal, stop)
            ?? throw new NotHere($"There is no person {name} that you may see.");
    }

    public static async Task<IReadOnlyList<SignInView>> SignInsOf(
        this RepairStore store,
        Guid person,
        Session? current,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        var from = at - TimeSpan.FromDays(30);
        var sessions = await store
            .Sessions.AsNoTracking()
            .Where(s => s.PersonId == person && s.Since >= from)
            .OrderByDescending(s => s.Since)
            .ThenByDescending(s => s.Id)
            .Take(200)
            .ToListAsync(stop);
        return [.. sessions.Select(s => s.View(current))];
    }

    public static async Task<PeopleView> Read(
        RepairStore store,
        PeopleFilter filter,
        Person by,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        var people = Narrowed(store.Users.AsNoTracking().Seen(by), filter);
        if (Keys.Read(filter.After) is { } after)
        {
            var last = await store.Users.Where(p => p.Id == after).Select(p => p.FullName).SingleOrDefaultAsync(stop);
            people = people.Where(p =>
                p.FullName.CompareTo(last) > 0 || (p.FullName == last && p.Id.CompareTo(after) > 0)
            );
        }
        var rows = await people.OrderBy(p => p.FullName).ThenBy(p => p.Id).Take(filter.Limit + 1).ToListAsync(stop);
        return new PeopleView(
            [.. rows.Take(filter.Limit).Select(p => Row(p, by))],
            rows.Count > filter.Limit ? rows[filter.Limit - 1].Id.ToString() : null
        );
    }

    private static IQueryable<Person> Narrowed(IQueryable<Person> people, PeopleFilter filter)
    {
        if (!filter.Disabled)
            people = people.Where(p => !p.Disabled);
        if (filter.Search is { Length: > 0 } search)
        {
            var like = Keys.Like(search);
            people = people.Where(p => EF.Functions.ILike(p.FullName, like) || EF.Functions.ILike(p.UserName!, like));
        }
        if (filter.Site is { } site)
            people = people.Where(p => p.Sites.Contains(site));
        if (filter.Role is { } role)
            people = people.Where(p => p.Roles.Contains(role));
        if (filter.Competence is { } kind)
            people = people.Where(p => p.Competences.Any(c => c.Kind == kind && c.ValidUntil >= filter.On));
        return people;
    }

    private static PersonRow Row(Person person, Person by) =>
        new(
            person.Id,
            person.UserName!,
            person.FullName,
            person.Roles,
            [.. person.Sites.Where(by.MaySee)],
            [.. person.Competences.Select(c => new HeldCompetence(c.Kind, c.ValidUntil))],
            person.Outside(),
            person.Disabled
        );
}

internal sealed record PeopleFilter(
    string? Search,
    string? Site,
    Role? Role,
    string? Competence,
    bool Disabled,
    DateOnly On,
    string? After,
    int Limit
);
