using System.Globalization;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>Unwraps quantities to MPa and mm, refusing what cannot be. Inside these bounds no formula of the engine overflows.</summary>
internal static class Take
{
    private const double GreatestPressure = 1_000;
    private const double LeastStress = 0.1;
    private const double GreatestStress = 10_000;
    private const double GreatestExtent = 1e9;

    /// <summary>A gauge pressure in MPa.</summary>
    public static double Gauge(string field, Pressure pressure) =>
        Require.Between(field, pressure.Megapascals, 0, GreatestPressure);

    /// <summary>A stress or a strength in MPa.</summary>
    public static double Stress(string field, Pressure stress) =>
        Require.Between(field, stress.Megapascals, LeastStress, GreatestStress);

    /// <summary>A length, an allowance or a loss in mm.</summary>
    public static double Extent(string field, Length extent) =>
        Require.Between(field, extent.Millimeters, 0, GreatestExtent);

    /// <summary>A depth in mm, never more than the wall.</summary>
    public static double Depth(Length depth, double t, string field = "depthMm")
    {
        var d = depth.Millimeters;
        return d >= 0 && d <= t
            ? d
            : throw new ImpossibleInputException(
                field,
                d.ToString("G6", CultureInfo.InvariantCulture),
                string.Create(CultureInfo.InvariantCulture, $"0 to the wall of {t:G6} mm; take a new reading")
            );
    }

    /// <summary>A factor such as E, W or F.</summary>
    public static double Factor(string field, double factor) => Require.Between(field, factor, 0.01, 1);
}
