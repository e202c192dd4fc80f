using System.Globalization;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Instruments;
using RepairOrders.Api.Issuing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.OrderSheets;
using RepairOrders.Api.People;
using RepairOrders.Api.Proving;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Stock;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.AtThePipe;

/// <summary>The order as whoever stands at the pipe needs it, in one read: with gloves on nobody looks things up.</summary>
internal static class PipeQuery
{
    private const int Most = 200;

    public static async Task<PipeView> Read(
        string number,
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop
    )
    {
        var order = await store.Order(number, by, null, stop);
        var at = clock.Now();
        var around = await Around.Of(store, [AroundKey.Of(order)], at, stop);
        var sheet = OrderSheetQuery.Sheet(order, by, at, [], around[order.Id]);
        var plan = WorkPlan.Of(order);
        var people = await People(store, order, stop);
        return new(
            sheet.Title,
            order.Site.TimeZone,
            order.Version.ToString(CultureInfo.InvariantCulture),
            plan?.Emergency ?? false,
            plan?.Design.Cautions ?? [],
            FittingQuery.View(order, by, at),
            ClimateReading.Fresh(order, at)?.At + ClimateReading.GoodFor,
            PipeSteps.Of(order, by, people, at),
            Limits(order, plan),
            plan is null ? [] : await Batches(store, order, plan, at, stop),
            await Instruments(store, order, at, stop),
            plan is null
                ? []
                :
                [
                    .. people
                        .Where(p => Witnesses.May(order, plan, p, at))
                        .Select(p => new NamedPerson(p.Id, p.FullName)),
                ],
            (RoleRules.Objection(by, Permission.StartMix) ?? Mix.Objection(order, by, at))?.View,
            Stop.Standing(order) is null
                ? []
                : PipeSteps.Signers(people, by, Permission.ResumeJob, p => Authority.Objection(p, order, at)),
            Proof.Of(order)?.Id,
            Photo.Of(order, PhotoOf.Tag).LastOrDefault()?.Id,
            sheet.Next,
            at
        );
    }

    private static async Task<List<Person>> People(RepairStore store, RepairOrder order, CancellationToken stop) =>
        await store
            .Users.AsNoTracking()
            .Where(p => p.Sites.Contains(order.Site.ShortName) && !p.Disabled)
            .OrderBy(p => p.FullName)
            .Take(Most)
            .ToListAsync(stop);

    private static PipeLimits Limits(RepairOrder order, WorkPlan? plan)
    {
        if (plan is null)
            return new(null, null, null, null, null, null, null, null, null, null);
        var (most, why) = TestPressure.Greatest(order);
        return new(
            plan.Design.LeastWallMm > 0 ? plan.Design.LeastWallMm : null,
            plan.Design["torqueLeastNm"],
            plan.Design["torqueMostNm"],
            plan.Design["bandTensionLowN"],
            plan.Design["bandTensionHighN"],
            plan.Fasteners,
            HoldPointEvidence.LeastHardness(order),
            TestPressure.Least(order, TestKind.Hydrostatic),
            most,
            why
        );
    }

    // On the emergency path the batches are booked after the fit: whatever the site holds may be mixed.
    private static async Task<IReadOnlyList<PipeBatch>> Batches(
        RepairStore store,
        RepairOrder order,
        WorkPlan plan,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        Guid[] issued =
        [
            .. order.InRound<MaterialIssue>().SelectMany(i => i.Asked.Lines).Select(l => l.Batch).Distinct(),
        ];
        var batches = await store
            .Set<Batch>()
            .AsNoTracking()
            .Include(b => b.Item)
            .Where(b => b.Item.SiteId == order.SiteId && (plan.Emergency || issued.Contains(b.Id)))
            .OrderBy(b => b.Expiry)
            .ThenBy(b => b.Number)
            .Take(Most)
            .ToListAsync(stop);
        var hardeners = batches.Select(b => b.Item.Limits?.Hardener).OfType<string>().ToHashSet();
        return
        [
            .. batches
                .Where(b => b.Item.Limits is { PotLife: not null } || hardeners.Contains(b.Item.Code))
                .Where(b => MaterialIssue.Barred(b, order.Site.Today(at)) is null)
                .Select(b => new PipeBatch(b.Id, b.Number, b.Item.Code, b.Item.Words, b.Item.Limits)),
        ];
    }

    private static async Task<IReadOnlyList<PipeInstrument>> Instruments(
        RepairStore store,
        RepairOrder order,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        var listed = await store
            .Set<Instrument>()
            .AsNoTracking()
            .Where(i => i.SiteId == order.SiteId)
            .OrderBy(i => i.Serial)
            .Take(Most)
            .ToListAsync(stop);
        return
        [
            .. listed
                .Where(i => InstrumentRules.Objection(i, order.Site.Today(at)) is null)
                .Select(i => new PipeInstrument(i.Serial, i.Kind, i.Words)),
        ];
    }
}
