using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Failing;

/// <summary>The manager's word that a class A leak may stay contained.</summary>
internal sealed class ContainmentAgreement : SignedRecord<AgreeContainment>, IMovesStage
{
    private ContainmentAgreement() { }

    public ContainmentAgreement(AgreeContainment ask)
        : base(ask) { }

    public override string Kind => "containment-agreement";

    public override string Summary => Asked.Why;

    public override Tone Tone => Tone.Watch;

    public Stage After(Stage before, RepairOrder order) => before is Stage.Failed ? Stage.MadeSafe : before;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Waiting(order) is { } contained
            ? Authority.Objection(by, order, at) ?? Oneself(contained, by)
            : new Objection(
                "nothing-to-agree",
                "No containment waits for the manager.",
                "operations in charge, by making safe"
            )
            {
                IsOfStage = true,
            };

    public static Objection? Objection(RepairOrder order, AgreeContainment ask, Person by, DateTimeOffset at) =>
        Objection(order, by, at)
        ?? (
            Waiting(order)!.Id == ask.MadeSafe
                ? null
                : new Objection(
                    "other-containment",
                    "That is not the containment in force. Read the order again.",
                    "manager"
                )
        );

    /// <summary>The containment that is not safe until the manager agrees.</summary>
    public static MadeSafe? Waiting(RepairOrder order) =>
        order.Stage == Stage.Failed
        && order.Last<MadeSafe>() is { Asked.ManagerNeeded: true } safe
        && order.Last<Failure>() is var failure
        && (failure is null || failure.At <= safe.At)
            ? safe
            : null;

    private static Objection? Oneself(MadeSafe contained, Person by) =>
        contained.ById == by.Id
            ? new Objection(
                "own-containment",
                "You signed the containment yourself. Another person agrees to it as manager.",
                "another manager"
            )
            : null;
}
