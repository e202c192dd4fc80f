using System.Numerics;
using MathNet.Numerics.Distributions;
using RepairOrders.Engineering.Life;

namespace RepairOrders.Engineering.Tests.Life;

public sealed class ReproducibleNumbers
{
    // Units in the last place against the C library, which is right to within one itself.
    private const double TwoUlps = 2 * 2.220446049250313e-16;

    [Fact]
    public void Logarithm_agrees_with_the_library()
    {
        for (var x = 1e-16; x < 1e16; x *= 1.0173)
        {
            Reproducible.Log(x).ShouldBe(Math.Log(x), TwoUlps * Math.Max(Math.Abs(Math.Log(x)), 1e-3), $"ln {x:R}");
        }
        Reproducible.Log(1).ShouldBe(0);
    }

    [Fact]
    public void Exponential_agrees_with_the_library()
    {
        for (var x = -700.0; x < 700; x += 0.3713)
        {
            Reproducible.Exp(x).ShouldBe(Math.Exp(x), TwoUlps * Math.Exp(x), $"e^{x:R}");
        }
        Reproducible.Exp(0).ShouldBe(1);
    }

    [Fact]
    public void Sine_and_cosine_agree_with_the_library()
    {
        for (var i = 0; i <= 4096; i++)
        {
            var u = i / 4096.0;
            var (sin, cos) = Reproducible.SinCosTurns(new Vector<double>(u));
            sin[0].ShouldBe(Math.Sin(2 * Math.PI * u), 1e-15, $"sin of {u} turns");
            cos[0].ShouldBe(Math.Cos(2 * Math.PI * u), 1e-15, $"cos of {u} turns");
        }
    }

    [Fact]
    public void Normal_tail_agrees_with_a_library_of_distributions()
    {
        for (var x = -8.0; x < 37; x += 0.0917)
        {
            var expected = Normal.CDF(0, 1, -x);
            // A last-place error of x moves the tail by x² times as much.
            NormalTail.Above(x).ShouldBe(expected, (2e-14 + 2.2e-16 * x * x) * expected, $"Φ(−{x:R})");
        }
    }

    [Fact]
    public void Generator_gives_the_known_answers()
    {
        // SplitMix64, seed 1234567: first five words as published with the reference code (from memory).
        ulong[] known =
        [
            6457827717110365317,
            3203168211198807973,
            9817491932198370423,
            4593380528125082431,
            16408922859458223821,
        ];
        for (var n = 0; n < known.Length; n++)
        {
            NormalDraws.Bits(NormalDraws.States(1234567, (ulong)n, 1))[0].ShouldBe(known[n]);
        }
        var far = NormalDraws.States(1234567, 0, 1) + NormalDraws.Ahead(4);
        NormalDraws.Bits(far)[0].ShouldBe(known[4]);
    }

    [Fact]
    public void Draws_are_standard_normal_and_pairs_are_independent()
    {
        const int Count = 400_000;
        var draws = new double[Count];
        var product = 0.0;
        for (var i = 0; i < Count; i += 2)
        {
            var (a, b) = NormalDraws.Pair(
                NormalDraws.Bits(NormalDraws.States(42, (ulong)i, 2)),
                NormalDraws.Bits(NormalDraws.States(42, (ulong)i + 1, 2))
            );
            (draws[i], draws[i + 1]) = (a[0], b[0]);
            product += a[0] * b[0];
        }
        draws.Average().ShouldBe(0, 4 / Math.Sqrt(Count));
        draws.Average(z => z * z).ShouldBe(1, 4 * Math.Sqrt(2.0 / Count));
        (product / (Count / 2)).ShouldBe(0, 4 / Math.Sqrt(Count / 2));
        GreatestGap(draws).ShouldBeLessThan(1.63 / Math.Sqrt(Count), "Kolmogorov's test at 1 %");
    }

    private static double GreatestGap(double[] draws)
    {
        Array.Sort(draws);
        return draws.Select((z, i) => Math.Abs(Normal.CDF(0, 1, z) - (i + 0.5) / draws.Length)).Max();
    }
}
