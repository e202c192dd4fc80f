using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Pipework;

/// <summary>An allowable stress at a temperature.</summary>
/// <param name="Temperature">Metal temperature.</param>
/// <param name="Stress">Basic allowable stress; where editions differ, the lower.</param>
/// <param name="EditionsDiffer">The editions of the code print different values here.</param>
public sealed record AllowableAt(Temperature Temperature, Pressure Stress, bool EditionsDiffer);

/// <summary>A grade of pipe with its specified strength and allowable stress, as tabulated.</summary>
/// <param name="Specification">Such as <c>ASTM A106</c>.</param>
/// <param name="Grade">Such as <c>B</c>.</param>
/// <param name="Family">The metal's family.</param>
/// <param name="YieldStrength">Specified minimum yield strength; nothing for gray iron, which has none.</param>
/// <param name="TensileStrength">Specified minimum tensile strength.</param>
/// <param name="YieldKsi">Yield in the customary table, ksi. Metric and customary tables differ by rounding: take both strengths from one of them.</param>
/// <param name="TensileKsi">Tensile strength in the customary table, ksi.</param>
/// <param name="Allowable">Allowable stresses of ASME B31.3 by rising temperature; empty where the code lists none.</param>
/// <param name="AllowableBasis">What sets the allowable stress, in words.</param>
/// <param name="Brittle">The metal breaks without warning.</param>
/// <param name="StrengthSource">Where the strengths come from.</param>
/// <param name="AllowableSource">Where the allowable stresses come from.</param>
public sealed record PipeGrade(
    string Specification,
    string Grade,
    MetalFamily Family,
    Pressure? YieldStrength,
    Pressure? TensileStrength,
    double? YieldKsi,
    double? TensileKsi,
    IReadOnlyList<AllowableAt> Allowable,
    string AllowableBasis,
    bool Brittle,
    Clause StrengthSource,
    Clause AllowableSource
)
{
    /// <summary>Specification and grade in one: <c>ASTM A106 B</c>.</summary>
    public string Name => $"{Specification} {Grade}";
}
