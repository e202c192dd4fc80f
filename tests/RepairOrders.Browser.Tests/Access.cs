using Microsoft.Playwright;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests;

/// <summary>Signing in and out, and that every page can be used by everybody.</summary>
public sealed class Access(Service service)
{
    [Fact]
    public async Task A_page_asks_for_sign_in_and_leads_back_to_where_one_wanted_to_go()
    {
        var page = await service.Browser();
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
        var ada = await service.Client("ada");
        const string word = "only for the first time";
        await ada.AddPerson(new("gunnar", new("Gunnar Lie", [Role.Reader], ["mill"], [])));
        await ada.SetOneTimePassword("gunnar", new(word));
        var page = await service.Browser();
        await service.SignInAs(page, service.Both, "gunnar", word);
        await Assertions.Expect(page.Locator("header")).ToContainTextAsync("Gunnar Lie");
        var gunnar = await ada.Person("gunnar");
        await ada.ChangePerson("gunnar", gunnar.Details with { Disabled = true }, gunnar.Version);
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
        await page.Open(path);
        await page.Settled();
        (await page.Axe()).ShouldBeEmpty();
    }
}
