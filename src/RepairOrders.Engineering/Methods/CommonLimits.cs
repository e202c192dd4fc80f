using System.Globalization;
using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods;

/// <summary>Limits that several methods share.</summary>
internal static class CommonLimits
{
    /// <summary>Pressure in operation against a ceiling; a line designed for more needs an interim limit.</summary>
    public static IEnumerable<Finding> Pressure(
        Service s,
        double ceilingBar,
        Clause source,
        LimitKind kind = LimitKind.ByDeviation
    )
    {
        yield return Finding.AtMost(
            "pressure-above-limit",
            "Operating pressure",
            s.OperatingPressure.Bars,
            ceilingBar,
            "bar",
            source,
            kind
        );
        if (s.OperatingPressure.Bars <= ceilingBar && s.DesignPressure.Bars > ceilingBar)
            yield return Interim(
                "interim-pressure-limit",
                "pressure",
                s.DesignPressure.Bars,
                ceilingBar,
                "bar",
                source
            );
    }

    /// <summary>Temperature in operation against a ceiling; a line designed hotter needs an interim limit.</summary>
    public static IEnumerable<Finding> Temperature(
        Service s,
        double ceilingC,
        Clause source,
        LimitKind kind = LimitKind.ByDeviation
    )
    {
        yield return Finding.AtMost(
            "temperature-above-limit",
            "Operating temperature",
            s.OperatingTemperature.DegreesCelsius,
            ceilingC,
            "°C",
            source,
            kind
        );
        if (s.OperatingTemperature.DegreesCelsius <= ceilingC && s.DesignTemperature.DegreesCelsius > ceilingC)
            yield return Interim(
                "interim-temperature-limit",
                "temperature",
                s.DesignTemperature.DegreesCelsius,
                ceilingC,
                "°C",
                source
            );
    }

    /// <summary>What must be known before any method can be chosen.</summary>
    public static IEnumerable<Finding> Known(Pipe pipe, Defect defect, Service service)
    {
        string[] missing = [.. Missing(pipe, defect, service)];
        yield return missing.Length == 0
            ? Finding.Pass("facts-known", "Fluid, wall and defect are known.", Sources.Own)
            : Finding.Refuse(
                "not-selectable",
                $"Not selectable until known: {string.Join(", ", missing)}.",
                Sources.Own
            );
    }

    /// <summary>Crack-like damage blocks every method that leaves the crack where it is.</summary>
    public static Finding NoCrack(Defect defect) =>
        defect.Kind == DefectKind.CrackLike
            ? Finding.Refuse(
                "crack-like",
                "The damage is crack-like: nothing is put over a crack. Isolate, and cut it out.",
                Sources.Cracks
            )
            : Finding.Pass("not-crack-like", "The damage is not crack-like.", Sources.Cracks);

    /// <summary>Kinds of damage that straight-pipe sizing does not cover.</summary>
    public static IEnumerable<Finding> StraightPipe(Defect defect)
    {
        if (defect.Kind == DefectKind.Joint)
            yield return Finding.Refuse(
                "joint",
                "A leak at a flange, thread or other joint is not a straight-pipe case.",
                Sources.StraightPipeOnly
            );
        if (defect.Kind == DefectKind.WeldDefect)
            yield return Finding.Fail(
                "weld-defect",
                "A leaking weld counts as crack-like until it has been examined.",
                Sources.Cracks
            );
        if (defect.Kind == DefectKind.MechanicalDamage)
            yield return Finding.Fail(
                "mechanical-damage",
                "A dent or gouge may hide a crack: examine it before anything covers it.",
                Sources.Cracks
            );
    }

    /// <summary>A method without an estimate of the hole at the end of its life is not for growing damage.</summary>
    public static IEnumerable<Finding> Growing(Defect defect)
    {
        if (defect.Growing)
            yield return Finding.Fail(
                "growing",
                "The damage grows: size it as it will be at the end date, and have a second engineer sign.",
                Sources.LeakClamps
            );
    }

    /// <summary>Gray iron is brittle.</summary>
    public static IEnumerable<Finding> Brittle(Pipe pipe)
    {
        if (pipe.Metal == MetalFamily.GrayIron)
            yield return Finding.Fail(
                "brittle-pipe",
                "Gray iron is brittle: never load bolts or bands on thin brittle wall without an engineer's calculation.",
                Sources.BrittlePipe
            );
    }

    /// <summary>Polymers burn.</summary>
    public static IEnumerable<Finding> Fire(Service service)
    {
        if (service.SafetyCritical)
            yield return Finding.Watch(
                "fire-review",
                "The line's duty protects people: have its fire performance reviewed, a polymer repair may leak sooner than steel.",
                Sources.FireOfComposites
            );
    }

