using System.Text.RegularExpressions;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests.Everywhere;

/// <summary>Every page of the program, as somebody who has business there, is sound in every look.</summary>
public sealed partial class EveryPage(Service service)
{
    // Who opens what; what stands in braces is looked up before.
    private static readonly Dictionary<string, string[]> Pages = new()
    {
        ["mara"] =
        [
            "/",
            "/register",
            "/register?search=nothing-is-called-this",
            "/raise",
            "/me",
            "/shutdowns",
            "/shutdowns/{shutdown}",
            "/not-found",
        ],
        ["tove"] = ["/", "/raise?line=CW-150-3104"],
        ["ines"] =
        [
            "/",
            "/lines",
            "/lines/{line}",
            "/lines/{line}/change",
            "/emergency-list",
            "/emergency-list/add",
            "/emergency-list/{entry}",
            "/sites/mill/figures",
        ],
        ["signe"] =
        [
            "/",
            "/stock",
            "/stock/batches",
            "/stock/batches/{batch}",
            "/stock/bins",
            "/stock/bins/A1",
            "/stock/cut-list",
            "/stock/instruments",
            "/stock/instruments/add",
            "/stock/instruments/{instrument}/change",
            "/stock/items",
            "/stock/items/add",
            "/stock/items/PUTTY-W/change",
            "/stock/receive",
        ],
        ["henrik"] = ["/"],
        ["ada"] =
        [
            "/",
            "/lines/add",
            "/lines/import",
            "/people",
            "/people/add",
            "/people/tove",
            "/sites",
            "/sites/add",
            "/sites/mill/change",
        ],
        ["rune"] = ["/", "/what-if", "/lines/add"],
    };

    public static TheoryData<string> Whom => [.. Pages.Keys];

    [Theory]
    [MemberData(nameof(Whom))]
    public async Task Is_sound_in_every_look(string name)
    {
        var known = await Known();
        var page = await service.SignIn(service.Both, name);
        List<string> faults = [];
        foreach (var path in Pages[name])
        {
            await page.Open(Names().Replace(path, found => known[found.Groups[1].Value]));
            await page.Settled();
            faults.AddRange(await page.Faults($"{name} {path}"));
        }
        faults.ShouldBeEmpty();
    }

    [Fact]
    public async Task Before_anybody_is_signed_in_it_is_sound_as_well()
    {
        var page = await service.Browser();
        List<string> faults = [];
        foreach (var path in new[] { "/sign-in", "/first-administrator" })
        {
            await page.GotoAsync(new Uri(service.Both, path).ToString());
            faults.AddRange(await page.Faults(path));
        }
        faults.ShouldBeEmpty();
    }

    [Fact]
    public async Task Each_calculation_is_sound_in_every_look()
    {
        var page = await service.SignIn(service.Both, "ines");
        await page.Open("/what-if");
        var subjects = await page.Locator("main a[href*='what-if/']")
            .EvaluateAllAsync<string[]>("all => [...new Set(all.map(a => new URL(a.href).pathname))]");
        subjects.Length.ShouldBeGreaterThan(15);
        List<string> faults = [];
        foreach (var subject in subjects)
        {
            await page.Open(subject);
            await page.Locator("section.result > p[role=status] .tone").WaitForAsync();
            faults.AddRange(await page.Faults(subject, "main"));
        }
        faults.ShouldBeEmpty();
    }

    [Fact]
    public void No_page_is_left_out()
    {
        // An order and its pipe are looked at in every stage; the calculations stand on a page that lists them.
        string[] elsewhere =
        [
            "/orders/{Number}",
            "/pipe/{Number}",
            "/what-if/{Code}",
            "/sign-in",
            "/first-administrator",
        ];
        var opened = Pages.Values.SelectMany(p => p).Select(p => p.Split('?')[0]).ToList();
        Routes().Except(elsewhere).Where(route => !opened.Any(path => Matches(route, path))).ShouldBeEmpty();
    }

    private static bool Matches(string route, string path) =>
        Regex.IsMatch(path, $"^{Regex.Replace(route, @"\{[^}]+\}", "[^/]+")}$");

    // The pages say their addresses themselves, in the sources this run was built from.
    private static IEnumerable<string> Routes()
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(root.FullName, "RepairOrders.sln")))
            root = root.Parent!;
        return Directory
            .EnumerateFiles(
                Path.Combine(root.FullName, "src", "RepairOrders.Ui"),
                "*.razor",
                SearchOption.AllDirectories
            )
            .SelectMany(File.ReadLines)
            .Select(line => Address().Match(line))
            .Where(found => found.Success)
            .Select(found => found.Groups[1].Value);
    }

    private async Task<Dictionary<string, string>> Known()
    {
        var mara = await service.Client("mara");
        var ines = await service.Client("ines");
        var signe = await service.Client("signe");
        var day = DateOnly.FromDateTime(DateTime.UtcNow);
        var stop = await mara.AddShutdown(
            new("mill", $"boiler stop {Guid.NewGuid():N}"[..20], "Boiler house", day.AddDays(300))
        );
        var batch = await signe.ReceiveBatch(
            new("mill", "PUTTY-W", $"lot {Guid.NewGuid():N}"[..20], day.AddYears(1), "3.1 no. 4471", "C1", 12)
        );
        return new()
        {
            ["shutdown"] = $"{stop.Id}",
            ["line"] = $"{(await ines.Lines("mill", "CW-150-3104")).Rows.Single().Id}",
            ["entry"] = $"{await Cases.NightPinhole.Listed(ines, await service.Client("pavel"))}",
            ["batch"] = $"{batch.Id}",
            ["instrument"] = $"{(await signe.Instruments("mill")).Rows[0].Id}",
        };
    }

    [GeneratedRegex(@"\{(\w+)\}")]
    private static partial Regex Names();

    [GeneratedRegex("^@page \"([^\"]+)\"")]
    private static partial Regex Address();
}
