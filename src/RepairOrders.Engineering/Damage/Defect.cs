using UnitsNet;

namespace RepairOrders.Engineering.Damage;

/// <summary>What is wrong with the pipe wall.</summary>
public enum DefectKind
{
    /// <summary>Wall loss spread over an area.</summary>
    GeneralThinning,

    /// <summary>A pit or a small group of pits.</summary>
    Pitting,

    /// <summary>A hole of a few millimetres.</summary>
    Pinhole,

    /// <summary>A larger hole.</summary>
    Hole,

    /// <summary>A crack or anything crack-like.</summary>
    CrackLike,

    /// <summary>A dent or gouge.</summary>
    MechanicalDamage,

    /// <summary>A leak at a weld.</summary>
    WeldDefect,

    /// <summary>A leak at a flange, thread or other joint.</summary>
    Joint,
}

/// <summary>Which face of the wall is attacked. Unknown is legal and raises risk.</summary>
public enum DefectSide
{
    /// <summary>From outside.</summary>
    External,

    /// <summary>From inside.</summary>
    Internal,

    /// <summary>Not known.</summary>
    Unknown,
}

/// <summary>What causes the damage. Unknown is legal and raises risk.</summary>
public enum DefectCause
{
    /// <summary>Not known.</summary>
    Unknown,

    /// <summary>Internal corrosion.</summary>
    InternalCorrosion,

    /// <summary>External corrosion.</summary>
    ExternalCorrosion,

    /// <summary>Corrosion under lagging.</summary>
    CorrosionUnderLagging,

    /// <summary>Erosion or cavitation.</summary>
    Erosion,

    /// <summary>Fatigue or vibration.</summary>
    Fatigue,

    /// <summary>Mechanical damage.</summary>
    MechanicalDamage,

    /// <summary>A fault of fabrication.</summary>
    Fabrication,

    /// <summary>Freezing.</summary>
    Freezing,
}

/// <summary>One defect, as measured.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Side">Which face is attacked.</param>
/// <param name="Cause">Why.</param>
/// <param name="ThroughWall">It goes through the wall.</param>
/// <param name="AxialLength">Extent along the pipe.</param>
/// <param name="CircumferentialLength">Extent round the pipe, measured on its surface.</param>
/// <param name="RemainingWall">Least wall left; zero where it is through.</param>
/// <param name="HoleDiameter">Equivalent hole diameter; zero where it is not through.</param>
/// <param name="SoundWallBeside">Least wall measured beside the defect, where seal and bands bear.</param>
/// <param name="ClockHours">Clock position of its centre looking with the flow, 0 to 12 h.</param>
/// <param name="Growing">Growth has been seen or is expected within the repair's life.</param>
public sealed record Defect(
    DefectKind Kind,
    DefectSide Side,
    DefectCause Cause,
    bool ThroughWall,
    Length AxialLength,
    Length CircumferentialLength,
    Length RemainingWall,
    Length HoleDiameter,
    Length SoundWallBeside,
    double ClockHours,
    bool Growing
);
