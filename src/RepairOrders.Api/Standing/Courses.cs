using RepairOrders.Api.Assessing;
using RepairOrders.Api.Failing;
using RepairOrders.Api.Figures;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Revisiting;
using RepairOrders.Contract;

namespace RepairOrders.Api.Standing;

/// <summary>Which course an order runs: that of a repair in service, that of a bare or contained defect, or none.</summary>
internal static class Courses
{
    private static readonly Stage[] Planned =
    [
        Stage.Requested,
        Stage.Assessed,
        Stage.Chosen,
        Stage.Sized,
        Stage.Approved,
        Stage.Consented,
        Stage.Issued,
        Stage.Ready,
    ];

    public static bool IsPlanned(Stage stage) => Planned.Contains(stage);

    public static Course? Of(RepairOrder order) => Facts(order) is { } facts ? Course.Of(facts) : null;

    /// <summary>Whether looks fall due at this stage. Once the line is isolated, or people stand at it, they rest.</summary>
    public static bool LooksRun(RepairOrder order) =>
        order.Stage == Stage.InService || Planned.Contains(order.Stage) || Contained(order) is not null;

    /// <summary>The containment that still holds a live leak.</summary>
    public static MadeSafe? Contained(RepairOrder order) =>
        order.All<MadeSafe>().LastOrDefault() is { Contained: true } safe
        && (order.Stage == Stage.MadeSafe || Planned.Contains(order.Stage))
            ? safe
            : null;

    private static CourseFacts? Facts(RepairOrder order)
    {
        if (Contained(order) is { } contained)
            return Bare(order, contained.At);
        if (Planned.Contains(order.Stage))
            return Isolated(order) ? null : Bare(order, FirstJudged(order));
        return order.Stage is Stage.InService or Stage.Failed or Stage.MadeSafe or Stage.LineOutOfService
            ? InService(order)
            : null;
    }

    private static CourseFacts? InService(RepairOrder order)
    {
        var ends = EndInForce.Turns(order);
        var risks = ClassHistory.Risks(order);
        if (Rounds.InServiceSince(order) is not { } since || ends.Count == 0 || risks.Count == 0)
            return null;
        // Back from a line out of service, looks begin again; the life runs on.
        var started = Rounds
            .History(order)
            .Where(h => h.Round == order.Round && h.Stage == Stage.InService)
            .Max(h => h.At);
        return new(
            started,
            Held(risks, started),
            LooksSince(order, started),
            new(since, [.. ends.Select(e => new Since<DateTimeOffset>(e.From, e.Value.At))], RemainingLife(order)),
            DecidedUnder.Figures(order),
            order.Stage == Stage.InService ? null : Left(order)
        );
    }

    private static CourseFacts? Bare(RepairOrder order, DateTimeOffset? start)
    {
        var risks = ClassHistory.Risks(order);
        return start is { } from && risks.Count > 0
            ? new(from, Held(risks, from), LooksSince(order, from), null, DecidedUnder.Figures(order))
            : null;
    }

    // A later judgement, signed again before work, must not start the series anew: that would be a snooze.
    private static DateTimeOffset? FirstJudged(RepairOrder order) =>
        order.Records.OfType<Assessment>().Where(a => a.Round == order.Round).Select(a => (DateTimeOffset?)a.At).Min();

    private static bool Isolated(RepairOrder order) =>
        order.All<MadeSafe>().LastOrDefault() is { Contained: false } safe
        && !Rounds.History(order).Any(h => h.Stage == Stage.InService && h.At > safe.At);

    private static DateTimeOffset Left(RepairOrder order) =>
        Rounds.History(order).Last(h => h.Stage != Stage.InService && h.Round == order.Round).At;

    // The class held at the start comes first, then every later one.
    private static IReadOnlyList<Since<Engineering.Risk.RiskRank>> Held(
        IReadOnlyList<Since<Engineering.Risk.RiskRank>> risks,
        DateTimeOffset start
    )
    {
        var first = risks.LastOrDefault(r => r.From <= start) ?? risks[0];
        return [first with { From = start }, .. risks.Where(r => r.From > start && r != first)];
    }

    private static IReadOnlyList<Look> LooksSince(RepairOrder order, DateTimeOffset start) =>
        [
            .. order
                .All<Visit>()
                .Where(v => v.Asked.DoneAt >= start)
                .Select(v => new Look(v.Asked.DoneAt, v.Asked.Ask.State == LeakState.Dry, v.IsThickness)),
        ];

    private static double? RemainingLife(RepairOrder order)
    {
        var design = order.ApprovedDesign;
        var visit = order.InRound<Visit>().LastOrDefault(v => v.Asked.RemainingLifeDays is not null);
        if (visit is not null && (design is null || visit.At > design.At))
            return visit.Asked.RemainingLifeDays;
        return order.Last<Assessment>()?.Asked.Judgement.RemainingLifeDays;
    }
}
