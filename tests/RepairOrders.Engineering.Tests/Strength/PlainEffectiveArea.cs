using RepairOrders.Engineering.Strength;

namespace RepairOrders.Engineering.Tests.Strength;

/// <summary>The effective area as one would write it down: every stretch in turn, nothing skipped. The oracle of the fast search.</summary>
internal static class PlainEffectiveArea
{
    public static EffectiveSection Weakest(double[] x, double[] d, double D, double t)
    {
        var area = new double[x.Length];
        for (var k = 1; k < x.Length; k++)
        {
            area[k] = area[k - 1] + 0.5 * (x[k] - x[k - 1]) * (d[k] + d[k - 1]);
        }
        var best = new EffectiveSection(0, 0, 0, 0, double.PositiveInfinity);
        for (var i = 0; i < x.Length - 1; i++)
        {
            for (var j = i + 1; j < x.Length; j++)
            {
                var L = x[j] - x[i];
                var A = area[j] - area[i];
                var f = Ratio(A / (L * t), L * L / (D * t));
                if (f < best.StrengthRatio)
                {
                    best = new(i, j, L, A, f);
                }
            }
        }
        return best with { StrengthRatio = Math.Min(1, best.StrengthRatio) };
    }

    private static double Ratio(double q, double z)
    {
        var M = z <= 50 ? Math.Sqrt(1 + 0.6275 * z - 0.003375 * z * z) : 0.032 * z + 3.3;
        return q < 1 ? (1 - q) / (1 - q / M) : 0;
    }
}
