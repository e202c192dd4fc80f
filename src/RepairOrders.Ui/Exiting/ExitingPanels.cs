using RepairOrders.Contract;
using RepairOrders.Ui.Orders;

namespace RepairOrders.Ui.Exiting;

/// <summary>The panels of exiting.</summary>
internal static class ExitingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["exit-order"] = new PlainStep<ExitOrder>("Sign the exit", (api, step, ask, _) => api.Exit(step.Number, ask)),
        ["sign-exit"] = new PlainStep<SignExit>(
            "Sign as second",
            (api, step, ask, _) => api.SignExit(step.Number, ask with { Exit = step.Last("exit")!.Id })
        )
        {
            Hidden = _ => ["exit"],
            Answers = "exit",
        },
        ["return-to-service"] = new PlainStep<ReturnToService>(
            "Put it back into service",
            (api, step, ask, _) => api.ReturnToService(step.Number, ask)
        )
        {
            Answers = "exit",
            Cautions = StepCautions.IntoService,
        },
    };
}
