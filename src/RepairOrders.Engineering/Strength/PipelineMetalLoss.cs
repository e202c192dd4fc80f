using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>Strength of line pipe with one axial patch of metal loss, by ASME B31G Level 1: original and modified.</summary>
public static partial class PipelineMetalLoss
{
    /// <summary>Length parameter of a metal loss, by ASME B31G.</summary>
    /// <remarks>
    /// <para>Formula: z = L² / (D t)</para>
    /// <para>Symbols: z length parameter, -; L axial length, mm; D outside diameter, mm; t wall, mm.</para>
    /// <para>Validity: none given by the source.</para>
    /// <para>Reference: ASME B31G-2012, 1.5 (from memory).</para>
    /// </remarks>
    /// <param name="axialLength">Axial length L.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <returns>Length parameter z [-].</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>L 100 mm, D 323.9 mm, t 10.3 mm: z = 2.997.</example>
    public static double LengthParameter(Length axialLength, Length outsideDiameter, Length wall)
    {
        var (D, t) = Shell.Of(outsideDiameter, wall);
        var L = Take.Extent("axialLengthMm", axialLength);
        return L * L / (D * t);
    }

    /// <summary>Bulging factor of original ASME B31G.</summary>
    /// <remarks>
    /// <para>Formula: M = sqrt(1 + 0.8 z)</para>
    /// <para>Symbols: M bulging (Folias) factor, -; z length parameter, -.</para>
    /// <para>Validity: z ≤ 20; beyond, the original method has no bulging factor.</para>
    /// <para>Reference: ASME B31G-2012, 2.2(a) (from memory).</para>
    /// </remarks>
    /// <param name="z">Length parameter z, 0 or more [-].</param>
    /// <returns>Bulging factor M [-].</returns>
    /// <exception cref="ImpossibleInputException">z is negative.</exception>
    /// <example>z 2.9974: M = 1.843.</example>
    public static double BulgingOriginal(double z) => Math.Sqrt(1 + 0.8 * Require.NotNegative("z", z));

    /// <summary>Bulging factor of modified ASME B31G, of the effective-area method and of a through-wall flaw.</summary>
    /// <remarks>
    /// <para>Formula: M = sqrt(1 + 0.6275 z − 0.003375 z²) for z ≤ 50; M = 0.032 z + 3.3 for z &gt; 50</para>
    /// <para>Symbols: M bulging (Folias) factor, -; z length parameter, -.</para>
    /// <para>Validity: z ≥ 0; M steps up by 0.15 % at z = 50.</para>
    /// <para>Reference: ASME B31G-2012, 2.2(b) (from memory).</para>
    /// </remarks>
    /// <param name="z">Length parameter z, 0 or more [-].</param>
    /// <returns>Bulging factor M [-].</returns>
    /// <exception cref="ImpossibleInputException">z is negative.</exception>
    /// <example>z 2.9974: M = 1.688; z 50: M = 4.8926; z 50.0001: M = 4.9000.</example>
    public static double BulgingModified(double z) => Bulging(Require.NotNegative("z", z));

    /// <summary>Stress at which a metal loss fails, by original ASME B31G.</summary>
    /// <remarks>
    /// <para>Formula: z ≤ 20: SF = Sflow (1 − (2/3) d/t) / (1 − (2/3)(d/t)/M); z &gt; 20: SF = Sflow (1 − d/t)</para>
    /// <para>Symbols: SF failure stress, MPa; Sflow flow stress, MPa; d depth, mm; t wall, mm; M bulging factor of <see cref="BulgingOriginal"/>, -; z length parameter, -.</para>
    /// <para>Validity: 10 % &lt; d/t ≤ 80 %; smooth metal loss, axial, in sound ductile pipe; not cracks, dents, gouges, seam corrosion or fittings. At z = 20 the shape changes from parabola to rectangle and the strength steps down.</para>
    /// <para>Reference: ASME B31G-2012, 2.2(a) (from memory).</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <param name="depth">Greatest depth d, 0 to t.</param>
    /// <param name="axialLength">Axial length L.</param>
    /// <param name="flowStress">Flow stress Sflow, option (a) by custom.</param>
    /// <returns>Failure stress SF.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 323.9 mm, t 10.3 mm, d 5 mm, L 100 mm, Sflow 531.3 MPa: SF = 435.88 MPa.</example>
    public static Pressure FailureStressOriginal(
        Length outsideDiameter,
        Length wall,
        Length depth,
        Length axialLength,
        Pressure flowStress
    )
    {
        var r = Take.Depth(depth, wall.Millimeters) / wall.Millimeters;
        var z = LengthParameter(axialLength, outsideDiameter, wall);
        var Sflow = Take.Stress("flowStressMpa", flowStress);
        return Pressure.FromMegapascals(Sflow * RatioOriginal(r, z));
    }

