using RepairOrders.Engineering.Methods;
using UnitsNet;
using static System.FormattableString;

namespace RepairOrders.Engineering.Life;

/// <summary>What can end a temporary repair. Nothing for a term that does not apply.</summary>
/// <param name="Start">Day the repair's life is counted from: the planned fit date, or the first in-service day.</param>
/// <param name="CapEnds">Last day the class allows: start and class cap, or the old end and one extension.</param>
/// <param name="DesignLife">Life of the design.</param>
/// <param name="RemainingLife">Life of the wall down to the least the design relies on.</param>
/// <param name="WallReadOn">Day that life is counted from; nothing takes <paramref name="Start"/>.</param>
/// <param name="NextShutdown">Day the next shutdown begins.</param>
/// <param name="ChangeControlEnds">Last day of the change control.</param>
/// <param name="MaterialStatementEnds">Last day of the maker's statement for the material.</param>
public sealed record EndDateAsk(
    DateOnly Start,
    DateOnly CapEnds,
    Duration? DesignLife,
    Duration? RemainingLife,
    DateOnly? WallReadOn,
    DateOnly? NextShutdown,
    DateOnly? ChangeControlEnds,
    DateOnly? MaterialStatementEnds
);

/// <summary>One day that bounds the life of a repair.</summary>
/// <param name="Code">Stable code: <c>design-life</c>, <c>class-cap</c>, <c>half-remaining-life</c>, <c>next-shutdown</c>,
/// <c>change-control</c>, <c>material-statement</c>.</param>
/// <param name="Words">The term in words.</param>
/// <param name="On">The day.</param>
public sealed record EndTerm(string Code, string Words, DateOnly On);

/// <summary>The end date of a repair, and what sets it.</summary>
/// <param name="On">The last day.</param>
/// <param name="Governing">The term that sets it.</param>
/// <param name="Terms">All terms that apply, earliest first.</param>
public sealed record EndDate(DateOnly On, EndTerm Governing, IReadOnlyList<EndTerm> Terms)
{
    private static readonly Clause Rule = new("end date of a temporary repair", "", Provenance.OwnRule);

    /// <summary>The end date: the earliest of the terms that apply. It is never open, since the class cap always applies.</summary>
    /// <remarks>
    /// <para>Formula: end = min(start + design life, class cap, start + RL_start/2, next shutdown, change control end, material statement end); RL_start = RL − (start − wall read).</para>
    /// <para>Symbols: RL remaining life from the wall reading, d; RL_start what is left of it at the start, d; part days are dropped.</para>
    /// <para>Validity: any dates; an end before the start is a finding.</para>
    /// <para>Reference: own rule; half the remaining life after API 570, Table 2.</para>
    /// </remarks>
    /// <param name="ask">The terms.</param>
    /// <returns>The end date, what governs, and findings.</returns>
    /// <exception cref="ImpossibleInputException">A life is negative.</exception>
    /// <example>Start 1 March 2027, design life 2 y, cap 180 d, RL 300 d: half the life, 29 July 2027, governs before 28 August.</example>
    public static Calculated<EndDate> Earliest(EndDateAsk ask)
    {
        ArgumentNullException.ThrowIfNull(ask);
        var terms = Apply(ask).OrderBy(t => t.On).ToList();
        var end = terms[0];
        var working = new Working();
        foreach (var term in terms)
        {
            working.Given(
                "end",
                Invariant($"{term.Words}: {term.On:yyyy-MM-dd}"),
                term.On.DayNumber - ask.Start.DayNumber,
                "d",
                Rule
            );
        }
        return new(new(end.On, end, terms), [.. working], [Finding(ask, end)], []);
    }

    private static Finding Finding(EndDateAsk ask, EndTerm end)
    {
        var days = end.On.DayNumber - ask.Start.DayNumber;
        return days > 0
            ? new(
                "end-after-start",
                Severity.Pass,
                Invariant($"The repair ends on {end.On:yyyy-MM-dd}, {days} days after its start, set by: {end.Words}."),
                days,
                1,
                "d",
                Rule
            )
            : new(
                "end-after-start",
                Severity.Fail,
                Invariant(
                    $"The {end.Words} ends the repair on {end.On:yyyy-MM-dd}, not after its start on {ask.Start:yyyy-MM-dd}."
                ),
                days,
                1,
                "d",
                Rule,
                LimitKind.Absolute
            );
    }

    private static IEnumerable<EndTerm> Apply(EndDateAsk ask)
    {
        yield return new("class-cap", "class cap", ask.CapEnds);
        if (After(ask.Start, ask.DesignLife, "designLifeDays") is { } design)
        {
            yield return new("design-life", "design life", design);
        }
        if (HalfLife(ask) is { } half)
        {
            yield return new("half-remaining-life", "half the remaining life", half);
        }
        if (ask.NextShutdown is { } shutdown)
        {
            yield return new("next-shutdown", "next shutdown", shutdown);
        }
        if (ask.ChangeControlEnds is { } change)
        {
            yield return new("change-control", "end of the change control", change);
        }
        if (ask.MaterialStatementEnds is { } material)
        {
            yield return new("material-statement", "end of the material statement", material);
        }
    }

    // What the wall loses between its reading and the start is gone before the repair begins.
    private static DateOnly? HalfLife(EndDateAsk ask)
    {
        if (ask.RemainingLife is not { } life)
        {
            return null;
        }
        var days = Require.Between("remainingLifeDays", life.Days, 0, 1e9);
        var gone = Math.Max(0, ask.Start.DayNumber - (ask.WallReadOn ?? ask.Start).DayNumber);
        return RemainingLife.DayAfter(ask.Start, Duration.FromDays(Math.Max(0, days - gone) / 2));
    }

    private static DateOnly? After(DateOnly start, Duration? life, string field) =>
        life is { } time
            ? RemainingLife.DayAfter(start, Duration.FromDays(Require.Between(field, time.Days, 0, 1e9)))
            : null;
}
