using RepairOrders.Api.MakingPermanent;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Closing;

/// <summary>An engineer's name under the close-out of a class A or B order.</summary>
internal sealed class CloseOutCountersignature : SignedRecord<CountersignCloseOut>, IMovesStage
{
    private CloseOutCountersignature() { }

    public CloseOutCountersignature(CountersignCloseOut ask)
        : base(ask) { }

    public override string Kind => "close-out-countersignature";

    public override string Summary => string.IsNullOrWhiteSpace(Asked.Remark) ? "countersigned" : Asked.Remark;

    public Stage After(Stage before, RepairOrder order) =>
        order.All<CloseOut>().Any(c => c.Id == Asked.CloseOut) ? Stage.Closed : before;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (Waiting(order) is not { } closeOut)
            return new Objection(
                "no-close-out-waits",
                "No close-out waits for an engineer.",
                "supervisor, by closing the order"
            )
            {
                IsOfStage = true,
            };
        return closeOut.ById == by.Id
            ? new Objection(
                "own-close-out",
                "You closed the order yourself; an engineer other than you countersigns it.",
                "another integrity engineer"
            )
            : Authority.Objection(by, order, at);
    }

    // One signed before the fix was entered anew does not wait: it was about another fix.
    private static CloseOut? Waiting(RepairOrder order) =>
        order.Stage == Stage.Fixed
        && order.Last<CloseOut>() is { } closeOut
        && closeOut.IsAfter(order.Last<PermanentFix>())
            ? closeOut
            : null;

    public static Objection? Objection(RepairOrder order, CountersignCloseOut ask, Person by, DateTimeOffset at) =>
        Objection(order, by, at)
        ?? (
            order.Last<CloseOut>()!.Id == ask.CloseOut
                ? null
                : new Objection(
                    "other-close-out",
                    "That is not the close-out in force. Read the order again.",
                    "integrity engineer, after reading it again"
                )
        );
}
