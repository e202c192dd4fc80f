using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace RepairOrders.Browser.Tests;

/// <summary>A calculation without an order, on screen.</summary>
public sealed class WhatIf(Service service)
{
    private const string Pressure = "#w-duty-designPressureBar";

    [Fact]
    public async Task What_cannot_be_read_is_named_at_its_field_and_the_answer_before_it_stays()
    {
        var page = await Opened("ines", "/what-if/wall-thickness");
        await page.FillAsync(Pressure, "6 mm");
        await Assertions
            .Expect(page.Locator(".field.wrong", new() { HasText = "Design pressure" }))
            .ToContainTextAsync("6 mm");
        await Assertions.Expect(Status(page)).ToContainTextAsync("1 field needs another look");
        await Assertions.Expect(Result(page)).ToBeVisibleAsync();
    }

    [Fact]
    public async Task On_a_phone_the_answer_is_in_sight_while_one_types()
    {
        var page = await Opened("tove", "/what-if/banded-patch", 390);
        await page.ClickAsync("#w-service-operatingPressureBar");
        var line = page.Locator(".key-answer");
        await Assertions.Expect(line).ToBeInViewportAsync(new() { Ratio = 1 });
        await Assertions
            .Expect(page.Locator("#w-service-operatingPressureBar"))
            .ToBeInViewportAsync(new() { Ratio = 1 });
        await Assertions.Expect(line).ToContainTextAsync("Holds");
        await line.ClickAsync();
        await Assertions.Expect(Status(page)).ToBeInViewportAsync(new() { Ratio = 1 });
    }

    [Fact]
    public async Task Values_taken_into_an_order_wait_in_its_form_until_they_are_put_there()
    {
        var number = await AnOrder.Requested(service);
        var ines = await service.Client("ines");
        await AnOrder.Assess(ines, number);
        await AnOrder.Choose(ines, number);
        var page = await Opened("ines", "/what-if/banded-patch");
        await page.Locator("summary:has-text('that have a default')").ClickAsync();
        var thickness = page.GetByLabel("Plate thickness", new() { Exact = false });
        await thickness.FillAsync("0.7 mm");
        await page.ClickAsync("text=Choose an order");
        await page.SelectOptionAsync("section.take select", number);
        await page.ClickAsync("text=Take the values there");
        await page.WaitForURLAsync($"**/orders/{number}");
        await page.ClickAsync("text=Put it back");
        await Assertions.Expect(page.Locator("#f-values-plateThicknessMm")).ToHaveValueAsync(new Regex(@"^0\.7\b"));
        (await ines.Order(number)).Title.Stage.ShouldBe(Contract.Stage.Chosen, "nothing is signed by taking it along");
    }

    private async Task<IPage> Opened(string who, string path, int width = 1440)
    {
        var page = await service.SignIn(service.Both, who, width);
        await page.Open(path);
        await Assertions.Expect(Status(page).Locator(".tone")).ToBeVisibleAsync();
        return page;
    }

    private static ILocator Status(IPage page) => page.Locator("section.result > p[role=status]");

    private static ILocator Result(IPage page) => page.Locator("section.result > dl").First;
}
