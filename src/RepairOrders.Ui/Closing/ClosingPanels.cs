using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using static RepairOrders.Ui.Orders.Prefill;

namespace RepairOrders.Ui.Closing;

/// <summary>The panels of closing.</summary>
internal static class ClosingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["close-order"] = new PlainStep<CloseOrder>(
            "Close the order",
            (api, step, ask, _) => api.CloseOrder(step.Number, ask, step.Sheet.Version)
        )
        {
            Known = step =>
                Known(
                    new CloseOrder(
                        step.Last<InspectRemoval>("removal-inspection")?.Cause ?? default,
                        step.Last<InspectRemoval>("removal-inspection")?.Found ?? "",
                        step.Last<SignedDesign>("design")?.Ask.ChangeControl?.Reference,
                        step.Last<RecordRemoval>("removal")?.TagBack ?? false
                    )
                ),
        },
        ["countersign-close-out"] = new PlainStep<CountersignCloseOut>(
            "Countersign",
            (api, step, ask, _) =>
                api.CountersignCloseOut(step.Number, ask with { CloseOut = step.Last("close-out")!.Id })
        )
        {
            Hidden = _ => ["closeOut"],
            Answers = "close-out",
        },
        ["reopen-order"] = new PlainStep<GiveReason>(
            "Reopen the order",
            (api, step, ask, _) => api.ReopenOrder(step.Number, ask.Why, step.Sheet.Version)
        ),
    };
}
