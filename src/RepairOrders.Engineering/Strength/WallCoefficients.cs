using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>The coefficients that stand in the wall formulae.</summary>
public static partial class RequiredWall
{
    internal const double HottestWallCoefficient = 621;

    private static readonly double[] Temperatures = [482, 510, 538, 566, 593, HottestWallCoefficient];
    private static readonly double[] Ferritic = [0.4, 0.5, 0.7, 0.7, 0.7, 0.7];
    private static readonly double[] Austenitic = [0.4, 0.4, 0.4, 0.4, 0.5, 0.7];

    /// <summary>Wall coefficient Y of a thin wall, by ASME B31.3 Table 304.1.1.</summary>
    /// <remarks>
    /// <para>Formula: Y from the table, by straight line between its temperatures: ferritic 0.4 to 482 °C, 0.5 at 510 °C, 0.7 from 538 °C; austenitic 0.4 to 566 °C, 0.5 at 593 °C, 0.7 from 621 °C; other ductile metals 0.4; gray iron 0.</para>
    /// <para>Symbols: Y wall coefficient, -; temperature, °C.</para>
    /// <para>Validity: t &lt; D/6; for a thicker wall see <see cref="ThickWallCoefficient"/>. Newer editions print values above 621 °C, which are not used here.</para>
    /// <para>Reference: ASME B31.3, Table 304.1.1 (from memory; austenitic 0.4 at 566 °C was seen).</para>
    /// </remarks>
    /// <param name="metal">Family of the metal.</param>
    /// <param name="temperature">Metal temperature.</param>
    /// <returns>Wall coefficient Y [-].</returns>
    /// <exception cref="ImpossibleInputException">The temperature is below absolute zero or above 2000 °C.</exception>
    /// <example>Ferritic steel at 524 °C, half-way between 510 and 538 °C: Y = 0.6.</example>
    public static double WallCoefficient(MetalFamily metal, Temperature temperature)
    {
        var T = Require.Between("temperatureC", temperature.DegreesCelsius, -273.15, 2000);
        return metal switch
        {
            MetalFamily.CarbonSteel or MetalFamily.LowAlloySteel or MetalFamily.OtherStainless => Between(Ferritic, T),
            MetalFamily.AusteniticStainless => Between(Austenitic, T),
            MetalFamily.GrayIron => 0,
            _ => 0.4,
        };
    }

    /// <summary>Wall coefficient Y of a thick wall, by ASME B31.3.</summary>
    /// <remarks>
    /// <para>Formula: Y = (d + 2c) / (D + d + 2c)</para>
    /// <para>Symbols: Y wall coefficient, -; d inside diameter, mm; c allowances, mm; D outside diameter, mm.</para>
    /// <para>Validity: t ≥ D/6.</para>
    /// <para>Reference: ASME B31.3-2012, 304.1.1.</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="insideDiameter">Inside diameter d, less than D.</param>
    /// <param name="allowance">Allowances c.</param>
    /// <returns>Wall coefficient Y [-].</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 100 mm, d 60 mm, c 1 mm: Y = 0.38272.</example>
    public static double ThickWallCoefficient(Length outsideDiameter, Length insideDiameter, Length allowance)
    {
        var D = Shell.Diameter(outsideDiameter);
        var d = Require.Between("insideDiameterMm", insideDiameter.Millimeters, 0, D);
        var c = Take.Extent("allowanceMm", allowance);
        return (d + 2 * c) / (D + d + 2 * c);
    }

    private static double Between(double[] column, double T)
    {
        var above = Array.FindIndex(Temperatures, t => t >= T);
        return above switch
        {
            0 => column[0],
            < 0 => column[^1],
            _ => column[above - 1]
                + (column[above] - column[above - 1])
                    * (T - Temperatures[above - 1])
                    / (Temperatures[above] - Temperatures[above - 1]),
        };
    }
}
