using Microsoft.EntityFrameworkCore;
using RepairOrders.Api;
using RepairOrders.Api.People;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Store;
using RepairOrders.Contract;
using RepairOrders.Tests;

[assembly: AssemblyFixture(typeof(RepairOrders.House.Tests.RealStore))]

namespace RepairOrders.House.Tests;

/// <summary>A real store with its schema, one site, and two people who are signed in.</summary>
public sealed class RealStore : IAsyncLifetime
{
    private TestStore store = null!;

    public string Address => store.Address;
    public string Mara { get; } = BearerSignIn.NewToken();
    public string Ada { get; } = BearerSignIn.NewToken();

    public async ValueTask InitializeAsync()
    {
        store = await TestStore.Start();
        await MakeSchema(Address);
        await using var empty = Open();
        empty.Sites.Add(new Site { ShortName = "mill", Name = "Board mill" });
        Add(empty, "mara", Role.Supervisor, Mara);
        Add(empty, "ada", Role.Administrator, Ada);
        await empty.SaveChangesAsync();
    }

    internal static async Task MakeSchema(string address)
    {
        await using var empty = Open(address);
        if (empty.Database.GetMigrations().Any())
            await empty.Database.MigrateAsync();
        else
            await empty.Database.EnsureCreatedAsync();
    }

    internal RepairStore Open() => Open(Address);

    internal static RepairStore Open(string address)
    {
        var options = new DbContextOptionsBuilder<RepairStore>();
        RepairOrdersApi.Configure(options, address);
        return new RepairStore(options.Options);
    }

    public ValueTask DisposeAsync() => store.DisposeAsync();

    private static void Add(RepairStore store, string name, Role role, string token)
    {
        var person = new Person
        {
            UserName = name,
            NormalizedUserName = name.ToUpperInvariant(),
            FullName = name,
            Roles = [role],
            Sites = ["mill"],
            SecurityStamp = "house",
        };
        store.Users.Add(person);
        store.Sessions.Add(
            new Session
            {
                TokenHash = BearerSignIn.Hash(token),
                PersonId = person.Id,
                Since = DateTimeOffset.UtcNow,
                Until = DateTimeOffset.UtcNow.AddHours(1),
            }
        );
    }
}
