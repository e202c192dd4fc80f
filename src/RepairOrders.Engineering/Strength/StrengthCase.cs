using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>A pipe with metal loss, and the pressure it is asked to hold.</summary>
/// <param name="Pipe">The pipe.</param>
/// <param name="Loss">The metal loss.</param>
/// <param name="Maop">Established maximum operating pressure (MAOP or MAWP), gauge.</param>
/// <param name="Temperature">Metal temperature.</param>
/// <param name="SafetyFactor">Safety factor on the failure pressure by ASME B31G, 1.25 or more [-].</param>
/// <param name="UsageFactor">Operational usage factor F2 of the corroded-pipe method, such as 0.72 [-].</param>
/// <param name="Plant">What the plant-piping method needs; nothing for a pipeline, or while the future loss is unknown.</param>
public sealed record StrengthCase(
    Pipe Pipe,
    MetalLoss Loss,
    Pressure Maop,
    Temperature Temperature,
    double SafetyFactor,
    double UsageFactor,
    PlantPiping? Plant = null
);

/// <summary>What API 579-1 needs beside the metal loss.</summary>
/// <param name="FutureLoss">Future corrosion allowance FCA: loss expected until the next revisit.</param>
/// <param name="DistanceToDiscontinuity">Distance to the nearest nozzle, weld of an elbow, support or flange; nothing where not known.</param>
/// <param name="Cyclic">The line is in cyclic service.</param>
/// <param name="WeldFactor">Weld strength reduction factor W [-].</param>
public sealed record PlantPiping(
    Length FutureLoss,
    Length? DistanceToDiscontinuity,
    bool Cyclic,
    double WeldFactor = 1
);

/// <summary>What one method says of a case.</summary>
/// <param name="Code">The method: <c>b31g-original</c>, <c>b31g-modified</c>, <c>effective-area</c>, <c>local-thin-area</c>, <c>corroded-pipe</c>.</param>
/// <param name="Name">Its name on screen and paper.</param>
/// <param name="FailurePressure">Predicted failure pressure, gauge; nothing where the method is refused or predicts none.</param>
/// <param name="SafePressure">Pressure it allows, gauge; nothing where the method is refused.</param>
/// <param name="EstimatedRepairFactor">MAOP over safe pressure; nothing where there is none.</param>
/// <param name="Assumes">What the method takes the lost metal and the strength to be, as a sentence.</param>
public sealed record StrengthAnswer(
    string Code,
    string Name,
    Pressure? FailurePressure,
    Pressure? SafePressure,
    double? EstimatedRepairFactor,
    string Assumes
);
