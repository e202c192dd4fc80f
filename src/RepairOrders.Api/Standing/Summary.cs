using RepairOrders.Api.Choosing;
using RepairOrders.Api.Extending;
using RepairOrders.Api.Failing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Owning;
using RepairOrders.Api.Removing;
using RepairOrders.Api.Reviewing;
using RepairOrders.Api.Revisiting;
using RepairOrders.Contract;
using RepairOrders.Engineering.Risk;
using RiskClass = RepairOrders.Contract.RiskClass;

namespace RepairOrders.Api.Standing;

/// <summary>Writes the columns of an order from its records. It knows no clock: the same records always give the same columns.</summary>
internal static class Summary
{
    private static readonly Stage[] Ends = [Stage.Closed, Stage.Refused, Stage.Withdrawn, Stage.Superseded];

    public static OrderColumns Of(RepairOrder order)
    {
        var stage = Stages.Of(order);
        var request = order.Request.Asked;
        var design = (order.ApprovedDesign ?? order.PendingDesign)?.Asked;
        var end = EndInForce.Of(order);
        var course = Courses.Of(order);
        var written = Written(order);
        var looks = Courses.LooksRun(order) ? course : null;
        var owner = Owner(order);
        var fix = Fix(order) ?? design?.Ask.PermanentFix;
        var again = Reassessment.Owed(order, course);
        var removal = order.Last<RemovalOrder>() is { } ordered && OnThePipe.Is(order) ? ordered : null;
        return new OrderColumns
        {
            Stage = stage,
            Open = !Ends.Contains(stage),
            Place = request.Place,
            Fluid = request.Fluid,
            Words = SearchWords.Of(order),
            LeakedAt = Leaks(order).Select(l => (DateTimeOffset?)l).FirstOrDefault(),
            LastLeakAt = Leaks(order).Select(l => (DateTimeOffset?)l).LastOrDefault(),
            LeaksSince = LeaksSince(order),
            SignedClass = (order.ApprovedDesign ?? order.PendingDesign)?.Asked.Risk.Class,
            Method = design?.Method.Name ?? order.Last<Choice>()?.Name,
            EndDate = end?.On ?? design?.EndDate.On,
            EndsAt = end?.At,
            OwnerId = owner?.Id ?? design?.Ask.Owner,
            Owner = owner?.Name ?? design?.OwnerName,
            PermanentFix = fix?.Reference,
            PermanentFixOn = fix?.On,
            Shutdown = design?.ShutdownName,
            Extensions = Extension.Granted(order).Count(),
            InServiceSince = Rounds.FirstInService(order),
            Live = stage is Stage.InService or Stage.Failed || Courses.Contained(order) is not null,
            CountsNeighbours = CountsNeighbours(order),
            ClassDFrom = course?.From(Engineering.Risk.RiskClass.D, written),
            ClassCFrom = course?.From(Engineering.Risk.RiskClass.C, written),
            ClassBFrom = course?.From(Engineering.Risk.RiskClass.B, written),
            ClassAFrom = course?.From(Engineering.Risk.RiskClass.A, written),
            LastLookAt = order.All<Visit>().Select(v => (DateTimeOffset?)v.Asked.DoneAt).Max(),
            LookDueAt = looks?.LookDueAt,
            LookOverdueAt = looks?.LookOverdueAt,
            ThicknessPlannedAt = looks?.ThicknessPlannedAt,
            ThicknessDueAt = looks?.ThicknessDueAt,
            SettledAt = Reassessment.Settled(order),
            ReassessmentOwedFrom = again?.From,
            ReassessmentWhy = again?.Value,
            RemovalOwedFrom = removal?.At,
            RemovalWhy = removal is null ? null : $"ordered by {removal.By}, off by {TimeWords.Day(removal.Asked.By)}",
            AnsweredAt = [.. order.InRound<LadderAnswer>().Select(a => a.At)],
        };
    }

    private static DateTimeOffset Written(RepairOrder order) =>
        order.Records.Select(r => r.SetAsideAt > r.At ? r.SetAsideAt.Value : r.At).Max();

    // A failure of a repair that leaked is a leak of the line as much as the first one.
    private static IEnumerable<DateTimeOffset> Leaks(RepairOrder order)
    {
        if (order.Request.Asked.LeakState >= LeakState.Weep)
            yield return order.Request.At;
        foreach (var failure in order.All<Failure>().Where(f => f.Leaked))
            yield return failure.At;
    }

    private static DateTimeOffset? LeaksSince(RepairOrder order)
    {
        var open =
            order.Stage == Stage.Failed
            || Courses.Contained(order) is not null
            || (order.Round == 1 && Courses.IsPlanned(order.Stage));
        return open ? Leaks(order).Select(l => (DateTimeOffset?)l).LastOrDefault() : null;
    }

    private static (Guid Id, string Name)? Owner(RepairOrder order) =>
        order.Last<Owner>() is { } owner ? (owner.ById, owner.By) : null;

    // A granted extension moves the plan for the permanent fix with it.
    private static PermanentFixPlan? Fix(RepairOrder order) =>
        Extension
            .Granted(order)
            .Where(g => g.Extension.Round == order.Round && g.Decision.At > order.ApprovedDesign?.At)
            .Select(g => g.Extension.Asked.Ask.PermanentFix)
            .LastOrDefault();

    private static bool CountsNeighbours(RepairOrder order) =>
        Classes.Last(order) is { } rank
        && (
            rank.Class == Engineering.Risk.RiskClass.A
            || rank.Class > RiskRanking.FromMatrix(rank.Consequence, rank.Likelihood)
        );
}
