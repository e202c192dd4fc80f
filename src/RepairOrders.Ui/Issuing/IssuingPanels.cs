using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using static RepairOrders.Ui.Orders.Offers;

namespace RepairOrders.Ui.Issuing;

/// <summary>The panels of issuing.</summary>
internal static class IssuingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["issue-material"] = new OwnPanel<IssuePanel>(),
        ["agree-substitution"] = new PlainStep<AgreeSubstitution>(
            "Agree",
            (api, step, ask, _) => api.AgreeSubstitution(step.Number, ask)
        )
        {
            Offered = new Dictionary<string, Offer> { ["line"] = BillLines, ["item"] = StockItems },
        },
        ["return-material"] = new PlainStep<ReturnMaterial>(
            "Take it back",
            (api, step, ask, key) => api.ReturnMaterial(step.Number, ask, key)
        )
        {
            Known = Prefill.MaterialBack,
            Offered = new Dictionary<string, Offer> { ["lines.batch"] = IssuedBatches, ["lines.bin"] = Bins },
        },
        ["account-for-material"] = new PlainStep<AccountForMaterial>(
            "Account for it",
            (api, step, ask, key) => api.AccountForMaterial(step.Number, ask, key)
        )
        {
            Known = Prefill.MaterialUse,
            Offered = new Dictionary<string, Offer> { ["lines.batch"] = IssuedBatches },
        },
    };
}
