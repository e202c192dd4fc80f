using Microsoft.Playwright;

namespace RepairOrders.Browser.Tests;

/// <summary>What a first visit costs on the wire, and that nothing of it comes from elsewhere.</summary>
public sealed class Weight(Service service)
{
    // What the build leaves is packed less tightly than what is published.
    private static readonly double MostBytes = Environment.GetEnvironmentVariable("REPAIRORDERS_APP") is null
        ? 300_000
        : 250_000;

    [Fact]
    public async Task A_first_page_comes_in_under_250_kB_and_all_of_it_from_the_host()
    {
        var page = await (await service.Chromium.NewContextAsync()).NewPageAsync();
        var wire = await Watch(page);
        await page.GotoAsync(new Uri(service.Both, "/sign-in").ToString());
        await page.WaitForLoadStateAsync(LoadState.NetworkIdle);
        wire.Bytes.ShouldBeInRange(10_000, MostBytes);

        // Today, with nothing kept from before.
        page = await service.SignIn(service.Both, "mara");
        var state = await page.Context.StorageStateAsync();
        var context = await service.Chromium.NewContextAsync(new() { StorageState = state });
        page = await context.NewPageAsync();
        wire = await Watch(page);
        await page.GotoAsync(service.Both.ToString());
        await page.Live();
        await page.Settled();
        await page.WaitForLoadStateAsync(LoadState.NetworkIdle);
        TestContext.Current.TestOutputHelper?.WriteLine($"Today: {wire.Bytes / 1000:0} kB in {wire.Requests} requests");
        wire.Bytes.ShouldBeInRange(10_000, MostBytes);
        wire.Away.ShouldBeEmpty();
    }

    private async Task<Wired> Watch(IPage page)
    {
        var wired = new Wired();
        var devtools = await page.Context.NewCDPSessionAsync(page);
        await devtools.SendAsync("Network.enable");
        devtools.Event("Network.loadingFinished").OnEvent += (_, told) =>
        {
            wired.Requests++;
            wired.Bytes += told!.Value.GetProperty("encodedDataLength").GetDouble();
        };
        page.Request += (_, request) =>
        {
            if (
                !request.Url.StartsWith(service.Both.ToString(), StringComparison.Ordinal)
                && !request.Url.StartsWith("data:", StringComparison.Ordinal)
            )
                wired.Away.Add(request.Url);
        };
        return wired;
    }

    private sealed class Wired
    {
        public double Bytes { get; set; }

        public int Requests { get; set; }

        public List<string> Away { get; } = [];
    }
}
