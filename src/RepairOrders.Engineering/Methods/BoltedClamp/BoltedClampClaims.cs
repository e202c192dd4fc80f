using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods.BoltedClamp;

/// <summary>Where a bolted clamp may go.</summary>
internal static class BoltedClampClaims
{
    public static IReadOnlyList<Finding> Of(Pipe pipe, Defect defect, Service service)
    {
        PipeFacts.Check(pipe, defect, service);
        return
        [
            .. CommonLimits.Known(pipe, defect, service),
            CommonLimits.NoCrack(defect),
            .. Joint(defect),
            .. CommonLimits.Brittle(pipe),
            .. Medium(defect, service),
            .. CommonLimits.Steam(service),
            .. Restraint(pipe, defect, service),
            .. CommonLimits.Growing(defect),
            .. CommonLimits.Review(pipe, defect, service),
            Finding.Watch(
                "ovality",
                "Measure ovality and straightness at both seals before it is ordered.",
                Sources.LeakClamps
            ),
        ];
    }

    private static IEnumerable<Finding> Joint(Defect defect)
    {
        if (defect.Kind == DefectKind.Joint)
            yield return Finding.Fail(
                "joint",
                "A leak at a joint needs a box of its own shape; this sizing is for straight pipe.",
                Sources.StraightPipeOnly
            );
        else
            foreach (var finding in CommonLimits.StraightPipe(defect))
                yield return finding;
    }

    private static IEnumerable<Finding> Medium(Defect defect, Service s)
    {
        if (s.AboveAutoIgnition)
            yield return Finding.Fail(
                "above-auto-ignition",
                "Above its auto-ignition temperature: only shut down, or with the manager's leave and nobody near.",
                Sources.OrderOfPreference
            );
        if (
            s is { Flammable: true, State: FluidState.Gas }
            && defect.Kind is not (DefectKind.Pitting or DefectKind.Pinhole)
        )
            yield return Finding.Fail(
                "gas-not-a-pit",
                "On gas a bolt-on clamp is for a leak from a corrosion pit only.",
                Sources.ClampOnGas
            );
        if (s.Category == ServiceCategory.M)
            yield return Finding.Fail(
                "category-m",
                "Category M fluid: a seal of elastomer needs a signed basis.",
                Sources.Own
            );
        if (s.Cyclic)
            yield return Finding.Fail(
                "vibration",
                "Marked vibration: no bolted clamp until its support and weight have been checked.",
                Sources.OrderOfPreference
            );
    }

    private static IEnumerable<Finding> Restraint(Pipe pipe, Defect defect, Service service)
    {
        if (CommonLimits.Axial(pipe, defect, service).All(f => f.Severity == Severity.Pass))
            yield return Finding.Pass(
                "axial-strength",
                "The pipe beside the damage carries the end load.",
                Sources.LeakClamps
            );
        else
            yield return Finding.Watch(
                "restraint-needed",
                "The pipe cannot be relied on for the end load: size the clamp with restraint.",
                Sources.LeakClamps
            );
    }
}
