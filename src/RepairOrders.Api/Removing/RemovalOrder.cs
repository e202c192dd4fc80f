using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Removing;

/// <summary>The order to take the repair off.</summary>
internal sealed class RemovalOrder : SignedRecord<OrderRemoval>
{
    private RemovalOrder() { }

    public RemovalOrder(OrderRemoval ask)
        : base(ask) { }

    public override string Kind => "removal-order";

    public override string Summary => $"off by {Asked.By:yyyy-MM-dd}: {Asked.Why}; instead: {Asked.Instead}";

    public override Tone Tone => Tone.Watch;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        OnThePipe.Objection(order) ?? Authority.Objection(by, order, at);

    /// <summary>A day once ordered is brought forward, never put off: that would be a snooze.</summary>
    public static Objection? Objection(RepairOrder order, OrderRemoval ask, Person by, DateTimeOffset at) =>
        Objection(order, by, at)
        ?? (
            order.Last<RemovalOrder>() is { } earlier && ask.By > earlier.Asked.By
                ? new Objection(
                    "removal-put-off",
                    $"{earlier.By} ordered it off by {earlier.Asked.By:yyyy-MM-dd}. A later day is not given to a removal that is owed; it stays owed until it is done.",
                    "technician, by taking it off; or whoever orders, by an earlier day"
                )
                : null
        );
}

/// <summary>Whether something of this order sits on the pipe.</summary>
internal static class OnThePipe
{
    private static readonly Stage[] Ends =
    [
        Stage.Removed,
        Stage.Fixed,
        Stage.Closed,
        Stage.Refused,
        Stage.Withdrawn,
        Stage.Superseded,
    ];

    /// <summary>Work began on the pipe in some round, and nothing has been taken off since.</summary>
    public static bool Is(RepairOrder order) =>
        !Ends.Contains(order.Stage)
        && Rounds.History(order).Any(h => h.Stage is Stage.Fitting or Stage.Fitted or Stage.InService);

    public static Objection? Objection(RepairOrder order) =>
        Is(order)
            ? null
            : new Objection(
                "nothing-on-the-pipe",
                "No repair is on the pipe, so there is none to take off.",
                "nobody; there is nothing to remove"
            )
            {
                IsOfStage = true,
            };
}
