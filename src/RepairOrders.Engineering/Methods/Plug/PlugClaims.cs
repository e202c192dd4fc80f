using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Joints;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods.Plug;

/// <summary>Where a plug may go.</summary>
internal static class PlugClaims
{
    public static IReadOnlyList<Finding> Of(Pipe pipe, Defect defect, Service service)
    {
        PipeFacts.Check(pipe, defect, service);
        return
        [
            .. CommonLimits.Known(pipe, defect, service),
            CommonLimits.NoCrack(defect),
            .. CommonLimits.StraightPipe(defect),
            .. Hole(defect),
            .. Medium(service),
            .. CommonLimits.Brittle(pipe),
            .. CommonLimits.Growing(defect),
            .. CommonLimits.Axial(pipe, defect, service),
            .. CommonLimits.Review(pipe, defect, service),
            Finding.Watch(
                "before-a-patch",
                "A plug reduces the hole before a patch; secure it mechanically and trim it flush.",
                Sources.PuttyManual
            ),
        ];
    }

    private static IEnumerable<Finding> Hole(Defect defect)
    {
        if (!defect.ThroughWall)
            yield return Finding.Refuse("no-hole", "There is no hole to plug.", Sources.PuttyManual);
        yield return Finding.AtMost(
            "hole-above-plug",
            "Hole",
            defect.HoleDiameter.Millimeters,
            MetricBolt.All[^1].Diameter.Millimeters,
            "mm",
            Sources.Own
        );
        if (defect.Kind == DefectKind.GeneralThinning)
            yield return Finding.Fail(
                "thin-all-round",
                "The wall is thin all round: it may tear when drilled and tapped.",
                Sources.PuttyManual
            );
    }

    private static IEnumerable<Finding> Medium(Service s)
    {
        if (s.Flammable || s.Toxic || s.FluidGroup == 1)
            yield return Finding.Fail(
                "hazardous",
                "Hazardous fluid behind a plug and nothing else: only with a signed basis.",
                Sources.Own
            );
        if (s.State is FluidState.Gas or FluidState.Steam)
            yield return Finding.Watch(
                "plug-flies",
                "Gas or steam behind a plug: it flies when it lets go. Fit it depressurised.",
                Sources.Own
            );
    }
}
