using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Standing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Removing;

/// <summary>The repair is off the pipe; what was found under it.</summary>
internal sealed class Removal : SignedRecord<RecordRemoval>, IMovesStage
{
    private Removal() { }

    public Removal(RecordRemoval ask)
        : base(ask) { }

    public override string Kind => "removal";

    public override string Summary => $"found: {Asked.Condition}{(Asked.TagBack ? "" : "; tag not back")}";

    public Stage After(Stage before, RepairOrder order) => Stage.Removed;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if ((NotOrdered(order) ?? Authority.Objection(by, order, at)) is { } no)
            return no;
        if (Facts.RemovalReadiness(order, at) is not { } ready)
            return new Objection(
                "removal-not-ready",
                "No readiness for the removal covers this hour: permit, isolation with the line proved dead, gas test, talk.",
                "supervisor"
            );
        return ready.Any(p => p.Id == by.Id)
            ? null
            : new Objection(
                "not-on-the-removal",
                $"You are not among those named for the removal: {string.Join(", ", ready.Select(p => p.Name))}.",
                "supervisor, by a readiness that names you"
            );
    }

    public static Objection? Objection(RepairOrder order, RecordRemoval ask, Person by, DateTimeOffset at) =>
        Objection(order, by, at)
        ?? (
            ask.Photo is null
                ? new Objection(
                    "bare-pipe-photo-missing",
                    "Photograph the bare pipe before anything covers it again.",
                    "whoever takes it off"
                )
                : null
        );

    internal static Objection? NotOrdered(RepairOrder order) =>
        OnThePipe.Is(order) && order.Last<RemovalOrder>() is not null
            ? null
            : new Objection(
                "removal-order-missing",
                "Nobody has ordered the removal.",
                "integrity engineer, manager or supervisor"
            )
            {
                IsOfStage = true,
            };
}
