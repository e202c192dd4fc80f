using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Npgsql;
using RepairOrders.Contract;
using RepairOrders.Tests;

namespace RepairOrders.Browser.Tests;

/// <summary>The program a user meets, as its own processes on a store of its own with the mill's people and lines.</summary>
public sealed class Mill : IAsyncDisposable
{
    // All these people sign in from one address, within minutes.
    private const string Many = "Limits__SignInTriesPerMinute=1000";
    private readonly List<Process> processes = [];
    private readonly string signIns = Path.Combine(Path.GetTempPath(), $"repairorders-sign-ins-{Guid.NewGuid():N}");
    private readonly string[] settings;
    private readonly TestStore store;

    private Mill(TestStore store, string[] settings) => (this.store, this.settings) = (store, settings);

    /// <summary>Builds it; every process of it is given the settings.</summary>
    public static async Task<Mill> Build(params string[] settings)
    {
        var mill = new Mill(await TestStore.Start(), settings);
        await mill.Finish("migrate", []);
        await mill.Finish("demo", ["Demo__Stories=none", $"Demo__SignIns={mill.signIns}"]);
        return mill;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var process in processes)
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync();
            process.Dispose();
        }
        File.Delete(signIns);
        await store.DisposeAsync();
    }

    /// <summary>API and screens in one process.</summary>
    public Task<Uri> Both() => Start("both", [Store, Many]);

    /// <summary>The API alone.</summary>
    public Task<Uri> Api() => Start("api", [Store, Many]);

    /// <summary>The screens alone, calling an API elsewhere.</summary>
    public Task<Uri> Screens(Uri api) =>
        Start(
            "ui",
            [$"Api__Address={api}", $"Ui__Keys={Directory.CreateTempSubdirectory("repairorders-keys-").FullName}"]
        );

    /// <summary>A process of one's own, and what kills it and starts it again at the same address.</summary>
    public async Task<(Uri Address, Func<Task> Restart)> OwnProcess()
    {
        var address = FreeAddress();
        var process = await Start("both", [Store, Many], address);
        return (
            address,
            async () =>
            {
                process.Kill(entireProcessTree: true);
                await process.WaitForExitAsync();
                await Start("both", [Store, Many], address);
            }
        );
    }

    /// <summary>The product's own client, signed in.</summary>
    public async Task<RepairOrdersClient> Client(Uri at, string name)
    {
        var client = new RepairOrdersClient(new HttpClient { BaseAddress = at });
        await client.SignIn(new SignIn(name, PasswordOf(name)));
        return client;
    }

    public string PasswordOf(string name) =>
        File.ReadLines(signIns)
            .Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .First(w => w.Length > 1 && w[0] == name)[1];

    /// <summary>Runs a statement on the store, for what no person would do by hand.</summary>
    public async Task Sql(string statement)
    {
        await using var connection = new NpgsqlConnection(store.Address);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(statement, connection) { CommandTimeout = 300 };
        await command.ExecuteNonQueryAsync();
    }

    private string Store => $"ConnectionStrings__Store={store.Address}";

    private async Task Finish(string mode, string[] more)
    {
        using var process = Launch(mode, [Store, .. more]);
        var errors = await process.StandardOutput.ReadToEndAsync() + await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        if (process.ExitCode != 0)
            throw new InvalidOperationException(
                $"Run={mode} ended with {process.ExitCode}: {errors[^Math.Min(errors.Length, 3000)..]}"
            );
    }

    private async Task<Uri> Start(string mode, string[] more)
    {
        var address = FreeAddress();
        await Start(mode, more, address);
        return address;
    }

    private async Task<Process> Start(string mode, string[] more, Uri address)
    {
        var process = Launch(mode, [.. settings, .. more, $"ASPNETCORE_URLS={address}"]);
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        lock (processes)
            processes.Add(process);
        using var http = new HttpClient { BaseAddress = address };
        for (var i = 0; i < 900; i++)
        {
            try
            {
                using var answer = await http.GetAsync(
                    new Uri(mode == "ui" ? "/sign-in" : "/health/ready", UriKind.Relative)
                );
                if (answer.IsSuccessStatusCode)
                    return process;
            }
            catch (HttpRequestException)
            {
                // Not listening yet.
            }
            await Task.Delay(200);
        }
        throw new InvalidOperationException($"Run={mode} did not answer within three minutes.");
    }

    // The published program where the test run made one; else what the build left, which serves its assets as Development only.
    private static Process Launch(string mode, string[] settings)
    {
        var published = Environment.GetEnvironmentVariable("REPAIRORDERS_APP");
        var folder =
            published
            ?? AppContext.BaseDirectory.Replace(
                "tests/RepairOrders.Browser.Tests",
                "src/RepairOrders.Host",
                StringComparison.Ordinal
            );
        var start = new ProcessStartInfo("dotnet", "RepairOrders.Host.dll")
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["Run"] = mode;
        start.Environment["ASPNETCORE_ENVIRONMENT"] = published is null ? "Development" : "Production";
        foreach (var setting in settings)
            start.Environment[setting[..setting.IndexOf('=', StringComparison.Ordinal)]] = setting[
                (setting.IndexOf('=', StringComparison.Ordinal) + 1)..
            ];
        return Process.Start(start)!;
    }

    private static Uri FreeAddress()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return new($"http://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}");
    }
}
