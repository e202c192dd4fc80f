using System.Numerics;

namespace RepairOrders.Engineering.Life;

/// <summary>The point of a limit state nearest to the mean, in standard normals.</summary>
/// <param name="Beta">Reliability index β: its distance, negative where the mean itself falls short.</param>
/// <param name="Point">The point u*.</param>
internal sealed record DesignPoint(double Beta, double[] Point)
{
    public double Probability => NormalTail.Above(Beta);
}

// First-order reliability: the nearest point by Hasofer and Lind's iteration (Rackwitz and Fiessler 1978) with the merit function
// of Zhang and Der Kiureghian (1995), then P = Φ(−β).
internal static class FirstOrder
{
    private const int Variables = 4;
    private const double Step = 1e-5;
    private const double Farthest = 38; // Φ(−38) is the least number a double can hold

    public static DesignPoint? Nearest(Func<double[], double> limit)
    {
        var u = new double[Variables];
        var atMean = limit(u);
        for (var round = 0; round < 200; round++)
        {
            var value = limit(u);
            var slope = Slope(limit, u);
            var steep = Length(slope);
            if (!(steep > 0) || !double.IsFinite(steep))
            {
                return null;
            }
            var scale = (Dot(slope, u) - value) / (steep * steep);
            var move = slope.Zip(u, (s, x) => scale * s - x).ToArray();
            if (Length(move) < 1e-7 && Math.Abs(value) < 1e-7 * steep)
            {
                return new(Math.CopySign(Length(u), atMean), u);
            }
            u = Moved(limit, u, move, 2 * Length(u) / steep + 10 / steep);
            if (Length(u) > Farthest)
            {
                return new(Math.CopySign(Farthest, atMean), u);
            }
        }
        return null;
    }

    private static double[] Moved(Func<double[], double> limit, double[] u, double[] move, double weight)
    {
        double Merit(double[] at) => Dot(at, at) / 2 + weight * Math.Abs(limit(at));
        var now = Merit(u);
        var share = 1.0;
        var next = Along(u, move, share);
        for (var halving = 0; halving < 30 && Merit(next) >= now; halving++)
        {
            share /= 2;
            next = Along(u, move, share);
        }
        return next;
    }

    private static double[] Along(double[] u, double[] move, double share) => [.. u.Zip(move, (x, m) => x + share * m)];

    private static double[] Slope(Func<double[], double> limit, double[] u)
    {
        var slope = new double[Variables];
        for (var i = 0; i < Variables; i++)
        {
            var (up, down) = ((double[])u.Clone(), (double[])u.Clone());
            up[i] += Step;
            down[i] -= Step;
            slope[i] = (limit(up) - limit(down)) / (2 * Step);
        }
        return slope;
    }

    private static double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();

    private static double Length(double[] a) => Math.Sqrt(Dot(a, a));

    public static double WallMargin(in OutlivingModel model, double years, double[] u) =>
        WallThen(model, years, u) - model.RequiredWall;

    public static double StrengthMargin(in OutlivingModel model, double years, double[] u) =>
        WallThen(model, years, u) - model.StrengthWall(Lane(u[2]), Lane(u[3]))[0];

    public static double WallThen(in OutlivingModel model, double years, double[] u) =>
        model.WallNow(Lane(u[0]))[0] - model.Rate(Lane(u[0]), Lane(u[1]))[0] * years;

    private static Vector<double> Lane(double value) => new(value);
}
