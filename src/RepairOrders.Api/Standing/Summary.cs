using RepairOrders.Api.Choosing;
using RepairOrders.Api.Consenting;
using RepairOrders.Api.Extending;
using RepairOrders.Api.Failing;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Issuing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Owning;
using RepairOrders.Api.Proving;
using RepairOrders.Api.Readying;
using RepairOrders.Api.Removing;
using RepairOrders.Api.Reviewing;
using RepairOrders.Api.Revisiting;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;
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
        var owner = Owner(order, design);
        var fix = Fix(order) ?? design?.Ask.PermanentFix;
        var again = Reassessment.Owed(order, course);
        var onThePipe = OnThePipe.Is(order);
        var removal = onThePipe ? order.Last<RemovalOrder>() : null;
        var owed = Debts.Of(order, DateTimeOffset.MinValue);
        var stop = AtWork(stage) || Removal.UnderWay(order) ? Stop.Standing(order) : null;
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
            SignedClass = Classes.Of(order),
            Method = Method(order),
            EndDate = end?.On ?? design?.EndDate.On,
            EndsAt = end?.At,
            OwnerId = owner?.Id,
            Owner = owner?.Name,
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
            ApprovalOwedUntil = owed?.DueAt,
            RemovalOwedFrom = removal?.At ?? (onThePipe ? owed?.DueAt : null),
            RemovalWhy =
                removal is not null ? $"ordered by {removal.By}, off by {TimeWords.Day(removal.Asked.By)}"
                : onThePipe && owed is not null ? "the papers of the emergency were not signed in time"
                : null,
            StoppedSince = stop?.At,
            StopWhy = stop?.Asked.Ask.Reason,
            PermitUntil = Permit(order),
            CuringUntil = Curing(order),
            AnsweredAt = [.. order.InRound<LadderAnswer>().Select(a => a.At)],
            Batches = [.. order.All<MaterialIssue>().SelectMany(i => i.Asked.Lines).Select(l => l.Batch).Distinct()],
        };
    }

    /// <summary>The mark of a method that nobody has chosen yet, and that both consents name.</summary>
    public const string ByConsent = ", by emergency consent";

    /// <summary>The method designed or chosen, else what was consented to at night: it hangs on the pipe whatever the papers lack.</summary>
    public static string? Method(RepairOrder order) =>
        (order.ApprovedDesign ?? order.PendingDesign)?.Asked.Method.Name
        ?? order.Last<Choice>()?.Name
        ?? (WorkPlan.Of(order) is { Emergency: true } plan ? MethodCatalogue.Find(plan.Method).Name + ByConsent : null);

    private static bool AtWork(Stage stage) =>
        stage is Stage.Approved or Stage.Consented or Stage.Issued or Stage.Ready or Stage.Fitting or Stage.Fitted;

    // A permit that ends matters while its work is unfinished.
    private static DateTimeOffset? Permit(RepairOrder order)
    {
        var fit = order.Stage is Stage.Ready or Stage.Fitting or Stage.Fitted;
        var off = OnThePipe.Is(order) && order.Last<RemovalOrder>() is not null;
        return fit ? Until(ReadinessFor.Fit)
            : off ? Until(ReadinessFor.Removal)
            : null;
        DateTimeOffset? Until(ReadinessFor what) => Readiness.Current(order, what)?.Asked.Ask.PermitUntil;
    }

    // Nothing where it is hard by the readings, and nothing where no reading tells when it will be. In whole microseconds, as the
    // store keeps it.
    private static DateTimeOffset? Curing(RepairOrder order)
    {
        if (order.Stage is not (Stage.Fitted or Stage.InService))
            return null;
        var hard = CureClock.Of(order).Where(c => !c.FullyHard).Select(c => c.FullyHardAt).Max();
        return hard?.AddTicks(-(hard.Value.Ticks % TimeSpan.TicksPerMicrosecond));
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

    // Who took on the first look is the owner, whatever a later design names, until another accepts a hand-over. A new round that
    // names nobody yet stays with the owner before it.
    private static (Guid Id, string Name)? Owner(RepairOrder order, SignedDesign? design) =>
        order.Last<Owner>() is { } owner ? (owner.ById, owner.By)
        : order.Last<FirstLookAcceptance>() is { } first ? (first.Asked.Owner.Id, first.Asked.Owner.Name)
        : design?.Ask.Owner is { } named ? (named, design.OwnerName)
        : order.All<Owner>().LastOrDefault() is { } before ? (before.ById, before.By)
        : order.All<FirstLookAcceptance>().LastOrDefault() is { } once ? (once.Asked.Owner.Id, once.Asked.Owner.Name)
        : null;

    // A granted extension moves the plan for the permanent fix with it.
    private static PermanentFixPlan? Fix(RepairOrder order) =>
        Extension
            .Granted(order)
            .Where(g => g.Extension.Round == order.Round && g.Decision.At > order.ApprovedDesign?.At)
            .Select(g => g.Extension.Asked.Ask.PermanentFix)
            .LastOrDefault();

    private static bool CountsNeighbours(RepairOrder order) =>
        ClassHistory.Last(order) is { } rank
        && (
            rank.Class == Engineering.Risk.RiskClass.A
            || rank.Class > RiskRanking.FromMatrix(rank.Consequence, rank.Likelihood)
        );
}
