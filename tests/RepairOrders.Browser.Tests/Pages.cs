using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace RepairOrders.Browser.Tests;

/// <summary>A page as a person meets it: he waits until it answers before he puts his hand to it.</summary>
internal static class Pages
{
    /// <summary>Opens an address on the page's own host.</summary>
    public static async Task Open(this IPage page, string path)
    {
        await page.GotoAsync(new Uri(new Uri(page.Url), path).ToString());
        await page.Live();
    }

    /// <summary>Waits until the page is no longer the picture the server sent ahead: what is typed into that is lost.</summary>
    public static Task Live(this IPage page) => Assertions.Expect(page.Locator("main[data-live]")).ToBeVisibleAsync();

    /// <summary>Waits until nothing is being read any more.</summary>
    public static async Task Settled(this IPage page)
    {
        await Assertions.Expect(page.Locator("h1")).ToBeVisibleAsync();
        foreach (var waiting in new[] { "Reading …", "Opening the form …", "Opening …", "Asking the methods …" })
            await Assertions.Expect(page.GetByText(waiting)).ToHaveCountAsync(0);
    }

    /// <summary>What axe finds wrong on the page as it stands, or on a part of it.</summary>
    public static async Task<IEnumerable<string>> Axe(this IPage page, string? part = null)
    {
        // The interactive head takes over some milliseconds after the prerendered one.
        await Assertions.Expect(page).ToHaveTitleAsync(new Regex("Repair orders"));
        var result = part is null ? await page.RunAxe() : await page.Locator(part).RunAxe();
        return result.Violations.Select(v => $"{v.Id}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}");
    }

    /// <summary>What this browser keeps of a form, as text.</summary>
    public static Task<string> Kept(this IPage page, string draft) =>
        page.EvaluateAsync<string>("name => JSON.stringify(drafts.read(name))", draft);
}
