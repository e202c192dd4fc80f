using RepairOrders.Api.Figures;
using RepairOrders.Engineering.Life;
using RepairOrders.Engineering.Risk;
using UnitsNet;
using LifeStanding = RepairOrders.Engineering.Risk.Standing;

namespace RepairOrders.Api.Standing;

/// <summary>
/// Walks a course from event to event: class and due dates hang on each other (a missed look raises the class, and a raised class
/// asks for looks sooner), so neither can be told without the other.
/// </summary>
internal sealed class CourseWalk(CourseFacts facts)
{
    // Stands for no bound of its own: the class table and the life bound the interval.
    private static readonly TimeSpan NoBound = TimeSpan.FromDays(36_525);

    private readonly List<Since<RiskRank>> turns = [];
    private readonly List<LookRule> looks = [];
    private readonly List<LookRule> thicknesses = [];
    private readonly List<DateTimeOffset> secondMisses = [];
    private readonly DateTimeOffset recorded = Recorded(facts);
    private (DateTimeOffset Due, DateTimeOffset Overdue)? look;
    private DateTimeOffset? planned;
    private DateTimeOffset? thickness;

    public Course Run()
    {
        for (DateTimeOffset? at = facts.Start; at is { } now; )
        {
            var missed = looks.Count == 0 ? 0 : Looks(now).MissedNow;
            if (missed == 2 && (secondMisses.Count == 0 || Looks(now - Course.Tick).MissedNow == 1))
                secondMisses.Add(now);
            Turn(now, RankAt(now, missed));
            var state = Looks(now);
            at = Next(now, state);
            if (now >= recorded)
                Foresee(now, at, state);
        }
        return new(turns, look!.Value.Due, look.Value.Overdue, planned, thickness, secondMisses);
    }

    // While looks rest none is missed.
    private LookState Looks(DateTimeOffset now) =>
        LookSeries.At(
            facts.Start,
            FirstLook,
            looks,
            [.. facts.Looks.Select(l => l.At)],
            facts.RestsFrom < now ? facts.RestsFrom.Value : now
        );

    private LookState Thicknesses(DateTimeOffset now) =>
        LookSeries.At(
            facts.Start,
            thicknesses[0].Interval,
            thicknesses,
            [.. facts.Looks.Where(l => l.Thickness).Select(l => l.At)],
            now
        );

    // A due date that a foreseen turn of the class will still pull in is not the one to tell.
    private void Foresee(DateTimeOffset now, DateTimeOffset? next, LookState state)
    {
        if (look is null && (next is null || state.NextDue < next))
            look = (state.NextDue, state.OverdueFrom);
        if (facts.InService is null || thickness is not null)
            return;
        var due = Thicknesses(now).NextDue;
        planned ??= due;
        if (next is null || due < next)
            thickness = due;
    }

    private void Turn(DateTimeOffset now, RiskRank rank)
    {
        if (turns.Count == 0 || turns[^1].Value.Class != rank.Class || turns[^1].Value.Likelihood != rank.Likelihood)
            turns.Add(new(now, rank));
        var duties = Duties(rank.Class, DryForLong(now, rank.Class));
        var look = RevisitPlan.LookEvery(duties, ApprovedLife(now), NoBound).Value;
        if (looks.Count == 0 || looks[^1].Interval != look || looks[^1].Grace != duties.Grace)
            looks.Add(new(now, look, duties.Grace));
        var life = facts.InService?.RemainingLifeDays is { } days
            ? Duration.FromDays(Math.Max(0, days))
            : (Duration?)null;
        var read = RevisitPlan.ThicknessEvery(duties, life, NoBound).Value;
        if (thicknesses.Count == 0 || thicknesses[^1].Interval != read)
            thicknesses.Add(new(now, read, duties.Grace));
    }

