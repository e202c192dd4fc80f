using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Readying;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Fitting;

/// <summary>What a technician sees at the pipe: the points in order, and every clock that runs.</summary>
internal static class FittingQuery
{
    private const double WarnAt = 0.75;

    public static async Task<FittingView> Read(
        string number,
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop
    )
    {
        var order = await store.Order(number, by, null, stop);
        return View(order, by, clock.Now());
    }

    public static FittingView View(RepairOrder order, Person by, DateTimeOffset at)
    {
        var plan = WorkPlan.Of(order);
        var ready = Readiness.Current(order, ReadinessFor.Fit)?.Asked;
        var climate = order.Last<ClimateReading>();
        return new(
            [.. (plan?.HoldPoints ?? []).Select(p => Point(order, plan!, p, by, at))],
            Stop.Standing(order) is { } stopped ? $"{stopped.By}: {stopped.Asked.Ask.Reason}" : null,
            ready?.Ask.Permit,
            ready?.Ask.PermitUntil,
            ready?.Fitters ?? [],
            SurfaceAt(order, plan),
            climate?.Asked,
            climate?.At,
            [.. order.InRound<Mix>().Select(m => Clock(order, m, at))],
            CureClock.Of(order),
            at
        );
    }

    private static HoldPointState Point(
        RepairOrder order,
        WorkPlan plan,
        HoldPointView point,
        Person by,
        DateTimeOffset at
    )
    {
        var release = HoldPointRelease.Of(order, plan, point.Code);
        return new(
            point,
            release?.By,
            release?.At,
            release is null
                ? (
                    RoleRules.Objection(by, Permission.ReleaseHoldPoint)
                    ?? HoldPointRelease.Objection(order, plan, point, by, at)
                )?.View
                : null,
            HoldPointEvidence.AsksWitness(plan, point)
        );
    }

    private static DateTimeOffset? SurfaceAt(RepairOrder order, WorkPlan? plan) =>
        plan
            ?.HoldPoints.Where(p => p.Evidence.Contains(Evidence.SurfaceGrade))
            .Select(p => HoldPointRelease.Of(order, plan, p.Code)?.At)
            .Max();

    private static MixClock Clock(RepairOrder order, Mix mix, DateTimeOffset at)
    {
        var used = Mix.UsedAt(order, mix.Id);
        var left = mix.Asked.UsableUntil - at;
        var life = mix.Asked.UsableUntil - mix.At;
        return new(
            mix.Id,
            mix.Asked.Item,
            mix.Asked.Words,
            mix.Asked.Number,
            mix.At,
            mix.Asked.UsableUntil,
            mix.Asked.PlaceBy,
            used,
            used is null ? left.TotalMinutes : null,
            used is not null ? Tone.Go
                : left < TimeSpan.Zero ? Tone.Stop
                : left < life * (1 - WarnAt) ? Tone.Watch
                : Tone.Go
        );
    }
}
