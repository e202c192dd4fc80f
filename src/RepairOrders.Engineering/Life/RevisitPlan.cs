using RepairOrders.Engineering.Methods;
using UnitsNet;
using static System.FormattableString;

namespace RepairOrders.Engineering.Life;

/// <summary>What the risk class asks of the revisits.</summary>
/// <param name="FirstLook">Longest time from the in-service start to the first look.</param>
/// <param name="Look">Longest interval of looks.</param>
/// <param name="Thickness">Longest interval of thickness readings.</param>
/// <param name="Grace">Time a look may be late before it is overdue.</param>
public sealed record RevisitDuties(TimeSpan FirstLook, TimeSpan Look, TimeSpan Thickness, TimeSpan Grace);

/// <summary>A time and the term that set it.</summary>
/// <param name="Value">The time.</param>
/// <param name="By">The term that governs, in words.</param>
public sealed record Governed(TimeSpan Value, string By);

/// <summary>What the revisits of a repair are planned from.</summary>
/// <param name="InServiceFrom">Start in service.</param>
/// <param name="EndDate">Last day of the repair.</param>
/// <param name="Duties">Of the risk class.</param>
/// <param name="RemainingLife">Life of the wall; nothing where it is not known.</param>
/// <param name="Bound">Longest time to the next revisit, from <see cref="RevisitBound.Of"/>.</param>
public sealed record RevisitAsk(
    DateTimeOffset InServiceFrom,
    DateOnly EndDate,
    RevisitDuties Duties,
    Duration? RemainingLife,
    Duration Bound
);

