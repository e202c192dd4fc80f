using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using static RepairOrders.Contract.InstrumentKind;
using static RepairOrders.Ui.Orders.Offers;

namespace RepairOrders.Ui.Removing;

/// <summary>The panels of removing.</summary>
internal static class RemovingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["order-removal"] = new PlainStep<OrderRemoval>(
            "Order the removal",
            (api, step, ask, _) => api.OrderRemoval(step.Number, ask, step.Sheet.Version)
        ),
        ["record-removal"] = new PlainStep<RecordRemoval>(
            "Sign the removal",
            (api, step, ask, _) => api.RecordRemoval(step.Number, ask, step.Sheet.Version)
        )
        {
            Offered = new Dictionary<string, Offer> { ["readings.instrument"] = Instruments(ThicknessGauge) },
            Photos = PhotoOf.Removal,
            Cautions = StepCautions.Removing,
        },
        ["inspect-removal"] = new PlainStep<InspectRemoval>(
            "Sign the entry",
            (api, step, ask, _) => api.InspectRemoval(step.Number, ask, step.Sheet.Version)
        )
        {
            Offered = new Dictionary<string, Offer> { ["readings.instrument"] = Instruments(ThicknessGauge) },
            Answers = "removal",
        },
    };
}
