using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Failing;

internal static class FailingEndpoints
{
    public static void MapFailing(this IEndpointRouteBuilder orders)
    {
        orders.MapPost("/{number}/failures", Report).Needs(Permission.ReportFailure).WithSummary("Report a failure");
        orders.MapPost("/{number}/made-safe", MakeSafe).Needs(Permission.MakeSafe).WithSummary("Make it safe");
        orders
            .MapPost("/{number}/containment-agreements", Agree)
            .Needs(Permission.AgreeContainment)
            .WithSummary("Agree to containment on class A");
        orders
            .MapPost("/{number}/failure-modes", State)
            .Needs(Permission.StateFailureMode)
            .WithSummary("State how it failed");
    }

    private static async Task<RecordView> Report(
        string number,
        ReportFailure ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var failure = order.Sign(new Failure(ask), by, clock.Now());
        await store.SaveChangesAsync(CancellationToken.None);
        return failure.View();
    }

    private static async Task<RecordView> MakeSafe(
        string number,
        MakeSafe ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(MadeSafe.Objection(order, ask, by, at));
        var safe = order.Sign(new MadeSafe(new(ask, MadeSafe.NeedsManager(order, ask, by, at))), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return safe.View();
    }

    private static async Task<RecordView> Agree(
        string number,
        AgreeContainment ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(ContainmentAgreement.Objection(order, ask, by, at));
        var agreed = order.Sign(new ContainmentAgreement(ask), by, at, ask.Why);
        await store.SaveChangesAsync(CancellationToken.None);
        return agreed.View();
    }

    private static async Task<RecordView> State(
        string number,
        StateFailureMode ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(FailureStatement.Objection(order, ask, by, at));
        var statement = order.Sign(new FailureStatement(ask), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return statement.View();
    }
}
