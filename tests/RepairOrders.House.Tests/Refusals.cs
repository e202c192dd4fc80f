using System.Text.RegularExpressions;

namespace RepairOrders.House.Tests;

/// <summary>
/// No refusal is taken on trust: each code is written once, in full, and forced over HTTP by a case of a file named
/// <c>…OverHttp.cs</c>, or on the way of one of the cases.
/// </summary>
public sealed partial class Refusals
{
    [Fact]
    public void Every_refusal_is_forced_over_HTTP()
    {
        var forced = Sources("tests", "RepairOrders.Api.Tests")
            .Where(f =>
                f.Path.EndsWith("OverHttp.cs", StringComparison.Ordinal)
                || f.Path.Contains("/Cases/", StringComparison.Ordinal)
            )
            .SelectMany(f => Word().Matches(f.Text))
            .Select(m => m.Groups[1].Value)
            .ToHashSet();
        Codes().Select(c => c.Code).Where(c => !forced.Contains(c)).Order().ShouldBeEmpty();
    }

    [Fact]
    public void Every_refusal_is_written_once() =>
        Codes()
            .GroupBy(c => c.Code)
            .Where(c => c.Count() > 1)
            .Select(c => $"{c.Key}: {string.Join(", ", c.Select(x => x.Path))}")
            .ShouldBeEmpty();

    [Fact]
    public void Every_refusal_is_written_in_full() =>
        Sources("src", "RepairOrders.Api")
            .SelectMany(f => Short().Matches(f.Text).Select(m => $"{f.Path}: {m.Groups[1].Value}"))
            .ShouldBeEmpty();

    private static IEnumerable<(string Code, string Path)> Codes() =>
        Sources("src", "RepairOrders.Api")
            .SelectMany(f => Objection().Matches(f.Text).Select(m => (m.Groups[1].Value, f.Path)));

    private static IEnumerable<(string Path, string Text)> Sources(params string[] under) =>
        Directory
            .EnumerateFiles(House.Under(under), "*.cs", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(House.Root, f))
            .Where(f =>
                !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal)
            )
            .Select(f => (f, Remarks().Replace(File.ReadAllText(House.Under(f)), "")));

    // A code quoted in a remark refuses nothing.
    [GeneratedRegex(@"^\s*///.*$", RegexOptions.Multiline)]
    private static partial Regex Remarks();

    [GeneratedRegex(@"new\s+(?:[A-Za-z]+\.)*Objection\(\s*""([^""]+)""")]
    private static partial Regex Objection();

    // A code and a sentence handed to a constructor whose name is left out.
    [GeneratedRegex("""new\(\s*"([a-z]+(?:-[a-z0-9]+)+)",\s*\$?"[A-Z][^"]*\.",\s*\$?"[a-z]""")]
    private static partial Regex Short();

    [GeneratedRegex(@"""([a-z0-9-]+)""")]
    private static partial Regex Word();
}
