using System.Collections.Concurrent;
using System.Reflection;
using Microsoft.Playwright;
using RepairOrders.Contract;
using Xunit.v3;

[assembly: AssemblyFixture(typeof(RepairOrders.Browser.Tests.Service))]
[assembly: RepairOrders.Browser.Tests.ClosesBrowsers]

namespace RepairOrders.Browser.Tests;

/// <summary>A mill for all tests, once as one process, once as API and screens apart, and a real Chromium.</summary>
public sealed class Service : IAsyncLifetime
{
    private static readonly ConcurrentDictionary<string, ConcurrentBag<IBrowserContext>> Open = [];
    private Mill mill = null!;
    private IPlaywright playwright = null!;

    /// <summary>API and screens in one process.</summary>
    public Uri Both { get; private set; } = null!;

    /// <summary>The screens alone, calling an API elsewhere.</summary>
    public Uri Split { get; private set; } = null!;

    public IBrowser Chromium { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        mill = await Mill.Build();
        Both = await mill.Both();
        Split = await mill.Screens(await mill.Api());
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
        await mill.DisposeAsync();
    }

    /// <summary>A browser context of one's own, nobody signed in.</summary>
    public async Task<IPage> Browser(int width = 1440, bool dark = false)
    {
        var context = await Chromium.NewContextAsync(
            new BrowserNewContextOptions
            {
                ViewportSize = new ViewportSize { Width = width, Height = width < 600 ? 844 : 900 },
                Locale = "en-GB",
                ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            }
        );
        Open.GetOrAdd(TestContext.Current.Test!.UniqueID, _ => []).Add(context);
        // A busy machine is slow, not wrong.
        context.SetDefaultTimeout(60_000);
        return await context.NewPageAsync();
    }

    /// <summary>Closes what a test has opened: a page left open asks its service again and again, even when that is gone.</summary>
    internal static void Close(string test)
    {
        if (Open.TryRemove(test, out var contexts))
            foreach (var context in contexts)
                _ = context.CloseAsync();
    }

    /// <summary>A person's own browser context, signed in.</summary>
    public async Task<IPage> SignIn(Uri at, string name, int width = 1440, bool dark = false)
    {
        var page = await Browser(width, dark);
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
    public Task<RepairOrdersClient> Client(string name) => mill.Client(Both, name);

    /// <summary>Runs a statement on the store, for what no person would do by hand.</summary>
    public Task Sql(string statement) => mill.Sql(statement);

    /// <summary>A process of one's own on the same store, and what kills it and starts it again at the same address.</summary>
    public Task<(Uri Address, Func<Task> Restart)> OwnProcess() => mill.OwnProcess();

    public string PasswordOf(string name) => mill.PasswordOf(name);
}

/// <summary>Closes the browsers of each test when it ends.</summary>
[AttributeUsage(AttributeTargets.Assembly)]
public sealed class ClosesBrowsersAttribute : BeforeAfterTestAttribute
{
    public override void After(MethodInfo methodUnderTest, IXunitTest test) => Service.Close(test.UniqueID);
}
