using Microsoft.Playwright;

namespace RepairOrders.Browser.Tests.Everywhere;

/// <summary>Looks at a page as it stands: wide and narrow, by day and by night, with twice the text.</summary>
internal static class Looks
{
    private static readonly (int Width, bool Dark)[] Ways = [(1440, false), (1440, true), (390, true), (390, false)];

    /// <summary>What is wrong with it anywhere, each with where; nothing where it is sound. Pictures go where LOOK names a folder.</summary>
    /// <param name="page">The page.</param>
    /// <param name="name">What it is called in a fault.</param>
    /// <param name="part">The part that is new, where the page round it has been looked at; it is looked at wide by day and narrow by night.</param>
    public static async Task<List<string>> Faults(this IPage page, string name, string? part = null)
    {
        List<string> faults = [];
        var cut = await page.EvaluateAsync<string[]>(Cut);
        foreach (var (width, dark) in part is null ? Ways : Ways.Where((_, i) => i % 2 == 0))
        {
            var where = $"{name} {width} {(dark ? "dark" : "light")}";
            await page.EmulateMediaAsync(
                new()
                {
                    ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
                    ReducedMotion = ReducedMotion.Reduce,
                }
            );
            await page.SetViewportSizeAsync(width, width < 600 ? 844 : 900);
            await Assertions.Expect(page.Locator($"html[data-ink={(dark ? "night" : "day")}]")).ToHaveCountAsync(1);
            await Drawn(page);
            await Picture(page, where);
            faults.AddRange((await page.Axe(part)).Select(fault => $"{where}: {fault}"));
            faults.AddRange(await Edges(page, where));
            if (await page.EvaluateAsync<int>("() => document.getAnimations().length") is > 0 and var moving)
                faults.Add($"{where}: {moving} things move for somebody who asked for none");
        }
        // What 200 % of zoom leaves of a desk, and 400 % of it.
        foreach (var width in new[] { 720, 320 })
        {
            await page.SetViewportSizeAsync(width, 844);
            await Drawn(page);
            faults.AddRange(await Edges(page, $"{name} {width}"));
        }
        await page.SetViewportSizeAsync(1440, 900);
        await page.EvaluateAsync("() => { document.documentElement.style.fontSize = '200%' }");
        await Drawn(page);
        await Picture(page, $"{name} 1440 text 200 %");
        faults.AddRange(await Edges(page, $"{name} text 200 %"));
        faults.AddRange(
            (await page.EvaluateAsync<string[]>(Cut)).Except(cut).Select(c => $"{name} text 200 %: cut off {c}")
        );
        await page.EvaluateAsync("() => { document.documentElement.style.fontSize = '' }");
        return faults;
    }

    // Two frames: one that lays out, one that has painted it.
    private static async Task Drawn(IPage page) =>
        await page.EvaluateAsync("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");

    private static async Task<string[]> Edges(IPage page, string where) =>
        await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") is > 0 and var over
            ? [$"{where}: {over} px wider than the window"]
            : [];

    private static async Task Picture(IPage page, string where)
    {
        if (Environment.GetEnvironmentVariable("LOOK") is { Length: > 0 } folder)
            await page.ScreenshotAsync(
                new() { Path = Path.Combine(folder, $"{where.Trim('/').Replace('/', '-')}.png"), FullPage = true }
            );
    }

    // Text that its own box hides, and that no scrolling brings back.
    private const string Cut = """
        () => [...document.querySelectorAll("main *")]
          .filter((e) => e.checkVisibility() && !e.closest(".visually-hidden, svg")
            && [...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim().length > 0)
            && getComputedStyle(e).clipPath === "none" && ["hidden", "clip"].includes(getComputedStyle(e).overflowX) && e.scrollWidth > e.clientWidth + 1)
          .map((e) => e.outerHTML.slice(0, 120))
        """;
}
