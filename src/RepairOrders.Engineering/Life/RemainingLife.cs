using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using static System.FormattableString;

namespace RepairOrders.Engineering.Life;

/// <summary>How long a wall lasts at its rate, and when it is read again.</summary>
/// <param name="Remaining">Time until the wall is down to what is required; nothing where the rate is not known.</param>
/// <param name="ReachesRequiredOn">The day it gets there; nothing where the rate is not known or the day is past the calendar.</param>
/// <param name="HalfLife">Half the remaining life.</param>
/// <param name="ThicknessInterval">Longest interval of thickness readings; nothing where neither life nor class sets one.</param>
/// <param name="VisualInterval">Longest interval of outside looks; nothing where neither life nor class sets one.</param>
/// <param name="ThicknessBy">Day of the next thickness reading.</param>
public sealed record LifeForecast(
    Duration? Remaining,
    DateOnly? ReachesRequiredOn,
    Duration? HalfLife,
    Duration? ThicknessInterval,
    Duration? VisualInterval,
    DateOnly? ThicknessBy
);

/// <summary>Remaining life and the intervals that follow from it, by API 570.</summary>
public static class RemainingLife
{
    // Beyond a million years there is no end to speak of, and no number to spoil the sums.
    internal const double LongestYears = 1e6;

    private static readonly Clause Life = new("API 570", "7.1.1");
    private static readonly Clause Own = new("revisit of a temporary repair", "", Provenance.OwnRule);

    /// <summary>Remaining life of a wall, by API 570.</summary>
    /// <remarks>
    /// <para>Formula: RL = (t_actual − t_required)/CR.</para>
    /// <para>Symbols: RL remaining life, y; t_actual wall read, mm; t_required least wall the design relies on, mm; CR rate, mm/y.</para>
    /// <para>Validity: the rate goes on as it was; a rate of 0 or less gives no end, so a floor is set before it comes here.</para>
    /// <para>Reference: API 570, 7.1.1 (public reproduction of the clause).</para>
    /// </remarks>
    /// <param name="actual">Wall read t_actual.</param>
    /// <param name="required">Least wall t_required.</param>
    /// <param name="rate">Corrosion rate CR.</param>
    /// <returns>Remaining life RL; 0 where the wall is short already, nothing where the rate is 0 or less.</returns>
    /// <exception cref="ImpossibleInputException">A wall is negative.</exception>
    /// <example>0.21 in read, 0.15 in required, 0.010 in a year: RL = 0.06/0.010 = 6.0 years.</example>
    public static Duration? Of(Length actual, Length required, Speed rate)
    {
        var t_actual = Take.Extent("remainingWallMm", actual);
        var t_required = Take.Extent("requiredWallMm", required);
        var CR = rate.MillimetresPerYear();
        if (t_actual <= t_required)
        {
            return Duration.Zero;
        }
        var years = (t_actual - t_required) / CR;
        return CR > 0 && years <= LongestYears ? Years(years) : null;
    }

    /// <summary>Longest interval of readings: half the remaining life, never above the class's.</summary>
    /// <remarks>
    /// <para>Formula: interval = min(RL/2, class maximum).</para>
    /// <para>Symbols: RL remaining life, y.</para>
    /// <para>Validity: where one of the two is not set the other governs; where neither is, there is no interval.</para>
    /// <para>Reference: API 570, Table 2 (county case file).</para>
    /// </remarks>
    /// <param name="remaining">Remaining life RL; nothing where it has no end.</param>
    /// <param name="classMaximum">Longest interval of the class [y]; nothing where it is optional.</param>
    /// <returns>The interval; nothing where neither sets one.</returns>
    /// <exception cref="ImpossibleInputException">A life or an interval is negative.</exception>
    /// <example>RL 140 y in class 2 (10 y): 10 y. RL 6.0 y: 3.0 y.</example>
    public static Duration? Interval(Duration? remaining, double? classMaximum)
    {
        double? half = remaining is { } RL
            ? Require.Between("remainingLifeYears", RL.Days / CorrosionRate.DaysPerYear, 0, 1e9) / 2
            : null;
        double? longest = classMaximum is { } years ? Require.Between("classMaximumYears", years, 0.001, 1000) : null;
        return (half, longest) switch
        {
            ({ } h, { } c) => Years(Math.Min(h, c)),
            ({ } h, null) => Years(h),
            (null, { } c) => Years(c),
            _ => null,
        };
    }

