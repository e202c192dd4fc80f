using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using static RepairOrders.Ui.Orders.Offers;

namespace RepairOrders.Ui.Owning;

/// <summary>The panels of owning.</summary>
internal static class OwningPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["offer-hand-over"] = new PlainStep<OfferHandOver>(
            "Offer it",
            (api, step, ask, _) => api.OfferHandOver(step.Number, ask)
        )
        {
            Offered = new Dictionary<string, Offer> { ["to"] = Anybody },
        },
        ["accept-hand-over"] = new PlainStep<AcceptHandOver>(
            "Take it over",
            (api, step, ask, _) =>
                api.AcceptHandOver(step.Number, ask with { HandOver = step.Last("hand-over")!.Id }, step.Sheet.Version)
        )
        {
            Hidden = _ => ["handOver"],
            Answers = "hand-over",
        },
    };
}
