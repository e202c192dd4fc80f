using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Axial;

/// <summary>Typical expansion and stiffness of a material between 20 and 100 °C.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Words">The material in words.</param>
/// <param name="Expansion">Linear expansion; the upper value where a range is given.</param>
/// <param name="Modulus">Young's modulus.</param>
public sealed record ThermalMetal(string Code, string Words, CoefficientOfThermalExpansion Expansion, Pressure Modulus)
{
    /// <summary>Where the rows come from.</summary>
    public static readonly Clause Source = new("typical values, 20 to 100 °C", "", Provenance.FromMemory);

    /// <summary>All rows.</summary>
    public static readonly IReadOnlyList<ThermalMetal> All =
    [
        Row("carbon-steel", "Carbon and low-alloy steel", 11.7, 203),
        Row("austenitic", "Austenitic stainless steel 304/316 (16.5 to 17.3)", 17.3, 195),
        Row("duplex", "Duplex stainless steel", 13, 200),
        Row("copper-nickel", "Copper-nickel 90/10", 17.1, 124),
        Row("ductile-iron", "Ductile iron", 11, 165),
        Row("titanium", "Titanium", 8.6, 107),
        Row("aluminium", "Aluminium", 23.6, 69),
    ];

    /// <summary>The row of a family of metals.</summary>
    /// <param name="family">The family.</param>
    /// <returns>The row; nothing where the family is not listed, so that a value must be entered.</returns>
    public static ThermalMetal? For(MetalFamily family) =>
        family switch
        {
            MetalFamily.CarbonSteel or MetalFamily.LowAlloySteel => All[0],
            MetalFamily.AusteniticStainless => All[1],
            MetalFamily.OtherStainless => All[2],
            MetalFamily.CopperAlloy => All[3],
            MetalFamily.DuctileIron => All[4],
            _ => null,
        };

    private static ThermalMetal Row(string code, string words, double alpha, double modulus) =>
        new(code, words, CoefficientOfThermalExpansion.FromPpmPerKelvin(alpha), Pressure.FromGigapascals(modulus));
}
