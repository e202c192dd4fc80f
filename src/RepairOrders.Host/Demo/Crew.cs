using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

/// <summary>One of the cast.</summary>
internal sealed record Member(string Name, string FullName, Role[] Roles, string[] Competences, string Does);

/// <summary>The cast of the board mill, signed in as the day needs it. The same names as in the tests.</summary>
internal sealed class Crew(Uri api, Walk walk)
{
    private readonly Dictionary<string, (RepairOrdersClient Client, DateTimeOffset Until)> signedIn = [];
    private readonly Dictionary<string, Guid> ids = [];

    public static readonly string[] Methods =
    [
        "banded-patch",
        "laminate-wrap",
        "bolted-clamp",
        "welded-patch",
        "welded-sleeve",
        "plug",
        "section-replacement",
    ];

    public static readonly Member[] Members =
    [
        new("mara", "Mara Lindqvist", [Role.Supervisor], [], "supervisor on days"),
        new(
            "olaf",
            "Olaf Brekke",
            [Role.Supervisor],
            [Competences.OperationsInCharge],
            "shift supervisor, operations in charge"
        ),
        new(
            "greta",
            "Greta Moen",
            [Role.Supervisor],
            [Competences.OperationsInCharge],
            "shift supervisor, other shift"
        ),
        new("tove", "Tove Aune", [Role.Technician], Methods, "technician"),
        new("anton", "Anton Reyes", [Role.Technician], Methods, "technician"),
        new("vera", "Vera Sand", [Role.Technician], [.. Methods, Competences.Inspector], "technician and inspector"),
        new("nils", "Nils Berg", [Role.Technician], Methods, "technician, left the mill"),
        new("signe", "Signe Dahl", [Role.Storekeeper], [], "storekeeper"),
        new("ines", "Ines Duarte", [Role.IntegrityEngineer], [], "integrity engineer"),
        new(
            "pavel",
            "Pavel Horak",
            [Role.IntegrityEngineer],
            [Competences.Inspector],
            "second integrity engineer, inspector"
        ),
        new("henrik", "Henrik Vold", [Role.Manager], [], "manager"),
        new("ada", "Ada Mensah", [Role.Administrator], [], "administrator"),
        new("rune", "Rune Falk", [Role.Reader], [], "reader for the insurer"),
    ];

    /// <summary>Passwords made at this loading; nobody else knows them.</summary>
    public Dictionary<string, string> Passwords { get; } =
        Members.ToDictionary(
            m => m.Name,
            _ => Convert.ToHexStringLower(System.Security.Cryptography.RandomNumberGenerator.GetBytes(8))
        );

    /// <summary>The product's own client, signed in as one of the cast.</summary>
    public async Task<RepairOrdersClient> As(string name)
    {
        if (signedIn.TryGetValue(name, out var known) && known.Until > walk.GetUtcNow().AddMinutes(5))
            return known.Client;
        var client = Client();
        var session = await client.SignIn(new SignIn(name, Passwords[name]));
        signedIn[name] = (client, session.Until);
        return client;
    }

    /// <summary>Keeps the sign-in somebody has made already.</summary>
    public void Keep(string name, RepairOrdersClient client, DateTimeOffset until) => signedIn[name] = (client, until);

    /// <summary>Who can no longer sign in need not sign out.</summary>
    public void Forget(string name) => signedIn.Remove(name);

    /// <summary>Nobody stays signed in when the loading is over.</summary>
    public async Task SignOut()
    {
        foreach (var (client, _) in signedIn.Values)
            await client.SignOut();
        signedIn.Clear();
    }

    /// <summary>The key of one of the cast, as the people's page gives it.</summary>
    public async Task<Guid> IdOf(string name)
    {
        if (ids.Count == 0)
            foreach (var row in (await (await As("ada")).People(limit: 100)).Rows)
                ids[row.Name] = row.Id;
        return ids[name];
    }

    public RepairOrdersClient Client() => new(new HttpClient { BaseAddress = api });

    public static string FullNameOf(string name) => Members.Single(m => m.Name == name).FullName;
}
