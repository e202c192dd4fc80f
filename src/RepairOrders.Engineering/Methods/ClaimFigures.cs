using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Joints;
using RepairOrders.Engineering.Methods.LaminateWrap;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods;

/// <summary>The figures the claims are judged by, worked once for all methods.</summary>
public static class ClaimFigures
{
    private static readonly Clause Thrust = new("HSE, Leak sealing repair clamps", "end load");

    /// <summary>Depth and extent of the damage, end load against what the ring carries, and the product of the low-risk route.</summary>
    /// <param name="pipe">The pipe; a nominal wall of 0 stands for one not known.</param>
    /// <param name="defect">The defect; a wall of 0 stands for one not measured.</param>
    /// <param name="service">The service.</param>
    /// <returns>The hand calculation; without the figures that rest on what is not known.</returns>
    /// <exception cref="ImpossibleInputException">A value no pipe can have.</exception>
    public static IReadOnlyList<WorkingStep> Of(Pipe pipe, Defect defect, Service service)
    {
        PipeFacts.Check(pipe, defect, service);
        var working = new Working();
        var D = working.Given("D", "outside diameter", pipe.OutsideDiameter.Millimeters, "mm", Sources.Pipe);
        Damaged(working, pipe, defect, D);
        EndLoad(working, pipe, defect, service, D);
        if (defect.HoleDiameter.Millimeters > 0)
            LowRisk(working, defect, service);
        return working;
    }

    private static void Damaged(Working working, Pipe pipe, Defect defect, double D)
    {
        var (t, left) = (pipe.NominalWall.Millimeters, defect.RemainingWall.Millimeters);
        var c = defect.CircumferentialLength.Millimeters;
        if (t > 0 && (defect.ThroughWall || left > 0))
            working.Step(
                "d/t",
                "share of the nominal wall that is gone",
                "1 − t/tn",
                $"1 − {left}/{t}",
                1 - left / t,
                "-",
                Sources.DepthCutOff
            );
        working.Step(
            "c/πD",
            "share of the girth",
            "min(1, c/(π D))",
            $"min(1, {c}/(π × {D}))",
            PipeFacts.ShareOfGirth(pipe, defect),
            "-",
            Sources.DepthCutOff
        );
    }

    private static void EndLoad(Working working, Pipe pipe, Defect defect, Service service, double D)
    {
        working.Step(
            "F end",
            "end load where the pipe parts, at design pressure",
            "P π D²/4/1000",
            $"{service.DesignPressure.Megapascals} × π × {D}²/4/1000",
            PipeFacts.ThrustKn(pipe, service),
            "kN",
            Thrust
        );
        var ring = PipeFacts.RingWallMm(defect);
        if (ring <= 0)
            return;
        var lost = PipeFacts.LostShare(pipe, defect);
        var S = working.Given("S", "allowable stress", pipe.AllowableStress.Megapascals, "MPa", Sources.Pipe);
        working.Step(
            "F ring",
            "end load the ring beside the damage carries",
            "S π (D − t) t (1 − lost)/1000",
            $"{S} × π × ({D} − {ring}) × {ring} × (1 − {lost})/1000",
            PipeFacts.AxialCapacityKn(pipe, defect),
            "kN",
            Thrust
        );
    }

    private static void LowRisk(Working working, Defect defect, Service service) =>
        working.Step(
            "P √d",
            "product of the low-risk route, at most 0.16",
            "P √d, d in m",
            $"{service.DesignPressure.Megapascals} × √({defect.HoleDiameter.Millimeters}/1000)",
            LaminateOverlap.RiskProduct(service.DesignPressure, defect.HoleDiameter),
            "MPa m^0.5",
            Sources.LowRiskWrap
        );
}
