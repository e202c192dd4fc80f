using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using UnitsNet;

namespace RepairOrders.Engineering.Axial;

/// <summary>What warmth does to a pipe and to the repair on it.</summary>
public static class Expansion
{
    /// <summary>Growth of a length that is free to grow.</summary>
    /// <remarks>
    /// <para>Formula: dL = α L dT.</para>
    /// <para>Symbols: dL growth, mm; α linear expansion, 1/K; L length, mm; dT warming, K.</para>
    /// <para>Validity: α taken over the range of temperature.</para>
    /// <para>Reference: definition of linear expansion.</para>
    /// </remarks>
    /// <param name="alpha">Linear expansion α.</param>
    /// <param name="length">Length L.</param>
    /// <param name="warming">Warming dT; cooling is negative.</param>
    /// <returns>Growth dL.</returns>
    /// <exception cref="ImpossibleInputException">The length is negative.</exception>
    /// <example>11.7 × 10⁻⁶ 1/K, 1 m, 1 K: 0.0117 mm.</example>
    public static Length Free(CoefficientOfThermalExpansion alpha, Length length, TemperatureDelta warming)
    {
        var L = Take.Extent("lengthMm", length);
        return Length.FromMillimeters(PerKelvin(alpha) * L * Kelvins(warming));
    }

    /// <summary>Stress of a bar that may not grow at all.</summary>
    /// <remarks>
    /// <para>Formula: σ = E α dT.</para>
    /// <para>Symbols: σ stress, MPa, push where it warms; E Young's modulus, MPa; α linear expansion, 1/K; dT warming, K.</para>
    /// <para>Validity: elastic, fully held at both ends.</para>
    /// <para>Reference: Hooke's law, first principles.</para>
    /// </remarks>
    /// <param name="modulus">Young's modulus E.</param>
    /// <param name="alpha">Linear expansion α.</param>
    /// <param name="warming">Warming dT.</param>
    /// <returns>Stress σ.</returns>
    /// <exception cref="ImpossibleInputException">The modulus is not above 0.</exception>
    /// <example>203 GPa, 11.7 × 10⁻⁶ 1/K, 60 K: 142.51 MPa.</example>
    public static Pressure RestrainedStress(
        Pressure modulus,
        CoefficientOfThermalExpansion alpha,
        TemperatureDelta warming
    )
    {
        var E = Modulus(modulus);
        return Pressure.FromMegapascals(E * PerKelvin(alpha) * Kelvins(warming));
    }

    /// <summary>Force between a pipe and a sleeve that is fixed to it at both ends.</summary>
    /// <remarks>
    /// <para>Formula: F = (α1 − α2) dT/(1/(A1 E1) + 1/(A2 E2)).</para>
    /// <para>Symbols: F force, N; α linear expansion, 1/K; dT warming, K; A area of metal, mm²; E Young's modulus, MPa; 1 and 2 the two parts.</para>
    /// <para>Validity: elastic, both parts at one temperature, no slip.</para>
    /// <para>Reference: compatibility of two bars, first principles.</para>
    /// </remarks>
    /// <param name="alpha1">Linear expansion of part 1.</param>
    /// <param name="area1">Metal of part 1.</param>
    /// <param name="modulus1">Young's modulus of part 1.</param>
    /// <param name="alpha2">Linear expansion of part 2.</param>
    /// <param name="area2">Metal of part 2.</param>
    /// <param name="modulus2">Young's modulus of part 2.</param>
    /// <param name="warming">Warming dT.</param>
    /// <returns>Force F; it pushes part 1 and pulls part 2 where positive.</returns>
    /// <exception cref="ImpossibleInputException">An area or a modulus is not above 0.</exception>
    /// <example>17.3 and 11.7 × 10⁻⁶ 1/K, 60 K, 3600 mm² of 203 GPa, 2500 mm² of 195 GPa: 98 256 N.</example>
    public static Force Mismatch(
        CoefficientOfThermalExpansion alpha1,
        Area area1,
        Pressure modulus1,
        CoefficientOfThermalExpansion alpha2,
        Area area2,
        Pressure modulus2,
        TemperatureDelta warming
    )
    {
        var A1 = Metal(area1);
        var A2 = Metal(area2);
        var E1 = Modulus(modulus1);
        var E2 = Modulus(modulus2);
        var strain = (PerKelvin(alpha1) - PerKelvin(alpha2)) * Kelvins(warming);
        return Force.FromNewtons(strain / (1 / (A1 * E1) + 1 / (A2 * E2)));
    }

    /// <summary>How much the bore of a clamp grows over the pipe it sits on.</summary>
    /// <remarks>
    /// <para>Formula: δ = (α_clamp − α_pipe) D dT.</para>
    /// <para>Symbols: δ growth of the gap on the diameter, mm; α linear expansion, 1/K; D pipe's outside diameter, mm; dT warming, K.</para>
    /// <para>Validity: both at one temperature.</para>
    /// <para>Reference: definition of linear expansion.</para>
    /// </remarks>
    /// <param name="alphaClamp">Linear expansion of the clamp.</param>
    /// <param name="alphaPipe">Linear expansion of the pipe.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="warming">Warming dT.</param>
    /// <returns>Growth δ; positive loosens the clamp.</returns>
    /// <exception cref="ImpossibleInputException">The diameter is not above 0.</exception>
    /// <example>17.3 on 11.7 × 10⁻⁶ 1/K, 168.3 mm, 60 K: 0.056549 mm looser.</example>
    public static Length BoreGap(
        CoefficientOfThermalExpansion alphaClamp,
        CoefficientOfThermalExpansion alphaPipe,
        Length outsideDiameter,
        TemperatureDelta warming
    )
    {
        var D = Shell.Diameter(outsideDiameter);
        return Length.FromMillimeters((PerKelvin(alphaClamp) - PerKelvin(alphaPipe)) * D * Kelvins(warming));
    }

    private static double PerKelvin(CoefficientOfThermalExpansion alpha) =>
        Require.Between("expansionPerK", alpha.PerKelvin, -1e-3, 1e-3);

    private static double Kelvins(TemperatureDelta warming) =>
        Require.Between("warmingK", warming.Kelvins, -5000, 5000);

    private static double Modulus(Pressure modulus) => Require.Between("modulusMpa", modulus.Megapascals, 1, 1e7);

    private static double Metal(Area area) => Require.Between("areaMm2", area.SquareMillimeters, 1e-3, 1e12);
}
