using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using static RepairOrders.Ui.Orders.Offers;

namespace RepairOrders.Ui.Choosing;

/// <summary>The panels of choosing.</summary>
internal static class ChoosingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["choose-method"] = new OwnPanel<ChoicePanel>(),
        ["sign-deviation"] = new PlainStep<SignDeviation>(
            "Sign the deviation",
            (api, step, ask, _) => api.Deviate(step.Number, ask)
        )
        {
            Offered = new Dictionary<string, Offer> { ["method"] = Methods },
        },
    };
}
