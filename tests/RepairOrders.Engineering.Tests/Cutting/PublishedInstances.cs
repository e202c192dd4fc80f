using System.Globalization;
using RepairOrders.Engineering.Cutting;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Cutting;

public class PublishedInstances
{
    private static readonly string[] OnThePublishedWordOnly = ["N1C1W1_I", "N1W1B1R1"];

    public static TheoryData<string> Names =>
        [.. PublishedTable.Rows("cutting-stock/optima.csv").Select(r => new TheoryDataRow<string>(r["instance"]))];

    // One unit of the instance is 0.1 mm, the planner's own unit.
    [Theory]
    [MemberData(nameof(Names))]
    public void Reach_the_published_optimum_and_prove_it(string name)
    {
        var row = Row(name);
        var (capacity, sizes) = Read(name);
        var plan = CutPlanner
            .Plan(
                [.. sizes.Select((s, i) => new Band($"{i}", Length.FromMillimeters(s / 10.0)))],
                [new("coil", Length.FromMillimeters(capacity / 10.0), sizes.Length, false)],
                new(Length.Zero, Length.Zero),
                // A guard only: on a quiet core the hardest takes some ten seconds.
                TimeSpan.FromSeconds(600)
            )
            .Result;

        plan.Cuts.Count.ShouldBe((int)row.Number("optimum"));
        plan.Aims[0].Proven.ShouldBeTrue();
        plan.Bounds.ShouldBe(new CutBounds((int)row.Number("L1"), (int)row.Number("L2"), (int)row.Number("FFD")));
        plan.Cuts.SelectMany(c => c.Pieces)
            .Select(p => p.Band)
            .Order()
            .ShouldBe(sizes.Select((_, i) => $"{i}").Order());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_bound_meets_the_optimum_or_the_published_word_stands_alone(string name)
    {
        var row = Row(name);
        var best = Math.Max(row.Number("L1"), row.Number("L2"));
        (best < row.Number("optimum")).ShouldBe(OnThePublishedWordOnly.Contains(name));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void First_fit_keeps_its_guarantee(string name)
    {
        var row = Row(name);
        row.Number("FFD").ShouldBeLessThanOrEqualTo(11.0 / 9 * row.Number("optimum") + 6.0 / 9);
    }

    private static IReadOnlyDictionary<string, string> Row(string name) =>
        PublishedTable.Rows("cutting-stock/optima.csv").Single(r => r["instance"] == name);

    private static (int Capacity, int[] Sizes) Read(string name)
    {
        var path = Path.Combine(AppContext.BaseDirectory, "Published", "cutting-stock", name + ".txt");
        var numbers = File.ReadAllLines(path).Select(l => int.Parse(l, CultureInfo.InvariantCulture)).ToArray();
        numbers.Length.ShouldBe(numbers[0] + 2);
        return (numbers[1], numbers[2..]);
    }
}
