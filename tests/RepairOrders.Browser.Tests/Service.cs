using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Microsoft.Playwright;
using Npgsql;
using RepairOrders.Contract;
using RepairOrders.Tests;

[assembly: AssemblyFixture(typeof(RepairOrders.Browser.Tests.Service))]

namespace RepairOrders.Browser.Tests;

/// <summary>
/// The program a user meets, as its own processes on a real store with the mill's people and lines, and a real Chromium: once as
/// one process, once as API and screens apart.
/// </summary>
public sealed class Service : IAsyncLifetime
{
    // All these people sign in from one address, within minutes.
    private const string Many = "Limits__SignInTriesPerMinute=1000";
    private readonly List<Process> processes = [];
    private readonly string signIns = Path.Combine(Path.GetTempPath(), $"repairorders-sign-ins-{Guid.NewGuid():N}");
    private TestStore store = null!;
    private IPlaywright playwright = null!;

    /// <summary>API and screens in one process.</summary>
    public Uri Both { get; private set; } = null!;

    /// <summary>The screens alone, calling an API elsewhere.</summary>
    public Uri Split { get; private set; } = null!;

    public IBrowser Chromium { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        store = await TestStore.Start();
        await Finish("migrate", []);
        await Finish("demo", ["Demo__Stories=none", $"Demo__SignIns={signIns}"]);
        Both = await Start("both", [Store, Many]);
        var api = await Start("api", [Store, Many]);
        var keys = Directory.CreateTempSubdirectory("repairorders-keys-").FullName;
        Split = await Start("ui", [$"Api__Address={api}", $"Ui__Keys={keys}"]);
        // A busy machine is slow, not wrong.
        Assertions.SetDefaultExpectTimeout(30_000);
        playwright = await Playwright.CreateAsync();
        Chromium = await playwright.Chromium.LaunchAsync(
            new BrowserTypeLaunchOptions
            {
                ExecutablePath = "/usr/bin/chromium",
                Args =
                [
                    "--no-sandbox",
                    "--disable-gpu",
                    "--disable-quic",
                    "--no-first-run",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--disable-sync",
                ],
            }
        );
    }

    public async ValueTask DisposeAsync()
    {
        if (Chromium is not null)
            await Chromium.DisposeAsync();
        playwright?.Dispose();
        foreach (var process in processes)
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync();
            process.Dispose();
        }
        File.Delete(signIns);
        await store.DisposeAsync();
    }

    /// <summary>A person's own browser context, signed in.</summary>
    public async Task<IPage> SignIn(Uri at, string name, int width = 1440, bool dark = false)
    {
        var context = await Chromium.NewContextAsync(
            new BrowserNewContextOptions
            {
                ViewportSize = new ViewportSize { Width = width, Height = width < 600 ? 844 : 900 },
                Locale = "en-GB",
                ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            }
        );
        // A busy machine is slow, not wrong.
        context.SetDefaultTimeout(60_000);
        var page = await context.NewPageAsync();
        await SignInAs(page, at, name);
        return page;
    }

    /// <summary>Signs somebody in at an open browser.</summary>
    public async Task SignInAs(IPage page, Uri at, string name, string? password = null)
    {
        await page.GotoAsync(new Uri(at, "/sign-in?to=/me").ToString());
        await page.FillAsync("#name", name);
        await page.FillAsync("#password", password ?? PasswordOf(name));
        await page.ClickAsync("button[type=submit]");
        await page.Live();
    }

    /// <summary>The product's own client, signed in.</summary>
    public async Task<RepairOrdersClient> Client(string name)
    {
        var client = new RepairOrdersClient(new HttpClient { BaseAddress = Both });
        await client.SignIn(new SignIn(name, PasswordOf(name)));
        return client;
    }

    /// <summary>Runs a statement on the store, for what no person would do by hand.</summary>
    public async Task Sql(string statement)
    {
        await using var connection = new NpgsqlConnection(store.Address);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(statement, connection) { CommandTimeout = 300 };
        await command.ExecuteNonQueryAsync();
    }

    public string PasswordOf(string name) =>
        File.ReadLines(signIns)
            .Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .First(w => w.Length > 1 && w[0] == name)[1];

    private string Store => $"ConnectionStrings__Store={store.Address}";

    private async Task Finish(string mode, string[] settings)
    {
        using var process = Launch(mode, [Store, .. settings]);
        var errors = await process.StandardOutput.ReadToEndAsync() + await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        if (process.ExitCode != 0)
            throw new InvalidOperationException(
                $"Run={mode} ended with {process.ExitCode}: {errors[^Math.Min(errors.Length, 3000)..]}"
            );
    }

    /// <summary>A process of one's own on the same store, and what kills it and starts it again at the same address.</summary>
    public async Task<(Uri Address, Func<Task> Restart)> OwnProcess()
    {
        string[] settings = [Store, Many];
        var address = FreeAddress();
        var process = await Start("both", settings, address);
        return (
            address,
            async () =>
            {
                process.Kill(entireProcessTree: true);
                await process.WaitForExitAsync();
                await Start("both", settings, address);
            }
        );
    }

    private async Task<Uri> Start(string mode, string[] settings)
    {
        var address = FreeAddress();
        await Start(mode, settings, address);
        return address;
    }

    private async Task<Process> Start(string mode, string[] settings, Uri address)
    {
        var process = Launch(mode, [.. settings, $"ASPNETCORE_URLS={address}"]);
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
