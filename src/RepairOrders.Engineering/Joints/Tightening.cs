using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Joints;

/// <summary>Torque and preload of a screw.</summary>
public static class Tightening
{
    /// <summary>Preload from torque, by the nut factor.</summary>
    /// <remarks>
    /// <para>Formula: F = M/(K d)</para>
    /// <para>Symbols: F preload, N; M torque, N m; K nut factor, -; d nominal diameter, m.</para>
    /// <para>Validity: one straight screw; not for a worm drive, which has no nut factor. K scatters widely: see <see cref="NutFactors"/>.</para>
    /// <para>Reference: Shigley, Mechanical Engineering Design, 9th ed., eq. 8-27.</para>
    /// </remarks>
    /// <param name="torque">Torque M.</param>
    /// <param name="nutFactor">Nut factor K [-].</param>
    /// <param name="diameter">Nominal diameter d.</param>
    /// <returns>Preload F.</returns>
    /// <exception cref="ImpossibleInputException">Negative, not finite, or a nut factor or diameter of 0.</exception>
    /// <example>M6, 3 N m: 1667 N at K 0.30, 1000 N at K 0.50.</example>
    public static Force Preload(Torque torque, double nutFactor, Length diameter)
    {
        var M = Require.NotNegative("torqueNm", torque.NewtonMeters);
        var K = Require.Between("nutFactor", nutFactor, 0.01, 2);
        var d = Require.Positive("boltDiameterMm", diameter.Millimeters) / 1000;
        return Force.FromNewtons(M / (K * d));
    }

    /// <summary>Torque for a preload, by the nut factor.</summary>
    /// <remarks>
    /// <para>Formula: M = K d F</para>
    /// <para>Symbols: as <see cref="Preload"/>.</para>
    /// <para>Validity: as <see cref="Preload"/>.</para>
    /// <para>Reference: as <see cref="Preload"/>.</para>
    /// </remarks>
    /// <param name="preload">Preload F.</param>
    /// <param name="nutFactor">Nut factor K [-].</param>
    /// <param name="diameter">Nominal diameter d.</param>
    /// <returns>Torque M.</returns>
    /// <exception cref="ImpossibleInputException">Negative, not finite, or a nut factor or diameter of 0.</exception>
    /// <example>K 0.2, 3/4 in, 25 000 lbf: 3750 lbf in.</example>
    public static Torque ForPreload(Force preload, double nutFactor, Length diameter)
    {
        var F = Require.NotNegative("preloadN", preload.Newtons);
        var K = Require.Between("nutFactor", nutFactor, 0.01, 2);
        var d = Require.Positive("boltDiameterMm", diameter.Millimeters) / 1000;
        return Torque.FromNewtonMeters(K * d * F);
    }

    /// <summary>Torque for a preload from thread and collar friction.</summary>
    /// <remarks>
    /// <para>Formula: M = F d [(dm/2d)(tan λ + f sec 30°)/(1 − f tan λ sec 30°) + 0.625 fc], tan λ = l/(π dm)</para>
    /// <para>Symbols: F preload, N; d nominal, dm pitch diameter, m; l lead, m; f thread, fc collar friction, -.</para>
    /// <para>Validity: 60° threads, hexagon head (collar diameter 1.25 d).</para>
    /// <para>Reference: Shigley, Mechanical Engineering Design, 9th ed., eq. 8-26.</para>
    /// </remarks>
    /// <param name="preload">Preload F.</param>
    /// <param name="diameter">Nominal diameter d.</param>
    /// <param name="pitchDiameter">Pitch diameter dm.</param>
    /// <param name="lead">Lead of the thread l.</param>
    /// <param name="threadFriction">Thread friction f [-].</param>
    /// <param name="collarFriction">Collar friction fc [-].</param>
    /// <returns>Torque M.</returns>
    /// <exception cref="ImpossibleInputException">Negative, not finite, or a size of 0.</exception>
    /// <example>25 000 lbf, 3/4-16, dm 0.709256 in, f = fc = 0.15: 3551 lbf in.</example>
    public static Torque LongForm(
        Force preload,
        Length diameter,
        Length pitchDiameter,
        Length lead,
        double threadFriction,
        double collarFriction
    )
    {
        var F = Require.NotNegative("preloadN", preload.Newtons);
        var d = Require.Positive("boltDiameterMm", diameter.Millimeters);
        var dm = Require.Between("pitchDiameterMm", pitchDiameter.Millimeters, d / 2, d);
        var f = Require.Between("threadFriction", threadFriction, 0, 1);
        var fc = Require.Between("collarFriction", collarFriction, 0, 1);
        var l = Require.Between("leadMm", lead.Millimeters, 1e-6, d);
        var tan = l / (Math.PI * dm);
        var sec = 1 / Math.Cos(Math.PI / 6);
        var K = dm / (2 * d) * (tan + f * sec) / (1 - f * tan * sec) + 0.625 * fc; // eq. 8-26
        return Torque.FromNewtonMeters(F * d / 1000 * K);
    }