    /// <summary>Stress at which a metal loss fails, by modified ASME B31G (0.85 dL).</summary>
    /// <remarks>
    /// <para>Formula: SF = Sflow (1 − 0.85 d/t) / (1 − 0.85 (d/t)/M)</para>
    /// <para>Symbols: SF failure stress, MPa; Sflow flow stress, MPa; d depth, mm; t wall, mm; M bulging factor of <see cref="BulgingModified"/>, -.</para>
    /// <para>Validity: as <see cref="FailureStressOriginal"/>; over-predicts long flat-bottomed loss, whose true area is near 1.0 d L.</para>
    /// <para>Reference: ASME B31G-2012, 2.2(b) (from memory).</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <param name="depth">Greatest depth d, 0 to t.</param>
    /// <param name="axialLength">Axial length L.</param>
    /// <param name="flowStress">Flow stress Sflow, option (b) by custom.</param>
    /// <returns>Failure stress SF.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 323.9 mm, t 10.3 mm, d 5 mm, L 100 mm, Sflow 531.3 MPa: SF = 413.01 MPa.</example>
    public static Pressure FailureStressModified(
        Length outsideDiameter,
        Length wall,
        Length depth,
        Length axialLength,
        Pressure flowStress
    )
    {
        var q = 0.85 * Take.Depth(depth, wall.Millimeters) / wall.Millimeters;
        var z = LengthParameter(axialLength, outsideDiameter, wall);
        var Sflow = Take.Stress("flowStressMpa", flowStress);
        return Pressure.FromMegapascals(Sflow * Ratio(q, z));
    }

    /// <summary>Safe pressure of a failure pressure.</summary>
    /// <remarks>
    /// <para>Formula: PS = PF / SF</para>
    /// <para>Symbols: PS safe pressure, MPa; PF failure pressure, MPa; SF safety factor, -.</para>
    /// <para>Validity: SF ≥ 1.25 by custom: the ratio of test pressure to MAOP.</para>
    /// <para>Reference: ASME B31G-2012, 1.8 (from memory; the factor was seen on a public sheet).</para>
    /// </remarks>
    /// <param name="failurePressure">Failure pressure PF.</param>
    /// <param name="safetyFactor">Safety factor SF, 1 to 100 [-].</param>
    /// <returns>Safe pressure PS.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>PF 10 847 kPa, SF 1/0.72: PS = 7810 kPa.</example>
    public static Pressure SafePressure(Pressure failurePressure, double safetyFactor) =>
        Pressure.FromMegapascals(failurePressure.Megapascals / Require.Between("safetyFactor", safetyFactor, 1, 100));

    /// <summary>Estimated repair factor.</summary>
    /// <remarks>
    /// <para>Formula: ERF = MAOP / PS</para>
    /// <para>Symbols: ERF estimated repair factor, -; MAOP maximum allowable operating pressure, MPa; PS safe pressure, MPa.</para>
    /// <para>Validity: none given by the source. Above 1 the pipe is repaired or derated.</para>
    /// <para>Reference: definition, common in pipeline inspection.</para>
    /// </remarks>
    /// <param name="maop">Maximum allowable operating pressure, gauge.</param>
    /// <param name="safePressure">Safe pressure PS, above 0.</param>
    /// <returns>Estimated repair factor ERF [-].</returns>
    /// <exception cref="ImpossibleInputException">A value is negative, or the safe pressure is 0.</exception>
    /// <example>MAOP 7260 kPa, PS 7809.88 kPa: ERF = 0.9296.</example>
    public static double EstimatedRepairFactor(Pressure maop, Pressure safePressure) =>
        Take.Gauge("maopBar", maop) / Require.Between("safePressureBar", safePressure.Megapascals, 1e-9, 1e6);

    /// <summary>M of the modified method for a z that is known to be good.</summary>
    internal static double Bulging(double z) =>
        z <= 50 ? Math.Sqrt(1 + 0.6275 * z - 0.003375 * z * z) : 0.032 * z + 3.3;

    /// <summary>Failure stress over flow stress for a lost share q = A/A0 of the section.</summary>
    internal static double Ratio(double q, double z) => q < 1 ? (1 - q) / (1 - q / Bulging(z)) : 0;

    /// <summary>The same by the original method, r = d/t.</summary>
    internal static double RatioOriginal(double r, double z)
    {
        if (z > 20)
        {
            return 1 - r;
        }
        var q = 2 * r / 3;
        return (1 - q) / (1 - q / Math.Sqrt(1 + 0.8 * z));
    }
}
