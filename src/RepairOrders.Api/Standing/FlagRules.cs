using RepairOrders.Api.Owning;
using RepairOrders.Api.Stock;
using RepairOrders.Contract;

namespace RepairOrders.Api.Standing;

/// <summary>Every flag, gravest first.</summary>
internal static class FlagRules
{
    private const int MonthsOfLeaks = 24;

    public static IReadOnlyList<FlagRule> All { get; } =
    [
        new(
            Flags.Leaking,
            Tone.Stop,
            now => now.Columns.LeaksSince is { } since ? $"Leaking for {now.Ago(since)}." : null,
            (orders, _, _) => orders.Where(o => o.Columns.LeaksSince != null)
        ),
        new(
            Flags.PastLife,
            Tone.Stop,
            now =>
                now.Columns.Stage == Stage.InService && now.Columns.EndsAt <= now.At
                    ? $"Past life for {now.Ago(now.Columns.EndsAt!.Value)}: the end date was {TimeWords.Day(now.Columns.EndDate!.Value)}. The manager and an engineer decide on a fresh survey, or it comes off.{now.Climb(LadderItem.EndDate)}"
                    : null,
            (orders, _, at) => orders.Where(o => o.Columns.Stage == Stage.InService && o.Columns.EndsAt <= at)
        ),
        new(
            Flags.RemovalOwed,
            Tone.Stop,
            now =>
                now.Columns.RemovalOwedFrom <= now.At
                    ? $"Removal owed for {now.Ago(now.Columns.RemovalOwedFrom!.Value)}: {now.Columns.RemovalWhy}."
                    : null,
            (orders, _, at) => orders.Where(o => o.Columns.RemovalOwedFrom <= at)
        ),
        new(
            Flags.LookOverdue,
            Tone.Stop,
            now =>
                now.Columns.LookOverdueAt < now.At
                    ? $"Look overdue: it was due {now.Ago(now.Columns.LookDueAt!.Value)} ago, on {now.Clock(now.Columns.LookDueAt!.Value)}, and its grace is over.{now.Climb(LadderItem.Look)}"
                    : null,
            (orders, _, at) => orders.Where(o => o.Columns.LookOverdueAt < at)
        ),
        new(
            Flags.ApprovalOwed,
            Tone.Stop,
            now =>
                now.Columns.ApprovalOwedUntil is { } until
                    ? until > now.At
                        ? $"Approval owed within {TimeWords.Of(until - now.At)}: assessment, choice, design and signatures by {now.Clock(until)}."
                        : $"Approval owed since {now.Clock(until)}, {now.Ago(until)} ago: the repair has to come off."
                    : null,
            (orders, _, _) => orders.Where(o => o.Columns.ApprovalOwedUntil != null)
        ),
        new(
            Flags.RecallHit,
            Tone.Stop,
            now =>
                now.Columns.Open && now.Around.Recalled is { Count: > 0 } recalled
                    ? $"Recall: batch {string.Join(", ", recalled.Select(r => r.Value))} is in it, called back {now.Ago(recalled.Max(r => r.From))} ago."
                    : null,
            (orders, store, _) =>
                orders.Where(o =>
                    o.Columns.Open
                    && store
                        .Set<Batch>()
                        .Any(b => b.Standing == BatchStanding.Recalled && o.Columns.Batches.Contains(b.Id))
                )
        ),
        new(
            Flags.Stopped,
            Tone.Stop,
            now =>
                now.Columns.StoppedSince is { } since ? $"Stopped for {now.Ago(since)}: {now.Columns.StopWhy}." : null,
            (orders, _, _) => orders.Where(o => o.Columns.StoppedSince != null)
        ),
        new(
            Flags.PermitOver,
            Tone.Stop,
            now =>
                now.Columns.PermitUntil < now.At
                    ? $"Permit over for {now.Ago(now.Columns.PermitUntil!.Value)}: it ended {now.Clock(now.Columns.PermitUntil!.Value)}. Ask for a new window; what was read is kept."
                    : null,
            (orders, _, at) => orders.Where(o => o.Columns.PermitUntil < at)
        ),
        new(
            Flags.NoOwner,
            Tone.Stop,
            now =>
                Awaited(now) && now.Around.OwnerLost is { } lost
                    ? $"No owner: {lost}. His looks go to {now.Around.Supervisor ?? "the supervisor of the area"}."
                    : null,
            (orders, store, at) =>
            {
                var today = DateOnly.FromDateTime(at.UtcDateTime);
                var able = Ownership.Roles;
                return orders.Where(o =>
                    (o.Columns.Stage == Stage.InService || o.Columns.Stage == Stage.LineOutOfService)
                    && store.Users.Any(p =>
                        p.Id == o.Columns.OwnerId
                        && (
                            p.Disabled
                            || p.AuthorityUntil < today
                            || !p.Sites.Contains(o.Site.ShortName)
                            || !p.Roles.Any(r => able.Contains(r))
                        )
                    )
                );
            }
        ),
        new(
            Flags.ReassessmentOwed,
            Tone.Stop,
            now => Unsettled(now) is { } why ? $"Re-assessment owed: {why}." : null,
            (orders, store, at) =>
                orders.Where(o =>
                    o.Columns.ReassessmentOwedFrom <= at
                    || (
                        o.Columns.Stage == Stage.InService
                        && (
                            store.Orders.Any(p =>
                                o.LineId != null
                                && p.LineId == o.LineId
                                && p.Id != o.Id
                                && p.Columns.LastLeakAt > o.Columns.SettledAt
                                && p.Columns.LastLeakAt <= at
                            )
                            || store
                                .Set<Batch>()
                                .Any(b =>
                                    b.Standing == BatchStanding.Recalled
                                    && o.Columns.Batches.Contains(b.Id)
                                    && b.Judgements.Any(j =>
                                        j.Standing == BatchStanding.Recalled && j.At > o.Columns.SettledAt
                                    )
                                )
                            || (
                                !o.Columns.CountsNeighbours
                                && o.LineId != null
                                && o.Line!.Section != ""
                                && store.Orders.Count(p =>
                                    p.Columns.Live && p.SiteId == o.SiteId && p.Line!.Section == o.Line!.Section
                                ) >= 3
                            )
                        )
                    )
                )
        ),
        new(
            Flags.InGrace,
            Tone.Watch,
            now =>
                now.Columns.LookDueAt < now.At && now.At <= now.Columns.LookOverdueAt
                    ? $"In grace: {TimeWords.Of(now.Columns.LookOverdueAt!.Value - now.At)} left until {now.Clock(now.Columns.LookOverdueAt!.Value)}, then the look is overdue."
                    : null,
            (orders, _, at) => orders.Where(o => o.Columns.LookDueAt < at && o.Columns.LookOverdueAt >= at)
        ),
        new(
            Flags.LookDue,
            Tone.Watch,
            now =>
                now.Columns.LookDueAt <= now.At && now.At <= now.Columns.LookOverdueAt
                    ? $"Look due since {now.Clock(now.Columns.LookDueAt!.Value)}, {now.Ago(now.Columns.LookDueAt!.Value)} ago."
                    : null,
            (orders, _, at) => orders.Where(o => o.Columns.LookDueAt <= at && o.Columns.LookOverdueAt >= at)
        ),
        new(
            Flags.ThicknessDue,
            Tone.Watch,
            now =>
                now.Columns.ThicknessDueAt <= now.At
                    ? $"Thickness visit due for {now.Ago(now.Columns.ThicknessDueAt!.Value)}."
                    : null,
            (orders, _, at) => orders.Where(o => o.Columns.ThicknessDueAt <= at)
        ),
        new(
            Flags.Curing,
            Tone.Watch,
            now =>
                now.Columns.CuringUntil > now.At
                    ? $"Curing: {TimeWords.Of(now.Columns.CuringUntil!.Value - now.At)} to full hardness, at {now.Clock(now.Columns.CuringUntil!.Value)} if the pipe stays as warm."
                    : null,
            (orders, _, at) => orders.Where(o => o.Columns.CuringUntil > at)
        ),
        new(
            Flags.RepeatLeak,
            Tone.Watch,
            now =>
                now.Columns.Open && Earlier(now) is { } leak
                    ? $"Repeat leak: the line leaked {now.Ago(leak.At)} ago as well, {leak.Number}. Survey the whole line within reach."
                    : null,
            (orders, store, at) =>
            {
                var from = at.AddMonths(-MonthsOfLeaks);
                return orders.Where(o =>
                    o.Columns.Open
                    && store.Orders.Any(p =>
                        (p.Id == o.Id || (o.LineId != null && p.LineId == o.LineId))
                        && (
                            (p.Columns.LeakedAt < o.Columns.LastLeakAt && p.Columns.LeakedAt >= from)
                            || (p.Columns.LastLeakAt < o.Columns.LastLeakAt && p.Columns.LastLeakAt >= from)
                        )
                    )
                );
            }
        ),
        new(
            Flags.CarriedRisk,
            Tone.Watch,
            now =>
                now.Columns.Live && now.Around.Section is { } section && now.Around.Carried.Count >= 2
                    ? $"{now.Around.Carried.Count} live repairs stand on section {section} and carry risk {CarriedRisks.Sum(now.Around.Carried)}."
                    : null,
            (orders, store, _) =>
            {
                // By lines, which have a section each: asked through an order's line, which may be missing, the store cannot hash.
                var crowded = store
                    .Orders.Where(p => p.Columns.Live)
                    .Join(store.Lines, p => p.LineId, l => l.Id, (_, l) => new { l.SiteId, l.Section })
                    .Where(l => l.Section != "")
                    .GroupBy(l => l)
                    .Where(g => g.Count() >= 2)
                    .Select(g => g.Key);
                var lines = store.Lines.Join(crowded, l => new { l.SiteId, l.Section }, c => c, (l, _) => l.Id);
                return orders.Where(o => o.Columns.Live && o.LineId != null && lines.Contains(o.LineId.Value));
            }
        ),
    ];

