using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Readying;
using RepairOrders.Contract;

namespace RepairOrders.Api.Fitting;

/// <summary>What every step of the work asks first: the right stage, no stop, a permit, a fitter.</summary>
internal static class AtWork
{
    public static Objection? Objection(RepairOrder order, string what, Person by, DateTimeOffset at) =>
        Orders.Objection.NotNow(order, what, Stage.Ready, Stage.Fitting)
        ?? Authority.Objection(by, order, at)
        ?? Stop.Objection(order)
        ?? Permit.Objection(order, ReadinessFor.Fit, at);

    /// <summary>The technicians who fit are named by the supervisor; nobody else signs their steps.</summary>
    public static Objection? NotAFitter(RepairOrder order, Person by)
    {
        var ready = Readiness.Current(order, ReadinessFor.Fit)!.Asked;
        return ready.Fitters.Any(f => f.Id == by.Id)
            ? null
            : new Objection(
                "not-a-fitter",
                $"This is signed by who fits: {string.Join(" or ", ready.Fitters.Select(f => f.Name))}. You are not named in the readiness.",
                "a named fitter; supervisor, by a new readiness"
            );
    }
}

/// <summary>When the fitting of this round began.</summary>
internal static class FittingStart
{
    public static DateTimeOffset? Of(RepairOrder order) =>
        order
            .InRound<Mix>()
            .Select(m => m.At)
            .Concat(order.InRound<HoldPointRelease>().Select(r => r.At))
            .Select(at => (DateTimeOffset?)at)
            .Min();
}
