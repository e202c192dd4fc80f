using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Removing;
using RepairOrders.Contract;

namespace RepairOrders.Api.MakingPermanent;

/// <summary>The line put right for good.</summary>
internal sealed class PermanentFix : SignedRecord<RecordPermanentFix>, IMovesStage
{
    private PermanentFix() { }

    public PermanentFix(RecordPermanentFix ask)
        : base(ask) { }

    public override string Kind => "permanent-fix";

    public override string Summary => $"{Words.Of(Asked.Kind)} on {Asked.DoneOn:yyyy-MM-dd}, {Asked.Reference}";

    public Stage After(Stage before, RepairOrder order) => Stage.Fixed;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Orders.Objection.NotNow(order, "A permanent fix", Stage.Removed, Stage.Fixed)
        ?? Authority.Objection(by, order, at)
        ?? (
            RemovalInspection.IsMissing(order)
                ? new Objection(
                    "inspector-entry-missing",
                    "The bare pipe has not been inspected. On classes A, B and C an inspector enters what he found before it is covered or cut out.",
                    "an inspector"
                )
                : null
        );

    public static Objection? Objection(RepairOrder order, RecordPermanentFix ask, Person by, DateTimeOffset at)
    {
        if (Objection(order, by, at) is { } no)
            return no;
        if (ask.Kind == PermanentFixKind.LineRetired)
            return null;
        if (string.IsNullOrWhiteSpace(ask.PartCertificates))
            return new Objection(
                "part-certificates-missing",
                "Name the certificates of the new parts.",
                "supervisor, from stores or the contractor"
            );
        return string.IsNullOrWhiteSpace(ask.Tests)
            ? new Objection(
                "fix-not-tested",
                "Name the tests of the new piece: kind, pressure, result, report.",
                "supervisor, once it is tested"
            )
            : null;
    }
}
