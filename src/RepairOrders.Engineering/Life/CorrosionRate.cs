using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Strength;
using UnitsNet;

namespace RepairOrders.Engineering.Life;

/// <summary>How fast a wall is lost: the bare rate, its unit, and the choice of the rate to reckon with.</summary>
public static class CorrosionRate
{
    /// <summary>Days in a year here: the Julian year, as dates are counted.</summary>
    public const double DaysPerYear = 365.25;

    /// <summary>Readings closer together than this give no rate: the scatter of the probe outweighs the loss.</summary>
    public const double LeastYearsBetween = 0.5;

    private const double SecondsPerYear = DaysPerYear * 86_400;

    /// <summary>Least rate reckoned with on wet carbon steel, so that no wall lives for ever: 0.05 mm a year, own rule.</summary>
    public static Speed DefaultFloor => FromMillimetresPerYear(0.05);

    /// <summary>Mean corrosion rate between two readings of one spot, by API 570.</summary>
    /// <remarks>
    /// <para>Formula: CR = (t_first − t_last)/years.</para>
    /// <para>Symbols: CR rate, mm/y; t_first earlier wall, mm; t_last later wall, mm; years time between, y.</para>
    /// <para>Validity: same spot, same probe, readings at least 0.5 y apart; a negative rate is scatter.</para>
    /// <para>Reference: API 570, 7.1.1, long-term and short-term rate (public reproduction of the clause).</para>
    /// </remarks>
    /// <param name="first">Earlier wall t_first.</param>
    /// <param name="last">Later wall t_last.</param>
    /// <param name="between">Time between the readings.</param>
    /// <returns>Rate CR; negative where the later wall reads thicker.</returns>
    /// <exception cref="ImpossibleInputException">A wall is negative or the time is not above 0.</exception>
    /// <example>0.375 in and 0.255 in, 20 years apart: CR = 0.120/20 = 0.006 in a year.</example>
    public static Speed Between(Length first, Length last, Duration between)
    {
        var t_first = Take.Extent("firstWallMm", first);
        var t_last = Take.Extent("lastWallMm", last);
        var years = Require.Between("yearsBetween", between.Days / DaysPerYear, 0.001, 10_000);
        return FromMillimetresPerYear((t_first - t_last) / years);
    }

    /// <summary>Least local rate of a wall that has leaked through: all of it went within the pipe's age.</summary>
    /// <remarks>
    /// <para>Formula: CR = t_nom/age.</para>
    /// <para>Symbols: CR rate, mm/y; t_nom nominal wall, mm; age years in service, y.</para>
    /// <para>Validity: a through-wall leak by corrosion; the true rate is higher where corrosion began late.</para>
    /// <para>Reference: derived here: the circuit's average says nothing of a spot that is through.</para>
    /// </remarks>
    /// <param name="nominal">Nominal wall t_nom.</param>
    /// <param name="age">Time in service.</param>
    /// <returns>Rate CR.</returns>
    /// <exception cref="ImpossibleInputException">Wall or age is not above 0.</exception>
    /// <example>7.11 mm through after 18 years: CR = 7.11/18 = 0.395 mm a year.</example>
    public static Speed ThroughWallAtLeast(Length nominal, Duration age)
    {
        var t_nom = Require.Between("nominalWallMm", nominal.Millimeters, 0.001, 10_000);
        var years = Require.Between("ageYears", age.Days / DaysPerYear, 0.001, 10_000);
        return FromMillimetresPerYear(t_nom / years);
    }

    /// <summary>A rate from the trade's unit.</summary>
    /// <remarks>
    /// <para>Formula: v = r/(1000 · 365.25 · 86 400).</para>
    /// <para>Symbols: v rate, m/s; r rate, mm/y.</para>
    /// <para>Validity: any finite rate.</para>
    /// <para>Reference: the Julian year of 365.25 days, by definition.</para>
    /// </remarks>
    /// <param name="rate">Rate r [mm/y].</param>
    /// <returns>The rate.</returns>
    /// <exception cref="ImpossibleInputException">The rate is not finite.</exception>
    /// <example>1 mm a year is 3.1688 × 10⁻¹¹ m/s.</example>
    public static Speed FromMillimetresPerYear(double rate) =>
        Speed.FromMetersPerSecond(
            Require.Between("corrosionRateMmPerYear", rate, -1e13, 1e13) / (1000 * SecondsPerYear)
        );

    /// <summary>A rate in the trade's unit.</summary>
    /// <remarks>
    /// <para>Formula: r = 1000 · 365.25 · 86 400 · v.</para>
    /// <para>Symbols: r rate, mm/y; v rate, m/s.</para>
    /// <para>Validity: any finite rate.</para>
    /// <para>Reference: the Julian year of 365.25 days, by definition.</para>
    /// </remarks>
    /// <param name="rate">Rate v.</param>
    /// <returns>Rate r [mm/y].</returns>
    /// <exception cref="ImpossibleInputException">Never: a quantity is finite.</exception>
    /// <example>3.1688 × 10⁻¹¹ m/s is 1 mm a year.</example>
    public static double MillimetresPerYear(this Speed rate) => rate.MetersPerSecond * (1000 * SecondsPerYear);

    /// <summary>Long-term and short-term rate of the spot last measured thinnest, and the rate to reckon with: the greatest of
    /// them, of the through-wall rate and of the floor.</summary>
    /// <remarks>
    /// <para>Formula: see <see cref="Between"/> and <see cref="ThroughWallAtLeast"/>; CR = max(CR_LT, CR_ST, t_nom/age where it leaked through, floor).</para>
    /// <para>Symbols: those of <see cref="Between"/>; CR_LT first reading to last, mm/y; CR_ST last but one to last, mm/y.</para>
    /// <para>Validity: readings of one spot; pairs under 0.5 y apart, averages over pits and other spots are left out and told.</para>
    /// <para>Reference: API 570, 7.1.1 (public reproduction of the clause); rules for bad data are our own.</para>
    /// </remarks>
    /// <param name="history">Readings and what is known of the pipe.</param>
    /// <returns>The rates, with working and what was left out.</returns>
    /// <exception cref="ImpossibleInputException">No usable reading, a wall that cannot be, or a date before the pipe's first day.</exception>
    /// <example>12 mm and 10 mm, 5 years apart: CR_LT = 2/5 = 0.40 mm a year, which governs.</example>
    public static Calculated<CorrosionRates> Assess(WallHistory history)
    {
        ArgumentNullException.ThrowIfNull(history);
        return new RateChoice(history).Choose();
    }
}
