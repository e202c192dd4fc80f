using System.Globalization;
using Microsoft.Playwright;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests.AtThePipe;

/// <summary>A repair is fitted, proved and taken into service from one phone, handed round to whoever signs.</summary>
public sealed class ToTheEnd(Service service)
{
    [Fact]
    public async Task One_phone_goes_from_the_first_hold_point_into_service()
    {
        foreach (var signer in new[] { "pavel", "mara", "olaf" })
            await APipe.HasCode(service, signer);
        var number = await APipe.Ready(service);
        var page = await APipe.Phone(service, number);
        await Surface(page);
        await Putty(page);
        await Bands(page, (await (await service.Client("tove")).AtThePipe(number)).Limits);
        await Cure(page, number);
        await page.Photographs();
        await Signs(page, 9);

        await page.Photographs();
        await Proof(page);
        await Signs(page, 10);
        await page.FillAsync("#f-now [name=remark]", "tight for fifteen minutes");
        await page.HandsTo("pavel");
        await page.IsAt(12);
        await page.HandsTo("mara");
        await page.IsAt(13);
        await page.FillAsync("#f-now [name=operatorsTold]", "day shift, by the board");
        await page.CheckAsync("#f-now [name=isolationsRemoved]");
        await page.HandsTo("olaf");

        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("In service");
        await Assertions.Expect(page.Locator(".at")).ToContainTextAsync("All 13 steps are signed");
        await Assertions.Expect(page.Locator(".steps li.done")).ToHaveCountAsync(13);
        var order = await (await service.Client("rune")).Order(number);
        order.Title.Stage.ShouldBe(Stage.InService);
        string By(string kind) => order.Records.Single(r => r.Kind == kind).By;
        By("proof").ShouldBe("Tove Aune");
        By("proof-witness").ShouldBe("Pavel Horak");
        By("first-look-acceptance").ShouldBe("Mara Lindqvist");
        By("acceptance").ShouldBe("Olaf Brekke");
        order.Records.Count(r => r.Kind == "cure-reading").ShouldBe(2);
        order
            .Records.Single(r => r.Kind == "proof")
            .Summary.ShouldContain("6 bar for 15 min with water: tight; tag T-118");
    }

    [Fact]
    public async Task With_the_screens_apart_from_the_api_the_steps_are_signed_all_the_same()
    {
        await APipe.HasCode(service, "anton");
        var number = await APipe.Ready(service);
        var page = await APipe.Phone(service, number, inOne: false);
        await Walls(page);
        await Signs(page, 1);
        await page.Diameters();
        await page.HandsTo("anton");
        await page.IsAt(3);
        (await (await service.Client("rune")).Order(number))
            .Records.Where(r => r.Kind == "hold-point-release")
            .Select(r => r.By)
            .ShouldBe(["Tove Aune", "Anton Reyes"]);
    }

    private static async Task Surface(IPage page)
    {
        await Walls(page);
        await Signs(page, 1);
        await page.Diameters();
        await Signs(page, 2);
        await page.Photographs();
        await page.SelectOptionAsync("#f-now [name='surface.grade']", "st3");
        foreach (var (um, i) in new[] { "58", "62", "60" }.Select((um, i) => (um, i)))
            await page.FillAsync($"#r-surface-profileUm-{i}", um);
        await Signs(page, 3);
    }

    private static async Task Walls(IPage page)
    {
        await page.Photographs();
        await page.FillAsync("#r-walls-0-wall", "6.1");
        await page.FillAsync("#r-walls-1-wall", "6.4");
        await page.SelectOptionAsync("#f-now [name=instrument]", "UT-0417");
    }

    private static async Task Putty(IPage page)
    {
        await page.Climate("20", "21", "50");
        await page.Sign();
        await Signs(page, 4);
        await page.FillAsync("#r-mixTemperature", "20");
        // The oldest batch that was issued, where there are several.
        await page.Locator("#f-now [name=batch]")
            .SelectOptionAsync(
                await page.Locator("#f-now [name=batch] option[value]:not([value=''])").First.GetAttributeAsync("value")
                    ?? ""
            );
        await page.Sign();
        await page.ClickAsync(".clock.mix button:has-text('It is on the pipe')");
        await Signs(page, 5);
        await page.Photographs();
        await Signs(page, 6);
    }

    private static async Task Bands(IPage page, PipeLimits limits)
    {
        var middle =
            (limits.LeastTorqueNm + limits.GreatestTorqueNm) / 2
            ?? (limits.LeastTensionN + limits.GreatestTensionN) / 2;
        var readings = page.Locator("#f-now fieldset .reading .box input");
        var count = limits.Fasteners!.Value;
        await Assertions.Expect(readings).ToHaveCountAsync(2 * count);
        for (var i = 0; i < 2 * count; i++)
            await readings
                .Nth(i)
                .FillAsync((middle!.Value * (i < count ? 0.5 : 1)).ToString("0.###", CultureInfo.InvariantCulture));
        await Assertions.Expect(page.Locator(".reading.bad")).ToHaveCountAsync(0);
        await Signs(page, 7);
    }

    private async Task Cure(IPage page, string number)
    {
        await Assertions.Expect(page.Locator("[aria-label=Cure]")).ToContainTextAsync("of 1 h");
        await Reads(page);
        // The reading is on record, and it has not set: the page asks for the next one.
        await Assertions.Expect(page.Locator("#r-readings-0-pipe")).ToHaveValueAsync("");
        await APipe.MixedEarlier(service, number);
        await Reads(page);
        foreach (var (shore, i) in new[] { "82", "84", "83" }.Select((shore, i) => (shore, i)))
            await page.FillAsync($"#r-shoreD-{i}", shore);
        await Signs(page, 8);
    }

    private static async Task Reads(IPage page)
    {
        await page.FillAsync("#r-readings-0-pipe", "20");
        await page.Sign();
    }

    private static async Task Proof(IPage page)
    {
        await page.FillAsync("#f-now [name=tag]", "T-118");
        await page.FillAsync("#r-pipeTemperature", "20");
        await page.SelectOptionAsync("#f-now [name='test.kind']", "hydrostatic");
        await page.FillAsync("#r-test-pressure", "6");
        await page.FillAsync("#r-test-hold", "15");
        await page.FillAsync("#r-test-mediumTemperature", "15");
        await page.SelectOptionAsync("#f-now [name='test.gauge']", "PG-1107");
        await page.CheckAsync("#f-now [name='test.tight'][value=true]");
        await Assertions.Expect(page.Locator(".reading.bad")).ToHaveCountAsync(0);
    }

    // What comes before it is on record once the large button says so.
    private static async Task Signs(IPage page, int step)
    {
        await Assertions.Expect(page.Locator(".foot button[type=submit]")).ToHaveTextAsync($"Sign step {step}");
        await page.Sign();
        await page.IsAt(step + 1);
    }
}
