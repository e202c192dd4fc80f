using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Methods;

/// <summary>A cooling-water line of a board mill with a pinhole in it: the sample the method tests start from.</summary>
internal static class APipe
{
    public static readonly Pipe Dn100 = new(
        Length.FromMillimeters(114.3),
        Length.FromMillimeters(6.02),
        MetalFamily.CarbonSteel,
        Pressure.FromMegapascals(240),
        Pressure.FromMegapascals(415),
        Pressure.FromMegapascals(137.9),
        1
    );

    public static readonly Service CoolingWater = new(
        "Cooling water",
        FluidState.Liquid,
        ServiceCategory.D,
        FluidGroup: 2,
        InspectionClass: 4,
        Flammable: false,
        Toxic: false,
        AboveAutoIgnition: false,
        Pressure.FromBars(2.5),
        Pressure.FromBars(2.5),
        Temperature.FromDegreesCelsius(18),
        Temperature.FromDegreesCelsius(40),
        SafetyCritical: false,
        Potable: false,
        Cyclic: false
    );

    public static readonly Defect Pinhole = new(
        DefectKind.Pinhole,
        DefectSide.Internal,
        DefectCause.InternalCorrosion,
        ThroughWall: true,
        Length.FromMillimeters(12),
        Length.FromMillimeters(12),
        Length.Zero,
        Length.FromMillimeters(4),
        Length.FromMillimeters(5),
        ClockHours: 4,
        Growing: false
    );

    public static readonly Defect Thinning = Pinhole with
    {
        Kind = DefectKind.GeneralThinning,
        ThroughWall = false,
        HoleDiameter = Length.Zero,
        RemainingWall = Length.FromMillimeters(3.2),
        AxialLength = Length.FromMillimeters(40),
        CircumferentialLength = Length.FromMillimeters(60),
    };

    public static readonly IReadOnlyDictionary<string, double> Defaults = new Dictionary<string, double>();

    public static Readings With(params (string Code, double Value)[] values) =>
        new(Dn100, Pinhole, CoolingWater, values.ToDictionary(v => v.Code, v => v.Value));

    public static Service At(double bar) =>
        CoolingWater with
        {
            OperatingPressure = Pressure.FromBars(bar),
            DesignPressure = Pressure.FromBars(bar),
        };
}
