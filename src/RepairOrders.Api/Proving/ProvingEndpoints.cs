using RepairOrders.Api.Fitting;
using RepairOrders.Api.Instruments;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Proving;

internal static class ProvingEndpoints
{
    public static void MapProving(this IEndpointRouteBuilder orders)
    {
        orders
            .MapPost("/{number}/proofs", Prove)
            .Needs(Permission.RecordProof)
            .WithSummary("Prove the repair: test and tag");
        orders
            .MapPost("/{number}/proofs/{proof:guid}/witnesses", Witness)
            .Needs(Permission.WitnessProof)
            .WithSummary("Witness a proof");
        orders
            .MapPost("/{number}/test-waivers", Waive)
            .Needs(Permission.WaiveTest)
            .WithSummary("Waive the test, with another examination");
        orders
            .MapPost("/{number}/departure-acceptances", AcceptDepartures)
            .Needs(Permission.AcceptDepartures)
            .WithSummary("Accept what was done otherwise than written");
        orders
            .MapPost("/{number}/first-look-acceptances", AcceptFirstLook)
            .Needs(Permission.AcceptFirstLook)
            .WithSummary("Take on the first look");
        orders
            .MapPost("/{number}/acceptances", Accept)
            .Needs(Permission.AcceptRepair)
            .WithSummary("Take the repair into service");
    }

    private static async Task<RecordView> Prove(
        string number,
        RecordProof ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(Proof.Objection(order, by, at));
        var gauge = ask.Test is { } test ? await store.Instrument(order.SiteId, test.Gauge) : null;
        RepairOrder.Refuse(Proof.Objection(order, ask, gauge, by, at));
        var (most, why) = TestPressure.Greatest(order);
        var record = order.Sign(
            new Proof(
                new(
                    ask,
                    ask.Test is { Tight: false },
                    ask.Test is null ? null : most,
                    ask.Test is null ? null : why,
                    CureClock.Of(order, Proof.Now(ask, at))
                )
            ),
            by,
            at
        );
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    private static async Task<RecordView> Witness(
        string number,
        Guid proof,
        WitnessProof ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(ProofWitness.Objection(order, by, at));
        if (Proof.Of(order)!.Id != proof)
            throw new NotHere("There is no such proof in this round, or a later one counts.");
        return await Sign(store, order, new ProofWitness(new(proof, ask.Remark)), by, at);
    }

    private static async Task<RecordView> Waive(
        string number,
        WaiveTest ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(TestWaiver.Objection(order, ask, by, at));
        return await Sign(store, order, new TestWaiver(ask), by, at);
    }

    private static async Task<RecordView> AcceptDepartures(
        string number,
        AcceptDepartures ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(DepartureAcceptance.Objection(order, by, at));
        var body = new SignedDepartures(ask.Why, DepartureAcceptance.Open(order));
        return await Sign(store, order, new DepartureAcceptance(body), by, at);
    }

    private static async Task<RecordView> AcceptFirstLook(
        string number,
        AcceptFirstLook ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(FirstLookAcceptance.Objection(order, by, at));
        var body = new SignedFirstLook(new(by.Id, by.FullName), ask.Remark);
        return await Sign(store, order, new FirstLookAcceptance(body), by, at);
    }

    private static async Task<RecordView> Accept(
        string number,
        AcceptRepair ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(Acceptance.Objection(order, ask, by, at));
        var proof = Proof.Of(order)!;
        var body = new SignedAcceptance(ask, proof.Id, proof.Asked.Ask.Tag!, WorkPlan.Of(order)!.Limits);
        return await Sign(store, order, new Acceptance(body), by, at);
    }

    private static async Task<RecordView> Sign<T>(
        RepairStore store,
        RepairOrder order,
        T record,
        Person by,
        DateTimeOffset at
    )
        where T : SignedRecord
    {
        order.Sign(record, by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }
}
