using System.ComponentModel.DataAnnotations;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Closing;

internal static class ClosingEndpoints
{
    public static void MapClosing(this IEndpointRouteBuilder orders)
    {
        orders.MapPut("/{number}/close-out", Close).Needs(Permission.CloseOrder).WithSummary("Close the order");
        orders
            .MapPost("/{number}/close-out-countersignatures", Countersign)
            .Needs(Permission.CountersignCloseOut)
            .WithSummary("Countersign the close-out as engineer");
        orders
            .MapDelete("/{number}/close-out", Reopen)
            .Needs(Permission.ReopenOrder)
            .WithSummary("Reopen: set the close-out aside with a reason");
    }

    private static async Task<RecordView> Close(
        string number,
        CloseOrder ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var at = clock.Now();
        RepairOrder.Refuse(CloseOut.Objection(order, ask, await StoresOf.Order(store, order), by, at));
        var closeOut = order.Replace(new CloseOut(ask), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return closeOut.View();
    }

    private static async Task<RecordView> Countersign(
        string number,
        CountersignCloseOut ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(CloseOutCountersignature.Objection(order, ask, by, at));
        var signed = order.Sign(new CloseOutCountersignature(ask), by, at, ask.Remark);
        await store.SaveChangesAsync(CancellationToken.None);
        return signed.View();
    }

    private static async Task<IResult> Reopen(
        string number,
        [Required, StringLength(2000, MinimumLength = 3)] string why,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var at = clock.Now();
        RepairOrder.Refuse(Reopening.Objection(order, by, at));
        order.SetAside(order.Last<CloseOut>()!, by, at, why);
        await store.SaveChangesAsync(CancellationToken.None);
        return TypedResults.NoContent();
    }
}
