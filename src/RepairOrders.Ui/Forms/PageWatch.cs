namespace RepairOrders.Ui.Forms;

/// <summary>What the page knows of its person: while he types, nothing is drawn anew under his hands.</summary>
public sealed class PageWatch
{
    public bool Typing { get; set; }
}
