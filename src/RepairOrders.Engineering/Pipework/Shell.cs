using System.Globalization;
using UnitsNet;

namespace RepairOrders.Engineering.Pipework;

/// <summary>Unwraps the two lengths of a pipe wall, refusing what no pipe can be.</summary>
internal static class Shell
{
    // No pipe lies outside these; inside them no formula of the engine can overflow.
    private const double LeastDiameter = 1;
    private const double GreatestDiameter = 10_000;
    private const double LeastWall = 0.001;

    /// <summary>Outside diameter and wall in mm.</summary>
    public static (double D, double t) Of(Length outsideDiameter, Length wall, string field = "wallThicknessMm")
    {
        var D = Diameter(outsideDiameter);
        var t = wall.Millimeters;
        return t >= LeastWall && t < D / 2
            ? (D, t)
            : throw new ImpossibleInputException(
                field,
                t.ToString("G6", CultureInfo.InvariantCulture),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{LeastWall} or more and less than half the outside diameter of {D:G6} mm"
                )
            );
    }

    /// <summary>Outside diameter in mm.</summary>
    public static double Diameter(Length outsideDiameter) =>
        Require.Between("outsideDiameterMm", outsideDiameter.Millimeters, LeastDiameter, GreatestDiameter);
}
