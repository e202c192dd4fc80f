using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Methods;

/// <summary>For each method an example that sizes; a method without one fails the catalogue's test.</summary>
internal static class Examples
{
    public static readonly Defect Pit = APipe.Pinhole with
    {
        Kind = DefectKind.Pitting,
        ThroughWall = false,
        HoleDiameter = Length.Zero,
        RemainingWall = Length.FromMillimeters(3),
    };

    public static readonly Defect SmallPit = Pit with
    {
        AxialLength = Length.FromMillimeters(10),
        CircumferentialLength = Length.FromMillimeters(10),
    };

    public static readonly IReadOnlyDictionary<string, Readings> All = new Dictionary<string, Readings>
    {
        ["banded-patch"] = APipe.With(),
        ["laminate-wrap"] = APipe.With(("softeningC", 100), ("lapShearMpa", 5), ("toughnessJm2", 200)) with
        {
            Service = APipe.At(8),
        },
        ["bolted-clamp"] = APipe.With() with { Service = APipe.At(10) },
        ["welded-patch"] = APipe.With() with { Defect = SmallPit, Service = APipe.At(10) },
        ["welded-sleeve"] = APipe.With() with { Service = APipe.At(16) },
        ["plug"] = APipe.With() with { Defect = APipe.Pinhole with { HoleDiameter = Length.FromMillimeters(4) } },
        ["section-replacement"] = APipe.With() with { Service = APipe.At(16) },
    };
}
