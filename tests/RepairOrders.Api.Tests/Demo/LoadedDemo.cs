using System.Diagnostics;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Logging;
using RepairOrders.Api.Tests.Wire;
using RepairOrders.Contract;
using RepairOrders.Host.Demo;

namespace RepairOrders.Api.Tests.Demo;

/// <summary>The demo, loaded once into a store of its own the way a first start loads it.</summary>
public sealed class LoadedDemo(Workshop workshop) : IAsyncLifetime
{
    internal OwnStore Store { get; private set; } = null!;

    /// <summary>The reader, on an API that keeps real time.</summary>
    internal RepairOrdersClient Rune { get; private set; } = null!;

    internal TimeSpan Took { get; private set; }

    public async ValueTask InitializeAsync()
    {
        Store = await OwnStore.Make(workshop);
        var signIns = Path.GetTempFileName();
        var watch = Stopwatch.StartNew();
        var builder = WebApplication.CreateBuilder([
            $"--ConnectionStrings:Store={Store.Address}",
            $"--Demo:SignIns={signIns}",
        ]);
        builder.Logging.ClearProviders();
        builder.AddRepairOrdersApi();
        await DemoMode.Run(builder);
        Took = watch.Elapsed;
        var word = (await File.ReadAllLinesAsync(signIns))
            .Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Single(l => l[0] == "rune")[1];
        File.Delete(signIns);
        Rune = Store.Client();
        await Rune.SignIn(new SignIn("rune", word));
    }

    public ValueTask DisposeAsync() => Store.DisposeAsync();
}
