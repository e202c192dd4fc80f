using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using static RepairOrders.Ui.Orders.Offers;
using static RepairOrders.Ui.Orders.Prefill;

namespace RepairOrders.Ui.Extending;

/// <summary>The panels of extending.</summary>
internal static class ExtendingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["ask-extension"] = new PlainStep<AskExtension>(
            "Ask for the extension",
            (api, step, ask, _) => api.AskExtension(step.Number, ask)
        )
        {
            Known = step => Known(Prefill.Extension(step)),
            Blank = ["reason", "permanentFix.on"],
            Offered = new Dictionary<string, Offer>
            {
                ["survey"] = Records("visit", v => v.Read<SignedVisit>().Ask.Readings is { Count: > 0 }),
            },
        },
        ["decide-extension"] = new PlainStep<DecideExtension>(
            "Sign the decision",
            (api, step, ask, _) => api.DecideExtension(step.Number, ask with { Extension = step.Last("extension")!.Id })
        )
        {
            Hidden = _ => ["extension"],
            Answers = "extension",
        },
    };
}
