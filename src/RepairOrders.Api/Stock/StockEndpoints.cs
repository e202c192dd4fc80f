using RepairOrders.Api.Issuing;
using RepairOrders.Api.Wire;

namespace RepairOrders.Api.Stock;

internal static class StockEndpoints
{
    public static void MapStock(this IEndpointRouteBuilder api)
    {
        var stock = api.MapGroup("/stock").AddEndpointFilter<Writes>();
        stock.MapItems();
        stock.MapBatches();
        stock.MapBins();
        stock.MapCutList();
    }
}
