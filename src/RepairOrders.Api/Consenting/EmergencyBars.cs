using RepairOrders.Api.Lines;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Consenting;

/// <summary>Where the emergency path is barred: these are cases to shut down.</summary>
internal static class EmergencyBars
{
    private static readonly string[] Listed =
    [
        "h2s",
        "hydrogen sulphide",
        "hydrogen sulfide",
        "hydrofluoric",
        "hydrogen fluoride",
        "chlorine",
        "phosgene",
    ];

    public static Objection? Objection(LineFacts facts, RecordConsent ask, bool failedHere)
    {
        if (
            facts.Source.Category == ServiceCategory.M
            || ask.Consequences.ListedContents
            || Listed.Any(w => facts.Service.Fluid.Contains(w, StringComparison.OrdinalIgnoreCase))
        )
            return new Objection(
                "emergency-contents",
                "Category M, H2S, HF and chlorine are barred from the emergency path. Shut down and isolate.",
                "nobody; shut down"
            );
        if (ask.CrackLike)
            return new Objection(
                "emergency-crack-like",
                "What is seen is crack-like: barred from the emergency path. Shut down and isolate.",
                "nobody; shut down"
            );
        if (!ask.CauseKnown && facts.Service.AboveAutoIgnition)
            return new Objection(
                "emergency-cause-unknown",
                "The cause is unknown and the fluid is above its auto-ignition temperature: stay clear and shut down.",
                "nobody; shut down"
            );
        return ask.FailedBefore || failedHere
            ? new Objection(
                "emergency-spot-failed",
                "This spot has failed before: barred from the emergency path. Isolate, or have it assessed.",
                "integrity engineer, by assessing the pipe"
            )
            : null;
    }
}
