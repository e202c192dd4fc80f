namespace RepairOrders.Benchmarks;

/// <summary>River-bottom profiles to time with: a corroded valley of several pits, seeded, the same in every run.</summary>
internal static class RiverBottoms
{
    public static (double[] X, double[] D) Make(int points, double spacing, double wall, int seed)
    {
        var random = new Random(seed);
        var (x, d) = (new double[points], new double[points]);
        var pits = Enumerable
            .Range(0, 2 + (points / 60))
            .Select(_ =>
                (
                    At: random.NextDouble() * points,
                    Wide: 2 + (random.NextDouble() * points / 12),
                    Deep: wall * (0.1 + (0.5 * random.NextDouble()))
                )
            )
            .ToArray();
        for (var i = 0; i < points; i++)
        {
            x[i] = i * spacing;
            var deepest = pits.Max(p => p.Deep * Math.Exp(-Math.Pow((i - p.At) / p.Wide, 2)));
            d[i] = i == 0 || i == points - 1 ? 0 : Math.Min(0.78 * wall, deepest + (0.03 * wall * random.NextDouble()));
        }
        return (x, d);
    }
}
