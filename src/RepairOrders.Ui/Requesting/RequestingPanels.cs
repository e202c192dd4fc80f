using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using static RepairOrders.Ui.Orders.Prefill;

namespace RepairOrders.Ui.Requesting;

/// <summary>The panels of requesting.</summary>
internal static class RequestingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["request-again"] = new PlainStep<RequestRepair>(
            "Send it again",
            (api, step, ask, _) => api.RequestAgain(step.Number, ask, step.Sheet.Version)
        )
        {
            Known = step => Known(step.Last<RequestRepair>("request")),
            Hidden = _ => ["site"],
            Answers = "exit",
        },
    };
}
