using Microsoft.EntityFrameworkCore;
using RepairOrders.Api.Instruments;
using RepairOrders.Api.Lines;
using RepairOrders.Api.People;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests;

/// <summary>
/// A site, the cast and a clock: what every test over HTTP starts from. The people are the same in all tests, in the demo and in
/// the screenshots. <c>scene.Mara</c> is the product's own client, signed in as Mara.
/// </summary>
internal sealed class Scene
{
    private readonly Dictionary<string, (Person Person, RepairOrdersClient Client)> people = [];
    private Workshop workshop = null!;
    private int lots;

    public string Site { get; private init; } = "";
    public Guid SiteId { get; private init; }
    public SceneClock Clock { get; } = new(new DateTimeOffset(2026, 3, 2, 6, 30, 0, TimeSpan.Zero));
    public Workshop Workshop => workshop;

    /// <summary>Supervisor on days.</summary>
    public RepairOrdersClient Mara => people["mara"].Client;

    /// <summary>Second supervisor, and operations in charge at night.</summary>
    public RepairOrdersClient Olaf => people["olaf"].Client;

    /// <summary>Technician, competent in every method.</summary>
    public RepairOrdersClient Tove => people["tove"].Client;

    /// <summary>Second technician, competent in every method.</summary>
    public RepairOrdersClient Anton => people["anton"].Client;

    /// <summary>Storekeeper.</summary>
    public RepairOrdersClient Signe => people["signe"].Client;

    /// <summary>Integrity engineer, who assesses and sizes.</summary>
    public RepairOrdersClient Ines => people["ines"].Client;

    /// <summary>Second integrity engineer; an inspector too.</summary>
    public RepairOrdersClient Pavel => people["pavel"].Client;

    /// <summary>Manager.</summary>
    public RepairOrdersClient Henrik => people["henrik"].Client;

    /// <summary>Administrator.</summary>
    public RepairOrdersClient Ada => people["ada"].Client;

    /// <summary>Reader.</summary>
    public RepairOrdersClient Rune => people["rune"].Client;

    /// <summary>A technician who is an inspector.</summary>
    public RepairOrdersClient Vera => people["vera"].Client;

    /// <summary>Nobody: no token.</summary>
    public RepairOrdersClient Stranger => new(workshop.Http(Clock));

    /// <summary>Batches are numbered per scene, so that a printed one reads the same in every run.</summary>
    public int NextLot() => Interlocked.Increment(ref lots);

    public RepairOrdersClient As(string name) => people[name].Client;

    public Person Person(string name) => people[name].Person;

    public Guid IdOf(string name) => people[name].Person.Id;

    public static async Task<Scene> Set(Workshop workshop, string shortName)
    {
        var site = new Site
        {
            ShortName = shortName,
            Name = "Board mill",
            TimeZone = "Europe/Oslo",
        };
        var scene = new Scene
        {
            Site = shortName,
            SiteId = site.Id,
            workshop = workshop,
        };
        await workshop.InStore(async store =>
        {
            store.Sites.Add(site);
            store.Lines.AddRange(Cast.Lines(site.Id));
            store.Set<Instrument>().AddRange(Cast.Instruments(site.Id));
            foreach (var member in Cast.People)
                scene.Add(store, member, null, null);
            await store.SaveChangesAsync();
        });
        return scene;
    }

    /// <summary>Takes somebody on; an outside signer has a scope and a last day.</summary>
    public async Task<RepairOrdersClient> Hire(Cast.Member member, string? scope = null, DateOnly? until = null)
    {
        await workshop.InStore(store =>
        {
            Add(store, member, scope, until);
            return store.SaveChangesAsync();
        });
        return As(member.Name);
    }

    /// <summary>Somebody leaves; what he signed stays.</summary>
    public Task Leaves(string name) =>
        workshop.InStore(store =>
            store.Users.Where(p => p.Id == IdOf(name)).ExecuteUpdateAsync(p => p.SetProperty(x => x.Disabled, true))
        );

    /// <summary>The line list is corrected.</summary>
    public Task Line(string number, Action<Line> change) =>
        workshop.InStore(async store =>
        {
            change(await store.Lines.SingleAsync(l => l.SiteId == SiteId && l.Number == number));
            await store.SaveChangesAsync();
        });

    private void Add(RepairStore store, Cast.Member member, string? scope, DateOnly? until)
    {
        var person = new Person
        {
            UserName = $"{member.Name}.{Site}",
            NormalizedUserName = $"{member.Name}.{Site}".ToUpperInvariant(),
            FullName = member.FullName,
            Roles = [.. member.Roles],
            Sites = [Site],
            Competences = [.. member.Competences.Select(c => new Competence(c, new DateOnly(2029, 12, 31)))],
            OutsideScope = scope,
            AuthorityUntil = until,
            SecurityStamp = "scene",
        };
        var token = BearerSignIn.NewToken();
        store.Users.Add(person);
        store.Sessions.Add(
            new Session
            {
                TokenHash = BearerSignIn.Hash(token),
                PersonId = person.Id,
                Since = Clock.Now,
                // A scene may last for years; the length of a real session is tested by itself.
                Until = Clock.Now.AddYears(10),
            }
        );
        people[member.Name] = (person, new RepairOrdersClient(workshop.Http(Clock)) { Token = token });
    }
}
