using RepairOrders.Contract;

namespace RepairOrders.Api.Orders;

/// <summary>
/// What the lists search and sort by: a summary of the records, written with them and rebuilt from them by a test. Dates only;
/// what depends on the clock is computed on each read.
/// </summary>
internal sealed record OrderColumns
{
    public Stage Stage { get; init; }
    public string Place { get; init; } = "";
    public string Fluid { get; init; } = "";

    public static OrderColumns From(RepairOrder order)
    {
        var request = order.Request.Asked;
        return new OrderColumns
        {
            Stage = Stages.Of(order),
            Place = request.Place,
            Fluid = request.Fluid,
        };
    }
}
