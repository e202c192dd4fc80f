using RepairOrders.Api.Assessing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Removing;

internal static class RemovingEndpoints
{
    public static void MapRemoving(this IEndpointRouteBuilder orders)
    {
        orders.MapPut("/{number}/removal-order", Order).Needs(Permission.OrderRemoval).WithSummary("Order removal");
        orders.MapPut("/{number}/removal", Record).Needs(Permission.RecordRemoval).WithSummary("Record the removal");
        orders
            .MapPut("/{number}/removal-inspection", Inspect)
            .Needs(Permission.InspectRemoval)
            .WithSummary("The inspector's entry on the bare pipe");
    }

    private static async Task<RecordView> Order(
        string number,
        OrderRemoval ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var at = clock.Now();
        if (ask.By < order.Site.Today(at))
            throw new MalformedAsk("by", $"by is {ask.By:yyyy-MM-dd}; allowed is today or later.");
        RepairOrder.Refuse(RemovalOrder.Objection(order, ask, by, at));
        var ordered = order.Replace(new RemovalOrder(ask), by, at, ask.Why);
        await store.SaveChangesAsync(CancellationToken.None);
        return ordered.View();
    }

    private static async Task<RecordView> Record(
        string number,
        RecordRemoval ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var at = clock.Now();
        Readings.Check(ask.Readings ?? [], "readings", order.Site.Today(at));
        RepairOrder.Refuse(Removal.Objection(order, ask, by, at));
        var removal = order.Replace(new Removal(ask), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return removal.View();
    }

    private static async Task<RecordView> Inspect(
        string number,
        InspectRemoval ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var at = clock.Now();
        Readings.Check(ask.Readings ?? [], "readings", order.Site.Today(at));
        RepairOrder.Refuse(RemovalInspection.Objection(order, by, at));
        var entry = order.Replace(new RemovalInspection(ask), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return entry.View();
    }
}
