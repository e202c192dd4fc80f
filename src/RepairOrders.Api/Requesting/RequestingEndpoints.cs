using Microsoft.AspNetCore.Http.HttpResults;
using RepairOrders.Api.Orders;
using RepairOrders.Api.OrderSheets;
using RepairOrders.Api.People;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Requesting;

internal static class RequestingEndpoints
{
    public static void MapRequesting(this IEndpointRouteBuilder orders) =>
        orders.MapPost("/", RequestRepair).Needs(Permission.RequestRepair).WithSummary("Ask for a temporary repair");

    private static async Task<Created<OrderSheet>> RequestRepair(
        RequestRepair ask,
        Person by,
        RepairStore store,
        TimeProvider clock,
        HttpResponse response
    )
    {
        var site = await store.SiteForNumbering(ask.Site, by);
        var line = ask.Line is null
            ? null
            : await store.Lines.SingleOrDefaultAsync(
                l => l.SiteId == site.Id && l.Number == ask.Line && !l.Retired,
                CancellationToken.None
            );
        RepairOrder.Refuse(Request.Objection(ask, line));
        var order = new RepairOrder(site, ++site.LastNumber, line);
        var at = clock.Now();
        order.Sign(new Request(ask), by, at);
        store.Orders.Add(order);
        await store.SaveChangesAsync(CancellationToken.None);
        response.Headers.Location = $"/api/v1/orders/{order.Number}";
        return TypedResults.Created(
            $"/api/v1/orders/{order.Number}",
            OrderSheetQuery.Sheet(order, by, at, [], Around.Nothing)
        );
    }
}
