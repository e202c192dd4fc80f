using BenchmarkDotNet.Attributes;
using RepairOrders.Engineering.Life;
using UnitsNet;

namespace RepairOrders.Benchmarks;

/// <summary>One million samples of a defect: wall and strength, every day of fifty years, on one thread. At most 60 ms.</summary>
[MemoryDiagnoser]
public class OutlivingBenchmark : BesideC
{
    private readonly OutlivingAsk ask = new(
        new(2026, 1, 1),
        new(2031, 1, 1),
        Length.FromMillimeters(6),
        Length.FromMillimeters(0.2),
        CorrosionRate.FromMillimetresPerYear(0.2),
        CorrosionRate.FromMillimetresPerYear(0.08),
        Length.FromMillimeters(4),
        new(
            Length.FromMillimeters(168.3),
            Length.FromMillimeters(7.11),
            Length.FromMillimeters(100),
            Length.FromMillimeters(10),
            Pressure.FromMegapascals(309),
            Pressure.FromMegapascals(8),
            Pressure.FromMegapascals(0.6),
            1.5
        ),
        1e-3
    );

    /// <summary>The whole question, first-order estimate and working included.</summary>
    /// <returns>The answer.</returns>
    [Benchmark(Description = "a million samples, working included")]
    public Outliving MillionSamples() => Outliving.Before(ask).Result;
}
