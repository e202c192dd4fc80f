using System.Globalization;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Readying;
using RepairOrders.Api.Sizing;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Register;

/// <summary>What one shift hands to the next: each fit with its gate as it reads now, and the limits operations hold lines to.</summary>
internal static class ShiftQuery
{
    private const int Most = 100;
    private static readonly Stage[] AtWork = [Stage.Issued, Stage.Ready, Stage.Fitting, Stage.Fitted];

    public static async Task<ShiftView> Read(
        Person by,
        RepairStore store,
        bool limits,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        var open = store.Orders.AsNoTracking().Asked(store, new RegisterFilter(Live: true), by, at);
        var fits = await Load(open.Where(o => AtWork.Contains(o.Columns.Stage)), stop);
        var held = limits ? await Held(open.Where(o => o.Columns.Live), store, stop) : [];
        return new(
            [.. fits.Take(Most).Select(o => Fit(o, at)).OfType<FitUnderWay>().OrderByDescending(f => f.Tone)],
            [.. held.Take(Most).Select(Limit).OfType<LimitInForce>()],
            fits.Count > Most || held.Count > Most,
            at
        );
    }

    // What is held to limits stands in the designs: they are read first, and only their orders whole.
    private static async Task<List<RepairOrder>> Held(
        IQueryable<RepairOrder> live,
        RepairStore store,
        CancellationToken stop
    )
    {
        var designs = await store
            .Set<Design>()
            .AsNoTracking()
            .Where(d => d.SetAsideAt == null && live.Any(o => o.Id == d.OrderId))
            .ToListAsync(stop);
        Guid[] limited =
        [
            .. designs.Where(d => d.Asked.Ask.InterimLimits is not null).Select(d => d.OrderId).Distinct(),
        ];
        return await Load(live.Where(o => limited.Contains(o.Id)), stop);
    }

    private static Task<List<RepairOrder>> Load(IQueryable<RepairOrder> orders, CancellationToken stop) =>
        orders
            .AsNoTrackingWithIdentityResolution()
            .Whole()
            .OrderBy(o => o.Columns.EndDate)
            .ThenBy(o => o.Id)
            .Take(Most + 1)
            .ToListAsync(stop);

    private static FitUnderWay? Fit(RepairOrder order, DateTimeOffset at)
    {
        if (WorkPlan.Of(order) is not { } plan)
            return null;
        var ahead = plan.HoldPoints.Where(p => HoldPointRelease.Of(order, plan, p.Code) is null).ToList();
        var (tone, gate) = Gate(order, ahead, at);
        return new(
            order.Number,
            order.Line?.Number,
            order.Columns.Place,
            plan.Name,
            plan.Class,
            order.Stage,
            plan.HoldPoints.Count - ahead.Count,
            plan.HoldPoints.Count,
            ahead.FirstOrDefault()?.Title,
            tone,
            gate
        );
    }

    /// <summary>Whether a fit may go on now, by stop, permit and climate, gravest first.</summary>
    internal static (Tone Tone, string Words) Gate(
        RepairOrder order,
        IReadOnlyList<HoldPointView> ahead,
        DateTimeOffset at
    )
    {
        if (Stop.Standing(order) is { } stopped)
            return (Tone.Stop, $"Stopped by {stopped.By}: {stopped.Asked.Ask.Reason}");
        if (order.Stage is Stage.Issued)
            return (Tone.Watch, "Not readied: permit, isolation and gas test are still to come.");
        if (Permit.Objection(order, ReadinessFor.Fit, at) is { } permit)
            return (Tone.Stop, permit.Sentence);
        if (!ahead.Any(p => p.Evidence.Contains(Evidence.ClimateReading) || p.Evidence.Contains(Evidence.Mix)))
            return (Tone.Go, "Go. No step ahead depends on the climate.");
        if (ClimateReading.Fresh(order, at)?.Asked is not { } read)
            return (Tone.Watch, "The climate was not read in the last hour.");
        if (read.Verdicts.FirstOrDefault(v => !v.Go) is { } no)
            return (Tone.Stop, $"No-go for {no.Words}. {Why(no)}");
        return (
            Tone.Go,
            string.Create(
                CultureInfo.InvariantCulture,
                $"Go. Steel is {Math.Abs(read.MarginK):0.0} K {(read.MarginK < 0 ? "below the dew point; the material is for wet steel" : "above the dew point")}."
            )
        );
    }

    private static string? Why(ClimateVerdictView no) =>
        no.Findings.FirstOrDefault(f => f.Severity == FindingSeverity.Fail)?.Words;

    private static LimitInForce? Limit(RepairOrder order) =>
        order.ApprovedDesign?.Asked.Ask.InterimLimits is { } limits
            ? new(order.Number, order.Line?.Number, order.Columns.Place, limits, order.Columns.EndDate)
            : null;
}
