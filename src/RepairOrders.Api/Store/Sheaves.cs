using RepairOrders.Api.Orders;

namespace RepairOrders.Api.Store;

internal static class Sheaves
{
    /// <summary>The orders with all that their rules ask of them but their surroundings: site, line and every record.</summary>
    public static IQueryable<RepairOrder> Whole(this IQueryable<RepairOrder> orders) =>
        orders.Include(o => o.Site).Include(o => o.Line).Include(o => o.Records).AsSplitQuery();
}
