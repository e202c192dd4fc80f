using System.Buffers;
using System.Numerics;
using System.Runtime.InteropServices;

namespace RepairOrders.Engineering.Strength;

/// <summary>The search behind <see cref="EffectiveArea"/>: all n(n − 1)/2 stretches, no allocation, several at a time.</summary>
/// <remarks>
/// The ratio of a stretch, f = (1 − q)/(1 − q/M) with q = A/(L t), costs a root and three divisions. Nearly no stretch
/// needs it, because only one that is weaker than the weakest so far, b, can change the answer, and that is told without
/// root or division. With M > 1, A ≤ L t and 0 &lt; b ≤ 1:
///
///     f &lt; b   ⇔   M (L t − A) &lt; b (M L t − A)            both sides of f times its positive denominator M L t − A
///             ⇔   b A &lt; M g,   g = A − (1 − b) L t
///             ⇔   g > 0  and  b² A² &lt; M² g²               M² is a polynomial of z, or the square of a straight line
///
/// The right-hand side is tested as M² g |g|, which is negative where g is. Lengths are put in units of sqrt(D t) and areas
/// in t sqrt(D t), so that z = L² and A0 = L. L and A are differences, so either side is off by some 1e-16 of itself times
/// (whole length / L) times (M / b) at most. A stretch that close to the border is computed in full and compared by its
/// computed ratio; a profile so uneven that the border would be wide has every stretch computed in full. The answer is the
/// same to the last bit as that of the plain double loop, whatever the width of the vectors: the first of the least ratios.
/// </remarks>
internal static class EffectiveAreaSearch
{
    private const int OnStack = 1024;
    private const double WidestBorder = 1e-3;

    public static EffectiveSection Weakest(ReadOnlySpan<double> x, ReadOnlySpan<double> d, double D, double t)
    {
        var size = (3 * x.Length) + (2 * Vector<double>.Count);
        if (size <= OnStack)
        {
            return Search(x, d, D, t, stackalloc double[size]);
        }
        var rented = ArrayPool<double>.Shared.Rent(size);
        try
        {
            return Search(x, d, D, t, rented.AsSpan(0, size));
        }
        finally
        {
            ArrayPool<double>.Shared.Return(rented);
        }
    }

    private static EffectiveSection Search(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> d,
        double D,
        double t,
        Span<double> scratch
    )
    {
        var n = x.Length;
        var area = scratch[..n];
        var X = scratch.Slice(n, n + Vector<double>.Count);
        var C = scratch.Slice((2 * n) + Vector<double>.Count, n + Vector<double>.Count);
        Accumulate(x, d, 1 / Math.Sqrt(D * t), t, area, X, C);
        var best = new Best(x, area, D, t, BorderOf(x, d, D, t));
        best.Try(0, 1);
        // z grows with j and falls with i, so one moving mark parts the two branches of M. A stretch a hair below z = 50 is
        // tested with the upper branch, whose M is larger: it is never overlooked. So are those that a vector reaches past the
        // mark: they are tested again by their own branch, and what is computed is always the full ratio.
        var mark = 1;
        for (var i = 0; i < n - 1; i++)
        {
            while (mark < n && (X[mark] - X[i]) * (X[mark] - X[i]) <= 50 * (1 - WidestBorder))
            {
                mark++;
            }
            Short(ref best, X, C, i, mark);
            Long(ref best, X, C, i, mark, n);
        }
        return best.Section();
    }

    private static void Accumulate(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> d,
        double scale,
        double t,
        Span<double> area,
        Span<double> X,
        Span<double> C
    )
    {
        var n = x.Length;
        area[0] = C[0] = 0;
        X[0] = 0;
        for (var k = 1; k < n; k++)
        {
            area[k] = area[k - 1] + 0.5 * (x[k] - x[k - 1]) * (d[k] + d[k - 1]);
            X[k] = (x[k] - x[0]) * scale;
            C[k] = area[k] * scale / t;
        }
        // Past the end: a sound wall without end, which no test takes for weak, so that the last vector may run over.
        X[n..].Fill(1e30);
        C[n..].Fill(C[n - 1]);
    }

