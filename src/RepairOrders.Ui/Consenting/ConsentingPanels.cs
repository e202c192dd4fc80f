using RepairOrders.Contract;
using RepairOrders.Ui.Orders;
using static RepairOrders.Ui.Orders.Offers;
using static RepairOrders.Ui.Orders.Prefill;

namespace RepairOrders.Ui.Consenting;

/// <summary>The panels of consenting.</summary>
internal static class ConsentingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["record-consent"] = new PlainStep<RecordConsent>(
            "Write the consent down",
            (api, step, ask, _) => api.Consent(step.Number, ask)
        )
        {
            Known = step =>
                Known(
                    new RecordConsent(
                        default,
                        default,
                        default,
                        step.Sheet.ReadAt,
                        "",
                        false,
                        false,
                        false,
                        step.Last<SignedConsent>("consent")?.Ask.Consequences!
                    )
                ),
            Blank = ["as"],
            Offered = new Dictionary<string, Offer> { ["method"] = EmergencyMethods, ["givenBy"] = Anybody },
            Hidden = step => step.Sheet.Title.Line is null ? [] : ["line"],
            Cautions = StepCautions.Emergency,
        },
        ["confirm-consent"] = new PlainStep<ConfirmConsent>(
            "Say so",
            (api, step, ask, _) => api.ConfirmConsent(step.Number, ask)
        )
        {
            Known = async step =>
                (await OwnConsents(step)) is [var own, ..]
                    ? new ConfirmConsent(Guid.Parse(own.Key), Given: true)
                    : null,
            Offered = new Dictionary<string, Offer> { ["consent"] = OwnConsents },
            Answers = "consent",
        },
        ["grant-period"] = new PlainStep<GrantPeriod>(
            "Grant it",
            (api, step, ask, _) => api.GrantPeriod(step.Number, ask)
        ),
    };
}
