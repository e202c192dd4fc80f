using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.ThroughWall;

/// <summary>What a marine piping class is looked up by.</summary>
/// <param name="Code">Stable code of the medium.</param>
/// <param name="Words">The medium in words.</param>
public sealed record MarineMedium(string Code, string Words);

/// <summary>Marine piping classes, which restrict temporary repairs. Class 1 is the strictest.</summary>
public static class PipingClass
{
    /// <summary>The table of 46 CFR.</summary>
    public static readonly Clause Regulations = new("46 CFR 56.04-2", "Table 1");

    /// <summary>The table of the class societies.</summary>
    public static readonly Clause Society = new(
        "class-society piping classes (special service craft rules Pt 15 Ch 1; ABS 2013 Table 4-6-1)",
        "Table 1.3.1"
    );

    private static readonly (MarineMedium Medium, double Psi, double Fahrenheit)[] RegulationRows =
    [
        (new("gas", "Gases and vapours"), 150, 650),
        (new("liquefied-flammable-gas", "Liquefied flammable gas"), 150, double.PositiveInfinity),
        (new("water", "Water"), 225, 350),
        (new("fuel", "Fuels"), 150, 150),
        (new("oil", "Lubricating, hydraulic, heat-transfer oil, cargo grade E"), 225, 400),
        (new("cargo", "Cargo grades A to D"), 225, 150),
        (new("poison", "Class B or C poisons"), 0, double.NegativeInfinity),
    ];

    private static readonly (MarineMedium Medium, double P2, double T2, double P3, double T3)[] SocietyRows =
    [
        (new("steam", "Steam"), 16, 300, 7, 170),
        (new("thermal-oil", "Thermal oil"), 16, 300, 7, 150),
        (new("flammable", "Flammable liquids: fuel, lubricating and hydraulic oil"), 16, 150, 7, 60),
        (new("other", "Other: water, air, gas"), 40, 300, 16, 200),
        (new("toxic", "Toxic media"), -1, 0, -1, 0),
        (new("corrosive", "Corrosive media, no safeguards shown"), -1, 0, -1, 0),
    ];

    /// <summary>Media of 46 CFR.</summary>
    public static IReadOnlyList<MarineMedium> RegulationMedia { get; } = [.. RegulationRows.Select(r => r.Medium)];

    /// <summary>Media of the class societies.</summary>
    public static IReadOnlyList<MarineMedium> SocietyMedia { get; } = [.. SocietyRows.Select(r => r.Medium)];

    /// <summary>Class by 46 CFR 56.04-2: class 1 where pressure or temperature is above its limit. Liquefied flammable gas below
    /// 0 °F belongs to the low-temperature classes and is answered as class 1.</summary>
    /// <param name="medium">Code of <see cref="RegulationMedia"/>.</param>
    /// <param name="pressure">Gauge pressure.</param>
    /// <param name="temperature">Temperature.</param>
    /// <returns>1 or 2.</returns>
    /// <exception cref="ImpossibleInputException">The medium is not listed, or the pressure is negative.</exception>
    public static int ByRegulations(string medium, Pressure pressure, Temperature temperature)
    {
        var psi = Require.NotNegative("pressureBar", pressure.PoundsForcePerSquareInch);
        var row = RegulationRows.FirstOrDefault(r => r.Medium.Code == medium);
        Known(row.Medium, medium, RegulationMedia);
        var tooCold = medium == "liquefied-flammable-gas" && temperature.DegreesFahrenheit < 0;
        return psi > row.Psi || temperature.DegreesFahrenheit > row.Fahrenheit || tooCold ? 1 : 2;
    }

    /// <summary>Class by the class societies: class 3 needs both of its limits met, class 1 follows when either limit of class 2 is
    /// passed. Toxic media are always class 1, and so are corrosive ones without shown safeguards.</summary>
    /// <param name="medium">Code of <see cref="SocietyMedia"/>.</param>
    /// <param name="pressure">Gauge pressure.</param>
    /// <param name="temperature">Temperature.</param>
    /// <returns>1, 2 or 3.</returns>
    /// <exception cref="ImpossibleInputException">The medium is not listed, or the pressure is negative.</exception>
    public static int BySociety(string medium, Pressure pressure, Temperature temperature)
    {
        var bar = Require.NotNegative("pressureBar", pressure.Bars);
        var row = SocietyRows.FirstOrDefault(r => r.Medium.Code == medium);
        Known(row.Medium, medium, SocietyMedia);
        var celsius = temperature.DegreesCelsius;
        return bar > row.P2 || celsius > row.T2 ? 1
            : bar <= row.P3 && celsius <= row.T3 ? 3
            : 2;
    }

    private static void Known(MarineMedium? found, string medium, IReadOnlyList<MarineMedium> media)
    {
        if (found is null)
        {
            throw new ImpossibleInputException(
                "medium",
                medium,
                $"one of {string.Join(", ", media.Select(m => m.Code))}"
            );
        }
    }
}
