namespace RepairOrders.Engineering.Life;

/// <summary>The interval and grace of looks from a moment on; the class of today may change them.</summary>
/// <param name="From">From when.</param>
/// <param name="Interval">Interval of looks.</param>
/// <param name="Grace">Time a look may be late before it is overdue.</param>
public sealed record LookRule(DateTimeOffset From, TimeSpan Interval, TimeSpan Grace);

/// <summary>Where a series of looks (or of thickness readings) stands.</summary>
/// <param name="LastSettled">The due date the last counting visit settled; nothing where none did.</param>
/// <param name="NextDue">The earliest due date not settled.</param>
/// <param name="CountsFrom">From when a visit counts for it: the last 20 % of its interval.</param>
/// <param name="OverdueFrom">When its grace ends.</param>
/// <param name="IsDue">It is due: due date reached, not settled.</param>
/// <param name="InGrace">It is due, and inside its grace.</param>
/// <param name="Overdue">Its grace is over.</param>
/// <param name="MissedNow">Due dates in a row, up to now, whose grace is over and that nobody settled.</param>
/// <param name="MissedBefore">Due dates that were settled only after their grace.</param>
/// <param name="NextMiss">When the next due date in a row is missed, if nobody goes: its grace ends then.</param>
/// <param name="TooEarly">Visits that did not count, since they were before the last 20 % of the interval.</param>
public sealed record LookState(
    DateTimeOffset? LastSettled,
    DateTimeOffset NextDue,
    DateTimeOffset CountsFrom,
    DateTimeOffset OverdueFrom,
    bool IsDue,
    bool InGrace,
    bool Overdue,
    int MissedNow,
    int MissedBefore,
    DateTimeOffset NextMiss,
    IReadOnlyList<DateTimeOffset> TooEarly
);

/// <summary>Due dates that run from due dates: a look done late never moves the next one out.</summary>
public static class LookSeries
{
    /// <summary>Share of the interval, at its end, in which a look counts for the due date that follows.</summary>
    public const double EarlyShare = 0.2;

    internal const double LongestDays = 36_525;

    private const int MostDueDates = 1_000_000;

    /// <summary>Where the series stands now. The next due date is the previous due date and the interval, never the day a look was
    /// done and the interval. A visit settles every due date up to it, and the next one when it falls in the last 20 % of that
    /// interval. An interval that is shortened between two due dates pulls the next one in, but to no earlier than the change.</summary>
    /// <param name="start">In-service start.</param>
    /// <param name="firstLook">Time from the start to the first due date.</param>
    /// <param name="rules">Interval and grace from when on; the earliest holds from the start whatever its moment.</param>
    /// <param name="done">Visits done, in any order; those after now do not count.</param>
    /// <param name="now">The moment it is asked for.</param>
    /// <returns>The state of the series.</returns>
    /// <exception cref="ImpossibleInputException">No rule, an interval under <see cref="RevisitPlan.ShortestInterval"/>, a negative
    /// grace, or a series too long to be looked at.</exception>
    public static LookState At(
        DateTimeOffset start,
        TimeSpan firstLook,
        IReadOnlyList<LookRule> rules,
        IReadOnlyList<DateTimeOffset> done,
        DateTimeOffset now
    )
    {
        ArgumentNullException.ThrowIfNull(rules);
        ArgumentNullException.ThrowIfNull(done);
        InCalendar("start", start);
        InCalendar("now", now);
        var inOrder = Checked(firstLook, rules, now);
        var walk = new Walk(inOrder, start, firstLook);
        var early = new List<DateTimeOffset>();
        foreach (var visit in done.Where(v => v <= now).Order())
        {
            if (!walk.Settle(visit))
            {
                early.Add(visit);
            }
        }
        return walk.StateAt(now, early);
    }

    private static List<LookRule> Checked(TimeSpan firstLook, IReadOnlyList<LookRule> rules, DateTimeOffset now)
    {
        AtLeastAnHour("firstLook", firstLook);
        if (rules.Count == 0)
        {
            throw new ImpossibleInputException("rules", "empty", "at least one interval");
        }
        foreach (var rule in rules)
        {
            AtLeastAnHour("rules.interval", rule.Interval);
            RevisitPlan.NotNegative("rules.grace", rule.Grace);
        }
        var inOrder = rules.OrderBy(r => r.From).ToList();
        return [inOrder[0], .. inOrder.Skip(1).Where(r => r.From <= now)];
    }

    internal static void InCalendar(string field, DateTimeOffset moment)
    {
        if (moment.Year is < 1900 or > 2500)
        {
            throw new ImpossibleInputException(field, $"{moment:O}", "a moment of the years 1900 to 2500");
        }
    }

    private static void AtLeastAnHour(string field, TimeSpan time)
    {
        if (time < RevisitPlan.ShortestInterval || time.TotalDays > LongestDays)
        {
            throw new ImpossibleInputException(field, $"{time:c}", "1 hour to 36 525 days");
        }
    }

    private sealed class Walk(List<LookRule> rules, DateTimeOffset start, TimeSpan firstLook)
    {
        private DateTimeOffset previous = start;
        private DateTimeOffset due = start + firstLook;
        private DateTimeOffset? settled;
        private int missedBefore;
        private int steps;

        public bool Settle(DateTimeOffset visit)
        {
            Shorten(visit);
            if (visit < CountsFrom)
            {
                return false;
            }
            while (visit >= CountsFrom)
            {
                missedBefore += visit > OverdueFrom ? 1 : 0;
                settled = due;
                Step();
                Shorten(visit);
            }
            return true;
        }

        public LookState StateAt(DateTimeOffset now, IReadOnlyList<DateTimeOffset> early)
        {
            Shorten(now);
            var (nextDue, countsFrom, overdueFrom) = (due, CountsFrom, OverdueFrom);
            var missedNow = 0;
            while (now > OverdueFrom)
            {
                missedNow++;
                Step();
                Shorten(now);
            }
            return new(
                settled,
                nextDue,
                countsFrom,
                overdueFrom,
                now >= nextDue,
                now >= nextDue && now <= overdueFrom,
                now > overdueFrom,
                missedNow,
                missedBefore,
                OverdueFrom,
                early
            );
        }

        private DateTimeOffset CountsFrom => due - (due - previous) * EarlyShare;

        private DateTimeOffset OverdueFrom => due + RuleAt(due).Grace;

        private void Step()
        {
            if (++steps > MostDueDates)
            {
                throw new ImpossibleInputException(
                    "now",
                    "too far from the start",
                    $"at most {MostDueDates} due dates"
                );
            }
            (previous, due) = (due, due + RuleAt(due).Interval);
        }

        // A class that gets worse today asks for a look today at the earliest; nobody can have missed it yesterday.
        private void Shorten(DateTimeOffset upTo)
        {
            foreach (var rule in rules)
            {
                if (rule.From > previous && rule.From < due && rule.From <= upTo)
                {
                    var pulled = previous + rule.Interval;
                    due =
                        pulled >= due ? due
                        : pulled > rule.From ? pulled
                        : rule.From;
                }
            }
        }

        private LookRule RuleAt(DateTimeOffset when) => rules.FindLast(r => r.From <= when) ?? rules[0];
    }
}
