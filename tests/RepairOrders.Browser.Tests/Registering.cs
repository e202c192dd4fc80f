using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace RepairOrders.Browser.Tests;

/// <summary>The register keeps filter and place, is exported as it stands, and is no slower with thousands of orders.</summary>
public sealed class Registering(Service service)
{
    [Fact]
    public async Task A_filter_stands_in_the_address_and_the_chosen_row_is_found_again_on_the_way_back()
    {
        var number = await AnOrder.Requested(service);
        var page = await service.SignIn(service.Both, "mara");
        await page.Open("/register");
        await page.FillAsync("#search", number);
        await Assertions.Expect(page).ToHaveURLAsync(new Regex($"search={number}$"));
        await Assertions.Expect(page.Locator("tbody tr")).ToHaveCountAsync(1);
        await page.ClickAsync($"a[data-order='{number}']");
        await Assertions.Expect(page.Locator("section[aria-label='Title block']")).ToBeVisibleAsync();
        await page.GoBackAsync();
        await Assertions.Expect(page.Locator("tr.chosen")).ToContainTextAsync(number);
        await Assertions.Expect(page.Locator("#search")).ToHaveValueAsync(number);
    }

    [Fact]
    public async Task What_is_typed_on_while_the_list_is_read_stands()
    {
        var page = await service.SignIn(service.Both, "mara");
        await page.Open("/register");
        await page.Locator("#search").PressSequentiallyAsync("pump house 2, north wall", new() { Delay = 60 });
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("wall$"));
        await Assertions.Expect(page.Locator("#search")).ToHaveValueAsync("pump house 2, north wall");
    }

    [Fact]
    public async Task It_is_exported_with_the_filter_on_the_screen()
    {
        var number = await AnOrder.Requested(service);
        var page = await service.SignIn(service.Both, "mara");
        await page.Open($"/register?search={number}");
        var file = await page.RunAndWaitForDownloadAsync(() => page.ClickAsync("text=Export as CSV"));
        var csv = await File.ReadAllLinesAsync(await file.PathAsync(), TestContext.Current.CancellationToken);
        csv.Length.ShouldBe(2);
        csv[1].ShouldContain(number);
    }

    [Fact]
    public async Task Five_thousand_orders_are_scrolled_and_filtered()
    {
        await Many(5000);
        var page = await service.SignIn(service.Both, "greta");
        await page.Open("/register");
        var rows = page.Locator("tbody tr");
        await Assertions.Expect(page.GetByText("5000 orders")).ToBeVisibleAsync();
        await Assertions.Expect(rows).ToHaveCountAsync(50);
        for (var more = 100; more <= 400; more += 50)
        {
            await ToTheEnd(page, rows, more);
            await Assertions.Expect(rows.Nth(more - 1)).ToBeAttachedAsync();
        }
        var last = await rows.Last.Locator("a[data-order]").InnerTextAsync();
        await page.ClickAsync($"a[data-order='{last}']");
        await page.GoBackAsync();
        await Assertions.Expect(page.Locator($"tr.chosen a[data-order='{last}']")).ToBeInViewportAsync();

        await page.FillAsync("#search", "many-c4711");
        await Assertions.Expect(rows).ToHaveCountAsync(1);
        await Assertions.Expect(rows).ToContainTextAsync("many-c4711");
        await page.FillAsync("#search", "lot-13");
        await Assertions.Expect(page.GetByText("52 orders")).ToBeVisibleAsync();
    }

    // The browser scrolls to the end as it was last painted; whoever sees that there is more below presses again.
    private static async Task ToTheEnd(IPage page, ILocator rows, int wanted)
    {
        for (var tries = 0; tries < 60 && await rows.CountAsync() < wanted; tries++)
        {
            await page.Keyboard.PressAsync("End");
            await Task.Delay(250, TestContext.Current.CancellationToken);
        }
    }

    // Copies of one order on a site of their own; nobody else is troubled by them.
    private async Task Many(int count)
    {
        var ada = await service.Client("ada");
        await ada.AddSite(new("many", new("A mill of many orders", "Europe/Oslo", [])));
        var greta = await ada.Person("greta");
        await ada.ChangePerson("greta", greta.Details with { Sites = ["many"] }, greta.Version);
        var number = await AnOrder.Requested(service);
        await service.Sql(
            $$"""
            INSERT INTO orders
            SELECT (jsonb_populate_record(t, jsonb_build_object(
                'id', gen_random_uuid(),
                'number', 'many-c' || i,
                'site_id', (SELECT id FROM sites WHERE short_name = 'many'),
                'line_id', null,
                'words', 'many-c' || i || ' cooling water lot-' || i % 97 || ' '))).*
            FROM orders t, generate_series(1, {{count}}) AS i
            WHERE t.number = '{{number}}'
            """
        );
        await service.Sql("ANALYZE orders");
    }
}
