using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>The form of the 1991 edition, still printed on old sheets.</summary>
public static partial class PipelineMetalLoss
{
    /// <summary>Length parameter A of the 1991 edition.</summary>
    /// <remarks>
    /// <para>Formula: A = 0.893 L / sqrt(D t)</para>
    /// <para>Symbols: A length parameter, -; L axial length, mm; D outside diameter, mm; t wall, mm.</para>
    /// <para>Validity: none given by the source.</para>
    /// <para>Reference: ASME B31G-1991, 4.2.</para>
    /// </remarks>
    /// <param name="axialLength">Axial length L.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <returns>Length parameter A [-].</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>L 140 mm, D 508 mm, t 7.40 mm: A = 2.0391.</example>
    public static double LengthParameter1991(Length axialLength, Length outsideDiameter, Length wall) =>
        0.893 * Math.Sqrt(LengthParameter(axialLength, outsideDiameter, wall));

    /// <summary>Safe pressure of a metal loss, by the 1991 edition.</summary>
    /// <remarks>
    /// <para>Formula: A ≤ 4: P' = 1.1 P (1 − (2/3)(d/t)) / (1 − (2/3)(d/t)/sqrt(A² + 1)); A &gt; 4: P' = 1.1 P (1 − d/t); P' ≤ P</para>
    /// <para>Symbols: P' safe pressure, MPa; P the greater of design pressure 2 SMYS t F T/D and MAOP, MPa; A length parameter, -; d depth, mm; t wall, mm.</para>
    /// <para>Validity: 10 % &lt; d/t ≤ 80 %.</para>
    /// <para>Reference: ASME B31G-1991, 4.2 and 4.3.</para>
    /// </remarks>
    /// <param name="pressure">Pressure P.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <param name="depth">Greatest depth d, 0 to t.</param>
    /// <param name="axialLength">Axial length L.</param>
    /// <returns>Safe pressure P'.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>P 7530.52 kPa, D 508 mm, t 7.40 mm, d 1.97 mm, L 140 mm: P' = 7391.0 kPa.</example>
    public static Pressure SafePressure1991(
        Pressure pressure,
        Length outsideDiameter,
        Length wall,
        Length depth,
        Length axialLength
    )
    {
        var P = Take.Gauge("designPressureBar", pressure);
        var r = Take.Depth(depth, wall.Millimeters) / wall.Millimeters;
        var A = LengthParameter1991(axialLength, outsideDiameter, wall);
        var q = 2 * r / 3;
        var ratio = A <= 4 ? (1 - q) / (1 - q / Math.Sqrt(A * A + 1)) : 1 - r;
        return Pressure.FromMegapascals(Math.Min(P, 1.1 * P * ratio));
    }

    /// <summary>Factor B of the allowable length, by the 1991 edition.</summary>
    /// <remarks>
    /// <para>Formula: B = sqrt(((d/t) / (1.1 d/t − 0.15))² − 1), at most 4; B = 4 for d/t ≤ 17.5 %</para>
    /// <para>Symbols: B factor, -; d depth, mm; t wall, mm.</para>
    /// <para>Validity: 10 % &lt; d/t ≤ 80 %.</para>
    /// <para>Reference: ASME B31G-1991, 2.2.</para>
    /// </remarks>
    /// <param name="depthRatio">Depth over wall d/t, 0 to 1 [-].</param>
    /// <returns>Factor B [-].</returns>
    /// <exception cref="ImpossibleInputException">The ratio is not between 0 and 1.</exception>
    /// <example>d/t 0.26622: B = 1.57.</example>
    public static double AllowableLengthFactor1991(double depthRatio)
    {
        var r = Require.Between("depthRatio", depthRatio, 0, 1);
        if (r <= 0.175)
        {
            return 4;
        }
        var x = r / (1.1 * r - 0.15);
        return Math.Min(4, Math.Sqrt(x * x - 1));
    }

    /// <summary>Length of metal loss allowed at the design pressure, by the 1991 edition.</summary>
    /// <remarks>
    /// <para>Formula: L = 1.12 B sqrt(D t)</para>
    /// <para>Symbols: L allowable axial length, mm; B factor of <see cref="AllowableLengthFactor1991"/>, -; D outside diameter, mm; t wall, mm.</para>
    /// <para>Validity: 10 % &lt; d/t ≤ 80 %.</para>
    /// <para>Reference: ASME B31G-1991, 2.2.</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <param name="depth">Greatest depth d, 0 to t.</param>
    /// <returns>Allowable length L.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 508 mm, t 7.40 mm, d 1.97 mm: L = 108.00 mm.</example>
    public static Length AllowableLength1991(Length outsideDiameter, Length wall, Length depth)
    {
        var (D, t) = Shell.Of(outsideDiameter, wall);
        return Length.FromMillimeters(1.12 * AllowableLengthFactor1991(Take.Depth(depth, t) / t) * Math.Sqrt(D * t));
    }

    /// <summary>Length of metal loss allowed at a MAOP below the design pressure, by the 1991 edition's strength formula solved for L.</summary>
    /// <remarks>
    /// <para>Formula: k = 1.1 P / MAOP; m = (2/3)(d/t) / (1 − k (1 − (2/3)(d/t))); A = sqrt(m² − 1), at most 4; L = A sqrt(D t) / 0.893</para>
    /// <para>Symbols: L allowable axial length, mm; P design pressure, MPa; MAOP, MPa; d depth, mm; t wall, mm; D outside diameter, mm; A length parameter, -.</para>
    /// <para>Validity: 10 % &lt; d/t ≤ 80 %; MAOP ≤ P. A = 4 where the parabola holds at any length.</para>
    /// <para>Reference: ASME B31G-1991, 4.2, solved for L here.</para>
    /// </remarks>
    /// <param name="pressure">Design pressure P.</param>
    /// <param name="maop">MAOP, above 0.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <param name="depth">Greatest depth d, 0 to t.</param>
    /// <returns>Allowable length L.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>P 438 psi, MAOP 400 psi, D 20 in, t 0.25 in, d 0.18 in: L = 2.019 in.</example>
    public static Length AllowableLength1991(
        Pressure pressure,
        Pressure maop,
        Length outsideDiameter,
        Length wall,
        Length depth
    )
    {
        var (D, t) = Shell.Of(outsideDiameter, wall);
        var q = 2 * Take.Depth(depth, t) / (3 * t);
        var k =
            1.1 * Take.Gauge("designPressureBar", pressure) / Require.Between("maopBar", maop.Megapascals, 1e-6, 1000);
        var left = 1 - k * (1 - q);
        var m = left > 0 ? Math.Max(1, q / left) : double.PositiveInfinity;
        var A = Math.Min(4, Math.Sqrt(m * m - 1));
        return Length.FromMillimeters(A * Math.Sqrt(D * t) / 0.893);
    }
}
