using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using static RepairOrders.Ui.Orders.Prefill;

namespace RepairOrders.Ui.MakingPermanent;

/// <summary>The panels of making permanent.</summary>
internal static class MakingPermanentPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["record-permanent-fix"] = new PlainStep<RecordPermanentFix>(
            "Sign the permanent fix",
            (api, step, ask, _) => api.RecordPermanentFix(step.Number, ask, step.Sheet.Version)
        )
        {
            Known = step =>
                Known(
                    new RecordPermanentFix(
                        default,
                        step.Last<SignedDesign>("design")?.Ask.PermanentFix?.Reference ?? "",
                        step.Today,
                        null,
                        null,
                        null,
                        ""
                    )
                ),
            Blank = ["kind"],
            Photos = PhotoOf.PermanentFix,
        },
    };
}
