using RepairOrders.Contract;

namespace RepairOrders.Ui.Orders;

/// <summary>A record's kind as a noun, and the contract's type of what was signed: its documentation explains the fields.</summary>
internal static class RecordNames
{
    private static readonly Dictionary<string, Type> Bodies = new()
    {
        ["request"] = typeof(RequestRepair),
        ["assessment"] = typeof(SignedAssessment),
        ["choice"] = typeof(SignedChoice),
        ["deviation"] = typeof(SignedDeviation),
        ["design"] = typeof(SignedDesign),
        ["approval"] = typeof(ApproveOrder),
        ["consent"] = typeof(SignedConsent),
        ["consent-confirmation"] = typeof(SignedConfirmation),
        ["material-issue"] = typeof(SignedIssue),
        ["material-return"] = typeof(SignedReturn),
        ["material-use"] = typeof(SignedUse),
        ["live-fit-consent"] = typeof(ConsentToLiveFit),
        ["readiness"] = typeof(SignedReadiness),
        ["climate-reading"] = typeof(SignedClimate),
        ["mix"] = typeof(SignedMix),
        ["mix-use"] = typeof(SignedMixUse),
        ["cure-reading"] = typeof(RecordCure),
        ["hold-point-release"] = typeof(SignedRelease),
        ["stop"] = typeof(SignedStop),
        ["resumption"] = typeof(ResumeJob),
        ["proof"] = typeof(SignedProof),
        ["proof-witness"] = typeof(SignedWitness),
        ["test-waiver"] = typeof(WaiveTest),
        ["departure-acceptance"] = typeof(SignedDepartures),
        ["first-look-acceptance"] = typeof(SignedFirstLook),
        ["acceptance"] = typeof(SignedAcceptance),
        ["exit"] = typeof(ExitOrder),
        ["visit"] = typeof(SignedVisit),
        ["extension"] = typeof(SignedExtension),
        ["extension-decision"] = typeof(SignedDecision),
        ["failure"] = typeof(ReportFailure),
        ["made-safe"] = typeof(SignedMadeSafe),
        ["removal-order"] = typeof(OrderRemoval),
        ["removal"] = typeof(RecordRemoval),
        ["removal-inspection"] = typeof(InspectRemoval),
        ["permanent-fix"] = typeof(RecordPermanentFix),
        ["close-out"] = typeof(CloseOrder),
        ["hand-over"] = typeof(SignedHandOver),
        ["ladder-answer"] = typeof(SignedAnswer),
        ["review"] = typeof(ReviewOrder),
    };

    public static string Of(string kind) => char.ToUpperInvariant(kind[0]) + kind[1..].Replace('-', ' ');

    public static Type? Body(string kind) => Bodies.GetValueOrDefault(kind);
}
