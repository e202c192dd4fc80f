using System.Globalization;
using BenchmarkDotNet.Attributes;
using RepairOrders.Engineering.Cutting;
using UnitsNet;

namespace RepairOrders.Benchmarks;

/// <summary>Sixty bands from coils and eight remnants, on one thread: proved the best possible within 2 s, or the gap is printed.</summary>
public class CutPlanBenchmark : BesideC
{
    private Band[] bands = [];
    private StockLength[] stock = [];

    /// <summary>Length of a new coil, mm.</summary>
    [Params(4000, 10_000, 30_000)]
    public int Coil { get; set; }

    /// <summary>Different band lengths among the sixty: orders of one day repeat theirs.</summary>
    [Params(6, 60)]
    public int Lengths { get; set; }

    [GlobalSetup]
    public void Draw()
    {
        var draw = new Random(20);
        var lengths = Enumerable.Range(0, Lengths).Select(_ => Mm(draw, 300, 1500)).ToArray();
        bands = [.. Enumerable.Range(0, 60).Select(i => new Band($"{i}", lengths[i % Lengths]))];
        var remnants = Enumerable
            .Range(0, 8)
            .Select(i => new StockLength($"remnant {i}", Mm(draw, 400, 0.6 * Coil), 1, true));
        stock = [new("coil", Length.FromMillimeters(Coil), 50, false), .. remnants];
    }

    /// <summary>The whole plan, all aims.</summary>
    /// <returns>The plan.</returns>
    [Benchmark(Description = "sixty bands, all aims")]
    public CutPlan Plan() =>
        CutPlanner
            .Plan(bands, stock, new(Length.FromMillimeters(2), Length.FromMillimeters(80)), TimeSpan.FromSeconds(2))
            .Result;

    /// <summary>Says of each aim whether it is proved, and the gap where it is not.</summary>
    [GlobalCleanup]
    public void Print()
    {
        foreach (var aim in Plan().Aims)
        {
            var end = aim.Proven
                ? "proved"
                : string.Create(CultureInfo.InvariantCulture, $"bound {aim.Bound}, not proved");
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"// coil {Coil}, {Lengths} lengths: {aim.Words} {aim.Value}, {end}"
                )
            );
        }
    }

    private static Length Mm(Random draw, double least, double greatest) =>
        Length.FromMillimeters(Math.Round(least + draw.NextDouble() * (greatest - least), 1));
}
