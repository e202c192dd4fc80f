using RepairOrders.Ui.Approving;

namespace RepairOrders.Ui.Orders;

/// <summary>Which panel answers which action: one line an ask, in the order of the procedure.</summary>
internal static class StepPanels
{
    private static readonly Dictionary<string, Type> Panels = new() { ["approve-order"] = typeof(ApprovalPanel) };

    public static Type? For(string action) => Panels.GetValueOrDefault(action);
}
