using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Http.HttpResults;
using RepairOrders.Api.Instruments;
using RepairOrders.Api.Issuing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Readying;
using RepairOrders.Api.Stock;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Fitting;

internal static class FittingEndpoints
{
    public static void MapFitting(this IEndpointRouteBuilder orders)
    {
        orders
            .MapGet("/{number}/fitting", FittingQuery.Read)
            .Needs(Permission.ReadOrder)
            .WithSummary("Where the work stands: points, permit and clocks");
        orders
            .MapPost("/{number}/climate-readings", Climate)
            .Needs(Permission.RecordReadings)
            .WithSummary("Read the climate at the pipe");
        orders.MapPost("/{number}/mixes", StartMix).Needs(Permission.StartMix).WithSummary("Start a mix");
        orders
            .MapPost("/{number}/mixes/{mix:guid}/uses", UseMix)
            .Needs(Permission.StartMix)
            .WithSummary("Say that a mix is on the pipe");
        orders
            .MapDelete("/{number}/mixes/{mix:guid}", VoidMix)
            .Needs(Permission.VoidMix)
            .WithSummary("Void a mix with a reason");
        orders
            .MapPost("/{number}/cure-readings", RecordCure)
            .Needs(Permission.RecordReadings)
            .WithSummary("Add temperatures to the cure log");
        orders
            .MapPost("/{number}/hold-point-releases", Release)
            .Needs(Permission.ReleaseHoldPoint)
            .WithSummary("Release a hold point");
        orders
            .MapDelete("/{number}/hold-point-releases/{release:guid}", Strike)
            .Needs(Permission.ReleaseHoldPoint)
            .WithSummary("Strike through a release that was wrong");
        orders.MapPost("/{number}/stops", StopJob).Needs(Permission.StopJob).WithSummary("Stop the job; never refused");
        orders
            .MapPost("/{number}/resumptions", Resume)
            .Needs(Permission.ResumeJob)
            .WithSummary("Let a stopped job go on");
        orders.MapPhotos();
    }

