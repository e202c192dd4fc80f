using RepairOrders.Api.Closing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Exiting;

/// <summary>When each exit is open, who signs it, and what it needs.</summary>
internal static class ExitRules
{
    private static readonly Stage[] BeforeIssue =
    [
        Stage.Requested,
        Stage.Assessed,
        Stage.Chosen,
        Stage.Sized,
        Stage.Approved,
    ];

    public static Stage[] OpenAt(ExitKind kind) =>
        kind switch
        {
            ExitKind.Returned => BeforeIssue,
            ExitKind.Refused => [.. BeforeIssue, Stage.Consented],
            ExitKind.Withdrawn => [.. BeforeIssue, Stage.Returned, Stage.Consented, Stage.Issued, Stage.Ready],
            ExitKind.Superseded => [Stage.InService, Stage.Failed, Stage.MadeSafe, Stage.LineOutOfService],
            _ => [Stage.InService],
        };

    /// <summary>Whether any way out is open to this person now.</summary>
    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        var ways = Enum.GetValues<ExitKind>().Select(k => Exit.Objection(order, k, by, at)).ToList();
        return ways.Contains(null) ? null : ways.FirstOrDefault(w => w is { IsOfStage: false }) ?? ways[0];
    }

    public static Objection WrongCapacity(ExitKind kind) =>
        new Objection(
            "exit-capacity",
            $"An exit as {Words.Of(kind)} is signed by: {Words.List<ExitCapacity>([.. Capacities(kind)])}.",
            Words.List<ExitCapacity>([.. Capacities(kind)])
        );

    public static ExitCapacity? CapacityOf(RepairOrder order, ExitKind kind, Person by, DateTimeOffset at) =>
        Capacities(kind).Where(c => Holds(order, kind, c, by, at)).Select(c => (ExitCapacity?)c).FirstOrDefault();

    public static bool Holds(RepairOrder order, ExitKind kind, ExitCapacity capacity, Person by, DateTimeOffset at) =>
        Capacities(kind).Contains(capacity) && Holds(order, capacity, by, at);

    public static bool Holds(RepairOrder order, ExitCapacity capacity, Person by, DateTimeOffset at) =>
        capacity switch
        {
            ExitCapacity.Engineer => by.Is(Role.IntegrityEngineer),
            ExitCapacity.Supervisor => by.Is(Role.Supervisor),
            ExitCapacity.OperationsInCharge => by.IsCompetent(Competence.OperationsInCharge, order.Site.Today(at)),
            _ => order.Records.OfType<Requesting.Request>().Any(r => r.ById == by.Id),
        };

    public static Objection? Particulars(
        RepairOrder order,
        ExitOrder ask,
        RepairOrder? other,
        IReadOnlyList<string> unbalanced
    ) =>
        ask.Kind switch
        {
            ExitKind.Returned => OnThePipe(order) ?? Returned(ask),
            ExitKind.Refused => OnThePipe(order),
            ExitKind.Withdrawn => OnThePipe(order) ?? CloseOut.StoresOpen(unbalanced) ?? Withdrawn(order, ask, other),
            ExitKind.Superseded => Superseded(order, ask, other),
            ExitKind.LineOutOfService => OutOfService(order, ask),
            _ => null,
        };

    private static ExitCapacity[] Capacities(ExitKind kind) =>
        kind switch
        {
            ExitKind.Returned => [ExitCapacity.Engineer, ExitCapacity.Supervisor],
            ExitKind.Refused => [ExitCapacity.Engineer],
            ExitKind.Withdrawn => [ExitCapacity.Requester, ExitCapacity.Supervisor, ExitCapacity.Engineer],
            ExitKind.Superseded => [ExitCapacity.Engineer, ExitCapacity.Supervisor],
            _ => [ExitCapacity.OperationsInCharge, ExitCapacity.Engineer],
        };

    private static Objection? Returned(ExitOrder ask) =>
        ask.Missing?.Any(m => !string.IsNullOrWhiteSpace(m)) is true
            ? null
            : new Objection(
                "returned-without-list",
                "A request is returned with a list of what is missing, so that the requester knows what to bring.",
                "whoever returns it"
            );

    private static Objection? OnThePipe(RepairOrder order) =>
        Rounds.SomethingOnThePipe(order)
            ? new Objection(
                "something-on-the-pipe",
                "There is a repair on the pipe, or the start of one. Take it off first, or bring the order to its end.",
                "supervisor, by ordering removal"
            )
            : null;

    private static Objection? Withdrawn(RepairOrder order, ExitOrder ask, RepairOrder? other)
    {
        if (order.Request.Asked.LeakState < LeakState.Weep || !string.IsNullOrWhiteSpace(ask.LeakStopped))
            return null;
        return other is not null && IsOpen(other) && SameLine(order, other)
            ? null
            : new Objection(
                "leak-left-behind",
                $"The request tells of a {Words.Of(order.Request.Asked.LeakState)}. Say how the leak was stopped, or name the open order on this line that takes it over.",
                "whoever withdraws it"
            );
    }

    private static Objection? Superseded(RepairOrder order, ExitOrder ask, RepairOrder? other)
    {
        if (
            other is { Stage: Stage.InService }
            && other.Id != order.Id
            && other.Id.CompareTo(order.Id) > 0
            && SameLine(order, other)
        )
            return null;
        return new Objection(
            "not-superseded",
            ask.OtherOrder is null
                ? "Name the newer order that stands on this spot."
                : $"{ask.OtherOrder} is not a newer order in service on the same line. The new repair must be in service first.",
            "whoever brings the newer order into service"
        );
    }

    private static Objection? OutOfService(RepairOrder order, ExitOrder ask)
    {
        if (string.IsNullOrWhiteSpace(ask.IsolationReference))
            return new Objection(
                "line-not-isolated",
                "Give the isolation certificate: a line is out of service when it is proved isolated, not when it is idle.",
                "operations in charge"
            );
        return !ask.Blinded && Classes.Of(order) is RiskClass.A or RiskClass.B
            ? new Objection(
                "line-not-blinded",
                $"On class {Classes.Of(order)} the line must be blinded; a closed valve may pass.",
                "operations in charge"
            )
            : null;
    }

    private static bool IsOpen(RepairOrder other) =>
        other.Stage
            is not (
                Stage.Closed
                or Stage.Refused
                or Stage.Withdrawn
                or Stage.Superseded
                or Stage.Removed
                or Stage.Fixed
                or Stage.Returned
            );

    private static bool SameLine(RepairOrder order, RepairOrder other) =>
        other.Id != order.Id
        && other.SiteId == order.SiteId
        && (
            order.LineId is { } line
                ? other.LineId == line
                : string.Equals(
                    other.Request.Asked.Place,
                    order.Request.Asked.Place,
                    StringComparison.OrdinalIgnoreCase
                )
        );
}
