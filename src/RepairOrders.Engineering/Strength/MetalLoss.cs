using System.Globalization;
using RepairOrders.Engineering.Damage;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>One patch of metal loss, measured against the full wall beside it.</summary>
/// <param name="ReferenceWall">Full wall beside the loss, from which the depth counts; never mixed with the nominal wall.</param>
/// <param name="Depth">Greatest depth.</param>
/// <param name="AxialLength">Extent along the pipe.</param>
/// <param name="CircumferentialLength">Extent round the pipe, on its surface.</param>
/// <param name="Side">The face that is attacked.</param>
/// <param name="Profile">River-bottom profile along the pipe; nothing where only the deepest reading was taken.</param>
public sealed record MetalLoss(
    Length ReferenceWall,
    Length Depth,
    Length AxialLength,
    Length CircumferentialLength,
    DefectSide Side,
    RiverBottom? Profile = null
)
{
    /// <summary>Metal loss of a defect whose remaining wall was measured.</summary>
    /// <param name="defect">The defect.</param>
    /// <param name="referenceWall">Full wall beside it.</param>
    /// <returns>The metal loss; one that is through has the whole wall as its depth.</returns>
    /// <exception cref="ImpossibleInputException">The remaining wall is more than the reference wall.</exception>
    public static MetalLoss Of(Defect defect, Length referenceWall)
    {
        ArgumentNullException.ThrowIfNull(defect);
        var t = referenceWall.Millimeters;
        var left = defect.ThroughWall ? 0 : defect.RemainingWall.Millimeters;
        return left <= t
            ? new(
                referenceWall,
                Length.FromMillimeters(t - left),
                defect.AxialLength,
                defect.CircumferentialLength,
                defect.Side
            )
            : throw new ImpossibleInputException(
                "remainingWallMm",
                left.ToString("G6", CultureInfo.InvariantCulture),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"0 to the wall beside the defect of {t:G6} mm; take a new reading"
                )
            );
    }
}

/// <summary>One point of a river-bottom profile.</summary>
/// <param name="Position">Position along the pipe.</param>
/// <param name="Depth">Deepest reading of the band round the pipe at this position.</param>
public readonly record struct ProfilePoint(Length Position, Length Depth);

/// <summary>A river-bottom profile: the deepest reading round the pipe at each position along it.</summary>
public sealed class RiverBottom
{
    private readonly double[] x;
    private readonly double[] d;

    private readonly double deepest;
    private readonly double shallowest;

    private RiverBottom(double[] x, double[] d)
    {
        (this.x, this.d) = (x, d);
        deepest = d.Max();
        // The ends stand at the edge of the loss; with two points there are only ends.
        var inside = d.Length > 2 ? d.AsSpan(1, d.Length - 2) : d;
        shallowest = inside[0];
        foreach (var depth in inside)
        {
            shallowest = Math.Min(shallowest, depth);
        }
    }

    /// <summary>Positions, strictly increasing, mm.</summary>
    public ReadOnlySpan<double> PositionsMm => x;

    /// <summary>Depths, mm.</summary>
    public ReadOnlySpan<double> DepthsMm => d;

    /// <summary>Greatest depth.</summary>
    public Length Deepest => Length.FromMillimeters(deepest);

    /// <summary>Distance from the first to the last point.</summary>
    public Length Span => Length.FromMillimeters(x[^1] - x[0]);

    /// <summary>Greatest distance between neighbouring points.</summary>
    public Length WidestGap => Length.FromMillimeters(x.Zip(x.Skip(1), (a, b) => b - a).Max());

    /// <summary>
    /// Spread of the depths between the two ends, as a share of the greatest: 0 for a flat patch. The ends are left out, for
    /// they stand at the edge of the loss; with two points there are only ends, and they count.
    /// </summary>
    public double DepthVariation => deepest > 0 ? Math.Max(0, 1 - shallowest / deepest) : 0;

    /// <summary>
    /// Depth of the flat part: the shallowest place between the ends over 0.85, at most the greatest depth. It is the greatest
    /// depth where the profile varies by less than 15 %, and no place made deeper makes it less.
    /// </summary>
    public Length FlatDepth => Length.FromMillimeters(Math.Min(deepest, shallowest / 0.85));

    /// <summary>Makes a profile; readings at one position are merged into the deepest.</summary>
    /// <param name="points">Points in the order of their positions.</param>
    /// <returns>The profile.</returns>
    /// <exception cref="ImpossibleInputException">Fewer than two positions, positions that fall, or a negative depth.</exception>
    public static RiverBottom Of(IEnumerable<ProfilePoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var (x, d) = (new List<double>(), new List<double>());
        foreach (var point in points)
        {
            if (x.Count > 0 && x[^1] == point.Position.Millimeters)
            {
                d[^1] = Math.Max(d[^1], point.Depth.Millimeters);
                continue;
            }
            x.Add(point.Position.Millimeters);
            d.Add(point.Depth.Millimeters);
        }
        return Of([.. x], [.. d]);
    }

    /// <summary>Makes a profile of positions and depths.</summary>
    /// <param name="positionsMm">Positions, strictly increasing, at least two, mm.</param>
    /// <param name="depthsMm">Depths, 0 or more, mm.</param>
    /// <returns>The profile.</returns>
    /// <exception cref="ImpossibleInputException">Fewer than two positions, positions that do not rise, or a negative depth.</exception>
    public static RiverBottom Of(ReadOnlySpan<double> positionsMm, ReadOnlySpan<double> depthsMm)
    {
        EffectiveArea.Check(positionsMm, depthsMm, 1e9);
        return new(positionsMm.ToArray(), depthsMm.ToArray());
    }

    /// <summary>Mean depth over a length about the deepest place, as far as the profile goes, mm.</summary>
    internal double AverageDepth(double length)
    {
        var centre = x[Array.IndexOf(d, deepest)];
        var (from, to) = (Math.Max(x[0], centre - length / 2), Math.Min(x[^1], centre + length / 2));
        var area = 0.0;
        for (var i = 1; i < x.Length; i++)
        {
            var (a, b) = (Math.Max(x[i - 1], from), Math.Min(x[i], to));
            area += b > a ? 0.5 * (b - a) * (Between(i, a) + Between(i, b)) : 0;
        }
        return area / (to - from);
    }

    private double Between(int i, double at) => d[i - 1] + (d[i] - d[i - 1]) * (at - x[i - 1]) / (x[i] - x[i - 1]);
}
