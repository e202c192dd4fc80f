using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using static RepairOrders.Contract.InstrumentKind;
using static RepairOrders.Ui.Orders.Offers;
using static RepairOrders.Ui.Orders.Prefill;

namespace RepairOrders.Ui.Proving;

/// <summary>The panels of proving.</summary>
internal static class ProvingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["waive-test"] = new PlainStep<WaiveTest>(
            "Waive the test",
            (api, step, ask, _) => api.WaiveTest(step.Number, ask)
        )
        {
            Known = async step => new WaiveTest(await Prefill.WaiverCapacity(step), "", ""),
            Cautions = StepCautions.Waiving,
        },
        ["record-proof"] = new PlainStep<RecordProof>(
            "Sign the proof",
            (api, step, ask, _) => api.RecordProof(step.Number, ask)
        )
        {
            Known = step => Known(Prefill.Proof(step)),
            Blank = ["test.tight", "test.gauge", "test.kind", "pipeTemperature", "tag"],
            Needed = step => step.Last("test-waiver") is null ? ["test"] : [],
            Offered = new Dictionary<string, Offer> { ["test.gauge"] = Instruments(PressureGauge) },
            Photos = PhotoOf.Tag,
            Cautions = StepCautions.Proving,
        },
        ["witness-proof"] = new PlainStep<WitnessProof>(
            "Sign as witness",
            (api, step, ask, _) => api.WitnessProof(step.Number, step.Last("proof")!.Id, ask)
        )
        {
            Answers = "proof",
        },
        ["accept-departures"] = new PlainStep<AcceptDepartures>(
            "Accept the departures",
            (api, step, ask, _) => api.AcceptDepartures(step.Number, ask)
        ),
        ["accept-first-look"] = new PlainStep<AcceptFirstLook>(
            "Take on the looks",
            (api, step, ask, _) => api.AcceptFirstLook(step.Number, ask)
        ),
        ["accept-repair"] = new PlainStep<AcceptRepair>(
            "Take it into service",
            (api, step, ask, _) => api.AcceptRepair(step.Number, ask)
        )
        {
            Answers = "proof",
            Cautions = StepCautions.IntoService,
        },
    };
}
