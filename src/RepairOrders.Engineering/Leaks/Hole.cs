using UnitsNet;

namespace RepairOrders.Engineering.Leaks;

/// <summary>The hole a leak comes out of.</summary>
public static class Hole
{
    /// <summary>Area of a round hole.</summary>
    /// <remarks>
    /// <para>Formula: A = π·d²/4.</para>
    /// <para>Symbols: d diameter, mm; A area, mm².</para>
    /// <para>Validity: none beyond d &gt; 0.</para>
    /// <para>Reference: geometry.</para>
    /// </remarks>
    /// <param name="diameter">Diameter, up to 10 m.</param>
    /// <returns>Area.</returns>
    /// <exception cref="ImpossibleInputException">A diameter not above 0 or above 10 m.</exception>
    /// <example>10 mm: 78.54 mm².</example>
    public static Area Round(Length diameter)
    {
        Require.Positive("holeDiameterMm", diameter.Millimeters);
        var d = Require.Between("holeDiameterMm", diameter.Millimeters, 1e-6, 10_000);
        return Area.FromSquareMillimeters(Math.PI * d * d / 4);
    }

    internal static double SquareMetres(Area area)
    {
        Require.Positive("holeAreaMm2", area.SquareMillimeters);
        return Require.Between("holeAreaMm2", area.SquareMillimeters, 1e-13, 1e8) * 1e-6;
    }

    internal static double Coefficient(double value)
    {
        Require.Positive("dischargeCoefficient", value);
        return Require.Between("dischargeCoefficient", value, 0.01, 1);
    }
}
