using RepairOrders.Contract;
using RepairOrders.Ui.Orders;

namespace RepairOrders.Ui.Failing;

/// <summary>The panels of failing.</summary>
internal static class FailingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["report-failure"] = new PlainStep<ReportFailure>(
            "Report the failure",
            (api, step, ask, key) => api.ReportFailure(step.Number, ask, key)
        )
        {
            Photos = PhotoOf.Failure,
            Cautions = StepCautions.Leaking,
        },
        ["make-safe"] = new PlainStep<MakeSafe>(
            "Sign it made safe",
            (api, step, ask, _) => api.MakeSafe(step.Number, ask)
        )
        {
            Answers = "failure",
            Cautions = StepCautions.Leaking,
        },
        ["agree-containment"] = new PlainStep<AgreeContainment>(
            "Agree to containment",
            (api, step, ask, _) => api.AgreeContainment(step.Number, ask with { MadeSafe = step.Last("made-safe")!.Id })
        )
        {
            Hidden = _ => ["madeSafe"],
            Answers = "made-safe",
        },
        ["state-failure-mode"] = new PlainStep<StateFailureMode>(
            "State it",
            (api, step, ask, _) => api.StateFailureMode(step.Number, ask with { Failure = step.Last("failure")!.Id })
        )
        {
            Hidden = _ => ["failure"],
            Answers = "failure",
        },
    };
}
