using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Assessing;

internal static class AssessingEndpoints
{
    public static void MapAssessing(this IEndpointRouteBuilder orders) =>
        orders.MapPut("/{number}/assessment", Assess).Needs(Permission.RecordAssessment).WithSummary("Judge the pipe");

    private static async Task<RecordView> Assess(
        string number,
        RecordAssessment ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var at = clock.Now();
        var readings = ask.AllReadings();
        Readings.Check(readings, "readings", order.Site.Today(at));
        Readings.Check(ask.EarlierReadings ?? [], "earlierReadings", order.Site.Today(at));
        RepairOrder.Refuse(Assessment.Objection(order, ask, by, at));
        var instruments = await Readings.Instruments(store, order.SiteId, readings);
        if (Assessment.StartsRound(order))
            order.NextRound();
        var judgement = Judging.Of(order, ask).Judge(at);
        var assessment = order.SignAgain(new Assessment(new(ask, judgement, instruments)), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return assessment.View();
    }
}
