using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Removing;
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
        RepairOrder.Refuse(PermanentFix.Objection(order, ask, by, at));
        var removed = order.Site.Today(order.Last<Removal>()!.At);
        if (ask.DoneOn < removed || ask.DoneOn > order.Site.Today(at))
            throw new MalformedAsk(
                "doneOn",
                $"doneOn is {ask.DoneOn:yyyy-MM-dd}; allowed is from the removal on {removed:yyyy-MM-dd} to today."
            );
        var fix = order.Replace(new PermanentFix(ask), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return fix.View();
    }
}
