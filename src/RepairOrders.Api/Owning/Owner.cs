using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Owning;

/// <summary>The new owner, who has accepted the order.</summary>
internal sealed class Owner : SignedRecord<AcceptHandOver>
{
    private Owner() { }

    public Owner(AcceptHandOver ask)
        : base(ask) { }

    public override string Kind => "owner";

    public override string Summary => $"accepted by {By}";

    /// <summary>The offer that waits for its answer: the last one, unless it was accepted.</summary>
    public static HandOver? Offered(RepairOrder order) =>
        order.Last<HandOver>() is { } offer && order.All<Owner>().All(o => o.Asked.HandOver != offer.Id) ? offer : null;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (Orders.Objection.AtAnEnd(order) is { } ended)
            return ended;
        if (Offered(order) is not { } offer)
            return new Objection(
                "no-hand-over",
                "Nobody has offered the order to a new owner.",
                "the owner, a supervisor, an engineer or the manager"
            )
            {
                IsOfStage = true,
            };
        return offer.Asked.Ask.To == by.Id
            ? Authority.Objection(by, order, at)
            : new Objection(
                "hand-over-not-yours",
                $"The order is offered to {offer.Asked.ToName}; only he accepts it.",
                offer.Asked.ToName
            );
    }

    public static Objection? Objection(RepairOrder order, AcceptHandOver ask, Person by, DateTimeOffset at) =>
        Objection(order, by, at)
        ?? (
            Offered(order)!.Id == ask.HandOver
                ? null
                : new Objection(
                    "other-hand-over",
                    "That is not the last offer. Read the order again.",
                    "the new owner, after reading it again"
                )
        );
}
