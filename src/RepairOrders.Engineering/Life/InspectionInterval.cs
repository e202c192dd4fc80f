using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Life;

/// <summary>Longest intervals of inspection for one inspection class.</summary>
/// <param name="InspectionClass">API 570 class, 1 to 4; 0 for injection points.</param>
/// <param name="ThicknessYears">Longest interval of thickness readings, y; nothing where it is optional.</param>
/// <param name="VisualYears">Longest interval of outside looks, y; nothing where it is optional.</param>
/// <param name="Source">Where the row comes from.</param>
public sealed record InspectionInterval(int InspectionClass, double? ThicknessYears, double? VisualYears, Clause Source)
{
    private static readonly Clause Table = new("API 570 (county case file)", "Table 2");

    /// <summary>Injection points: thickness every three years.</summary>
    public static readonly InspectionInterval InjectionPoint = new(
        0,
        3,
        null,
        new("API 570", "Table 2", Provenance.FromMemory)
    );

    /// <summary>All classes.</summary>
    public static readonly IReadOnlyList<InspectionInterval> All =
    [
        new(1, 5, 5, Table),
        new(2, 10, 5, Table),
        new(3, 10, 10, Table),
        new(4, null, null, Table),
    ];

    /// <summary>The row of a class.</summary>
    /// <param name="inspectionClass">API 570 class, 1 to 4.</param>
    /// <returns>The row.</returns>
    /// <exception cref="ImpossibleInputException">There is no such class.</exception>
    public static InspectionInterval For(int inspectionClass)
    {
        Require.Between("inspectionClass", inspectionClass, 1, 4);
        return All[inspectionClass - 1];
    }
}
