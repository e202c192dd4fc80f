using Microsoft.AspNetCore.Components;
using RepairOrders.Contract;

namespace RepairOrders.Ui.Orders;

/// <summary>What every step's panel is given, and what it tells when its record is signed.</summary>
public abstract class StepPanel : ComponentBase
{
    /// <summary>The order as the person sees it now.</summary>
    [Parameter, EditorRequired]
    public OrderSheet Sheet { get; set; } = null!;

    /// <summary>The action this panel was opened for, with its objection if there is one.</summary>
    [Parameter, EditorRequired]
    public ActionView Action { get; set; } = null!;

    /// <summary>Told when the record is signed: the page reads the order again.</summary>
    [Parameter, EditorRequired]
    public EventCallback Done { get; set; }

    /// <summary>Where the panel looks up people, instruments and the site's clock.</summary>
    [CascadingParameter]
    internal OrderDesk Desk { get; set; } = null!;

    private protected StepContext Context => new(Sheet, Desk);

    /// <summary>The order's number.</summary>
    protected string Number => Sheet.Title.Number;

    /// <summary>Where the draft is kept in the browser.</summary>
    protected string DraftName => $"{Number} {Action.Action}";
}
