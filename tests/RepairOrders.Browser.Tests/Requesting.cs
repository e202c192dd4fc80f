using Microsoft.Playwright;

namespace RepairOrders.Browser.Tests;

/// <summary>A technician raises a request at the pipe, on a phone and at a desk, in one process and in two.</summary>
public sealed class Requesting(Service service)
{
    [Theory]
    [InlineData(true, 1440)]
    [InlineData(true, 390)]
    [InlineData(false, 390)]
    public async Task A_request_is_raised_and_its_order_opens(bool both, int width)
    {
        var page = await service.SignIn(both ? service.Both : service.Split, "tove", width);
        await page.GotoAsync(new Uri(new Uri(page.Url), "/raise").ToString());
        var place = $"Pump house 2, north wall, {Guid.NewGuid():N}";
        await page.FillAsync("#f-line", "CW-150-3104");
        await page.FillAsync("#f-place", place);
        await page.FillAsync("#f-fluid", "cooling water, brackish");
        await page.FillAsync("#f-seen", "pinhole weeping at 4 o'clock");
        await page.SelectOptionAsync("#f-leakState", "weep");
        await page.FillAsync("#f-operatingPressure", "90 psi");
        await page.FillAsync("#f-operatingTemperature", "18");
        await page.FillAsync("#f-whyNotPermanent", "the line cools the turbine until the January stop");
        await page.ClickAsync("text=Send the request");
        await page.WaitForURLAsync("**/orders/mill-*");
        await Assertions.Expect(page.Locator("section[aria-label='Title block']")).ToContainTextAsync(place);
        await Assertions.Expect(page.Locator("section[aria-label='Title block']")).ToContainTextAsync("90 psi");
        await Assertions.Expect(page.Locator("section[aria-label='The sheaf']")).ToContainTextAsync("Tove Aune");
    }

    [Fact]
    public async Task A_value_of_the_wrong_kind_is_named_at_its_field_and_nothing_typed_is_lost()
    {
        var page = await service.SignIn(service.Both, "tove");
        await page.GotoAsync(new Uri(new Uri(page.Url), "/raise").ToString());
        await page.FillAsync("#f-place", "Turbine hall, west");
        await page.FillAsync("#f-operatingPressure", "6 mm");
        await page.ClickAsync("text=Send the request");
        await Assertions
            .Expect(page.Locator(".field.wrong", new() { HasText = "Operating pressure" }))
            .ToContainTextAsync("6 mm");
        await Assertions.Expect(page.Locator("#f-place")).ToHaveValueAsync("Turbine hall, west");
    }

    [Fact]
    public async Task What_was_typed_is_offered_again_after_the_tab_was_closed()
    {
        var page = await service.SignIn(service.Both, "anton");
        await page.GotoAsync(new Uri(new Uri(page.Url), "/raise").ToString());
        await page.FillAsync("#f-place", "Effluent plant, stairs");
        for (var i = 0; i < 50 && !await Kept(page); i++)
            await Task.Delay(100);
        var again = await page.Context.NewPageAsync();
        await page.CloseAsync();
        await again.GotoAsync(new Uri(service.Both, "/raise").ToString());
        await again.ClickAsync("text=Put it back");
        await Assertions.Expect(again.Locator("#f-place")).ToHaveValueAsync("Effluent plant, stairs");
    }

    // The page's own policy forbids the polling functions that the driver would put into it.
    private static Task<bool> Kept(IPage page) =>
        page.EvaluateAsync<bool>("() => (localStorage.getItem('draft:raise') ?? '').includes('Effluent')");
}
