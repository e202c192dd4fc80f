using UnitsNet;

namespace RepairOrders.Engineering.Pipework;

/// <summary>The family a metal belongs to; limits and Young's modulus go by it.</summary>
public enum MetalFamily
{
    /// <summary>Carbon steel.</summary>
    CarbonSteel,

    /// <summary>Low-alloy steel.</summary>
    LowAlloySteel,

    /// <summary>Austenitic stainless steel.</summary>
    AusteniticStainless,

    /// <summary>Ferritic or duplex stainless steel.</summary>
    OtherStainless,

    /// <summary>Copper-nickel and other copper alloys.</summary>
    CopperAlloy,

    /// <summary>Ductile iron.</summary>
    DuctileIron,

    /// <summary>Gray iron: brittle.</summary>
    GrayIron,

    /// <summary>Any other metal.</summary>
    Other,
}

/// <summary>A straight piece of pipe.</summary>
/// <param name="OutsideDiameter">Outside diameter; measured girth over π where it was measured.</param>
/// <param name="NominalWall">Wall as ordered.</param>
/// <param name="Metal">Family of the metal.</param>
/// <param name="YieldStrength">Specified minimum yield strength; nothing for gray iron.</param>
/// <param name="TensileStrength">Specified minimum tensile strength.</param>
/// <param name="AllowableStress">Basic allowable stress at design temperature.</param>
/// <param name="QualityFactor">Longitudinal joint quality factor E, 0 to 1.</param>
public sealed record Pipe(
    Length OutsideDiameter,
    Length NominalWall,
    MetalFamily Metal,
    Pressure? YieldStrength,
    Pressure? TensileStrength,
    Pressure AllowableStress,
    double QualityFactor
);
