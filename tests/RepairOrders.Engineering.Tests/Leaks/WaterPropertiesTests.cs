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

    // IAPWS R7-97, Table 35.
    [Theory]
    [InlineData(300, 0.353658941e-2)]
    [InlineData(500, 2.63889776)]
    [InlineData(600, 12.3443146)]
    public void Saturation_pressure_of_IF97(double kelvin, double megapascal) =>
        WaterProperties
            .SaturationPressure(Temperature.FromKelvins(kelvin))
            .Megapascals.ShouldBe(megapascal, megapascal * 3e-9);

    // IAPWS R12-08, Table 4 (its values hold without the critical term).
    [Theory]
    [InlineData(298.15, 998, 889.735100)]
    [InlineData(298.15, 1200, 1437.649467)]
    [InlineData(373.15, 1000, 307.883622)]
    [InlineData(433.15, 1, 14.538324)]
    [InlineData(433.15, 1000, 217.685358)]
    [InlineData(873.15, 1, 32.619287)]
    [InlineData(873.15, 100, 35.802262)]
    [InlineData(873.15, 600, 77.430195)]
    [InlineData(1173.15, 1, 44.217245)]
    [InlineData(1173.15, 100, 47.640433)]
    [InlineData(1173.15, 400, 64.154608)]
    public void Viscosity_of_R12_08(double kelvin, double density, double micropascalSeconds) =>
        WaterProperties
            .Viscosity(Temperature.FromKelvins(kelvin), Density.FromKilogramsPerCubicMeter(density))
            .MicropascalSeconds.ShouldBe(micropascalSeconds, 6e-7);

    // IAPWS SR1-86, check values (from memory).
    [Theory]
    [InlineData(273.16, 999.789, 0.00485426)]
    [InlineData(373.1243, 958.365, 0.597586)]
    [InlineData(647.096, 322, 322)]
    public void Saturation_densities_of_SR1_86(double kelvin, double liquid, double steam)
    {
        var T = Temperature.FromKelvins(kelvin);
        WaterProperties.SaturatedLiquidDensity(T).KilogramsPerCubicMeter.ShouldBe(liquid, liquid * 1e-5);
        WaterProperties.SaturatedSteamDensity(T).KilogramsPerCubicMeter.ShouldBe(steam, steam * 1e-5);
    }

    // UNESCO 44 (1983), check values of EOS-80 at one atmosphere (from memory).
    [Theory]
    [InlineData(0, 5, 999.96675)]
    [InlineData(0, 25, 997.04796)]
    [InlineData(35, 5, 1027.67547)]
    [InlineData(35, 25, 1023.34306)]
    public void Density_of_EOS_80(double salinity, double celsius, double expected) =>
        WaterProperties
            .SeaDensity(Temperature.FromDegreesCelsius(celsius), salinity)
            .KilogramsPerCubicMeter.ShouldBe(expected, 6e-6);

    // ITTC / TEOS-10, sea water of 15 °C: 1026.021 kg/m³ (from memory). The older equation used here gives 1025.973.
    [Fact]
    public void Newer_equation_of_sea_water_differs_by_5_parts_in_100_000() =>
        WaterProperties
            .SeaDensity(Temperature.FromDegreesCelsius(15), 35)
            .KilogramsPerCubicMeter.ShouldBe(1026.021, 0.06);

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
