using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.ThroughWall;

/// <summary>The kind of repair in mind, as far as the decision table knows kinds.</summary>
public enum RepairInMind
{
    /// <summary>None yet, or one the table says nothing of.</summary>
    Other,

    /// <summary>Rubber and band, soft patch.</summary>
    SoftPatch,

    /// <summary>Resin tape or laminate wrap.</summary>
    Wrap,

    /// <summary>Bolt-on leak clamp.</summary>
    BoltedClamp,

    /// <summary>Fillet-welded patch.</summary>
    WeldedPatch,
}

/// <summary>What is to be decided on.</summary>
/// <param name="Pipe">The pipe.</param>
/// <param name="Defect">The defect.</param>
/// <param name="Service">The service.</param>
/// <param name="StructuralMinimum">Structural minimum wall.</param>
public sealed record DecisionCase(Pipe Pipe, Defect Defect, Service Service, Length StructuralMinimum)
{
    /// <summary>The kind of repair in mind.</summary>
    public RepairInMind Repair { get; init; }

    /// <summary>It is proved that the crack will not grow.</summary>
    public bool GrowthExcluded { get; init; }

    /// <summary>Metal colder than its least design temperature.</summary>
    public bool BelowMinimumTemperature { get; init; }

    /// <summary>Damage by hydrogen.</summary>
    public bool HydrogenDamage { get; init; }

    /// <summary>Temperature in the creep range.</summary>
    public bool CreepRange { get; init; }

    /// <summary>The wall bears the end load; nothing where that was not checked.</summary>
    public bool? AxialStrengthSuffices { get; init; }

    /// <summary>A restraint is designed that bears the end load.</summary>
    public bool RestraintDesigned { get; init; }

    /// <summary>Length of wall mapped on each side of the defect.</summary>
    public Length WallMappedEachSide { get; init; }

    /// <summary>Nuclear class, 1 to 3; 0 for none.</summary>
    public int NuclearClass { get; init; }

    /// <summary>The regulator's written relief is there.</summary>
    public bool WrittenRelief { get; init; }

    /// <summary>Marine piping class, 1 to 3; 0 for a line on land.</summary>
    public int MarineClass { get; init; }

    /// <summary>The line is gas transmission under pipeline law.</summary>
    public bool GasTransmission { get; init; }

    /// <summary>The soft patch or wrap has a fire rating.</summary>
    public bool FireRated { get; init; }

    /// <summary>Thickness of the welded patch.</summary>
    public Length PatchThickness { get; init; }

    /// <summary>Longest side of the welded patch.</summary>
    public Length PatchSize { get; init; }

    /// <summary>The welded patch has rounded corners.</summary>
    public bool PatchCornersRounded { get; init; }
}
