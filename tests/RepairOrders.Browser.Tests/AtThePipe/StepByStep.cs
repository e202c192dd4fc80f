using Microsoft.Playwright;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests.AtThePipe;

/// <summary>A fitter works from his phone: one step at a time, digits for gloves, the camera, the next signer.</summary>
public sealed class StepByStep(Service service)
{
    [Fact]
    public async Task The_tags_link_asks_for_sign_in_once_and_comes_back_to_the_step()
    {
        var number = await APipe.Ready(service);
        var context = await service.Chromium.NewContextAsync(
            new BrowserNewContextOptions
            {
                ViewportSize = new ViewportSize { Width = 390, Height = 844 },
            }
        );
        var page = await context.NewPageAsync();
        await page.GotoAsync(APipe.Address(service, number));
        page.Url.ShouldContain("/sign-in?to=%2Fpipe%2F");
        await page.FillAsync("#name", "tove");
        await page.FillAsync("#password", service.PasswordOf("tove"));
        await page.ClickAsync("button[type=submit]");
        await page.WaitForURLAsync($"**/pipe/{number}");
        await Assertions.Expect(page.Locator(".at")).ToContainTextAsync("Step 1 of 13");
        var cookie = (await context.CookiesAsync()).Single(c => c.Name == "RepairOrders");
        var hours = (DateTimeOffset.FromUnixTimeSeconds((long)cookie.Expires) - DateTimeOffset.UtcNow).TotalHours;
        // The browser moves the end by as much as the answer's own date lags behind, on a busy machine up to a minute.
        hours.ShouldBeInRange(11.5, 12.1, "once a shift");
    }

    [Fact]
    public async Task A_step_wants_its_photograph_then_its_readings_and_then_the_next_one_opens()
    {
        var number = await APipe.Ready(service);
        var page = await APipe.Phone(service, number);
        await Type(page, "#r-walls-0-wall", "6.1");
        await Type(page, "#r-walls-1-wall", "6.4");
        await page.SelectOptionAsync("[name=instrument]", "UT-0417");
        await page.Sign();
        await Assertions.Expect(page.Locator(".refused")).ToContainTextAsync("Take the photograph first");

        await page.SetInputFilesAsync("[data-camera]", APipe.Photograph);
        await Assertions.Expect(page.Locator(".pictures[data-photos='1'] img")).ToHaveCountAsync(1);
        // The page was read anew; what was typed is still there.
        await Assertions.Expect(page.Locator("#r-walls-0-wall")).ToHaveValueAsync("6.1");
        await page.Sign();
        await Assertions.Expect(page.Locator(".at")).ToContainTextAsync("Step 2 of 13");
        await Assertions.Expect(page.Locator(".steps li.done")).ToContainTextAsync("Tove Aune");

        var release = (await (await service.Client("mara")).Order(number)).Records.Single(r =>
            r.Kind == "hold-point-release"
        );
        release
            .Body.GetProperty("ask")
            .GetProperty("walls")[0]
            .GetProperty("wall")
            .GetProperty("entered")
            .GetString()
            .ShouldBe("6.1 mm");
        release.Body.GetProperty("photos").GetArrayLength().ShouldBe(1);
    }

    [Fact]
    public async Task A_reading_keeps_the_unit_it_was_read_in_and_a_broken_limit_shows_while_it_is_typed()
    {
        var number = await APipe.Ready(service);
        var page = await APipe.Phone(service, number);
        await Assertions.Expect(page.Locator("#r-walls-0-wall-limit")).ToContainTextAsync("mm or more");
        await page.SetInputFilesAsync("[data-camera]", APipe.Photograph);
        await Assertions.Expect(page.Locator(".pictures[data-photos='1'] img")).ToHaveCountAsync(1);
        await Type(page, "#r-walls-0-wall", "0.1");
        await Assertions.Expect(page.Locator(".reading.bad")).ToContainTextAsync("not as written");
        await page.ClickAsync("#pad [data-key=unit]");
        await Assertions.Expect(page.Locator(".reading.bad")).ToHaveCountAsync(1);
        await page.FillAsync("#r-walls-0-wall", "0.25");
        await Assertions.Expect(page.Locator(".reading.bad")).ToHaveCountAsync(0);
        await page.ClickAsync("#pad [data-key=next]");
        foreach (var key in "0.252")
            await page.ClickAsync($"#pad [data-key='{key}']");
        // The second spot is read in the field's own unit, and a quarter of a millimetre is no wall.
        await Assertions.Expect(page.Locator(".reading.bad")).ToHaveCountAsync(1);
        await page.ClickAsync("#pad [data-key=unit]");
        await Assertions.Expect(page.Locator(".reading.bad")).ToHaveCountAsync(0);
        await page.SelectOptionAsync("[name=instrument]", "UT-0417");
        await page.Sign();
        await Assertions.Expect(page.Locator(".at")).ToContainTextAsync("Step 2 of 13");
        var walls = (await (await service.Client("mara")).Order(number))
            .Records.Single(r => r.Kind == "hold-point-release")
            .Body.GetProperty("ask")
            .GetProperty("walls");
        walls[0].GetProperty("wall").GetProperty("entered").GetString().ShouldBe("0.25 in");
        walls[1].GetProperty("wall").GetProperty("value").GetDouble().ShouldBe(6.4008, 1e-6);
    }

