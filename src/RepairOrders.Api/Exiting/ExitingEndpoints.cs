using RepairOrders.Api.Closing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Exiting;

internal static class ExitingEndpoints
{
    public static void MapExiting(this IEndpointRouteBuilder orders)
    {
        orders
            .MapPost("/{number}/exits", Leave)
            .Needs(Permission.ExitOrder)
            .WithSummary("Take an order out of the procedure");
        orders
            .MapPost("/{number}/exit-signatures", Sign)
            .Needs(Permission.SignExit)
            .WithSummary("Give the second signature of an exit");
        orders
            .MapPost("/{number}/service-returns", Return)
            .Needs(Permission.ReturnToService)
            .WithSummary("Put a line back into service");
    }

    private static async Task<RecordView> Leave(
        string number,
        ExitOrder ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var other = ask.OtherOrder is null ? null : await store.Order(ask.OtherOrder, by);
        // The other is only read: what is written is this order.
        store.ChangeTracker.Clear();
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(Exit.Objection(order, ask, other, await StoresOf.Order(store, order), by, at));
        var exit = order.Sign(new Exit(ask), by, at, ask.Why);
        await store.SaveChangesAsync(CancellationToken.None);
        return exit.View();
    }

    private static async Task<RecordView> Sign(
        string number,
        SignExit ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(ExitSignature.Objection(order, ask, by, at));
        var signature = order.Sign(new ExitSignature(ask), by, at, ask.Remark);
        await store.SaveChangesAsync(CancellationToken.None);
        return signature.View();
    }

    private static async Task<RecordView> Return(
        string number,
        ReturnToService ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(ServiceReturn.Objection(order, by, at));
        var record = order.Sign(new ServiceReturn(ask), by, at, ask.Checked);
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }
}
