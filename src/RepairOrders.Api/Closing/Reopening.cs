using RepairOrders.Api.Orders;
using RepairOrders.Api.People;

namespace RepairOrders.Api.Closing;

/// <summary>When a close-out may be set aside: whenever there is one. Closing was never the end of knowing.</summary>
internal static class Reopening
{
    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        order.Last<CloseOut>() is not null
            ? Authority.Objection(by, order, at)
            : new Objection("not-closed", "The order is not closed.", "nobody; it is open") { IsOfStage = true };
}