    [Fact]
    public async Task Go_or_no_go_is_told_while_the_climate_is_typed()
    {
        var number = await APipe.ReadyFor(service, "climate");
        var page = await APipe.Phone(service, number);
        await page.Climate("2", "12", "76");
        await Assertions.Expect(page.Locator("#verdict")).ToContainTextAsync("no-go");
        await page.FillAsync("#r-steel", "20");
        await Assertions.Expect(page.Locator("#verdict.yes")).ToContainTextAsync("Dew point 7.9 °C");
        (await (await service.Client("mara")).Order(number)).Records.ShouldNotContain(r =>
            r.Kind == "climate-reading" && r.Summary.Contains("76 %")
        );
        await page.Sign();
        await Assertions
            .Expect(page.Locator("[aria-label='The climate as signed']"))
            .ToContainTextAsync("Dew point 7.9 °C");
    }

    [Fact]
    public async Task Another_fitter_signs_on_the_phone_with_his_own_digits_and_it_stays_toves()
    {
        await APipe.HasCode(service, "anton");
        var number = await APipe.ReadyFor(service, "diameter");
        var page = await APipe.Phone(service, number);
        await page.Diameters();
        await page.SelectOptionAsync("[data-signer]", "anton");
        await page.FillAsync("[data-code]", "000111");
        await page.Sign();
        await Assertions.Expect(page.Locator("#f-now .refused")).ToContainTextAsync("Name or code is wrong");
        await Assertions.Expect(page.Locator("#r-diameters-0-diameter")).ToHaveValueAsync("168.2");
        (await page.Locator("[data-code]").InputValueAsync()).ShouldBeEmpty("a code is not left behind");

        await page.SelectOptionAsync("[data-signer]", "anton");
        await page.FillAsync("[data-code]", APipe.Code);
        await page.Sign();
        await Assertions.Expect(page.Locator(".at")).ToContainTextAsync("Step 3 of 13");
        await Assertions.Expect(page.Locator(".last")).ToContainTextAsync("signed in as Tove Aune");
        var mara = await service.Client("mara");
        (await mara.Order(number)).Records.Last(r => r.Kind == "hold-point-release").By.ShouldBe("Anton Reyes");
        (await mara.Journal(number)).Lines[^1].Why.ShouldBe("by short code on the device of Tove Aune");
        (await page.EvaluateAsync<string>("() => JSON.stringify({ ...localStorage })")).ShouldNotContain(APipe.Code);
    }

    [Fact]
    public async Task Who_may_not_sign_is_told_why_and_sees_who_may()
    {
        await APipe.HasCode(service, "tove");
        var number = await APipe.ReadyFor(service, "diameter");
        var page = await service.SignIn(service.Both, "signe", 390);
        await page.GotoAsync(APipe.Address(service, number));
        await Assertions.Expect(page.Locator(".notice")).ToContainTextAsync("Your roles do not allow this");
        await Assertions
            .Expect(page.Locator("[data-signer] option[value=tove]:not([disabled])"))
            .ToContainTextAsync("Tove Aune");
    }

    // With the pad's own keys, as a thumb does.
    private static async Task Type(IPage page, string reading, string digits)
    {
        await page.ClickAsync(reading);
        foreach (var key in digits)
            await page.ClickAsync($"#pad [data-key='{key}']");
    }
}
