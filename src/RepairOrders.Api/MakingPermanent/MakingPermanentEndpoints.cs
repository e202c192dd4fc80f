using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.MakingPermanent;

internal static class MakingPermanentEndpoints
{
    public static void MapMakingPermanent(this IEndpointRouteBuilder orders) =>
        orders
            .MapPut("/{number}/permanent-fix", Record)
            .Needs(Permission.RecordPermanentFix)
            .WithSummary("Record the permanent fix");

    private static async Task<RecordView> Record(
        string number,
        RecordPermanentFix ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var at = clock.Now();
        if (ask.DoneOn > order.Site.Today(at))
            throw new MalformedAsk("doneOn", $"doneOn is {ask.DoneOn:yyyy-MM-dd}; allowed is today or earlier.");
        RepairOrder.Refuse(PermanentFix.Objection(order, ask, by, at));
        var fix = order.Replace(new PermanentFix(ask), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return fix.View();
    }
}
