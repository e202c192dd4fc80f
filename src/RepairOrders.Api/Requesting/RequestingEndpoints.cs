using Microsoft.AspNetCore.Http.HttpResults;
using RepairOrders.Api.Lines;
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
    public static void MapRequesting(this IEndpointRouteBuilder orders)
    {
        orders.MapPost("/", RequestRepair).Needs(Permission.RequestRepair).WithSummary("Ask for a temporary repair");
        orders
            .MapPut("/{number}/request", RequestAgain)
            .Needs(Permission.RequestRepair)
            .WithSummary("Send a returned request again");
    }

    private static async Task<Created<OrderSheet>> RequestRepair(
        RequestRepair ask,
        Person by,
        RepairStore store,
        TimeProvider clock,
        HttpResponse response
    )
    {
        var site = await store.SiteForNumbering(ask.Site, by);
        var line = await Line(store, site.Id, ask);
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

    private static async Task<RecordView> RequestAgain(
        string number,
        RequestRepair ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var at = clock.Now();
        if (ask.Site != order.Site.ShortName)
            throw new MalformedAsk(
                "site",
                $"site is \"{ask.Site}\"; allowed is {order.Site.ShortName}, where the order was raised."
            );
        var line = await Line(store, order.SiteId, ask);
        RepairOrder.Refuse(Request.AgainObjection(order, by, at) ?? Request.Objection(ask, line));
        order.PutOn(line);
        var request = order.Replace(new Request(ask), by, at, "sent again");
        await store.SaveChangesAsync(CancellationToken.None);
        return request.View();
    }

    private static async Task<Line?> Line(RepairStore store, Guid site, RequestRepair ask) =>
        ask.Line is null
            ? null
            : await store.Lines.SingleOrDefaultAsync(
                l => l.SiteId == site && l.Number == ask.Line && !l.Retired,
                CancellationToken.None
            );
}
