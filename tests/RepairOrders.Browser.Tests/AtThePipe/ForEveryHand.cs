using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace RepairOrders.Browser.Tests.AtThePipe;

/// <summary>Gloves, sun and screen readers.</summary>
public sealed class ForEveryHand(Service service)
{
    [Theory]
    [InlineData("as-described", 390, false)]
    [InlineData("as-described", 1440, true)]
    [InlineData("climate", 390, true)]
    [InlineData("mix", 390, false)]
    [InlineData("torque", 390, false)]
    public async Task Axe_finds_nothing_and_a_gloved_finger_hits_everything(string step, int width, bool dark)
    {
        var number = await APipe.ReadyFor(service, step);
        var page = await APipe.Phone(service, number, width, dark);
        await page.Locator("#f-now").WaitForAsync();
        await Show(page, $"{step}-{width}-{(dark ? "dark" : "light")}");
        var found = await page.RunAxe();
        found.Violations.Select(v => $"{v.Id}: {string.Join(" | ", v.Nodes.Select(n => n.Html))}").ShouldBeEmpty();
        if (width < 600)
            (await page.EvaluateAsync<string[]>(Small)).ShouldBeEmpty();
        (await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth")).ShouldBeTrue();
    }

    [Fact]
    public async Task Stop_and_the_main_button_stay_under_the_thumb_with_the_digits_open()
    {
        var number = await APipe.Ready(service);
        var page = await APipe.Phone(service, number);
        await page.ClickAsync("#r-walls-0-wall");
        await Assertions.Expect(page.Locator("#pad")).ToBeVisibleAsync();
        await Show(page, "digits-390-light", whole: false);
        foreach (var button in new[] { ".foot [data-stop]", ".foot button[type=submit]" })
            await Assertions.Expect(page.Locator(button)).ToBeInViewportAsync(new() { Ratio = 1 });
        await Assertions.Expect(page.Locator("#r-walls-0-wall")).ToBeInViewportAsync(new() { Ratio = 1 });
    }

    // Everything that is tapped; links in running text are exempt, as in WCAG 2.5.8.
    private const string Small = """
        () => [...document.querySelectorAll("#pipe button, #pipe select, #pipe summary, #pipe .btn, #pipe input:not([type=hidden]):not([type=file]), #pipe textarea")]
          .filter((e) => e.checkVisibility() && !e.closest(".visually-hidden"))
          .map((e) => [e.closest("label.check, label.btn") ?? e, e])
          .filter(([box]) => box.getBoundingClientRect().height < 47.5)
          .map(([box, e]) => `${e.outerHTML.slice(0, 80)} ${box.getBoundingClientRect().height}`)
        """;

    // For a person to look at, where LOOK names a folder.
    internal static async Task Show(IPage page, string name, bool whole = true)
    {
        if (Environment.GetEnvironmentVariable("LOOK") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"pipe-{name}.png"), FullPage = whole });
    }
}