    private static double BorderOf(ReadOnlySpan<double> x, ReadOnlySpan<double> d, double D, double t)
    {
        var (closest, deepest) = (double.MaxValue, d[0]);
        for (var k = 1; k < x.Length; k++)
        {
            closest = Math.Min(closest, x[k] - x[k - 1]);
            deepest = Math.Max(deepest, d[k]);
        }
        var whole = x[^1] - x[0];
        var M = 4.9 + (0.032 * whole * whole / (D * t));
        return 1e-14 * (whole / closest) * M / (1 - (deepest / t));
    }

    // z ≤ 50: M² = 1 + 0.6275 z − 0.003375 z²
    private static void Short(ref Best best, ReadOnlySpan<double> X, ReadOnlySpan<double> C, int i, int mark)
    {
        ref var x0 = ref MemoryMarshal.GetReference(X);
        ref var c0 = ref MemoryMarshal.GetReference(C);
        var (xi, ci) = (new Vector<double>(X[i]), new Vector<double>(C[i]));
        var (a, b) = (new Vector<double>(0.6275), new Vector<double>(0.003375));
        var (kept, square) = (new Vector<double>(best.Kept), new Vector<double>(best.Square));
        for (var j = i + 1; j < mark; j += Vector<double>.Count)
        {
            var L = Vector.LoadUnsafe(ref x0, (nuint)j) - xi;
            var A = Vector.LoadUnsafe(ref c0, (nuint)j) - ci;
            var g = A - (L * kept);
            var z = L * L;
            var M2 = Vector<double>.One + (z * (a - (z * b)));
            if (Vector.GreaterThanAny(M2 * g * Vector.Abs(g), A * A * square))
            {
                best.TryFrom(i, j);
                (kept, square) = (new Vector<double>(best.Kept), new Vector<double>(best.Square));
            }
        }
    }

    // z > 50: M² = (0.032 z + 3.3)²
    private static void Long(ref Best best, ReadOnlySpan<double> X, ReadOnlySpan<double> C, int i, int mark, int n)
    {
        ref var x0 = ref MemoryMarshal.GetReference(X);
        ref var c0 = ref MemoryMarshal.GetReference(C);
        var (xi, ci) = (new Vector<double>(X[i]), new Vector<double>(C[i]));
        var (a, b) = (new Vector<double>(0.032), new Vector<double>(3.3));
        var (kept, square) = (new Vector<double>(best.Kept), new Vector<double>(best.Square));
        for (var j = mark; j < n; j += Vector<double>.Count)
        {
            var L = Vector.LoadUnsafe(ref x0, (nuint)j) - xi;
            var A = Vector.LoadUnsafe(ref c0, (nuint)j) - ci;
            var Mg = ((L * L * a) + b) * (A - (L * kept));
            if (Vector.GreaterThanAny(Mg * Vector.Abs(Mg), A * A * square))
            {
                best.TryFrom(i, j);
                (kept, square) = (new Vector<double>(best.Kept), new Vector<double>(best.Square));
            }
        }
    }

    /// <summary>The weakest stretch so far, with what the test needs of its ratio.</summary>
    private ref struct Best(ReadOnlySpan<double> x, ReadOnlySpan<double> area, double D, double t, double border)
    {
        private readonly ReadOnlySpan<double> x = x;
        private readonly ReadOnlySpan<double> area = area;
        private int from;
        private int to;
        private double ratio = double.PositiveInfinity;

        /// <summary>1 − b.</summary>
        public double Kept { get; private set; }

        /// <summary>b², less the border.</summary>
        public double Square { get; private set; }

        /// <summary>Computes the stretches of one vector.</summary>
        public void TryFrom(int i, int j)
        {
            var end = Math.Min(j + Vector<double>.Count, x.Length);
            for (; j < end; j++)
            {
                Try(i, j);
            }
        }

        public void Try(int i, int j)
        {
            var L = x[j] - x[i];
            var f = PipelineMetalLoss.Ratio((area[j] - area[i]) / (L * t), L * L / (D * t));
            if (f < ratio)
            {
                (from, to, ratio) = (i, j, f);
                (Kept, Square) = border < WidestBorder ? (1 - f, f * f * (1 - border)) : (0, -1);
            }
        }

        public readonly EffectiveSection Section() =>
            new(from, to, x[to] - x[from], area[to] - area[from], Math.Min(1, ratio));
    }
}