    /// <summary>Remaining life, half-life and the next reading of a wall.</summary>
    /// <remarks>
    /// <para>Formula: see <see cref="Of"/> and <see cref="Interval"/>.</para>
    /// <para>Symbols: those of <see cref="Of"/>.</para>
    /// <para>Validity: that of <see cref="Of"/>; the wall is that beside and beneath the repair, with the local rate.</para>
    /// <para>Reference: API 570, 7.1.1 and Table 2; the limit of 30 days is our own.</para>
    /// </remarks>
    /// <param name="rates">Wall and rate, as <see cref="CorrosionRate.Assess"/> gives them.</param>
    /// <param name="required">Least wall t_required: the required wall where the pipe carries the pressure, else what the design relies on.</param>
    /// <param name="interval">Class maxima.</param>
    /// <returns>Life and intervals, with working and findings.</returns>
    /// <exception cref="ImpossibleInputException">A wall is negative.</exception>
    /// <example>0.21 in read, 0.15 in required, 0.010 in a year, class 1: RL 6.0 y, half-life 3.0 y, which governs over 5 y.</example>
    public static Calculated<LifeForecast> Forecast(CorrosionRates rates, Length required, InspectionInterval interval)
    {
        ArgumentNullException.ThrowIfNull(rates);
        ArgumentNullException.ThrowIfNull(interval);
        var working = new Working();
        var findings = new List<Finding>();
        var t_actual = working.Given("t_actual", "wall read", rates.Actual.Millimeters, "mm", Life);
        var t_required = working.Given("t_required", "least wall relied on", required.Millimeters, "mm", Life);

        Duration? remaining = null;
        if (rates.Governing is { } rate)
        {
            remaining = Of(rates.Actual, required, rate);
            if (remaining is { } RL)
            {
                working.Step(
                    "RL",
                    "remaining life",
                    "(t_actual − t_required)/CR",
                    $"({t_actual} − {t_required})/{rate.MillimetresPerYear()}",
                    RL.Days / CorrosionRate.DaysPerYear,
                    "y",
                    Life
                );
                findings.AddRange(Margins(t_actual, t_required, RL));
            }
        }
        else
        {
            findings.Add(new("rate-unknown", Severity.Fail, "No rate, so no remaining life.", null, null, null, Life));
        }

        var thickness = Interval(remaining, interval.ThicknessYears);
        Note(working, thickness, remaining, "thickness interval", interval.ThicknessYears, interval.Source);
        var visual = Interval(remaining, interval.VisualYears);
        Note(working, visual, remaining, "outside look interval", interval.VisualYears, interval.Source);
        return new(
            new(
                remaining,
                remaining is { } life ? DayAfter(rates.ActualOn, life) : null,
                remaining is { } whole ? whole / 2 : null,
                thickness,
                visual,
                thickness is { } next ? DayAfter(rates.ActualOn, next) : null
            ),
            [.. working],
            findings,
            []
        );
    }

    private static IEnumerable<Finding> Margins(double t_actual, double t_required, Duration remaining)
    {
        yield return t_actual <= t_required
            ? new(
                "wall-short",
                Severity.Fail,
                Invariant(
                    $"The wall of {t_actual:G4} mm is not above the {t_required:G4} mm relied on: no life is left."
                ),
                t_actual,
                t_required,
                "mm",
                Life
            )
            : new(
                "wall-short",
                Severity.Pass,
                Invariant($"The wall of {t_actual:G4} mm is above the {t_required:G4} mm relied on."),
                t_actual,
                t_required,
                "mm",
                Life
            );
        var halfDays = remaining.Days / 2;
        if (halfDays < 30)
        {
            yield return new(
                "half-life-under-30-days",
                Severity.Fail,
                Invariant(
                    $"Half the remaining life is {halfDays:F0} days: under 30 days a repair is not a plan. Escalate."
                ),
                halfDays,
                30,
                "d",
                Own
            );
        }
        else if (remaining.Days < 4 * CorrosionRate.DaysPerYear)
        {
            yield return new(
                "life-under-4-years",
                Severity.Watch,
                "Under 4 years of life want tight control; half the life stays the longest interval.",
                remaining.Days / CorrosionRate.DaysPerYear,
                4,
                "y",
                Own
            );
        }
    }

    private static void Note(
        Working working,
        Duration? value,
        Duration? remaining,
        string words,
        double? classMaximum,
        Clause source
    )
    {
        if (value is not { } interval)
        {
            return;
        }
        working.Step(
            "interval",
            words,
            "min(RL/2, class maximum)",
            (remaining?.Days / CorrosionRate.DaysPerYear, classMaximum) switch
            {
                ({ } RL, { } most) => $"min({RL}/2, {most})",
                ({ } RL, null) => (FormattableString)$"{RL}/2; the class sets none",
                (_, { } most) => $"{most}; no life sets one",
                _ => $"none",
            },
            interval.Days / CorrosionRate.DaysPerYear,
            "y",
            source
        );
    }

    // Down to the whole day, so that a part of a day never adds life.
    internal static DateOnly? DayAfter(DateOnly start, Duration time) =>
        Math.Floor(time.Days) is var days && days <= DateOnly.MaxValue.DayNumber - start.DayNumber
            ? start.AddDays((int)days)
            : null;

    internal static Duration Years(double years) => Duration.FromDays(years * CorrosionRate.DaysPerYear);
}
