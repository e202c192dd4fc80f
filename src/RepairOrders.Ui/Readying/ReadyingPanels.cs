using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using static RepairOrders.Ui.Orders.Offers;
using static RepairOrders.Ui.Orders.Prefill;

namespace RepairOrders.Ui.Readying;

/// <summary>The panels of readying.</summary>
internal static class ReadyingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["consent-to-live-fit"] = new PlainStep<ConsentToLiveFit>(
            "Consent to the live fit",
            (api, step, ask, _) => api.ConsentToLiveFit(step.Number, ask)
        )
        {
            Known = async step => new ConsentToLiveFit(await Prefill.LiveFitCapacity(step), ""),
            Cautions = StepCautions.Live,
        },
        ["ready-order"] = new PlainStep<ReadyOrder>(
            "Sign the job ready",
            (api, step, ask, _) => api.ReadyOrder(step.Number, ask)
        )
        {
            Known = step => Known(Prefill.Readiness(step)),
            Blank = ["permitKind", "gasTest.lowerExplosivePercent", "gasTest.oxygenPercent"],
            Offered = new Dictionary<string, Offer>
            {
                ["fitters"] = Persons(Role.Technician),
                ["talkSignedBy"] = Anybody,
            },
            Cautions = StepCautions.Readying,
            DesignCautions = true,
        },
    };
}
