using RepairOrders.Ui.Orders;

namespace RepairOrders.Ui.Sizing;

/// <summary>The panels of sizing.</summary>
internal static class SizingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new() { ["size-repair"] = new OwnPanel<SizingPanel>() };
}
