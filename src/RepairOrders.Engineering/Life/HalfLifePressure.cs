using UnitsNet;

namespace RepairOrders.Engineering.Life;

/// <summary>The pressure a wall may carry until it is next read.</summary>
public static class HalfLifePressure
{
    /// <summary>Greatest working pressure with twice the loss expected before the next reading taken off the wall.</summary>
    /// <remarks>
    /// <para>Formula: MAWP = 2 S E (t − 2 CR y)/D.</para>
    /// <para>Symbols: MAWP gauge pressure, MPa; S allowable stress, MPa; E joint quality factor, -; t wall read, mm; CR rate, mm/y; y years until the next reading; D outside diameter, mm.</para>
    /// <para>Validity: straight pipe, t &lt; D/6; t above twice the loss, else 0.</para>
    /// <para>Reference: API 570, 7.2, Table 7-1 (public copy of the page).</para>
    /// </remarks>
    /// <param name="allowableStress">Allowable stress S.</param>
    /// <param name="qualityFactor">Joint quality factor E [-], above 0 to 1.</param>
    /// <param name="wall">Wall read t.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="rate">Corrosion rate CR; below 0 counts as 0.</param>
    /// <param name="untilNext">Time until the next reading.</param>
    /// <returns>Gauge pressure MAWP; 0 where nothing is left.</returns>
    /// <exception cref="ImpossibleInputException">A size is not above 0, the wall is half the diameter or more, or the factor is above 1.</exception>
    /// <example>20 000 psi, E 1, 0.32 in, 16 in, 0.01 in a year, 5 years: 2 × 20 000 × (0.32 − 0.10)/16 = 550 psi.</example>
    public static Pressure Of(
        Pressure allowableStress,
        double qualityFactor,
        Length wall,
        Length outsideDiameter,
        Speed rate,
        Duration untilNext
    )
    {
        var S = Require.Positive("allowableStressMpa", allowableStress.Megapascals);
        var E = Require.Positive("qualityFactor", Require.Between("qualityFactor", qualityFactor, 0, 1));
        var D = Require.Positive("outsideDiameterMm", outsideDiameter.Millimeters);
        var t = Require.Between("remainingWallMm", wall.Millimeters, 0, D / 2);
        var years = Require.NotNegative("yearsUntilNext", untilNext.Days / CorrosionRate.DaysPerYear);
        var loss = Math.Max(0, rate.MillimetresPerYear()) * years;
        return Pressure.FromMegapascals(Math.Max(0, 2 * S * E * (t - 2 * loss) / D));
    }
}