    /// <summary>Preload in a screw as tightened, and what may be set: low and high estimates, torque window, passes.</summary>
    /// <remarks>
    /// <para>Formula: F low = M/(K high d), F high = M/(K low d); window M least = K high d F needed to M most = K low d F allowed</para>
    /// <para>Symbols: those of <see cref="Preload"/>.</para>
    /// <para>Validity: those of <see cref="Preload"/>.</para>
    /// <para>Reference: Shigley, Mechanical Engineering Design, 9th ed., eq. 8-27; passes common practice, no source.</para>
    /// </remarks>
    /// <param name="torque">Torque M that is set.</param>
    /// <param name="diameter">Nominal diameter d.</param>
    /// <param name="nutFactorLow">Least nut factor of the lubricant in hand [-].</param>
    /// <param name="nutFactorHigh">Greatest nut factor [-].</param>
    /// <param name="needed">Preload needed at least.</param>
    /// <param name="allowed">Preload allowed at most.</param>
    /// <param name="screws">Screws in the joint.</param>
    /// <returns>Preloads, torque window and passes with working and findings.</returns>
    /// <exception cref="ImpossibleInputException">A value no joint can have, or a low nut factor above the high one.</exception>
    /// <example>M6, 3 N m, K 0.30 to 0.50: 1000 to 1667 N.</example>
    public static Calculated<TighteningPlan> Plan(
        Torque torque,
        Length diameter,
        double nutFactorLow,
        double nutFactorHigh,
        Force needed,
        Force allowed,
        int screws
    )
    {
        Require.Between("nutFactorLow", nutFactorLow, 0.01, nutFactorHigh);
        var F = new { Low = Preload(torque, nutFactorHigh, diameter), High = Preload(torque, nutFactorLow, diameter) };
        var least = ForPreload(needed, nutFactorHigh, diameter);
        var most = ForPreload(allowed, nutFactorLow, diameter);
        var window = new Window(nutFactorLow, nutFactorHigh, needed, allowed);
        var working = Working(torque, diameter, window, F.Low, F.High, least, most);
        Finding[] findings =
        [
            Finding.AtLeast("preload-low", "Low estimate of the preload", F.Low.Newtons, needed.Newtons, "N", Scatter),
            Finding.AtMost(
                "preload-high",
                "High estimate of the preload",
                F.High.Newtons,
                allowed.Newtons,
                "N",
                Scatter
            ),
        ];
        return new(
            new(F.Low, F.High, least, most, Passes.Of(torque, screws)),
            working,
            findings,
            ["Never retighten a repair in service to stop a weep: it is a failure, and a new round."]
        );
    }

    private static Clause Entered => new("as given", "", Provenance.Entered);

    private static Clause Scatter => new("Shigley, Mechanical Engineering Design, 9th ed.", "eq. 8-27");

    private sealed record Window(double Low, double High, Force Needed, Force Allowed);

