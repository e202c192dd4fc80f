using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Methods.WeldedPatch;

/// <summary>Where a welded patch may go.</summary>
internal static class WeldedPatchClaims
{
    private const double LeastEdgeMm = 10;

    public static IReadOnlyList<Finding> Of(Pipe pipe, Defect defect, Service service)
    {
        PipeFacts.Check(pipe, defect, service);
        return
        [
            .. CommonLimits.Known(pipe, defect, service),
            CommonLimits.NoCrack(defect),
            .. CommonLimits.StraightPipe(defect),
            .. Rule(pipe, defect, service),
            .. WeldLimits.Metal(pipe, defect),
            .. CommonLimits.Axial(pipe, defect, service),
            .. CommonLimits.Growing(defect),
            .. CommonLimits.Review(pipe, defect, service),
            Isolate(defect),
        ];
    }

    /// <summary>On flammable gas nobody may sign past the rule.</summary>
    public static LimitKind KindFor(Service service) =>
        service is { Flammable: true, State: FluidState.Gas } ? LimitKind.Absolute : LimitKind.ByDeviation;

    private static IReadOnlyList<Finding> Rule(Pipe pipe, Defect defect, Service service) =>
        WeldedPatchRule.Findings(
            pipe.YieldStrength,
            defect.Kind,
            pipe.NominalWall,
            pipe.NominalWall,
            Length.FromMillimeters(
                Math.Max(defect.AxialLength.Millimeters, defect.CircumferentialLength.Millimeters) + 2 * LeastEdgeMm
            ),
            pipe.OutsideDiameter,
            KindFor(service)
        );

    private static Finding Isolate(Defect defect) =>
        defect.ThroughWall
            ? Finding.Watch("isolate", "Stop and drain the leak before the first weld.", Sources.HotWorkInService)
            : Finding.Pass("not-leaking", "The line does not leak where it is welded.", Sources.HotWorkInService);
}
