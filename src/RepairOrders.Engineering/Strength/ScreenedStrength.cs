using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>The numbers of <see cref="StrengthComparison"/> without words and working, for surveys of many defects.</summary>
/// <param name="Governs">Code of the method that governs; nothing where no pressure is credited.</param>
/// <param name="SafePressure">Its safe pressure, gauge.</param>
/// <param name="EstimatedRepairFactor">MAOP over safe pressure.</param>
/// <param name="Original">Failure pressure by original ASME B31G; nothing where refused.</param>
/// <param name="Modified">Failure pressure by modified ASME B31G; nothing where refused.</param>
/// <param name="Effective">Failure pressure by effective area; nothing where refused.</param>
/// <param name="Corroded">Failure pressure by DNV-RP-F101 Part B; nothing where refused.</param>
/// <param name="ThinArea">Pressure held by API 579-1 Part 5; nothing where refused.</param>
/// <param name="EffectiveLength">Length of the weakest stretch; nothing without one.</param>
/// <param name="Error">What is wrong with the defect as it was given; nothing where it could be judged.</param>
public readonly record struct ScreenedStrength(
    string? Governs,
    Pressure? SafePressure,
    double? EstimatedRepairFactor,
    Pressure? Original,
    Pressure? Modified,
    Pressure? Effective,
    Pressure? Corroded,
    Pressure? ThinArea,
    Length? EffectiveLength,
    ImpossibleInputException? Error
);
