using RepairOrders.Api.Lines;
using RepairOrders.Api.People;
using RepairOrders.Api.Sites;
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
        string[] methods = [.. Cast.Methods];
        await workshop.InStore(async store =>
        {
            store.Sites.Add(site);
            store.Lines.AddRange(Cast.Lines(site.Id));
            foreach (var member in Cast.People)
            {
                var person = new Person
                {
                    UserName = $"{member.Name}.{shortName}",
                    NormalizedUserName = $"{member.Name}.{shortName}".ToUpperInvariant(),
                    FullName = member.FullName,
                    Roles = [.. member.Roles],
                    Sites = [shortName],
                    Competences = [.. member.Competences.Select(c => new Competence(c, new DateOnly(2029, 12, 31)))],
                    SecurityStamp = "scene",
                };
                var token = BearerSignIn.NewToken();
                store.Users.Add(person);
                store.Sessions.Add(
                    new Session
                    {
                        TokenHash = BearerSignIn.Hash(token),
                        PersonId = person.Id,
                        Since = scene.Clock.Now,
                        // A scene may last for years; the length of a real session is tested by itself.
                        Until = scene.Clock.Now.AddYears(10),
                    }
                );
                scene.people[member.Name] = (
                    person,
                    new RepairOrdersClient(workshop.Http(scene.Clock)) { Token = token }
                );
            }
            await store.SaveChangesAsync();
        });
        return scene;
    }
}
