using System.Globalization;
using Microsoft.Playwright;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests.AtThePipe;

/// <summary>The signal goes and comes back: clocks count on, what was entered waits, and is on record once.</summary>
public sealed class WithoutSignal(Service service)
{
    [Fact]
    public async Task A_mixs_clock_is_right_after_the_page_was_closed_and_opened_again()
    {
        var number = await APipe.ReadyFor(service, "mix");
        var tove = await service.Client("tove");
        await tove.RecordClimate(number, APipe.Dry);
        var page = await APipe.Phone(service, number);
        await page.FillAsync("#r-mixTemperature", "20");
        await page.Sign();
        await page.Locator(".clock.mix").WaitForAsync();
        var mix = (await tove.AtThePipe(number)).Work.Mixes.Single();

        var again = await page.Context.NewPageAsync();
        await page.CloseAsync();
        await again.GotoAsync(APipe.Address(service, number));
        (await again.Locator(".clock.mix").GetAttributeAsync("data-from"))!.ShouldStartWith(
            mix.StartedAt.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss", CultureInfo.InvariantCulture)
        );
        var shown = Minutes(await again.Locator(".clock.mix .time").TextContentAsync());
        shown.ShouldBe((mix.UsableUntil - DateTimeOffset.UtcNow).TotalMinutes, 2);
        // A phone whose own clock is an hour slow shows the same.
        await again.Clock.InstallAsync(new ClockInstallOptions { TimeDate = DateTime.UtcNow.AddHours(-1) });
        await again.ReloadAsync();
        Minutes(await again.Locator(".clock.mix .time").TextContentAsync())
            .ShouldBe((mix.UsableUntil - DateTimeOffset.UtcNow).TotalMinutes, 2);
    }

    [Fact]
    public async Task With_the_signal_lost_the_clock_goes_on_and_warns_at_three_quarters_and_at_the_end()
    {
        var number = await APipe.ReadyFor(service, "mix");
        var tove = await service.Client("tove");
        await tove.RecordClimate(number, APipe.Dry);
        var batch = (await tove.AtThePipe(number)).Batches[0].Batch;
        await tove.StartMix(number, new(batch, null, null, null, Measure.Of(20, "°C")));
        var page = await APipe.Phone(service, number);
        await page.Clock.InstallAsync(new ClockInstallOptions { TimeDate = DateTime.UtcNow });
        await page.ReloadAsync();
        var clock = page.Locator(".clock.mix");
        await Assertions.Expect(clock).ToHaveAttributeAsync("data-state", "go");
        await page.Context.SetOfflineAsync(true);
        await Assertions.Expect(page.Locator("#signal")).ToContainTextAsync("No signal");

        await To(page, 0.8);
        await Assertions.Expect(clock).ToHaveAttributeAsync("data-state", "watch");
        await Assertions.Expect(clock).ToContainTextAsync("Three quarters of the time are gone");
        await Assertions.Expect(page.Locator("#said")).ToContainTextAsync("Three quarters");
        await Assertions.Expect(page.GetByText("It is on the pipe")).ToBeEnabledAsync();
        await To(page, 1.01);
        await Assertions.Expect(clock).ToHaveAttributeAsync("data-state", "over");
        await Assertions.Expect(clock).ToContainTextAsync("Scrap it, do not put it on the pipe");
        await Assertions.Expect(page.GetByText("It is on the pipe")).ToBeDisabledAsync();
    }

