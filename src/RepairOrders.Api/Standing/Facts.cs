using RepairOrders.Api.Assessing;
using RepairOrders.Api.Lines;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Readying;
using RepairOrders.Api.Removing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Standing;

/// <summary>Facts of an order that rules of the later steps ask for.</summary>
internal static class Facts
{
    /// <summary>The line's duty protects people.</summary>
    public static bool SafetyCritical(RepairOrder order) =>
        order.Line?.SafetyCritical ?? Judged(order)?.SafetyCritical ?? false;

    /// <summary>A leak may take fire by itself. As long as nobody has judged the pipe the line list says so.</summary>
    public static bool AboveAutoIgnition(RepairOrder order) =>
        Judged(order)?.AboveAutoIgnition
        ?? LineFacts.Of(order, null, cyclic: false)?.Service.AboveAutoIgnition
        ?? false;

    /// <summary>The change control the approved design runs under.</summary>
    public static string? ChangeControl(RepairOrder order) => order.ApprovedDesign?.Asked.Ask.ChangeControl?.Reference;

    public static bool NeedsChangeControl(RepairOrder order, RiskClass riskClass) =>
        riskClass is RiskClass.A or RiskClass.B || SafetyCritical(order) || ChangeControl(order) is not null;

    /// <summary>Everybody who had his hands on the repair, in any round.</summary>
    public static IReadOnlySet<Guid> Fitters(RepairOrder order) =>
        order
            .All<Readiness>()
            .SelectMany(r => r.Asked.Fitters.Select(f => f.Id))
            .Concat(order.All<Removal>().Select(r => r.ById))
            .ToHashSet();

    private static FactsView? Judged(RepairOrder order) =>
        order.All<Assessment>().LastOrDefault()?.Asked.Judgement.Facts;
}
