using Microsoft.Playwright;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests;

/// <summary>What was typed outlives a cut, a restart and a closed tab, and is another person's business on no shared browser.</summary>
public sealed class Keeping(Service service)
{
    private const string Place = "Boiler house, ladder 3";

    [Fact]
    public async Task A_cut_of_a_minute_is_said_and_what_was_typed_before_and_during_it_is_sent_after_it()
    {
        using var wire = new Wire(service.Both);
        var page = await service.SignIn(wire.Address, "tove");
        await page.Open("/raise");
        await page.FillAsync("#f-line", "CW-150-3104");
        await page.FillAsync("#f-place", Place);
        wire.Cut();
        await Assertions.Expect(page.GetByText("The connection is lost.")).ToBeVisibleAsync();
        await page.FillAsync("#f-fluid", "cooling water, brackish");
        await page.FillAsync("#f-seen", "a stain under the clip");
        await page.SelectOptionAsync("#f-foundHow", "round");
        await page.SelectOptionAsync("#f-leakState", "stain");
        await Task.Delay(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
        // Where a slow service gave the page up meanwhile it is opened anew, and offers what was typed.
        await page.AddLocatorHandlerAsync(page.GetByText("Put it back"), back => back.ClickAsync());
        wire.Mend();
        await Assertions.Expect(page.GetByText("The connection is lost.")).ToBeHiddenAsync(new() { Timeout = 60_000 });
        await page.FillAsync("#f-operatingPressure", "6");
        await page.FillAsync("#f-operatingTemperature", "18");
        await page.FillAsync("#f-whyNotPermanent", "the line runs until the January stop");
        await page.ClickAsync("text=Send the request");
        await page.WaitForURLAsync("**/orders/mill-*");
        await Assertions.Expect(page.Locator("section[aria-label='Title block']")).ToContainTextAsync(Place);
        (await page.Kept("raise")).ShouldBe("null", "what was sent is not offered again");
    }

    [Fact]
    public async Task What_was_typed_is_offered_again_after_the_service_was_restarted()
    {
        var (address, restart) = await service.OwnProcess();
        var page = await service.SignIn(address, "vera");
        await page.Open("/raise");
        await page.FillAsync("#f-place", Place);
        await page.FillAsync("#f-operatingPressure", "90 psi");
        (await page.Kept("raise")).ShouldContain("90 psi");
        await restart();
        await page.ClickAsync("text=Put it back", new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator("#f-place")).ToHaveValueAsync(Place);
        await Assertions.Expect(page.Locator("#f-operatingPressure")).ToHaveValueAsync("90 psi");
        await Assertions.Expect(page.Locator("text=Put it back")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task What_was_typed_is_offered_again_after_the_tab_was_closed()
    {
        var page = await service.SignIn(service.Both, "anton");
        await page.Open("/raise");
        await page.FillAsync("#f-place", Place);
        // The tab goes in the same breath: nothing waits for the service to hear of it.
        var again = await page.Context.NewPageAsync();
        await page.CloseAsync();
        await again.GotoAsync(new Uri(service.Both, "/raise").ToString());
        await again.ClickAsync("text=Put it back");
        await Assertions.Expect(again.Locator("#f-place")).ToHaveValueAsync(Place);
    }

    [Fact]
    public async Task Somebody_else_at_the_same_browser_is_not_offered_it()
    {
        var page = await service.SignIn(service.Both, "anton");
        await page.Open("/raise");
        await page.FillAsync("#f-place", Place);
        await page.ClickAsync("text=sign out");
        await service.SignInAs(page, service.Both, "tove");
        await page.Open("/raise");
        await Assertions.Expect(page.Locator("#f-place")).ToHaveValueAsync("");
        (await page.Kept("raise")).ShouldBe("null");
        await Assertions.Expect(page.Locator("text=Put it back")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Rows_taken_out_stay_out_when_it_is_put_back()
    {
        var page = await service.SignIn(service.Both, "ines");
        var number = await AnOrder.Requested(service);
        await page.Open($"/orders/{number}");
        var wall = page.Locator("td[data-path$='.wall'] input");
        await Assertions.Expect(wall).ToHaveCountAsync(2);
        await wall.Nth(0).FillAsync("6.4");
        await wall.Nth(1).FillAsync("6.5");
        await page.ClickAsync("text=Add a row");
        await Assertions.Expect(wall).ToHaveCountAsync(3);
        await wall.Nth(2).FillAsync("6.6");
        await page.ClickAsync("[aria-label='Remove row 2']");
        await Assertions.Expect(wall).ToHaveCountAsync(2);
        await page.ReloadAsync();
        await page.ClickAsync("text=Put it back");
        await Assertions.Expect(wall).ToHaveCountAsync(2);
        await Assertions.Expect(wall.Nth(0)).ToHaveValueAsync("6.4");
        await Assertions.Expect(wall.Nth(1)).ToHaveValueAsync("6.6");
    }
}
