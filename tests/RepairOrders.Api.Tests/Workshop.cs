using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using RepairOrders.Api.Store;
using RepairOrders.Tests;

[assembly: AssemblyFixture(typeof(RepairOrders.Api.Tests.Workshop))]

namespace RepairOrders.Api.Tests;

/// <summary>The running API on a real PostgreSQL: one for the whole run. Each test works on a site of its own, so tests run side by side.</summary>
public sealed class Workshop : IAsyncLifetime
{
    private TestStore store = null!;
    private WebApplicationFactory<Program> api = null!;
    private static int sites;

    /// <summary>The connection string of the run's database.</summary>
    public string Address => store.Address;

    public IServiceProvider Services => api.Services;

    public async ValueTask InitializeAsync()
    {
        store = await TestStore.Start();
        // Before the host starts: it reads its data-protection keys at once.
        var options = new DbContextOptionsBuilder<RepairStore>();
        RepairOrdersApi.Configure(options, store.Address);
        await using (var empty = new RepairStore(options.Options))
        {
            await empty.Database.MigrateAsync();
            await Indexes.Create(empty);
        }
        api = new WebApplicationFactory<Program>().WithWebHostBuilder(host =>
            host.UseSetting("Run", "api")
                .UseSetting("ConnectionStrings:Store", store.Address)
                .UseSetting("Serilog:MinimumLevel:Default", "Error")
                .ConfigureTestServices(services =>
                    services.Replace(ServiceDescriptor.Singleton<TimeProvider>(new SceneTime()))
                )
        );
        // So that each call is answered in its scene's own time.
        api.Server.PreserveExecutionContext = true;
    }

    public async ValueTask DisposeAsync()
    {
        await api.DisposeAsync();
        await store.DisposeAsync();
    }

    /// <summary>A new site with the cast, its lines, and a clock of its own.</summary>
    internal async Task<Scene> Scene() => await Tests.Scene.Set(this, $"mill{Interlocked.Increment(ref sites)}");

    internal HttpClient Http(SceneClock clock) => api.CreateDefaultClient(new TellTime(clock));

    internal async Task InStore(Func<RepairStore, Task> work)
    {
        await using var scope = api.Services.CreateAsyncScope();
        await work(scope.ServiceProvider.GetRequiredService<RepairStore>());
    }

    private sealed class TellTime(SceneClock clock) : DelegatingHandler
    {
        protected override Task<HttpResponseMessage> SendAsync(
            HttpRequestMessage request,
            CancellationToken cancellationToken
        )
        {
            SceneTime.Clock.Value = clock;
            return base.SendAsync(request, cancellationToken);
        }
    }

    private sealed class SceneTime : TimeProvider
    {
        public static readonly AsyncLocal<SceneClock?> Clock = new();

        public override DateTimeOffset GetUtcNow() => Clock.Value?.Now ?? System.GetUtcNow();
    }
}

/// <summary>A scene's own time; it stands still until it is moved.</summary>
internal sealed class SceneClock(DateTimeOffset start)
{
    public DateTimeOffset Now { get; private set; } = start;

    public DateOnly Today => DateOnly.FromDateTime(Now.UtcDateTime);

    public void Pass(TimeSpan time) => Now += time;

    public void PassDays(double days) => Pass(TimeSpan.FromDays(days));
}
