using RepairOrders.Contract;

namespace RepairOrders.Ui.Forms;

/// <summary>Where a photograph taken inside a form goes: the order, what it shows, and which of it.</summary>
public sealed record PhotoDesk(string Order, PhotoOf Of, string? Subject = null);
