using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using static RepairOrders.Contract.InstrumentKind;
using static RepairOrders.Ui.Orders.Offers;
using static RepairOrders.Ui.Orders.Prefill;

namespace RepairOrders.Ui.Assessing;

/// <summary>The panels of assessing.</summary>
internal static class AssessingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["record-assessment"] = new PlainStep<RecordAssessment>(
            "Sign the assessment",
            (api, step, ask, _) => api.Assess(step.Number, ask, step.Sheet.Version)
        )
        {
            Known = step => Known(Prefill.Assessment(step)),
            Blank = ["readings.wall", "readings.spot"],
            Offered = new Dictionary<string, Offer>
            {
                ["readings.instrument"] = Instruments(ThicknessGauge),
                ["earlierReadings.instrument"] = Instruments(ThicknessGauge),
            },
            Hidden = step => step.Sheet.Title.Line is null ? [] : ["line"],
            Folded =
            [
                "notMeasuredWhy",
                "earlierReadings",
                "corrosionRate",
                "rateBasis",
                "outsideAxialLoad",
                "outsideBending",
                "outsideLoadsNote",
                "cyclic",
                "qualityFactor",
                "metal",
                "structuralMinimum",
                "surgeRise",
                "unrestrained",
                "wallMappedEachSide",
                "growthExcludedBy",
                "exclusions",
                "distanceToDiscontinuity",
            ],
            Photos = PhotoOf.Assessment,
            Cautions = StepCautions.AtThePipe,
        },
    };
}
