using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Readying;
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
        var closed =
            NotOpen(order)
            ?? Authority.Objection(by, order, at)
            ?? Permit.Objection(order, ReadinessFor.Removal, at)
            ?? Stop.Objection(order);
        if (closed is not null)
            return closed;
        var ready = Crew(order);
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
            Photo.Of(order, PhotoOf.Removal).Any(p => p.Id == ask.Photo)
                ? null
                : new Objection(
                    "bare-pipe-photo-missing",
                    "Photograph the bare pipe before anything covers it again, and name that photograph.",
                    "whoever takes it off"
                )
        );

    /// <summary>Who is named for the removal in the readiness that counts; nobody before there is one.</summary>
    public static IReadOnlyList<NamedPerson> Crew(RepairOrder order) =>
        Readiness.Current(order, ReadinessFor.Removal)?.Asked.Fitters ?? [];

    /// <summary>The repair is ordered off and people may be sent to it.</summary>
    public static Objection? NotOpen(RepairOrder order) =>
        NotOrdered(order) ?? OnThePipe.Objection(order) ?? NotMadeSafe(order);

    /// <summary>People are at the pipe, or may be, to take the repair off.</summary>
    public static bool UnderWay(RepairOrder order) => NotOpen(order) is null && Crew(order).Count > 0;

    private static Objection? NotOrdered(RepairOrder order) =>
        order.Last<RemovalOrder>() is not null
            ? null
            : new Objection(
                "removal-not-ordered",
                "Nobody has ordered the removal of this repair.",
                "engineer, manager or supervisor, by ordering it"
            )
            {
                IsOfStage = true,
            };

    private static Objection? NotMadeSafe(RepairOrder order) =>
        order.Stage != Stage.Failed
            ? null
            : new Objection(
                "failed-not-made-safe",
                "The repair has failed and is not made safe. Operations make it safe first; nobody goes to it before.",
                "operations in charge, by making it safe"
            );
}