    private RiskRank RankAt(DateTimeOffset now, int missed)
    {
        var signed = facts.Signed.LastOrDefault(s => s.From <= now)?.Value ?? facts.Signed[0].Value;
        if (facts.InService is not { } life)
            return Lifted(signed, new Ageing(missed, 0, false));
        var end = EndAt(life, now);
        var length = (end - life.From).TotalDays;
        var used = length <= 0 ? 1 : (now - life.From).TotalDays / length;
        return Lifted(signed, new Ageing(missed, Math.Max(0, used), now >= end));
    }

    // What lifted the class above the matrix when it was signed (neighbours on the section) lifts it still.
    private static RiskRank Lifted(RiskRank signed, Ageing ageing)
    {
        var today = RiskRanking.Today(signed, ageing, new LifeStanding());
        var lift = signed.Class - RiskRanking.FromMatrix(signed.Consequence, signed.Likelihood);
        if (lift <= 0 || today.Likelihood == signed.Likelihood)
            return today;
        var lifted = (RiskClass)Math.Min((int)RiskClass.A, (int)today.Class + lift);
        return lifted == today.Class
            ? today
            : today with
            {
                Class = lifted,
                Reasons = [.. today.Reasons, $"It was signed above the matrix: class {today.Class} becomes {lifted}."],
            };
    }

    private DateTimeOffset? Next(DateTimeOffset now, LookState state)
    {
        IEnumerable<DateTimeOffset> moments =
        [
            .. facts.Signed.Select(s => s.From),
            .. facts.Looks.Select(l => l.At),
            .. LifeMoments(now),
        ];
        if (state.MissedNow < 2)
            moments = moments.Append(state.NextMiss + Course.Tick);
        return moments.Where(m => m > now).Min(m => (DateTimeOffset?)m);
    }

    private IEnumerable<DateTimeOffset> LifeMoments(DateTimeOffset now)
    {
        if (facts.InService is not { } life)
            yield break;
        foreach (var end in life.Ends)
            yield return end.From;
        var current = EndAt(life, now);
        yield return current;
        yield return life.From + (current - life.From) / 2 + Course.Tick;
    }

    private TimeSpan ApprovedLife(DateTimeOffset now)
    {
        if (facts.InService is not { } life)
            return NoBound;
        var approved = EndAt(life, now) - life.From;
        return approved > RevisitPlan.ShortestInterval ? approved : RevisitPlan.ShortestInterval;
    }

    // Class A may go from a look each shift to a weekly one only on what was seen: dry at every look for the time it asks.
    private bool DryForLong(DateTimeOffset now, RiskClass riskClass)
    {
        var dry = facts.Looks.Where(l => l.At <= now).OrderByDescending(l => l.At).TakeWhile(l => l.Dry).ToList();
        return dry.Count > 0 && dry[0].At - dry[^1].At >= facts.Figures.Of(riskClass).DryFor;
    }

    private TimeSpan FirstLook
    {
        get
        {
            var first = Duties(turns[0].Value.Class, dry: false);
            return facts.InService is null || looks[0].Interval < first.FirstLook ? looks[0].Interval : first.FirstLook;
        }
    }

    private RevisitDuties Duties(RiskClass riskClass, bool dry)
    {
        var duties = facts.Figures.Of(riskClass);
        return new(
            duties.FirstLook,
            dry ? duties.LookIntervalOnceDry : duties.LookInterval,
            duties.ThicknessInterval,
            duties.Grace
        );
    }

    private static DateTimeOffset EndAt(LifeFacts life, DateTimeOffset now) =>
        (life.Ends.LastOrDefault(e => e.From <= now) ?? life.Ends[0]).Value;

    private static DateTimeOffset Recorded(CourseFacts facts) =>
        facts
            .Signed.Select(s => s.From)
            .Concat(facts.Looks.Select(l => l.At))
            .Concat(facts.InService?.Ends.Select(e => e.From) ?? [])
            .Append(facts.Start)
            .Max();
}