    /// <summary>Metal so cold that it may be brittle, or so hot that it creeps: the wall formulae end there.</summary>
    public static IEnumerable<Finding> MetalTemperature(Pipe pipe, Service service)
    {
        const double coldest = -29;
        var ferritic = pipe.Metal is MetalFamily.CarbonSteel or MetalFamily.LowAlloySteel or MetalFamily.OtherStainless;
        if (ferritic && service.OperatingTemperature.DegreesCelsius < coldest)
            yield return Finding.AtLeast(
                "brittle-temperature",
                "Operating temperature of a steel that may be brittle",
                service.OperatingTemperature.DegreesCelsius,
                coldest,
                "°C",
                Sources.OutsideFormulae
            );
        if (CreepStartsC(pipe.Metal) is { } creep && service.OperatingTemperature.DegreesCelsius > creep)
            yield return Finding.AtMost(
                "creep-range",
                "Operating temperature",
                service.OperatingTemperature.DegreesCelsius,
                creep,
                "°C",
                Sources.OutsideFormulae
            );
    }

    private static double? CreepStartsC(MetalFamily metal) =>
        metal switch
        {
            MetalFamily.CarbonSteel => 370,
            MetalFamily.LowAlloySteel => 455,
            MetalFamily.AusteniticStainless => 510,
            _ => null,
        };

    /// <summary>Steam hot and hard enough to scald through a failed seal.</summary>
    public static IEnumerable<Finding> Steam(Service service)
    {
        if (service.State == FluidState.Steam)
            yield return Finding.AtMost(
                "steam-pressure",
                "Steam pressure",
                service.OperatingPressure.Bars,
                7,
                "bar",
                Sources.SteamClass
            );
    }

    /// <summary>Replacement comes first on safety-critical pipe; an unknown cause needs the wall mapped.</summary>
    public static IEnumerable<Finding> Review(Pipe pipe, Defect defect, Service service)
    {
        foreach (var finding in MetalTemperature(pipe, service))
            yield return finding;
        if (service.SafetyCritical)
            yield return Finding.Watch(
                "replace-first",
                "Safety-critical pipe: replace like for like first; this only until then.",
                Sources.OrderOfPreference
            );
        if (defect.Cause == DefectCause.Unknown)
            yield return UnknownCause(pipe, service);
        if (service.Potable)
            yield return Finding.Watch(
                "potable",
                "Drinking water: only materials approved for it.",
                Sources.PuttyManual
            );
    }

    /// <summary>Whether the pipe still holds itself together; a seal does not.</summary>
    public static IEnumerable<Finding> Axial(Pipe pipe, Defect defect, Service service)
    {
        if (pipe.NominalWall.Millimeters <= 0 || defect.SoundWallBeside.Millimeters <= 0)
            yield break;
        yield return Finding.AtLeast(
            "axial-strength",
            "End load the pipe can carry beside the damage",
            PipeFacts.AxialCapacityKn(pipe, defect),
            PipeFacts.ThrustKn(pipe, service),
            "kN",
            Sources.LeakClamps
        );
        if (defect.RemainingWall < 0.2 * pipe.NominalWall && PipeFacts.ShareOfGirth(pipe, defect) > 0.25)
            yield return Finding.Fail(
                "deep-round-the-pipe",
                "More than 80 % of the wall is gone over more than a quarter of the girth: full restraint is needed.",
                Sources.DepthCutOff
            );
    }

    private static Finding UnknownCause(Pipe pipe, Service service)
    {
        var reach = Math.Max(pipe.OutsideDiameter.Millimeters, 300);
        return service.AboveAutoIgnition
            ? Finding.Refuse(
                "cause-unknown-hot",
                "Cause unknown on a fluid above its auto-ignition temperature: shut down and stay clear.",
                Sources.OrderOfPreference
            )
            : Finding.Watch(
                "cause-unknown",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Cause unknown: map the wall {reach:0} mm to both sides before anything is fitted."
                ),
                Sources.OrderOfPreference
            );
    }

    private static IEnumerable<string> Missing(Pipe pipe, Defect defect, Service service)
    {
        if (string.IsNullOrWhiteSpace(service.Fluid))
            yield return "the fluid";
        if (pipe.NominalWall.Millimeters <= 0)
            yield return "the nominal wall";
        if (defect.SoundWallBeside.Millimeters <= 0)
            yield return "the wall beside the damage";
        if (!defect.ThroughWall && defect.RemainingWall.Millimeters <= 0)
            yield return "the wall that is left";
        if (defect.ThroughWall && defect.HoleDiameter.Millimeters <= 0)
            yield return "the size of the hole";
    }

    private static Finding Interim(
        string code,
        string what,
        double design,
        double ceiling,
        string unit,
        Clause source
    ) =>
        new(
            code,
            Severity.Watch,
            string.Create(
                CultureInfo.InvariantCulture,
                $"The line is designed for {design:G4} {unit}: while this repair is live its {what} must be limited to {ceiling:G4} {unit}."
            ),
            design,
            ceiling,
            unit,
            source
        );
}
