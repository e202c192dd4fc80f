using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Failing;

/// <summary>A failure as it was reported. There is no rule that could refuse it.</summary>
internal sealed class Failure : SignedRecord<ReportFailure>, IMovesStage
{
    private Failure() { }

    public Failure(ReportFailure ask)
        : base(ask) { }

    public override string Kind => "failure";

    public override string Summary => $"{Words.Of(Asked.State)}: {Asked.Seen}";

    public override Tone Tone => Tone.Stop;

    /// <summary>It leaked, so it counts among the leaks of the line.</summary>
    public bool Leaked => Asked.State >= LeakState.Weep;

    /// <summary>Something of the order is there to fail, or leaks bare.</summary>
    public static bool Concerns(RepairOrder order) => order.Columns.Open && order.Stage is not Stage.Fixed;

    // Kept at any stage; it moves the order only where a repair is on the pipe to fail.
    public Stage After(Stage before, RepairOrder order) =>
        before is Stage.Fitted or Stage.InService or Stage.LineOutOfService or Stage.MadeSafe ? Stage.Failed : before;
}
