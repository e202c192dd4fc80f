using RepairOrders.Api.Assessing;
using RepairOrders.Api.Failing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Revisiting;

internal static class RevisitingEndpoints
{
    /// <summary>How long a visit may be entered after it was made.</summary>
    private static readonly TimeSpan FromPaperWithin = TimeSpan.FromHours(72);

    public static void MapRevisiting(this IEndpointRouteBuilder orders)
    {
        orders.MapPost("/{number}/visits", RecordVisit).Needs(Permission.RecordVisit).WithSummary("Record a visit");
        orders
            .MapPost("/{number}/visit-countersignatures", Countersign)
            .Needs(Permission.CountersignVisit)
            .WithSummary("Countersign a visit as engineer");
    }

    private static async Task<RecordView> RecordVisit(
        string number,
        RecordVisit ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        var doneAt = DoneAt(order, ask, at);
        Readings.Check(ask.Readings ?? [], "readings", order.Site.Today(at));
        await Readings.Instruments(store, order.SiteId, ask.Readings ?? []);
        RepairOrder.Refuse(Visit.Objection(order, ask, by, at));
        var countersign = ask.Readings is { Count: > 0 } || ClassHistory.At(order, at) is RiskClass.A or RiskClass.B;
        var visit = order.Sign(new Visit(Forecasts.Of(order, ask, doneAt, countersign)), by, at);
        if (ask.Result == VisitResult.Failed)
            order.Sign(new Failure(FailureOf(ask)), by, at, "found at a visit");
        await store.SaveChangesAsync(CancellationToken.None);
        return visit.View();
    }

    private static async Task<RecordView> Countersign(
        string number,
        CountersignVisit ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(VisitCountersignature.Objection(order, ask, by, at));
        var signed = order.Sign(new VisitCountersignature(ask), by, at, ask.Remark);
        await store.SaveChangesAsync(CancellationToken.None);
        return signed.View();
    }

    private static DateTimeOffset DoneAt(RepairOrder order, RecordVisit ask, DateTimeOffset at)
    {
        var earliest = at - FromPaperWithin;
        if (order.Columns.InServiceSince is { } since && since > earliest)
            earliest = since;
        var done = ask.DoneAt ?? at;
        return done >= earliest && done <= at
            ? done
            : throw new MalformedAsk(
                "doneAt",
                $"doneAt is {done:yyyy-MM-dd HH:mm}Z; allowed is {earliest:yyyy-MM-dd HH:mm}Z to {at:yyyy-MM-dd HH:mm}Z."
            );
    }

    private static ReportFailure FailureOf(RecordVisit ask) =>
        new(
            ask.State,
            string.IsNullOrWhiteSpace(ask.Remark) ? $"found at a visit: {Words.Of(ask.State)}" : ask.Remark,
            ask.Action,
            null,
            ask.Photo
        );
}
