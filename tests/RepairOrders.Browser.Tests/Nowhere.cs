using Microsoft.Playwright;

namespace RepairOrders.Browser.Tests;

/// <summary>Pages before one is signed in, and addresses that are none.</summary>
public sealed class Nowhere(Service service)
{
    [Fact]
    public async Task Axe_finds_nothing_before_one_is_signed_in()
    {
        var page = await service.Browser();
        foreach (var path in new[] { "/sign-in", "/first-administrator", "/first-administrator?token=abc" })
        {
            await page.GotoAsync(new Uri(service.Both, path).ToString());
            (await page.Axe()).ShouldBeEmpty();
        }
    }

    [Fact]
    public async Task An_address_that_is_none_says_so_and_leads_on()
    {
        var page = await service.SignIn(service.Both, "mara");
        var answer = await page.GotoAsync(new Uri(service.Both, "/there-is-no-such-page").ToString());
        answer!.Status.ShouldBe(404);
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("There is no such page");
        await page.Live();
        await page.ClickAsync("main >> text=register");
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("Register");
    }
}
