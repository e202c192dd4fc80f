using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Failing;

/// <summary>How a repair failed, stated by an engineer once it is known.</summary>
internal sealed class FailureStatement : SignedRecord<StateFailureMode>
{
    private FailureStatement() { }

    public FailureStatement(StateFailureMode ask)
        : base(ask) { }

    public override string Kind => "failure-mode";

    public override string Summary => $"{Words.Of(Asked.Mode)}: {Asked.Words}";

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        order.All<Failure>().Any()
            ? Authority.Objection(by, order, at)
            : new Objection("no-failure", "No failure is on record.", "nobody; there is nothing to state")
            {
                IsOfStage = true,
            };

    public static Objection? Objection(RepairOrder order, StateFailureMode ask, Person by, DateTimeOffset at)
    {
        if (Objection(order, by, at) is { } no)
            return no;
        if (order.All<Failure>().All(f => f.Id != ask.Failure))
            return new Objection(
                "failure-not-found",
                "That failure is not on this order. Read the order again.",
                "integrity engineer"
            );
        return ask.Mode == FailureMode.NotYetKnown
            ? new Objection(
                "failure-mode-not-stated",
                "State how it failed; as long as it is not known there is nothing to sign.",
                "integrity engineer"
            )
            : null;
    }

    /// <summary>Failures whose mode nobody has stated.</summary>
    public static IEnumerable<Failure> Unknown(RepairOrder order) => order.All<Failure>().Where(f => !Known(order, f));

    // A mode named when it was made safe holds for the failures it made safe.
    private static bool Known(RepairOrder order, Failure failure) =>
        order.All<FailureStatement>().Any(s => s.Asked.Failure == failure.Id)
        || order.All<MadeSafe>().FirstOrDefault(m => m.At >= failure.At)
            is { Asked.Ask.Mode: not FailureMode.NotYetKnown };
}