    [Fact]
    public async Task What_was_signed_in_the_cut_waits_says_so_and_is_sent_once()
    {
        var number = await APipe.ReadyFor(service, "diameter");
        var page = await APipe.Phone(service, number);
        await page.Context.SetOfflineAsync(true);
        await page.Diameters(waits: true);
        await Assertions.Expect(page.Locator(".foot button[type=submit]")).ToBeDisabledAsync();
        (await Signed(number)).ShouldBe(1);

        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator(".at")).ToContainTextAsync("Step 3 of 13");
        await Assertions.Expect(page.Locator("#waiting")).ToBeEmptyAsync();
        (await Signed(number)).ShouldBe(2);
    }

    [Fact]
    public async Task An_entry_whose_answer_was_lost_is_sent_again_under_its_key_and_done_once()
    {
        var number = await APipe.ReadyFor(service, "diameter");
        var page = await APipe.Phone(service, number);
        await page.RouteAsync(
            "**/sign",
            async route =>
            {
                await route.FetchAsync();
                await route.AbortAsync();
            }
        );
        await page.Diameters(waits: true);
        (await Signed(number)).ShouldBe(2, "the service has it, the phone does not know");
        await page.UnrouteAllAsync();
        // The phone tries again by itself, and shows the next step.
        await Assertions.Expect(page.Locator("#waiting")).ToBeEmptyAsync();
        await Assertions.Expect(page.Locator(".at")).ToContainTextAsync("Step 3 of 13");
        (await Signed(number)).ShouldBe(2);
    }

    [Fact]
    public async Task What_waits_outlives_the_page_and_is_sent_when_it_is_opened_again()
    {
        var number = await APipe.ReadyFor(service, "diameter");
        var page = await APipe.Phone(service, number);
        await page.Context.SetOfflineAsync(true);
        await page.Diameters(waits: true);
        var again = await page.Context.NewPageAsync();
        await page.CloseAsync();
        await again.Context.SetOfflineAsync(false);
        await again.GotoAsync(APipe.Address(service, number));
        await Assertions.Expect(again.Locator(".at")).ToContainTextAsync("Step 3 of 13");
        (await Signed(number)).ShouldBe(2);
    }

    [Fact]
    public async Task A_refusal_on_sending_is_told_with_its_reason_and_nothing_typed_is_lost()
    {
        var number = await APipe.ReadyFor(service, "diameter");
        var page = await APipe.Phone(service, number);
        await page.Context.SetOfflineAsync(true);
        await page.Diameters(waits: true);
        await (await service.Client("anton")).StopJob(number, new("gas alarm"));
        await page.Context.SetOfflineAsync(false);
        await Assertions
            .Expect(page.Locator("#waiting .no"))
            .ToContainTextAsync("Anton Reyes stopped the job: gas alarm");
        await Assertions.Expect(page.Locator("#waiting .no")).ToContainTextAsync("It can be cleared by");
        (await Signed(number)).ShouldBe(1);

        await (await service.Client("mara")).ResumeJob(number, new("gas tested anew, clear"));
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("#r-diameters-0-diameter")).ToHaveValueAsync("168.2");
        await page.Sign();
        await Assertions.Expect(page.Locator(".at")).ToContainTextAsync("Step 3 of 13");
        await Assertions.Expect(page.Locator("#waiting")).ToBeEmptyAsync();
        (await Signed(number)).ShouldBe(2);
    }

    [Fact]
    public async Task A_photograph_taken_in_the_cut_waits_and_goes_before_the_signature_that_rests_on_it()
    {
        var number = await APipe.Ready(service);
        var page = await APipe.Phone(service, number);
        await page.Context.SetOfflineAsync(true);
        await page.SetInputFilesAsync("[data-camera]", APipe.Photograph);
        await Assertions.Expect(page.Locator("#waiting .waits")).ToHaveCountAsync(1);
        await page.FillAsync("#r-walls-0-wall", "6.1");
        await page.FillAsync("#r-walls-1-wall", "6.4");
        await page.SelectOptionAsync("[name=instrument]", "UT-0417");
        await page.Sign();
        await Assertions.Expect(page.Locator("#waiting .waits")).ToHaveCountAsync(2);
        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator(".at")).ToContainTextAsync("Step 2 of 13");
        var records = (await (await service.Client("mara")).Order(number)).Records;
        records.Count(r => r.Kind == "photo").ShouldBe(1);
        records.Single(r => r.Kind == "hold-point-release").Body.GetProperty("photos").GetArrayLength().ShouldBe(1);
    }

    [Fact]
    public async Task Without_signal_no_mix_is_begun_because_its_time_would_be_unknown()
    {
        var number = await APipe.ReadyFor(service, "mix");
        await (await service.Client("tove")).RecordClimate(number, APipe.Dry);
        var page = await APipe.Phone(service, number);
        await page.FillAsync("#r-mixTemperature", "20");
        await page.Context.SetOfflineAsync(true);
        await page.Sign();
        await Assertions.Expect(page.Locator("#f-now .refused")).ToContainTextAsync("Without signal, do not mix");
        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator("#signal")).ToBeEmptyAsync();
        (await (await service.Client("mara")).AtThePipe(number)).Work.Mixes.ShouldBeEmpty();
        await page.Sign();
        await page.Locator(".clock.mix").WaitForAsync();
    }

    [Fact]
    public async Task Another_signers_entry_waits_without_his_digits_and_asks_for_them_again()
    {
        await APipe.HasCode(service, "anton");
        var number = await APipe.ReadyFor(service, "diameter");
        var page = await APipe.Phone(service, number);
        await page.Context.SetOfflineAsync(true);
        await page.Diameters();
        await page.SelectOptionAsync("[data-signer]", "anton");
        await page.FillAsync("[data-code]", APipe.Code);
        await page.Sign();
        await Assertions
            .Expect(page.Locator("#waiting"))
            .ToContainTextAsync("Anton Reyes signs it with his six digits");
        (await page.EvaluateAsync<string>("() => JSON.stringify({ ...localStorage })")).ShouldNotContain(APipe.Code);
        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator("#signal")).ToBeEmptyAsync();
        (await Signed(number)).ShouldBe(1);
        await page.FillAsync("#waiting input", APipe.Code);
        await page.ClickAsync("#waiting button:has-text('Send')");
        await Assertions.Expect(page.Locator(".at")).ToContainTextAsync("Step 3 of 13");
        (await (await service.Client("mara")).Order(number))
            .Records.Last(r => r.Kind == "hold-point-release")
            .By.ShouldBe("Anton Reyes");
    }

    // The phone's clock goes on to a share of the mix's time, whatever the machine took until here.
    private static async Task To(IPage page, double share)
    {
        const string Wanted =
            "(s) => { const { from, until } = document.querySelector('.clock.mix').dataset; return Date.parse(from) + s * (Date.parse(until) - Date.parse(from)) - Date.now(); }";
        await page.Clock.FastForwardAsync((long)await page.EvaluateAsync<double>(Wanted, share));
    }

    private async Task<int> Signed(string number) =>
        (await (await service.Client("mara")).Order(number)).Records.Count(r => r.Kind == "hold-point-release");

    private static double Minutes(string? face)
    {
        var parts = face!.Split(':');
        return int.Parse(parts[0], CultureInfo.InvariantCulture)
            + int.Parse(parts[1], CultureInfo.InvariantCulture) / 60.0;
    }
}
