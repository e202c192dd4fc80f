using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using static RepairOrders.Contract.InstrumentKind;
using static RepairOrders.Ui.Orders.Offers;

namespace RepairOrders.Ui.Fitting;

/// <summary>The panels of fitting.</summary>
internal static class FittingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["release-hold-point"] = new OwnPanel<FittingPanel>(),
        ["record-climate"] = new PlainStep<RecordClimate>(
            "Keep the reading",
            (api, step, ask, key) => api.RecordClimate(step.Number, ask, key)
        )
        {
            Offered = new Dictionary<string, Offer> { ["instrument"] = Instruments(Hygrometer, SurfaceThermometer) },
        },
        ["start-mix"] = new PlainStep<StartMix>(
            "Start the clock",
            (api, step, ask, key) => api.StartMix(step.Number, ask, key)
        )
        {
            Offered = new Dictionary<string, Offer> { ["batch"] = IssuedBatches, ["hardenerBatch"] = IssuedBatches },
            Cautions = StepCautions.Mixing,
        },
        ["record-cure"] = new PlainStep<RecordCure>(
            "Keep the readings",
            (api, step, ask, key) => api.RecordCure(step.Number, ask, key)
        )
        {
            Offered = new Dictionary<string, Offer> { ["instrument"] = Instruments(SurfaceThermometer) },
        },
        ["stop-job"] = new PlainStep<StopJob>(
            "Stop the job",
            (api, step, ask, key) => api.StopJob(step.Number, ask, key)
        ),
        ["resume-job"] = new PlainStep<ResumeJob>(
            "Let it go on",
            (api, step, ask, key) => api.ResumeJob(step.Number, ask, key)
        )
        {
            Answers = "stop",
            Cautions = StepCautions.Resuming,
        },
    };
}
