using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.OrderSheets;

/// <summary>
/// Every ask that can be made of an order, in the order of the procedure, each with its rule. An ask that makes no sense at this
/// stage is left out; one that this person may not do carries the objection.
/// </summary>
internal static class NextActions
{
    public static IReadOnlyList<ActionView> For(RepairOrder order, Person by, DateTimeOffset at) => [];
}