    public static FlagRule? Find(string code) => All.FirstOrDefault(f => f.Code == code);

    // Somebody has to go back to it.
    private static bool Awaited(FlagMoment now) => now.Columns.Stage is Stage.InService or Stage.LineOutOfService;

    private static LineLeak? Earlier(FlagMoment now) =>
        now
            .Around.Leaks.Where(l => l.At < now.Columns.LastLeakAt && l.At >= now.At.AddMonths(-MonthsOfLeaks))
            .MaxBy(l => l.At);

    private static string? Unsettled(FlagMoment now)
    {
        var c = now.Columns;
        if (c.ReassessmentOwedFrom <= now.At)
            return $"{c.ReassessmentWhy}, {now.Ago(c.ReassessmentOwedFrom!.Value)} ago";
        if (c.Stage != Stage.InService)
            return null;
        if (Later(now) is { } leak)
            return $"the line leaked again {now.Ago(leak.At)} ago, {leak.Number}";
        if (now.Around.Recalled.FirstOrDefault(r => r.From > c.SettledAt) is { } recall)
            return $"batch {recall.Value} was called back {now.Ago(recall.From)} ago";
        return !c.CountsNeighbours && now.Around.Section is { } section && now.Around.Carried.Count >= 3
            ? $"{now.Around.Carried.Count} live repairs stand on section {section}, which raises the class above the signed one"
            : null;
    }

    private static LineLeak? Later(FlagMoment now) =>
        now
            .Around.Leaks.Where(l => l.At > now.Columns.SettledAt && l.At <= now.At && l.Order != now.Around.Order)
            .MaxBy(l => l.At);
}
