using System.Globalization;
using System.Runtime.CompilerServices;
using RepairOrders.Engineering.Leaks;
using UnitsNet;

namespace RepairOrders.Engineering.Tests;

// Holds the console sample of the engine's README: the lines between the marks are the README's lines, compiled and run here.
public sealed class ReadmeSample
{
    private const string Begin = "// begin";
    private const string End = "// end";
    private const string Printed = "```text\n";

    [Fact]
    public void The_sample_is_the_readme_s_line_for_line()
    {
        var sample = Lines(Own(), Begin, End);
        var readme = Lines(Readme(), "```csharp", "```")
            .Where(l => !l.StartsWith("using ", StringComparison.Ordinal))
            .ToList();
        string.Join(' ', sample.SelectMany(Words)).ShouldBe(string.Join(' ', readme.SelectMany(Words)));
        readme.Count(l => l.Length > 0).ShouldBeLessThanOrEqualTo(10);
    }

    // APPROVE=1 writes what it prints into the README.
    [Fact]
    public void The_sample_prints_what_the_readme_shows()
    {
        var output = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        Run(output);
        var readme = File.ReadAllText(Readme());
        var start = readme.IndexOf(Printed, StringComparison.Ordinal) + Printed.Length;
        var end = readme.IndexOf("```", start, StringComparison.Ordinal);
        if (Environment.GetEnvironmentVariable("APPROVE") == "1")
            File.WriteAllText(Readme(), readme[..start] + output + readme[end..]);
        readme = File.ReadAllText(Readme());
        readme[start..readme.IndexOf("```", start, StringComparison.Ordinal)].ShouldBe(output.ToString());
    }

    [Fact]
    public void Every_folder_of_the_engine_stands_in_the_readme()
    {
        var text = string.Join('\n', File.ReadAllLines(Readme()));
        var folders = Directory
            .GetDirectories(Path.GetDirectoryName(Readme())!)
            .Select(Path.GetFileName)
            .Where(name => name is not ("bin" or "obj"));
        folders.ShouldAllBe(name => text.Contains($"| `{name}` |"));
    }

    // Braces, breaks and line ends are the formatter's; the words are the README's.
    private static void Run(TextWriter Console)
    {
        // begin
        var hole = Hole.Round(Length.FromMillimeters(3));
        var price = new LeakPrice(28, PricedBy.Tonne);
        var leak = Leak.OfSteam(new(hole, Pressure.FromBars(7), LeakPurpose.Cost, Price: price));
        Console.WriteLine($"{leak.Result.MassFlow.KilogramsPerHour:F1} kg/h, {leak.Result.CostAYear:F0} a year");
        foreach (var step in leak.Working)
            Console.WriteLine(
                $"{step.Symbol} = {step.Value:G5} {step.Unit}   {step.Formula}   {step.Substituted}   [{step.Clause}]"
            );
        foreach (var finding in leak.Findings)
            Console.WriteLine($"{finding.Severity}: {finding.Words}");
        // end
    }

    private static List<string> Lines(string file, string begin, string end) =>
        [.. File.ReadAllLines(file).Select(l => l.Trim()).SkipWhile(l => l != begin).Skip(1).TakeWhile(l => l != end)];

    private static IEnumerable<string> Words(string line) =>
        line.Replace("(", "( ").Replace(")", " )").Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private static string Own([CallerFilePath] string here = "") => here;

    private static string Readme() =>
        Path.Combine(Path.GetDirectoryName(Own())!, "..", "..", "src", "RepairOrders.Engineering", "README.md");
}
