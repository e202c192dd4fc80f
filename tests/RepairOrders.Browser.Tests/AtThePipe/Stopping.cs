using Microsoft.Playwright;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests.AtThePipe;

/// <summary>The stop button is always there and never refused.</summary>
public sealed class Stopping(Service service)
{
    [Fact]
    public async Task Two_taps_stop_the_job_and_the_supervisor_lets_it_go_on_from_the_same_phone()
    {
        await APipe.HasCode(service, "mara");
        var number = await APipe.ReadyFor(service, "diameter");
        var page = await APipe.Phone(service, number);
        await page.ClickAsync(".foot [data-stop]");
        await page.ClickAsync("#stop button:has-text('The leak grew')");
        await page.ClickAsync("#stop button.solid");
        await Assertions.Expect(page.Locator("main [role=alert]").First).ToContainTextAsync("Tove Aune: The leak grew");
        await Assertions.Expect(page.Locator(".foot [data-stop]")).ToBeVisibleAsync();

        await page.ClickAsync("summary:has-text('Let the job go on')");
        await page.FillAsync("[name=causeCleared]", "line isolated further up");
        var resume = page.Locator("form[data-entry=resume]");
        await resume.Locator("[data-signer]").SelectOptionAsync("mara");
        await resume.Locator("[data-code]").FillAsync(APipe.Code);
        await resume.Locator("button.btn").ClickAsync();
        await Assertions.Expect(page.Locator("#f-now")).ToBeVisibleAsync();
        (await (await service.Client("mara")).Order(number))
            .Records.Single(r => r.Kind == "resumption")
            .By.ShouldBe("Mara Lindqvist");
    }

    [Fact]
    public async Task Without_signal_and_without_a_reason_it_is_taken_all_the_same()
    {
        var number = await APipe.ReadyFor(service, "diameter");
        var page = await APipe.Phone(service, number);
        await page.Context.SetOfflineAsync(true);
        await page.ClickAsync(".foot [data-stop]");
        await page.ClickAsync("#stop button.solid");
        await Assertions.Expect(page.Locator("#signal")).ToContainTextAsync("The stop is not sent yet. Stop the work");
        await page.Context.SetOfflineAsync(false);
        await Assertions
            .Expect(page.Locator("main [role=alert]").First)
            .ToContainTextAsync("stopped at the pipe, reason to follow");
        (await (await service.Client("mara")).Order(number)).Records.Count(r => r.Kind == "stop").ShouldBe(1);
    }

    [Fact]
    public async Task What_is_not_as_the_order_says_sends_it_back_to_be_assessed()
    {
        var number = await APipe.ReadyFor(service, "diameter");
        var page = await APipe.Phone(service, number);
        await page.ClickAsync("text=This is not what the order says");
        await page.FillAsync("#stop [name=reason]", "the hole is twice as large");
        await page.FillAsync("#stop [name=found]", "30 mm at 4 o'clock");
        await page.ClickAsync("#stop button.solid");
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("Requested");
        var order = await (await service.Client("mara")).Order(number);
        order.Title.Round.ShouldBe(2);
        order
            .Records.Single(r => r.Kind == "stop")
            .Body.GetProperty("ask")
            .GetProperty("found")
            .GetString()
            .ShouldBe("30 mm at 4 o'clock");
    }
}
