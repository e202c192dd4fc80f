using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Leaks;
using RepairOrders.Engineering.Methods;
using UnitsNet;
using static RepairOrders.Api.Calculations.Quantities;
using LeakPurpose = RepairOrders.Engineering.Leaks.LeakPurpose;
using PricedBy = RepairOrders.Engineering.Leaks.PricedBy;

namespace RepairOrders.Api.Calculations;

internal static class LeakRate
{
    private static readonly Clause Given = new("as given", "", Provenance.Entered);

    public static CalculationAnswer<LeakRateResult> Calculate(CalculateLeakRate ask)
    {
        var sheet = new Worksheet();
        var leak = sheet.Take(Leaking(ask, Conditions(ask)));
        return sheet.Answer(
            new LeakRateResult(
                leak.MassFlow.KilogramsPerHour,
                leak.VolumeFlow.LitersPerMinute,
                leak.MassAYear.Tonnes,
                leak.VolumeAYear.CubicMeters,
                leak.CostAYear,
                leak.DischargeCoefficient,
                leak.Choked
            )
        );
    }

    private static Engineering.Calculated<LeakAnswer> Leaking(CalculateLeakRate ask, LeakConditions conditions) =>
        ask.Fluid switch
        {
            LeakFluid.FreshWater => Leak.OfLiquid(conditions, Fluids.FreshWater(Inside(ask))),
            LeakFluid.SeaWater => Leak.OfLiquid(conditions, Fluids.SeaWater(Inside(ask))),
            LeakFluid.OtherLiquid => Leak.OfLiquid(conditions, OtherLiquid(ask)),
            LeakFluid.Air => Leak.OfGas(conditions, Inside(ask), Fluids.Air),
            LeakFluid.OtherGas => Leak.OfGas(conditions, Inside(ask), OtherGas(ask)),
            _ => Leak.OfSteam(conditions),
        };

    private static Temperature Inside(CalculateLeakRate ask) =>
        Celsius(Needed("temperatureC", ask.TemperatureC, $"for {Words(ask.Fluid)}"));

    private static Liquid OtherLiquid(CalculateLeakRate ask) =>
        new(
            "the liquid",
            Density.FromKilogramsPerCubicMeter(Needed("densityKgM3", ask.DensityKgM3, "for another liquid")),
            ask.ViscosityMpaS is { } viscosity ? DynamicViscosity.FromMillipascalSeconds(viscosity) : null,
            Bar(ask.VapourPressureBarAbs),
            Given
        );

    private static Gas OtherGas(CalculateLeakRate ask) =>
        new(
            "the gas",
            MolarMass.FromGramsPerMole(Needed("molarMassGMol", ask.MolarMassGMol, "for another gas")),
            Needed("heatRatio", ask.HeatRatio, "for another gas"),
            ask.Compressibility,
            Given
        );

    private static LeakConditions Conditions(CalculateLeakRate ask) =>
        new(
            Opening(ask),
            Bar(ask.InsidePressureBar),
            ask.Purpose.As<LeakPurpose>(),
            Bar(ask.OutsidePressureBar),
            Bar(ask.AtmosphereBarAbs),
            ask.DischargeCoefficient,
            ask.HoursAYear is { } hours ? Duration.FromHours(hours) : null,
            ask.Price is { } price ? new LeakPrice(price, ask.PricedBy.As<PricedBy>()) : null
        );

    private static Area Opening(CalculateLeakRate ask) =>
        (ask.HoleDiameterMm, ask.HoleAreaMm2) switch
        {
            ({ } diameter, null) => Hole.Round(Mm(diameter)),
            (null, { } area) => Area.FromSquareMillimeters(area),
            _ => throw new MalformedAsk(
                "holeDiameterMm",
                "holeDiameterMm and holeAreaMm2 are both given or both missing; allowed is one of them."
            ),
        };

    private static string Words(LeakFluid fluid) =>
        fluid switch
        {
            LeakFluid.FreshWater => "fresh water",
            LeakFluid.SeaWater => "sea water",
            LeakFluid.Air => "air",
            _ => "another gas",
        };
}
