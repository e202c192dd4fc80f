using MathNet.Numerics.Statistics;
using UnitsNet;

namespace RepairOrders.Engineering.Joints;

/// <summary>Preload as it scatters.</summary>
public static class Preloads
{
    /// <summary>Mean of measured preloads.</summary>
    /// <remarks>
    /// <para>Formula: F̄ = Σ F/n</para>
    /// <para>Symbols: F measured preload, N; n tests, -.</para>
    /// <para>Validity: two tests and more, of one screw, lubricant and torque.</para>
    /// <para>Reference: arithmetic mean; example Shigley, Mechanical Engineering Design, 9th ed., Table 8-14.</para>
    /// </remarks>
    /// <param name="measured">Measured preloads F.</param>
    /// <returns>Mean F̄.</returns>
    /// <exception cref="ImpossibleInputException">Fewer than two tests, or one that is not finite.</exception>
    /// <example>Ten lubricated bolts at 90 N m: 34.18 kN.</example>
    public static Force Mean(IReadOnlyList<Force> measured) => Force.FromNewtons(Newtons(measured).Mean());

    /// <summary>Standard deviation of measured preloads.</summary>
    /// <remarks>
    /// <para>Formula: s = √(Σ (F − F̄)²/(n − 1))</para>
    /// <para>Symbols: F measured preload, F̄ mean, N; n tests, -.</para>
    /// <para>Validity: two tests and more, of one screw, lubricant and torque.</para>
    /// <para>Reference: sample standard deviation; example Shigley, Mechanical Engineering Design, 9th ed., Table 8-14.</para>
    /// </remarks>
    /// <param name="measured">Measured preloads F.</param>
    /// <returns>Standard deviation s.</returns>
    /// <exception cref="ImpossibleInputException">Fewer than two tests, or one that is not finite.</exception>
    /// <example>Ten lubricated bolts at 90 N m: 2.88 kN.</example>
    public static Force Deviation(IReadOnlyList<Force> measured) =>
        Force.FromNewtons(Newtons(measured).StandardDeviation());

    /// <summary>Low estimate of a preload set by a torque wrench.</summary>
    /// <remarks>
    /// <para>Formula: F low = F (1 − q)</para>
    /// <para>Symbols: F nominal preload, N; q scatter, -.</para>
    /// <para>Validity: q 0.35 unlubricated, 0.25 lubricated, by torque wrench.</para>
    /// <para>Reference: NASA-STD-5020 practice, from memory.</para>
    /// </remarks>
    /// <param name="nominal">Nominal preload F.</param>
    /// <param name="scatter">Scatter q [-].</param>
    /// <returns>Low estimate.</returns>
    /// <exception cref="ImpossibleInputException">A scatter outside 0 to 1.</exception>
    /// <example>1000 N dry: 650 N.</example>
    public static Force Low(Force nominal, double scatter) =>
        Force.FromNewtons(Require.NotNegative("preloadN", nominal.Newtons))
        * (1 - Require.Between("scatter", scatter, 0, 1));

    /// <summary>High estimate of a preload set by a torque wrench.</summary>
    /// <remarks>
    /// <para>Formula: F high = F (1 + q)</para>
    /// <para>Symbols: as <see cref="Low"/>.</para>
    /// <para>Validity: as <see cref="Low"/>.</para>
    /// <para>Reference: NASA-STD-5020 practice, from memory.</para>
    /// </remarks>
    /// <param name="nominal">Nominal preload F.</param>
    /// <param name="scatter">Scatter q [-].</param>
    /// <returns>High estimate.</returns>
    /// <exception cref="ImpossibleInputException">A scatter outside 0 to 1.</exception>
    /// <example>1000 N dry: 1350 N.</example>
    public static Force High(Force nominal, double scatter) =>
        Force.FromNewtons(Require.NotNegative("preloadN", nominal.Newtons))
        * (1 + Require.Between("scatter", scatter, 0, 1));

    private static IEnumerable<double> Newtons(IReadOnlyList<Force> measured)
    {
        ArgumentNullException.ThrowIfNull(measured);
        Require.Between("tests", measured.Count, 2, 1_000_000);
        return measured.Select(f => Require.Finite("preloadN", f.Newtons));
    }
}