    private static async Task<RecordView> Climate(
        string number,
        RecordClimate ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(ClimateReading.Objection(order, by, at));
        await Check(store, order, ask.Instrument, at, InstrumentKind.Hygrometer, InstrumentKind.SurfaceThermometer);
        var body = ClimateReading.Sign(ask, await Materials(store, order));
        var record = order.Sign(new ClimateReading(body), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    /// <summary>The materials issued whose limits a climate is judged by.</summary>
    public static async Task<IReadOnlyList<StockItem>> Materials(RepairStore store, RepairOrder order)
    {
        string[] codes =
        [
            .. order.InRound<MaterialIssue>().SelectMany(i => i.Asked.Lines).Select(l => l.Item).Distinct(),
        ];
        var issued = await store
            .Set<StockItem>()
            .AsNoTracking()
            .Where(i => i.SiteId == order.SiteId && codes.Contains(i.Code))
            .OrderBy(i => i.Code)
            .ToListAsync(CancellationToken.None);
        return [.. issued.Where(i => i.Limits is not null)];
    }

    private static async Task<RecordView> StartMix(
        string number,
        StartMix ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(Mix.Objection(order, by, at));
        var material = await Batch(store, order, "batch", ask.Batch);
        var hardener = ask.HardenerBatch is { } second ? await Batch(store, order, "hardenerBatch", second) : null;
        RepairOrder.Refuse(Mix.Objection(order, ask, material, hardener, at));
        var climate = ClimateReading.Fresh(order, at)!;
        var (limits, steel) = (material.Item.Limits!, climate.Asked.Ask.Steel.Value);
        var life = Mix.Clock(limits, ask, steel, at).Result;
        var record = order.Sign(
            new Mix(
                new(
                    ask,
                    material.Item.Code,
                    material.Item.Words,
                    material.Number,
                    hardener?.Number,
                    climate.Id,
                    steel,
                    life.UsableUntil,
                    life.PlaceBy,
                    limits
                )
            ),
            by,
            at
        );
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    private static async Task<RecordView> UseMix(
        string number,
        Guid mix,
        UseMix ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        var mixed = Standing<Mix>(order, mix, "mix");
        RepairOrder.Refuse(MixUse.Objection(order, mixed, by, at));
        var body = new SignedMixUse(mixed.Id, mixed.Asked.Item, mixed.Asked.Number, ask.Remark);
        var record = order.Sign(new MixUse(body), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    private static async Task<NoContent> VoidMix(
        string number,
        Guid mix,
        [Required, StringLength(1000, MinimumLength = 3)] string why,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var mixed = Standing<Mix>(order, mix, "mix");
        RepairOrder.Refuse(MixUse.Voiding(order, mixed));
        order.SetAside(mixed, by, clock.Now(), why);
        await store.SaveChangesAsync(CancellationToken.None);
        return TypedResults.NoContent();
    }

    private static async Task<RecordView> RecordCure(
        string number,
        RecordCure ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(CureReading.Objection(order, by, at));
        for (var i = 0; i < ask.Readings.Count; i++)
            if (ask.Readings[i].At > at)
                throw new MalformedAsk(
                    $"readings[{i}].at",
                    $"readings[{i}].at is {ask.Readings[i].At:yyyy-MM-dd HH:mm}; allowed is now or earlier."
                );
        await Check(store, order, ask.Instrument, at, InstrumentKind.SurfaceThermometer);
        var record = order.Sign(new CureReading(ask), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    private static async Task<RecordView> Release(
        string number,
        ReleaseHoldPoint ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        if (WorkPlan.Of(order) is not { } plan)
            throw new ProcedureRefusal(AtWork.Objection(order, "A hold point", by, at)!);
        var place = plan.HoldPoints.ToList().FindIndex(p => p.Code == ask.HoldPoint);
        if (place < 0)
            throw new MalformedAsk(
                "holdPoint",
                $"holdPoint is \"{ask.HoldPoint}\"; allowed is one of {string.Join(", ", plan.HoldPoints.Select(p => p.Code))}."
            );
        var point = plan.HoldPoints[place];
        RepairOrder.Refuse(HoldPointRelease.Objection(order, plan, point, by, at));
        var instrument = ask.Instrument is { } serial ? await store.Instrument(order.SiteId, serial) : null;
        var witness = ask.Witness is { } called ? await store.PersonOf(order.Site.ShortName, called.Person) : null;
        RepairOrder.Refuse(HoldPointEvidence.Objection(order, plan, point, ask, instrument, witness, at));
        var evidence = point.Evidence;
        var record = order.Sign(
            new HoldPointRelease(
                new(
                    ask,
                    point.Title,
                    $"{place + 1} of {plan.HoldPoints.Count}",
                    plan.HoldPoints.Count,
                    plan.Id,
                    evidence.Contains(Evidence.ClimateReading) ? ClimateReading.Fresh(order, at)?.Id : null,
                    evidence.Contains(Evidence.Mix) ? order.Last<Mix>()?.Id : null,
                    [.. Photo.Of(order, PhotoOf.HoldPoint, point.Code).Select(p => p.Id)],
                    witness?.FullName
                )
            ),
            by,
            at
        );
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    private static async Task<NoContent> Strike(
        string number,
        Guid release,
        [Required, StringLength(1000, MinimumLength = 3)] string why,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var signed = Standing<HoldPointRelease>(order, release, "release");
        RepairOrder.Refuse(HoldPointRelease.Striking(order, signed, by));
        order.SetAside(signed, by, clock.Now(), why);
        await store.SaveChangesAsync(CancellationToken.None);
        return TypedResults.NoContent();
    }

    private static async Task<RecordView> StopJob(
        string number,
        StopJob ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var body = new SignedStop(ask, Stop.EndsRound(order, ask));
        var record = order.Sign(new Stop(body), by, clock.Now(), ask.Reason);
        if (body.EndsRound)
            order.NextRound();
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    private static async Task<RecordView> Resume(
        string number,
        ResumeJob ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(Resumption.Objection(order, by, at));
        var record = order.Sign(new Resumption(ask), by, at, ask.CauseCleared);
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    private static async Task Check(
        RepairStore store,
        RepairOrder order,
        string serial,
        DateTimeOffset at,
        params InstrumentKind[] kinds
    ) =>
        RepairOrder.Refuse(
            InstrumentRules.Objection(await store.Instrument(order.SiteId, serial), order.Site.Today(at), kinds)
        );

    private static async Task<Batch> Batch(RepairStore store, RepairOrder order, string field, Guid id) =>
        await store
            .Set<Batch>()
            .Include(b => b.Item)
            .SingleOrDefaultAsync(b => b.Id == id && b.Item.SiteId == order.SiteId, CancellationToken.None)
        ?? throw new MalformedAsk(field, $"{field} is {id}; allowed is a batch of this site.");

    private static T Standing<T>(RepairOrder order, Guid id, string what)
        where T : SignedRecord =>
        order.InRound<T>().FirstOrDefault(r => r.Id == id)
        ?? throw new NotHere($"There is no such {what} in this round, or it is struck through.");
}
