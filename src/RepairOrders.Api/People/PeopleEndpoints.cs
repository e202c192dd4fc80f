using System.ComponentModel.DataAnnotations;
using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.People;

internal static class PeopleEndpoints
{
    public static void MapPeople(this IEndpointRouteBuilder api)
    {
        var people = api.MapGroup("/people");
        people.MapGet("/", Read).Needs(Permission.ReadPeople).WithSummary("People at your sites, a page at a time");
        people.MapPost("/", Add).Needs(Permission.KeepPeople).WithSummary("Add a person");
        people.MapGet("/{name}", One).Needs(Permission.KeepPeople).WithSummary("A person");
        people.MapPut("/{name}", Change).Needs(Permission.KeepPeople).WithSummary("Change what is kept of a person");
        people
            .MapPut("/{name}/password", SetOneTimePassword)
            .Needs(Permission.KeepPeople)
            .KeepsNoAnswer()
            .WithSummary("Set a one-time password; every sign-in of the person ends");
        people
            .MapGet("/{name}/sign-ins", SignIns)
            .Needs(Permission.KeepPeople)
            .WithSummary("A person's sign-ins of the last 30 days");
        people
            .MapDelete("/{name}/sign-ins", EndSignIns)
            .Needs(Permission.KeepPeople)
            .WithSummary("End every sign-in of a person");
        people
            .MapDelete("/{name}/short-code", ClearShortCode)
            .Needs(Permission.KeepPeople)
            .WithSummary("Clear a person's short code: he signs on nobody else's device until he sets it again");
        people.MapGet("/{name}/changes", Changes).Needs(Permission.KeepPeople).WithSummary("The changes of a person");
    }

    private static Task<PeopleView> Read(
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop,
        [MaxLength(100)] string? search = null,
        string? site = null,
        string? role = null,
        string? competence = null,
        bool disabled = false,
        string? after = null,
        [Range(1, Keys.MostRows)] int limit = 50
    )
    {
        var at = clock.Now();
        var on = DateOnly.FromDateTime(at.UtcDateTime);
        var of = Keys.Word<Role>("role", role);
        return PeopleQuery.Read(store, new(search, site, of, competence, disabled, on, after, limit), by, at, stop);
    }

    private static async Task<PersonView> One(
        string name,
        Person by,
        RepairStore store,
        TimeProvider clock,
        HttpResponse response,
        CancellationToken stop
    ) => await Answer(await store.PersonSeen(name, by, stop), store, clock.Now(), response, stop);

    private static async Task<Created<PersonView>> Add(
        AddPerson ask,
        Person by,
        RepairStore store,
        TimeProvider clock,
        HttpResponse response
    )
    {
        var at = clock.Now();
        MalformedAsk.If(PersonRules.Problems(ask.Details, by).Select(p => ($"details.{p.Field}", p.Sentence)));
        RepairOrder.Refuse(
            await store.PersonNamed(ask.Name) is null
                ? null
                : new Objection(
                    "name-taken",
                    $"The sign-in name {ask.Name} is taken. Choose another.",
                    "administrator, with another name"
                )
        );
        var person = new Person
        {
            UserName = ask.Name,
            NormalizedUserName = ask.Name.ToUpperInvariant(),
            SecurityStamp = Guid.NewGuid().ToString("N"),
        };
        person.Take(ask.Details);
        store.Users.Add(person);
        store.Changed(person, "person added", null, person.Details(), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        response.Headers.Location = $"/api/v1/people/{person.UserName}";
        return TypedResults.Created(
            $"/api/v1/people/{person.UserName}",
            await Answer(person, store, at, response, CancellationToken.None)
        );
    }

    private static async Task<PersonView> Change(
        string name,
        PersonDetails ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        Passwords passwords,
        TimeProvider clock,
        HttpResponse response
    )
    {
        var at = clock.Now();
        MalformedAsk.If(PersonRules.Problems(ask, by));
        var person = await store.PersonSeen(name, by);
        person.MustBe(seen);
        var others = await store
            .Users.Where(p => p.Id != person.Id && !p.Disabled && p.Roles.Contains(Role.Administrator))
            .Select(p => p.Sites)
            .ToListAsync(CancellationToken.None);
        RepairOrder.Refuse(PersonRules.Objection(person, ask, by, [.. others.SelectMany(s => s)]));
        var old = person.Details();
        person.Take(ask);
        store.Changed(person, What(old, ask), old, person.Details(), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        if (person.Disabled)
            await passwords.EndSignIns(person.Id, at);
        return await Answer(person, store, at, response, CancellationToken.None);
    }

    private static async Task<NoContent> SetOneTimePassword(
        string name,
        SetOneTimePassword ask,
        Person by,
        RepairStore store,
        Passwords passwords,
        TimeProvider clock
    )
    {
        var at = clock.Now();
        var person = await store.PersonSeen(name, by);
        RepairOrder.Refuse(PersonRules.Wider(person, by));
        await passwords.Set(person, ask.Password, at + Passwords.OneTimeLength);
        store.Changed(person, "one-time password set", null, null, by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        await passwords.EndSignIns(person.Id, at);
        return TypedResults.NoContent();
    }

    private static async Task<IReadOnlyList<SignInView>> SignIns(
        string name,
        Person by,
        Session session,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop
    )
    {
        var person = await store.PersonSeen(name, by, stop);
        return await store.SignInsOf(person.Id, session, clock.Now(), stop);
    }

    private static async Task<NoContent> EndSignIns(
        string name,
        Person by,
        RepairStore store,
        Passwords passwords,
        TimeProvider clock
    )
    {
        var at = clock.Now();
        var person = await store.PersonSeen(name, by);
        RepairOrder.Refuse(PersonRules.Wider(person, by));
        store.Changed(person, "sign-ins ended", null, null, by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        await passwords.EndSignIns(person.Id, at);
        return TypedResults.NoContent();
    }

    private static async Task<NoContent> ClearShortCode(string name, Person by, RepairStore store, TimeProvider clock)
    {
        var at = clock.Now();
        var person = await store.PersonSeen(name, by);
        RepairOrder.Refuse(PersonRules.Wider(person, by));
        person.ShortCodeHash = null;
        store.Changed(person, "short code cleared", null, null, by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        // What it opened ends with it.
        await store
            .Sessions.Where(s => s.PersonId == person.Id && s.OrderNumber != null && s.RevokedAt == null)
            .ExecuteUpdateAsync(s => s.SetProperty(x => x.RevokedAt, at), CancellationToken.None);
        return TypedResults.NoContent();
    }

    private static async Task<IReadOnlyList<ChangeView>> Changes(
        string name,
        Person by,
        RepairStore store,
        CancellationToken stop
    ) => await store.ChangesOf(await store.PersonSeen(name, by, stop), stop);

    private static string What(PersonDetails old, PersonDetails ask) =>
        (old.Disabled, ask.Disabled) switch
        {
            (false, true) => "person disabled",
            (true, false) => "person enabled",
            _ => "person changed",
        };

    private static async Task<PersonView> Answer(
        Person person,
        RepairStore store,
        DateTimeOffset at,
        HttpResponse response,
        CancellationToken stop
    )
    {
        response.Headers.ETag = $"\"{person.Revision.ToString(CultureInfo.InvariantCulture)}\"";
        var last = await store
            .Sessions.Where(s => s.PersonId == person.Id && s.OrderNumber == null)
            .MaxAsync(s => (DateTimeOffset?)s.Since, stop);
        return person.View(last, at);
    }
}
