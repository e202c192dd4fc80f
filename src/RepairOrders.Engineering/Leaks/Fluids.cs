using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Leaks;

/// <summary>A liquid as a leak sees it.</summary>
/// <param name="Name">In words.</param>
/// <param name="Density">Density.</param>
/// <param name="Viscosity">Dynamic viscosity; nothing where it is not known.</param>
/// <param name="VapourPressureAbs">Vapour pressure, absolute; nothing where it is not known.</param>
/// <param name="Source">Where the values come from.</param>
public sealed record Liquid(
    string Name,
    Density Density,
    DynamicViscosity? Viscosity,
    Pressure? VapourPressureAbs,
    Clause Source
);

/// <summary>A gas as a leak sees it.</summary>
/// <param name="Name">In words.</param>
/// <param name="MolarMass">Molar mass, kg/mol.</param>
/// <param name="HeatRatio">Ratio of specific heats k, -.</param>
/// <param name="Compressibility">Compressibility factor Z at the upstream state, -; 1 for an ideal gas.</param>
/// <param name="Source">Where the values come from.</param>
public sealed record Gas(string Name, MolarMass MolarMass, double HeatRatio, double Compressibility, Clause Source);

/// <summary>A row of the fluids table. A cell that is a range or a limit stays in words.</summary>
/// <param name="Name">The fluid.</param>
/// <param name="TemperatureC">Temperature, °C.</param>
/// <param name="Pressure">Pressure in words: <c>1 atm</c>, <c>psat</c>, or an absolute pressure.</param>
/// <param name="DensityKgM3">Density, kg/m³, or a range.</param>
/// <param name="ViscosityMpaS">Dynamic viscosity, mPa s, or a range in words; empty where unknown.</param>
/// <param name="VapourPressureKpa">Vapour pressure, absolute, kPa; empty where unknown.</param>
/// <param name="Extra">What else is known, in words.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record FluidRow(
    string Name,
    double TemperatureC,
    string Pressure,
    string DensityKgM3,
    string ViscosityMpaS,
    string VapourPressureKpa,
    string Extra,
    Clause Source
);

/// <summary>Fluids that leak: the table, and properties by formula for water and air.</summary>
public static class Fluids
{
    private static readonly Clause Cold = new(
        "UNESCO EOS-80 density, Korson 1969 viscosity, IAPWS-IF97 eq. 30 vapour pressure",
        ""
    );
    private static readonly Clause Hot = new("IAPWS SR1-86 density, R12-08 viscosity, IF97 eq. 30 vapour pressure", "");

    /// <summary>The table of fluids. Fuel rows are limits of a specification, not properties: use the delivery note.</summary>
    public static IReadOnlyList<FluidRow> Table { get; } = [.. EmbeddedTable.Read("fluids.csv").Rows.Select(Read)];

    /// <summary>Dry air as an ideal gas.</summary>
    public static Gas Air { get; } =
        new(
            "air",
            MolarMass.FromKilogramsPerMole(28.9647e-3),
            1.4,
            1,
            new("dry air, ideal gas: k 1.4, M 28.9647 g/mol", "")
        );

    /// <summary>Fresh water at a temperature: at one atmosphere up to 40 °C, saturated above.</summary>
    /// <param name="temperature">Temperature, 0 to 350 °C.</param>
    /// <returns>Density, viscosity and vapour pressure.</returns>
    /// <exception cref="ImpossibleInputException">A temperature outside 0 to 350 °C.</exception>
    public static Liquid FreshWater(Temperature temperature)
    {
        Require.Between("fluidTemperatureC", temperature.DegreesCelsius, 0, 350);
        var psat = WaterProperties.SaturationPressure(temperature);
        if (temperature.DegreesCelsius <= 40)
        {
            return new(
                "fresh water",
                WaterProperties.FreshDensity(temperature),
                WaterProperties.FreshViscosity(temperature),
                psat,
                Cold
            );
        }

        var density = WaterProperties.SaturatedLiquidDensity(temperature);
        return new("fresh water", density, WaterProperties.Viscosity(temperature, density), psat, Hot);
    }

    /// <summary>Sea water of salinity 35 at one atmosphere. Its viscosity is 7 to 8 % above fresh water's and is left out.</summary>
    /// <param name="temperature">Temperature, 0 to 40 °C.</param>
    /// <returns>Density, and the vapour pressure of fresh water, which is 2 % higher: on the safe side.</returns>
    /// <exception cref="ImpossibleInputException">A temperature outside 0 to 40 °C.</exception>
    public static Liquid SeaWater(Temperature temperature) =>
        new(
            "sea water",
            WaterProperties.SeaDensity(temperature, 35),
            null,
            WaterProperties.SaturationPressure(temperature),
            new("UNESCO EOS-80 density, S 35", "")
        );

    private static FluidRow Read(EmbeddedTable.Row row) =>
        new(
            row["fluid"],
            row.Number("temp_c")!.Value,
            row["pressure"],
            row["density_kg_m3"],
            row["viscosity_mPa_s"],
            row["vapour_pressure_kPa"],
            row["extra"],
            new(row["source"], "", row["provenance"] == "memory" ? Provenance.FromMemory : Provenance.Derived)
        );
}
