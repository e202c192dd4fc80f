using UnitsNet;

namespace RepairOrders.Engineering.Joints;

/// <summary>A metric bolt with coarse thread.</summary>
/// <param name="Name">Its name: <c>M16</c>.</param>
/// <param name="Diameter">Nominal diameter.</param>
/// <param name="Pitch">Pitch.</param>
public sealed record MetricBolt(string Name, Length Diameter, Length Pitch)
{
    /// <summary>Coarse-thread bolts, smallest first; diameters and pitches of ISO 261.</summary>
    public static IReadOnlyList<MetricBolt> All { get; } =
    [
        Coarse(6, 1),
        Coarse(8, 1.25),
        Coarse(10, 1.5),
        Coarse(12, 1.75),
        Coarse(16, 2),
        Coarse(20, 2.5),
        Coarse(24, 3),
        Coarse(30, 3.5),
        Coarse(36, 4),
    ];

    /// <summary>Stress area π/4 (d − 0.9382 p)², ISO 898-1.</summary>
    public Area StressArea =>
        Area.FromSquareMillimeters(Math.PI / 4 * Math.Pow(Diameter.Millimeters - 0.9382 * Pitch.Millimeters, 2));

    private static MetricBolt Coarse(double diameter, double pitch) =>
        new($"M{diameter:0}", Length.FromMillimeters(diameter), Length.FromMillimeters(pitch));
}
