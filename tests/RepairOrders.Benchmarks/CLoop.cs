using System.Diagnostics;
using System.Runtime.InteropServices;

namespace RepairOrders.Benchmarks;

/// <summary>The loop of effective_area.c, built by gcc when the benchmark starts.</summary>
internal sealed class CLoop
{
    private readonly Weakest weakest;

    private delegate double Weakest(
        double[] x,
        double[] d,
        double[] area,
        int n,
        double D,
        double t,
        out int from,
        out int to
    );

    private CLoop(Weakest weakest) => this.weakest = weakest;

    public static CLoop Build(string options)
    {
        var source = Path.Combine(AppContext.BaseDirectory, "effective_area.c");
        var library = Path.Combine(Directory.CreateTempSubdirectory("effective_area").FullName, "loop.so");
        using var gcc = Process.Start("gcc", $"{options} -shared -fPIC -o {library} {source} -lm");
        gcc.WaitForExit();
        if (gcc.ExitCode != 0)
        {
            throw new InvalidOperationException($"gcc {options} ended with {gcc.ExitCode}");
        }
        var entry = NativeLibrary.GetExport(NativeLibrary.Load(library), "weakest");
        return new(Marshal.GetDelegateForFunctionPointer<Weakest>(entry));
    }

    public double Run(double[] x, double[] d, double[] area, double D, double t) =>
        weakest(x, d, area, x.Length, D, t, out _, out _);
}
