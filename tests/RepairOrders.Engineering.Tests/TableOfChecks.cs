using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using System.Text.RegularExpressions;

namespace RepairOrders.Engineering.Tests;

// The table of checks in this folder's README, counted from the files of Published/ so that it cannot lie. Each row is put to
// the engine by a test of its own, so the rows pass when the run does. APPROVE=1 writes the counts.
public sealed partial class TableOfChecks
{
    private const string Begin = "<!-- checks -->";
    private const string End = "<!-- end of checks -->";

    private static readonly (string File, string Subject, string Default)[] Files =
    [
        ("strength.csv", "sizes, grades, wall, remaining strength", ""),
        ("burst-tests.csv", "remaining strength against burst tests", ""),
        ("life-and-loads.csv", "life, axial load, through-wall, pressure test", ""),
        ("leak-checks.csv", "leak rate, worked values", ""),
        ("air-leak.csv", "leak rate of air", ""),
        ("steam-leak.csv", "leak rate of steam", ""),
        ("water-leak.csv", "leak rate of water", "published"),
        ("water-properties.csv", "water and sea water", ""),
        ("surface-checks.csv", "surface climate, worked values", ""),
        ("dew-point.csv", "dew point", "published"),
        ("curing-checks.csv", "cure", ""),
        ("joint-checks.csv", "bands, plates, putty, tightening", ""),
        ("torque-nut-factor.csv", "nut factors", ""),
        ("method-checks.csv", "laminates, clamps, rules", ""),
        ("cutting-stock/optima.csv", "cut plan", "published"),
        ("common-practice.csv", "facts of the trade", ""),
    ];

    private static readonly string[] Kinds =
    [
        "published",
        "memory",
        "common practice",
        "computed",
        "misprint",
        "no oracle",
    ];

    [Fact]
    public void The_table_of_the_readme_counts_what_is_tested()
    {
        var readme = File.ReadAllText(Readme());
        var head = readme[..(readme.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length)];
        var tail = readme[readme.IndexOf(End, StringComparison.Ordinal)..];
        var counted = $"{head}\n{Table()}{tail}";
        if (Environment.GetEnvironmentVariable("APPROVE") == "1")
            File.WriteAllText(Readme(), counted);
        readme = File.ReadAllText(Readme());
        readme.ShouldBe(counted, "run with APPROVE=1 to count again");
    }

    [Fact]
    public void Every_file_of_checks_is_counted() =>
        Directory
            .GetFiles(Published(), "*.csv", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Published(), f).Replace('\\', '/'))
            .Order()
            .ShouldBe(Files.Select(f => f.File).Order());

    // Some files are read whole; of the others each row is named by the test that puts it to the engine.
    [Theory]
    [InlineData("leak-checks.csv")]
    [InlineData("surface-checks.csv")]
    [InlineData("curing-checks.csv")]
    [InlineData("joint-checks.csv")]
    [InlineData("method-checks.csv")]
    [InlineData("common-practice.csv")]
    public void Every_row_is_named_by_a_test(string file)
    {
        var sources = string.Concat(
            Directory
                .GetFiles(Folder(), "*.cs", SearchOption.AllDirectories)
                .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}"))
                .Select(File.ReadAllText)
        );
        PublishedTable
            .Rows(file)
            .Select(r => r["id"])
            .Where(id => !sources.Contains($"\"{id}\"", StringComparison.Ordinal))
            .ShouldBeEmpty();
    }

    private static string Table()
    {
        var text = new StringBuilder($"| Subject | Rows of | {string.Join(" | ", Kinds)} |\n|---|---|");
        text.Append(string.Concat(Kinds.Select(_ => "---:|"))).Append('\n');
        var total = new int[Kinds.Length];
        foreach (var (file, subject, kind) in Files)
        {
            var counts = Count(file, kind);
            for (var i = 0; i < total.Length; i++)
                total[i] += counts[i];
            text.Append(Line(subject, $"`{file}`", counts));
        }
        return text.Append(Line("**all**", "", total)).ToString();
    }

    private static int[] Count(string file, string otherwise)
    {
        var kinds = PublishedTable.Rows(file).Select(r => Kind(r, otherwise)).ToList();
        kinds.ShouldAllBe(k => Kinds.Contains(k), file);
        return [.. Kinds.Select(k => kinds.Count(x => x == k))];
    }

    private static string Kind(IReadOnlyDictionary<string, string> row, string otherwise) =>
        row.GetValueOrDefault("source") == "T6(F)" || row.GetValueOrDefault("flag") == "odd" ? "no oracle"
        : Misprinted().IsMatch(string.Join(' ', row.Values)) ? "misprint"
        : row.GetValueOrDefault("provenance", otherwise);

    private static string Line(string subject, string file, int[] counts) =>
        $"| {subject} | {file} | {string.Join(" | ", counts.Select(c => c.ToString(CultureInfo.InvariantCulture)))} |\n";

    private static string Readme() => Path.Combine(Folder(), "README.md");

    private static string Published() => Path.Combine(Folder(), "Published");

    private static string Folder([CallerFilePath] string here = "") => Path.GetDirectoryName(here)!;

    [GeneratedRegex("ERRATUM|misprint")]
    private static partial Regex Misprinted();
}