/// <summary>The revisits of a repair: how often, from when, and what sets it.</summary>
/// <param name="LookInterval">Interval of looks.</param>
/// <param name="ThicknessInterval">Interval of thickness readings.</param>
/// <param name="FirstLookAfter">Time from the start to the first look.</param>
/// <param name="FirstLook">When the first look is due.</param>
/// <param name="FirstThickness">When the first thickness reading is due.</param>
/// <param name="Grace">Time a look may be late.</param>
public sealed record RevisitPlan(
    Governed LookInterval,
    Governed ThicknessInterval,
    Governed FirstLookAfter,
    DateTimeOffset FirstLook,
    DateTimeOffset FirstThickness,
    TimeSpan Grace
)
{
    /// <summary>No interval is shorter than an hour: below that it is a watch, not a revisit.</summary>
    public static readonly TimeSpan ShortestInterval = TimeSpan.FromHours(1);

    private static readonly Clause Rule = new("revisit intervals", "", Provenance.OwnRule);

    /// <summary>Interval of looks: the class's, and short enough for three looks before the end.</summary>
    /// <param name="duties">Of the risk class.</param>
    /// <param name="approvedLife">From start to end date.</param>
    /// <param name="bound">Longest time to the next revisit.</param>
    /// <returns>min(class, approved life/4, bound), never under <see cref="ShortestInterval"/>.</returns>
    /// <exception cref="ImpossibleInputException">A time is not above 0.</exception>
    public static Governed LookEvery(RevisitDuties duties, TimeSpan approvedLife, TimeSpan bound)
    {
        ArgumentNullException.ThrowIfNull(duties);
        return Least(
            new(Positive("lookInterval", duties.Look), "class table"),
            new(Positive("approvedLife", approvedLife) / 4, "a quarter of the approved life"),
            new(Positive("bound", bound), "bound on the next revisit")
        );
    }

    /// <summary>Interval of thickness readings: the class's, and never above half the remaining life.</summary>
    /// <param name="duties">Of the risk class.</param>
    /// <param name="remainingLife">Life of the wall; nothing or 0 halves the class's interval.</param>
    /// <param name="bound">Longest time to the next revisit.</param>
    /// <returns>min(class, RL/2, bound), or min(class/2, bound) where no life is known or left.</returns>
    /// <exception cref="ImpossibleInputException">An interval is not above 0, or the life is negative.</exception>
    public static Governed ThicknessEvery(RevisitDuties duties, Duration? remainingLife, TimeSpan bound)
    {
        ArgumentNullException.ThrowIfNull(duties);
        var table = Positive("thicknessInterval", duties.Thickness);
        var life = Require.Between("remainingLifeDays", remainingLife?.Days ?? 0, 0, 1e9);
        return Least(
            life > 0 ? new(table, "class table") : new(table / 2, "half the class table: no remaining life is known"),
            life > 0 ? new(Days(life / 2), "half the remaining life") : new(TimeSpan.MaxValue, ""),
            new(Positive("bound", bound), "bound on the next revisit")
        );
    }

    /// <summary>The revisits of a repair.</summary>
    /// <remarks>
    /// <para>Formula: look = min(class, approved life/4, bound); thickness = min(class, RL/2, bound); first look = start + min(class first look, look).</para>
    /// <para>Symbols: approved life from start to end date; RL remaining life; bound see <see cref="RevisitBound.Of"/>; all in days.</para>
    /// <para>Validity: an end date after the start.</para>
    /// <para>Reference: own rule; half the remaining life after API 570, Table 2.</para>
    /// </remarks>
    /// <param name="ask">Start, end, duties and life.</param>
    /// <returns>Intervals, first dates, what governs, and findings.</returns>
    /// <exception cref="ImpossibleInputException">The end date is not after the start, or a time is not above 0.</exception>
    /// <example>Class C (first look 7 d, looks 30 d, thickness 180 d) for 80 d with RL 300 d: looks every 20 d (a quarter of the life), first after 7 d, thickness every 150 d (half the remaining life).</example>
    public static Calculated<RevisitPlan> Make(RevisitAsk ask)
    {
        ArgumentNullException.ThrowIfNull(ask);
        var approved = ask.EndDate.ToDateTime(TimeOnly.MinValue) - ask.InServiceFrom.UtcDateTime.Date;
        Positive("endDate minus start", approved);
        LookSeries.InCalendar("inServiceFrom", ask.InServiceFrom);
        var bound = Days(Require.Between("bound", ask.Bound.Days, 0, 1e9));

        var look = LookEvery(ask.Duties, approved, bound);
        var thickness = ThicknessEvery(ask.Duties, ask.RemainingLife, bound);
        var first = Least(new(Positive("firstLook", ask.Duties.FirstLook), "class table"), look);

        var working = new Working();
        var (classLook, life) = (ask.Duties.Look.TotalDays, ask.RemainingLife?.Days ?? 0);
        var classThickness = ask.Duties.Thickness.TotalDays;
        Note(
            working,
            ("look", "interval of looks", "min(class, approved life/4, bound)"),
            $"min({classLook}, {approved.TotalDays}/4, {bound.TotalDays})",
            look
        );
        Note(
            working,
            (
                "thickness",
                "interval of thickness readings",
                life > 0 ? "min(class, RL/2, bound)" : "min(class/2, bound)"
            ),
            life > 0
                ? $"min({classThickness}, {life}/2, {bound.TotalDays})"
                : (FormattableString)$"min({classThickness}/2, {bound.TotalDays})",
            thickness
        );
        Note(
            working,
            ("first look", "time to the first look", "min(class first look, look)"),
            $"min({ask.Duties.FirstLook.TotalDays}, {look.Value.TotalDays})",
            first
        );
        return new(
            new(
                look,
                thickness,
                first,
                ask.InServiceFrom + first.Value,
                ask.InServiceFrom + thickness.Value,
                NotNegative("grace", ask.Duties.Grace)
            ),
            [.. working],
            [.. Findings(ask)],
            []
        );
    }

    private static IEnumerable<Finding> Findings(RevisitAsk ask)
    {
        if (ask.RemainingLife is not { Days: > 0 })
        {
            yield return new(
                "no-remaining-life",
                Severity.Watch,
                "No remaining life is known or left: thickness is read twice as often as the class asks.",
                null,
                null,
                null,
                Rule
            );
        }
        if (ask.Bound.Days * 24 < ShortestInterval.TotalHours)
        {
            yield return new(
                "bound-under-an-hour",
                Severity.Fail,
                Invariant(
                    $"The bound on the next revisit is {ask.Bound.Days * 24:F1} h: that is a watch, not a revisit."
                ),
                ask.Bound.Days * 24,
                ShortestInterval.TotalHours,
                "h",
                Rule
            );
        }
    }

    private static void Note(
        Working working,
        (string Symbol, string Words, string Formula) step,
        FormattableString numbers,
        Governed value
    ) =>
        working.Step(step.Symbol, $"{step.Words}: {value.By}", step.Formula, numbers, value.Value.TotalDays, "d", Rule);

    private static Governed Least(params ReadOnlySpan<Governed> terms)
    {
        var least = terms[0];
        foreach (var term in terms)
        {
            least = term.Value < least.Value ? term : least;
        }
        return least.Value < ShortestInterval ? least with { Value = ShortestInterval } : least;
    }

    private static TimeSpan Days(double days) => TimeSpan.FromDays(Math.Min(days, LookSeries.LongestDays));

    internal static TimeSpan Positive(string field, TimeSpan time) =>
        time > TimeSpan.Zero ? time : throw new ImpossibleInputException(field, $"{time:c}", "a time above 0");

    internal static TimeSpan NotNegative(string field, TimeSpan time) =>
        time >= TimeSpan.Zero ? time : throw new ImpossibleInputException(field, $"{time:c}", "a time of 0 or more");
}
