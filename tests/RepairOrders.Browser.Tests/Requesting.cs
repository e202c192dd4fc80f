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
        await page.Open("/raise");
        var place = $"Pump house 2, north wall, {Guid.NewGuid():N}";
        await page.FillAsync("#f-line", "CW-150-3104");
        await page.FillAsync("#f-place", place);
        await page.FillAsync("#f-fluid", "cooling water, brackish");
        await page.FillAsync("#f-seen", "pinhole weeping at 4 o'clock");
        await page.SelectOptionAsync("#f-foundHow", "round");
        await page.SelectOptionAsync("#f-leakState", "weep");
        await page.FillAsync("#f-operatingPressure", "90 psi");
        await page.FillAsync("#f-operatingTemperature", "18");
        await page.FillAsync("#f-whyNotPermanent", "the line cools the turbine until the January stop");
        // A hand that clicks twice raises one order.
        await page.DblClickAsync("text=Send the request");
        await page.WaitForURLAsync("**/orders/mill-*");
        await Assertions.Expect(page.Locator("section[aria-label='Title block']")).ToContainTextAsync(place);
        await Assertions.Expect(page.Locator("section[aria-label='Title block']")).ToContainTextAsync("90 psi");
        await Assertions.Expect(page.Locator("section[aria-label='The sheaf']")).ToContainTextAsync("Tove Aune");
        var tove = await service.Client("tove");
        (await tove.Register(new(Search: place[^32..]), count: true)).Count.ShouldBe(1);
    }

    [Fact]
    public async Task Raised_from_its_line_the_request_knows_the_line()
    {
        var line = (await (await service.Client("tove")).Lines("mill", "CW-150-3104")).Rows.Single();
        var page = await service.SignIn(service.Both, "tove", 390);
        await page.Open($"/lines/{line.Id}");
        await page.ClickAsync("text=Raise a request on it");
        await Assertions.Expect(page.Locator("#f-line")).ToHaveValueAsync("CW-150-3104");
        await Assertions.Expect(page.Locator("#f-fluid")).ToHaveValueAsync(line.Details.Fluid);
        await Assertions
            .Expect(page.Locator("#f-operatingPressure"))
            .ToHaveValueAsync(line.Details.OperatingPressure.Entered.Replace(" bar", "", StringComparison.Ordinal));
        await Assertions.Expect(page.Locator("#f-leakState")).ToHaveValueAsync("");
    }

    [Fact]
    public async Task A_value_of_the_wrong_kind_is_named_at_its_field_and_nothing_typed_is_lost()
    {
        var page = await service.SignIn(service.Both, "tove");
        await page.Open("/raise");
        await page.FillAsync("#f-place", "Turbine hall, west");
        await page.FillAsync("#f-operatingPressure", "6 mm");
        await page.ClickAsync("text=Send the request");
        await Assertions
            .Expect(page.Locator(".field.wrong", new() { HasText = "Operating pressure" }))
            .ToContainTextAsync("6 mm");
        await Assertions.Expect(page.Locator("#f-place")).ToHaveValueAsync("Turbine hall, west");
    }
}
