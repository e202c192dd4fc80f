using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests;

/// <summary>Signing in and out, and that every page can be used by everybody.</summary>
public sealed class Access(Service service)
{
    [Fact]
    public async Task A_page_asks_for_sign_in_and_leads_back_to_where_one_wanted_to_go()
    {
        var context = await service.Chromium.NewContextAsync();
        var page = await context.NewPageAsync();
        await page.GotoAsync(new Uri(service.Both, "/register").ToString());
        page.Url.ShouldContain("/sign-in?to=%2Fregister");
        await page.FillAsync("#name", "tove");
        await page.FillAsync("#password", "not the password");
        await page.ClickAsync("button[type=submit]");
        await Assertions.Expect(page.Locator(".sign-in [role=alert]")).ToContainTextAsync("Name or password is wrong");
    }

    [Fact]
    public async Task A_disabled_persons_open_page_ends_within_ten_seconds()
    {
        var page = await service.SignIn(service.Both, "rune");
        await Assertions.Expect(page.Locator("header")).ToContainTextAsync("Rune Falk");
        var ada = await service.Client("ada");
        var rune = await ada.Person("rune");
        await ada.ChangePerson("rune", rune.Details with { Disabled = true }, rune.Version);
        await page.WaitForURLAsync("**/sign-in**", new PageWaitForURLOptions { Timeout = 10_000 });
    }

    [Theory]
    [InlineData("/register", 1440, false)]
    [InlineData("/register", 390, true)]
    [InlineData("/raise", 1440, true)]
    [InlineData("/raise", 390, false)]
    public async Task Axe_finds_nothing(string path, int width, bool dark)
    {
        var page = await service.SignIn(service.Both, "mara", width, dark);
        await page.GotoAsync(new Uri(service.Both, path).ToString());
        // The interactive head takes over some milliseconds after the prerendered one.
        await Assertions.Expect(page).ToHaveTitleAsync(new System.Text.RegularExpressions.Regex("."));
        await page.WaitForTimeoutAsync(500);
        var found = await page.RunAxe();
        found.Violations.Select(v => $"{v.Id}: {string.Join(" | ", v.Nodes.Select(n => n.Html))}").ShouldBeEmpty();
    }

    [Fact]
    public async Task No_request_leaves_the_host()
    {
        var page = await service.SignIn(service.Both, "mara");
        var away = new List<string>();
        page.Request += (_, request) =>
        {
            if (
                !request.Url.StartsWith(service.Both.ToString(), StringComparison.Ordinal)
                && !request.Url.StartsWith("data:", StringComparison.Ordinal)
            )
                away.Add(request.Url);
        };
        await page.GotoAsync(new Uri(service.Both, "/raise").ToString());
        await page.WaitForLoadStateAsync(LoadState.NetworkIdle);
        away.ShouldBeEmpty();
    }
}
