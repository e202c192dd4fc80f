using BenchmarkDotNet.Attributes;
using RepairOrders.Engineering.Strength;
using UnitsNet;

namespace RepairOrders.Benchmarks;

/// <summary>Effective area of a 1 000-point profile, one thread, against the same O(n²) loop in C.</summary>
[MemoryDiagnoser]
public class EffectiveAreaAgainstC
{
    private const double D = 508;
    private const double t = 9.53;
    private readonly double[] area = new double[1000];
    private double[] x = [];
    private double[] d = [];
    private CLoop c = null!;
    private CLoop cForThisMachine = null!;

    [GlobalSetup]
    public void Setup()
    {
        (x, d) = RiverBottoms.Make(1000, 5, t, seed: 1);
        c = CLoop.Build("-O3");
        cForThisMachine = CLoop.Build("-O3 -march=native");
        if (c.Run(x, d, area, D, t) != Engine().StrengthRatio)
        {
            throw new InvalidOperationException("the two loops disagree");
        }
    }

    [Benchmark(Baseline = true, Description = "C, gcc -O3")]
    public double C() => c.Run(x, d, area, D, t);

    [Benchmark(Description = "C, gcc -O3 -march=native")]
    public double CForThisMachine() => cForThisMachine.Run(x, d, area, D, t);

    [Benchmark(Description = "EffectiveArea.Weakest")]
    public EffectiveSection Engine() =>
        EffectiveArea.Weakest(x, d, Length.FromMillimeters(D), Length.FromMillimeters(t));
}
