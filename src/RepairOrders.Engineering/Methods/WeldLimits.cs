using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods;

/// <summary>Limits of everything that is welded to a pipe.</summary>
internal static class WeldLimits
{
    private const double LeastWallMm = 3.2;
    private const double GreatestHoopShare = 0.20;

    /// <summary>Whether the metal takes a fillet weld, and whether there is wall enough to weld on.</summary>
    public static IEnumerable<Finding> Metal(Pipe pipe, Defect defect)
    {
        if (pipe.Metal is MetalFamily.GrayIron or MetalFamily.DuctileIron)
            yield return Finding.Refuse("not-weldable", "Cast iron is not welded in the field.", Sources.BrittlePipe);
        else if (
            pipe.Metal is not (MetalFamily.CarbonSteel or MetalFamily.LowAlloySteel or MetalFamily.AusteniticStainless)
        )
            yield return Finding.Fail("weld-procedure", "This metal needs a weld procedure of its own.", Sources.Own);
        yield return Finding.AtLeast(
            "wall-to-weld-on",
            "Wall beside the damage, to weld on,",
            defect.SoundWallBeside.Millimeters,
            LeastWallMm,
            "mm",
            Sources.HotWorkInService
        );
    }

    /// <summary>Hot work on a line in service: no leak, low stress, wall enough. Nobody may sign past it.</summary>
    public static IEnumerable<Finding> InService(Pipe pipe, Defect defect, Service service)
    {
        if (defect.ThroughWall)
            yield return Finding.Refuse(
                "leak-in-service",
                "The line leaks: isolate it before anything is welded.",
                Sources.HotWorkInService
            );
        var hoop =
            service.OperatingPressure.Megapascals
            * pipe.OutsideDiameter.Millimeters
            / (2 * Math.Max(0.001, PipeFacts.RingWallMm(defect)));
        yield return pipe.YieldStrength is { } yield
            ? Finding.AtMost(
                "stress-in-service",
                "Hoop stress while welding, over the yield,",
                hoop / yield.Megapascals,
                GreatestHoopShare,
                "-",
                Sources.HotWorkInService,
                LimitKind.Absolute
            )
            : Finding.Refuse(
                "yield-not-known",
                "Yield is not known: no hot work in service.",
                Sources.HotWorkInService
            );
        yield return Finding.AtLeast(
            "wall-in-service",
            "Wall to weld on in service",
            PipeFacts.RingWallMm(defect),
            LeastWallMm,
            "mm",
            Sources.HotWorkInService,
            LimitKind.Absolute
        );
        if (service.Flammable)
            yield return Finding.Fail(
                "hot-work-flammable",
                "Hot work on a flammable line in service: only with the flow, gas tests and a procedure a second engineer signs.",
                Sources.Own
            );
    }
}
