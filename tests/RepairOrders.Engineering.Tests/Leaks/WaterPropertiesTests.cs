using CsCheck;
using RepairOrders.Engineering.Leaks;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Leaks;

public class WaterPropertiesTests
{
    public static TheoryData<string, double> Rows =>
        [
            .. Fluids
                .Table.Where(r => r.Name.StartsWith("fresh", StringComparison.Ordinal))
                .Select(r => new TheoryDataRow<string, double>(r.Name, r.TemperatureC)),
        ];

    public static TheoryData<string, double> SteamRows =>
        [
            .. Fluids
                .Table.Where(r => r.Name == "saturated steam")
                .Select(r => new TheoryDataRow<string, double>(r.Name, r.TemperatureC)),
        ];

    public static TheoryData<string, double> AirRows =>
        [
            .. Fluids
                .Table.Where(r => r.Name == "dry air")
                .Select(r => new TheoryDataRow<string, double>(r.Name, r.TemperatureC)),
        ];

    public static TheoryData<string, double> SeaRows =>
        [
            .. Fluids
                .Table.Where(r => r.Name.StartsWith("sea", StringComparison.Ordinal))
                .Select(r => new TheoryDataRow<string, double>(r.Name, r.TemperatureC)),
        ];

    public static TheoryData<string> Checks => [.. PublishedTable.Rows("water-properties.csv").Select(r => r["id"])];

    // R12-08 prints its check values without the critical term, as it is computed here.
    [Theory]
    [MemberData(nameof(Checks))]
    public void Check_value_of_the_formula(string id)
    {
        var row = PublishedTable.Rows("water-properties.csv").Single(r => r["id"] == id);
        var T = Temperature.FromKelvins(row.Number("temperature_k"));
        new PublishedCheck(row).ShouldBeMetBy(
            row["quantity"] switch
            {
                "saturation pressure" => WaterProperties.SaturationPressure(T).Megapascals,
                "viscosity at density" => WaterProperties
                    .Viscosity(T, Density.FromKilogramsPerCubicMeter(row.Number("with")))
                    .MicropascalSeconds,
                "viscosity of cold water" => WaterProperties.FreshViscosity(T).MillipascalSeconds,
                "density of saturated water" => WaterProperties.SaturatedLiquidDensity(T).KilogramsPerCubicMeter,
                "density of saturated steam" => WaterProperties.SaturatedSteamDensity(T).KilogramsPerCubicMeter,
                "density of sea water" => WaterProperties.SeaDensity(T, row.Number("with")).KilogramsPerCubicMeter,
                var other => throw new InvalidDataException(other),
            }
        );
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Fresh_water_of_the_table_is_what_the_formulas_give(string name, double celsius)
    {
        var row = Row(name, celsius);
        var water = Fluids.FreshWater(Temperature.FromDegreesCelsius(celsius));
        water.Density.KilogramsPerCubicMeter.ShouldBeAsPrinted(row.DensityKgM3);
        water.Viscosity!.Value.MillipascalSeconds.ShouldBeAsPrinted(row.ViscosityMpaS);
        water.VapourPressureAbs!.Value.Kilopascals.ShouldBeAsPrinted(row.VapourPressureKpa);
    }

    [Theory]
    [MemberData(nameof(SeaRows))]
    public void Sea_water_of_the_table_is_what_the_formula_gives(string name, double celsius) =>
        Fluids
            .SeaWater(Temperature.FromDegreesCelsius(celsius))
            .Density.KilogramsPerCubicMeter.ShouldBeAsPrinted(Row(name, celsius).DensityKgM3);

    [Theory]
    [MemberData(nameof(SteamRows))]
    public void Saturated_steam_of_the_table_is_what_the_formulas_give(string name, double celsius)
    {
        var row = Row(name, celsius);
        // The table's temperatures are printed to 0.01 K; that alone moves pressure and density by up to 0.02 %.
        var T = Temperature.FromDegreesCelsius(celsius);
        var density = WaterProperties.SaturatedSteamDensity(T);
        density.KilogramsPerCubicMeter.ShouldBeAsPrinted(row.DensityKgM3, 2e-4);
        WaterProperties.Viscosity(T, density).MillipascalSeconds.ShouldBeAsPrinted(row.ViscosityMpaS);
        WaterProperties.SaturationPressure(T).Kilopascals.ShouldBeAsPrinted(row.VapourPressureKpa, 2e-4);
    }

    [Theory]
    [MemberData(nameof(AirRows))]
    public void Dry_air_of_the_table_is_an_ideal_gas(string name, double celsius)
    {
        var volume = GasLeak.FreeVolume(
            MassFlow.FromKilogramsPerSecond(1),
            Fluids.Air,
            Pressure.FromBars(1.01325),
            Temperature.FromDegreesCelsius(celsius)
        );
        (1 / volume.CubicMetersPerSecond).ShouldBeAsPrinted(Row(name, celsius).DensityKgM3);
    }

    [Fact]
    public void Fuel_rows_are_limits_from_memory_not_properties() =>
        Fluids
            .Table.Where(r => r.Source.Provenance == Provenance.FromMemory)
            .Select(r => r.Name)
            .ShouldBe(["automotive diesel", "marine distillate DMA"]);

    [Fact]
    public void Hotter_water_never_has_less_vapour_pressure() =>
        Gen.Select(Gen.Double[0, 373.9], Gen.Double[0, 373.9])
            .Sample(
                (one, other) => Psat(Math.Max(one, other)).ShouldBeGreaterThanOrEqualTo(Psat(Math.Min(one, other)))
            );

    [Theory]
    [InlineData(-1)]
    [InlineData(360)]
    public void Water_that_is_ice_or_too_hot_is_named(double celsius) =>
        Should
            .Throw<ImpossibleInputException>(() => Fluids.FreshWater(Temperature.FromDegreesCelsius(celsius)))
            .Field.ShouldBe("fluidTemperatureC");

    private static double Psat(double celsius) =>
        WaterProperties.SaturationPressure(Temperature.FromDegreesCelsius(celsius)).Pascals;

    private static FluidRow Row(string name, double celsius) =>
        Fluids.Table.Single(r => r.Name == name && r.TemperatureC == celsius);
}
