using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Wire;

/// <summary>A database of a test's own, on the server of the run: for what concerns a whole store. Its API keeps real time.</summary>
internal sealed class OwnStore : IAsyncDisposable
{
    private readonly string server;
    private readonly string database = $"t_own_{Guid.NewGuid():N}";
    private readonly List<IAsyncDisposable> hosts = [];

    private OwnStore(string server) => this.server = server;

    public string Address =>
        new NpgsqlConnectionStringBuilder(server) { Database = database, MaxPoolSize = 20 }.ConnectionString;

    public static async Task<OwnStore> Make(Workshop workshop)
    {
        var store = new OwnStore(workshop.Address);
        await Run(workshop.Address, $"CREATE DATABASE {store.database}");
        await using var empty = store.Open();
        await empty.Database.EnsureCreatedAsync();
        return store;
    }

    /// <summary>The store itself, as the owner of its tables.</summary>
    public RepairStore Open() => Open(Address);

    public static RepairStore Open(string address)
    {
        var options = new DbContextOptionsBuilder<RepairStore>();
        RepairOrdersApi.Configure(options, address);
        return new RepairStore(options.Options);
    }

    /// <summary>An API on this store, or on another address.</summary>
    public WebApplicationFactory<Program> Api(string? address = null, Action<IServiceCollection>? with = null)
    {
        var api = Host(address ?? Address, with);
        hosts.Add(api);
        return api;
    }

    public static WebApplicationFactory<Program> Host(string address, Action<IServiceCollection>? with = null) =>
        new WebApplicationFactory<Program>().WithWebHostBuilder(host =>
            host.UseSetting("Run", "api")
                .UseSetting("ConnectionStrings:Store", address)
                .UseSetting("Serilog:MinimumLevel:Default", "Fatal")
                .ConfigureTestServices(services => with?.Invoke(services))
        );

    public RepairOrdersClient Client(string? token = null) => new(Api().CreateClient()) { Token = token };

    public static async Task Run(string address, string sql)
    {
        await using var connection = new NpgsqlConnection(address);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync();
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var host in hosts)
            await host.DisposeAsync();
        await using (var connection = new NpgsqlConnection(Address))
            NpgsqlConnection.ClearPool(connection);
        await Run(server, $"DROP DATABASE IF EXISTS {database} WITH (FORCE)");
    }
}
