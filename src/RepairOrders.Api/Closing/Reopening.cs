using RepairOrders.Api.Orders;

namespace RepairOrders.Api.Closing;

/// <summary>When a close-out may be set aside: whenever there is one. Closing was never the end of knowing.</summary>
internal static class Reopening
{
    public static Objection? Objection(RepairOrder order) =>
        order.Last<CloseOut>() is not null
            ? null
            : new Objection("not-closed", "The order is not closed.", "nobody; it is open") { IsOfStage = true };
}
