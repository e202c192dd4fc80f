using RepairOrders.Contract;

namespace RepairOrders.Api.Orders;

/// <summary>The stage follows from the records: each record that stands moves it, in the order they were signed.</summary>
internal static class Stages
{
    public static Stage Of(RepairOrder order)
    {
        var stage = Stage.Requested;
        foreach (var record in order.Records.Where(r => r.Stands).OrderBy(r => r.At).ThenBy(r => r.Id))
            stage = record is IMovesStage moves ? moves.After(stage, order) : stage;
        return stage;
    }
}

/// <summary>A record that may move the stage.</summary>
internal interface IMovesStage
{
    /// <summary>The stage after this record, given the one before it.</summary>
    Stage After(Stage before, RepairOrder order);
}