    private static Working Working(
        Torque torque,
        Length diameter,
        Window window,
        Force least,
        Force most,
        Torque from,
        Torque to
    )
    {
        var w = new Working();
        var M = w.Given("M", "torque that is set", torque.NewtonMeters, "N m", Entered);
        var d = w.Given("d", "nominal diameter of the screw", diameter.Millimeters, "mm", Entered);
        var (low, high) = (window.Low, window.High);
        w.Given("K low", "least nut factor of the lubricant in hand", low, "-", Entered);
        w.Given("K high", "greatest nut factor", high, "-", Entered);
        w.Step("F low", "preload, high nut factor", "M/(K d)", $"{M}/({high} × {d}/1000)", least.Newtons, "N", Scatter);
        w.Step("F high", "preload, low nut factor", "M/(K d)", $"{M}/({low} × {d}/1000)", most.Newtons, "N", Scatter);
        w.Step(
            "M least",
            "torque that surely gives the preload needed",
            "K high d F needed",
            $"{high} × {d}/1000 × {window.Needed.Newtons}",
            from.NewtonMeters,
            "N m",
            Scatter
        );
        w.Step(
            "M most",
            "torque that surely keeps the preload allowed",
            "K low d F allowed",
            $"{low} × {d}/1000 × {window.Allowed.Newtons}",
            to.NewtonMeters,
            "N m",
            Scatter
        );
        return w;
    }
}

/// <summary>What a tightened joint has, and what may be set on it.</summary>
/// <param name="PreloadLow">Low estimate of the preload of one screw.</param>
/// <param name="PreloadHigh">High estimate.</param>
/// <param name="TorqueLeast">Least torque that surely gives the preload needed.</param>
/// <param name="TorqueMost">Greatest torque that surely keeps the preload allowed; below <paramref name="TorqueLeast"/> no torque does both.</param>
/// <param name="Passes">The passes, in order.</param>
public sealed record TighteningPlan(
    Force PreloadLow,
    Force PreloadHigh,
    Torque TorqueLeast,
    Torque TorqueMost,
    IReadOnlyList<TighteningPass> Passes
);

/// <summary>One pass over all screws.</summary>
/// <param name="Torque">Torque of the pass.</param>
/// <param name="Sequence">Screw numbers, counted round the joint from 1, in the order they are tightened.</param>
/// <param name="Words">The pass in words.</param>
public sealed record TighteningPass(Torque Torque, IReadOnlyList<int> Sequence, string Words);

/// <summary>Tightening in passes: three across, then once round.</summary>
public static class Passes
{
    /// <summary>The passes of a joint. Common practice, no source.</summary>
    /// <param name="torque">Final torque.</param>
    /// <param name="screws">Screws in the joint.</param>
    /// <returns>A third and two thirds of the torque crosswise, the full torque crosswise, and the full torque once round.</returns>
    /// <exception cref="ImpossibleInputException">No screw, or a negative torque.</exception>
    public static IReadOnlyList<TighteningPass> Of(Torque torque, int screws)
    {
        Require.NotNegative("torqueNm", torque.NewtonMeters);
        Require.Between("screws", screws, 1, 1000);
        var cross = Crosswise(screws);
        return
        [
            new(torque / 3, cross, "a third of the torque, crosswise"),
            new(torque * 2 / 3, cross, "two thirds of the torque, crosswise"),
            new(torque, cross, "full torque, crosswise"),
            new(torque, [.. Enumerable.Range(1, screws)], "full torque, once round until none turns"),
        ];
    }

    // Halving the largest gap each time: 1, opposite, then the quarters.
    private static List<int> Crosswise(int screws)
    {
        var done = new List<int> { 1 };
        while (done.Count < screws)
        {
            done.Add(
                Enumerable.Range(1, screws).Except(done).MaxBy(i => (done.Min(j => Apart(i, j)), Apart(i, done[^1])))!
            );
        }
        return done;

        int Apart(int a, int b) => Math.Min(Math.Abs(a - b), screws - Math.Abs(a - b));
    }
}
