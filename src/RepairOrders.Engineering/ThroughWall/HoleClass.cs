using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.ThroughWall;

/// <summary>The class of a hole in one scheme.</summary>
/// <param name="Scheme">The scheme.</param>
/// <param name="Code">Stable code of the class: <c>pinhole</c>, <c>small</c>, …</param>
/// <param name="Words">The class in words, with its band.</param>
/// <param name="Source">Where the band comes from.</param>
public sealed record HoleClass(string Scheme, string Code, string Words, Clause Source);

/// <summary>Hole classes by all schemes that are met.</summary>
public static class HoleClasses
{
    private static readonly Clause Producers = new("IOGP 434-01 (2019)", "hole bands", Provenance.FromMemory);
    private static readonly Clause Inspection = new("API 581", "release hole sizes", Provenance.FromMemory);
    private static readonly Clause GasPipelines = new("EGIG", "leak sizes", Provenance.FromMemory);
    private static readonly Clause Own = new("hole classes of the service", "", Provenance.OwnRule);

    /// <summary>Diameter of the round hole of the same area.</summary>
    /// <remarks>
    /// <para>Formula: d_e = √(4 A/π).</para>
    /// <para>Symbols: d_e equivalent diameter, mm; A area of the hole, mm².</para>
    /// <para>Validity: any shape; of a slot keep length and direction too.</para>
    /// <para>Reference: area of a circle.</para>
    /// </remarks>
    /// <param name="area">Area A.</param>
    /// <returns>Equivalent diameter d_e.</returns>
    /// <exception cref="ImpossibleInputException">The area is negative.</exception>
    /// <example>150 mm²: √(600/π) = 13.82 mm.</example>
    public static Length EquivalentDiameter(Area area)
    {
        var A = Require.NotNegative("holeAreaMm2", area.SquareMillimeters);
        return Length.FromMillimeters(Math.Sqrt(4 * A / Math.PI));
    }

    /// <summary>The class of a hole in every scheme, our own last.</summary>
    /// <param name="hole">Equivalent diameter, above 0.</param>
    /// <param name="outsideDiameter">Outside diameter of the pipe.</param>
    /// <returns>One class for each scheme.</returns>
    /// <exception cref="ImpossibleInputException">A diameter is not above 0.</exception>
    public static IReadOnlyList<HoleClass> Of(Length hole, Length outsideDiameter)
    {
        var d = Require.Positive("holeDiameterMm", hole.Millimeters);
        var D = Require.Positive("outsideDiameterMm", outsideDiameter.Millimeters);
        return [Producer(d), Inspected(d, D), GasPipeline(d, D), OfService(d, D)];
    }

    /// <summary>The class of a hole in the service's own scheme.</summary>
    /// <param name="hole">Equivalent diameter, above 0.</param>
    /// <param name="outsideDiameter">Outside diameter of the pipe.</param>
    /// <returns>The class; a hole wider than a quarter of the pipe is able to part it whatever its size.</returns>
    /// <exception cref="ImpossibleInputException">A diameter is not above 0.</exception>
    public static HoleClass OfService(Length hole, Length outsideDiameter) =>
        OfService(
            Require.Positive("holeDiameterMm", hole.Millimeters),
            Require.Positive("outsideDiameterMm", outsideDiameter.Millimeters)
        );

    private static HoleClass OfService(double d, double D)
    {
        var (code, words) =
            d > Math.Min(50, D / 4)
                ? ("separation-capable", "over 50 mm or a quarter of the diameter: able to part the pipe")
            : d <= 3 ? ("pinhole", "pinhole, up to 3 mm")
            : d <= 10 ? ("small", "small, over 3 to 10 mm")
            : d <= 25 ? ("medium", "medium, over 10 to 25 mm")
            : ("large", "large, over 25 to 50 mm and to a quarter of the diameter");
        return new("service", code, words, Own);
    }

    private static HoleClass Producer(double d)
    {
        var band =
            d < 1 ? "under 1 mm, below the bands"
            : d <= 3 ? "1 to 3 mm"
            : d <= 10 ? "3 to 10 mm"
            : d <= 50 ? "10 to 50 mm"
            : d <= 150 ? "50 to 150 mm"
            : "over 150 mm";
        return new("IOGP 434-01", band.Replace(' ', '-').Replace(",", "", StringComparison.Ordinal), band, Producers);
    }

    // The scheme knows four sizes to reckon with; the next one up is taken.
    private static HoleClass Inspected(double d, double D)
    {
        var (code, words) =
            d > Math.Min(D, 102) ? ("rupture", "rupture")
            : d <= 6.4 ? ("small", "small, reckoned as 6.4 mm")
            : d <= 25 ? ("medium", "medium, reckoned as 25 mm")
            : ("large", "large, reckoned as 102 mm");
        return new("API 581", code, words, Inspection);
    }

    private static HoleClass GasPipeline(double d, double D)
    {
        var (code, words) =
            d <= Math.Min(20, D) ? ("pinhole", "pinhole or crack, up to 20 mm")
            : d <= D ? ("hole", "hole, over 20 mm to the diameter")
            : ("rupture", "rupture, over the diameter");
        return new("EGIG", code, words, GasPipelines);
    }
}
