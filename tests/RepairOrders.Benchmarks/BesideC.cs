using BenchmarkDotNet.Attributes;

namespace RepairOrders.Benchmarks;

/// <summary>
/// A yardstick in the same run: the C loop over the 499 500 stretches of a profile. The goals were set where it takes 0.90 ms
/// (1.8 ns a stretch); on a slower or a busy machine the ratio to it says more than the time.
/// </summary>
public abstract class BesideC
{
    private const double D = 508;
    private const double Wall = 9.53;
    private static readonly CLoop Loop = CLoop.Build("-O3");
    private static readonly (double[] X, double[] D) Profile = RiverBottoms.Make(1000, 5, Wall, seed: 1);
    private readonly double[] area = new double[1000];

    [Benchmark(Baseline = true, Description = "yardstick: C loop, gcc -O3")]
    public double Yardstick() => Loop.Run(Profile.X, Profile.D, area, D, Wall);
}
