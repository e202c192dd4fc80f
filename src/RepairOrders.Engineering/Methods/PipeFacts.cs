using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;

namespace RepairOrders.Engineering.Methods;

/// <summary>What the methods need to know of a pipe, and the guard against pipes that cannot be.</summary>
internal static class PipeFacts
{
    public static readonly Clause MetalData = new("usual values of the metal", "", Provenance.FromMemory);

    public const double Poisson = 0.3;

    /// <summary>Young's modulus, MPa; for a metal of no family the least of the usual ones.</summary>
    public static double ModulusMpa(MetalFamily metal) =>
        metal switch
        {
            MetalFamily.CarbonSteel or MetalFamily.LowAlloySteel => 203_000,
            MetalFamily.AusteniticStainless => 195_000,
            MetalFamily.OtherStainless => 200_000,
            MetalFamily.CopperAlloy => 124_000,
            MetalFamily.DuctileIron => 165_000,
            MetalFamily.GrayIron => 100_000,
            _ => 69_000,
        };

    /// <summary>Expansion, 1/K; for a metal of no family the least of the usual ones.</summary>
    public static double Expansion(MetalFamily metal) =>
        metal switch
        {
            MetalFamily.CarbonSteel or MetalFamily.LowAlloySteel => 11.7e-6,
            MetalFamily.AusteniticStainless => 16.5e-6,
            MetalFamily.OtherStainless => 13e-6,
            MetalFamily.CopperAlloy => 17.1e-6,
            MetalFamily.DuctileIron => 11e-6,
            MetalFamily.GrayIron => 10.5e-6,
            _ => 8.6e-6,
        };

    /// <summary>Share of the girth the damage takes, 0 to 1.</summary>
    public static double ShareOfGirth(Pipe pipe, Defect defect) =>
        Math.Min(1, defect.CircumferentialLength.Millimeters / (Math.PI * pipe.OutsideDiameter.Millimeters));

    /// <summary>Wall of the ring that carries load beside or under the repair: where thinning is general, what is left.</summary>
    public static double RingWallMm(Defect defect) =>
        defect.Kind == DefectKind.GeneralThinning && !defect.ThroughWall
            ? Math.Min(defect.RemainingWall.Millimeters, defect.SoundWallBeside.Millimeters)
            : defect.SoundWallBeside.Millimeters;

    /// <summary>End load the ring carries at the allowable stress, the girth under the damage left out, kN.</summary>
    public static double AxialCapacityKn(Pipe pipe, Defect defect) => AxialCapacityKn(pipe, defect, RingWallMm(defect));

    /// <summary>Share of the ring that carries nothing; thinning all round lessens its wall instead.</summary>
    public static double LostShare(Pipe pipe, Defect defect) =>
        defect.Kind == DefectKind.GeneralThinning && !defect.ThroughWall ? 0 : ShareOfGirth(pipe, defect);

    /// <summary>The same for a ring of another wall.</summary>
    public static double AxialCapacityKn(Pipe pipe, Defect defect, double t)
    {
        var lost = LostShare(pipe, defect);
        var area = Math.PI * (pipe.OutsideDiameter.Millimeters - t) * t * (1 - lost);
        return area * pipe.AllowableStress.Megapascals / 1000;
    }

    /// <summary>Pressure thrust of the line's design pressure on the outside diameter, kN.</summary>
    public static double ThrustKn(Pipe pipe, Service service) =>
        Math.PI / 4 * Math.Pow(pipe.OutsideDiameter.Millimeters, 2) * service.DesignPressure.Megapascals / 1000;

    /// <summary>Refuses what cannot be; a wall of 0 stands for one that was not measured and passes here.</summary>
    public static void Check(Pipe pipe, Defect defect, Service service)
    {
        ArgumentNullException.ThrowIfNull(pipe);
        ArgumentNullException.ThrowIfNull(defect);
        ArgumentNullException.ThrowIfNull(service);
        var D = Require.Between("outsideDiameterMm", pipe.OutsideDiameter.Millimeters, 1, 10_000);
        var t = Require.Between("wallThicknessMm", pipe.NominalWall.Millimeters, 0, 0.499 * D);
        Require.Between("allowableStressMpa", pipe.AllowableStress.Megapascals, 0.1, 10_000);
        Require.Between("qualityFactor", pipe.QualityFactor, 0.01, 1);
        var thickest = t > 0 ? 1.25 * t : 0.499 * D;
        Require.Between("remainingWallMm", defect.RemainingWall.Millimeters, 0, thickest);
        Require.Between("soundWallBesideMm", defect.SoundWallBeside.Millimeters, 0, thickest);
        Require.Between("axialLengthMm", defect.AxialLength.Millimeters, 0, 100_000);
        Require.Between("circumferentialLengthMm", defect.CircumferentialLength.Millimeters, 0, Math.PI * D);
        Require.Between("holeDiameterMm", defect.HoleDiameter.Millimeters, 0, D);
        Require.Between("clockHours", defect.ClockHours, 0, 12);
        CheckService(service);
    }

    /// <summary>Refuses to size on a wall or a hole that nobody measured; what is cut out need not be known.</summary>
    public static void CheckToSize(Readings readings, bool damageIsCutOut)
    {
        ArgumentNullException.ThrowIfNull(readings);
        Check(readings.Pipe, readings.Defect, readings.Service);
        Require.Positive("wallThicknessMm", readings.Pipe.NominalWall.Millimeters);
        if (damageIsCutOut)
            return;
        Require.Positive("soundWallBesideMm", readings.Defect.SoundWallBeside.Millimeters);
        if (readings.Defect.ThroughWall)
            Require.Positive("holeDiameterMm", readings.Defect.HoleDiameter.Millimeters);
        else
            Require.Positive("remainingWallMm", readings.Defect.RemainingWall.Millimeters);
    }

    private static void CheckService(Service service)
    {
        Require.Between("operatingPressureBar", service.OperatingPressure.Bars, 0, 10_000);
        Require.Between("designPressureBar", service.DesignPressure.Bars, 0, 10_000);
        Require.Between("operatingTemperatureC", service.OperatingTemperature.DegreesCelsius, -273, 2000);
        Require.Between("designTemperatureC", service.DesignTemperature.DegreesCelsius, -273, 2000);
        Require.Between("fluidGroup", service.FluidGroup, 1, 2);
        Require.Between("inspectionClass", service.InspectionClass, 1, 4);
    }
}
