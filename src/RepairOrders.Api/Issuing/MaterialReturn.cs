using System.Globalization;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Issuing;

/// <summary>Material taken back into a bin, or scrapped by the storekeeper.</summary>
internal sealed class MaterialReturn : SignedRecord<SignedReturn>, IMovesStage
{
    private MaterialReturn() { }

    public MaterialReturn(SignedReturn body)
        : base(body) { }

    public override string Kind => "material-return";

    public override string Summary => Moved(Asked.Lines);

    /// <summary>Before the work a return opens the bill again; once work has begun nothing turns back.</summary>
    public Stage After(Stage before, RepairOrder order) =>
        !Asked.Complete && before is Stage.Issued or Stage.Ready ? Stage.Approved : before;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Out(order)
            ? Authority.Objection(by, order, at)
            : new Objection(
                "nothing-is-out",
                "No material is out on this order: nothing can come back.",
                "nobody; there is nothing to return"
            )
            {
                IsOfStage = true,
            };

    // No batch can have more back than went out, so the sums are equal only where every batch is home.
    private static bool Out(RepairOrder order) =>
        order.All<MaterialIssue>().SelectMany(i => i.Asked.Lines).Sum(l => l.Quantity)
        > order
            .All<MaterialReturn>()
            .SelectMany(r => r.Asked.Lines)
            .Concat(order.All<MaterialUse>().SelectMany(u => u.Asked.Lines))
            .Sum(l => l.Quantity);

    public static string Moved(IReadOnlyList<MovedLine> lines) =>
        string.Join(
            "; ",
            lines.Select(l =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{l.Quantity:0.###} {l.Unit} {l.Words}, batch {l.Number}: {l.To}"
                )
            )
        );
}

/// <summary>What became of material at the pipe.</summary>
internal sealed class MaterialUse : SignedRecord<SignedUse>
{
    private MaterialUse() { }

    public MaterialUse(SignedUse body)
        : base(body) { }

    public override string Kind => "material-use";

    public override string Summary => MaterialReturn.Moved(Asked.Lines);

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Orders.Objection.NotNow(
            order,
            "An account of material",
            Stage.Fitting,
            Stage.Fitted,
            Stage.InService,
            Stage.Failed,
            Stage.MadeSafe,
            Stage.Removed,
            Stage.Fixed,
            Stage.LineOutOfService
        ) ?? Authority.Objection(by, order, at);
}
