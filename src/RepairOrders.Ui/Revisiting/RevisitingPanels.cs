using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using static RepairOrders.Contract.InstrumentKind;
using static RepairOrders.Ui.Orders.Offers;

namespace RepairOrders.Ui.Revisiting;

/// <summary>The panels of revisiting.</summary>
internal static class RevisitingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["record-visit"] = new PlainStep<RecordVisit>(
            "Sign the visit",
            (api, step, ask, key) => api.Visit(step.Number, ask, key)
        )
        {
            Offered = new Dictionary<string, Offer> { ["readings.instrument"] = Instruments(ThicknessGauge) },
            Photos = PhotoOf.Visit,
            Folded = ["notReadWhy", "doneAt", "tagPhoto", "action", "excursions"],
            Cautions = StepCautions.Visiting,
        },
        ["countersign-visit"] = new PlainStep<CountersignVisit>(
            "Countersign",
            (api, step, ask, _) => api.CountersignVisit(step.Number, ask with { Visit = step.Last("visit")!.Id })
        )
        {
            Hidden = _ => ["visit"],
            Answers = "visit",
        },
    };
}
