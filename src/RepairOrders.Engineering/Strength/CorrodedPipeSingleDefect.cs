using System.Globalization;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>Safety class of the corroded-pipe method's partial factors.</summary>
public enum SafetyClass
{
    /// <summary>People are seldom near.</summary>
    Normal,

    /// <summary>People are near, as in most plants.</summary>
    High,
}

/// <summary>How a depth was measured.</summary>
public enum DepthMeasurement
{
    /// <summary>Relative to the wall, as magnetic flux leakage does.</summary>
    Relative,

    /// <summary>In millimetres, as ultrasonic thickness readings do.</summary>
    Absolute,
}

/// <summary>A single defect in corroded pipe, by DNV-RP-F101: a second opinion that uses the tensile strength.</summary>
public static partial class CorrodedPipeSingleDefect
{
    /// <summary>The greatest depth over wall the method allows.</summary>
    public const double GreatestDepthRatio = 0.85;

    /// <summary>Length correction factor of a single defect, by DNV-RP-F101.</summary>
    /// <remarks>
    /// <para>Formula: Q = sqrt(1 + 0.31 l² / (D t))</para>
    /// <para>Symbols: Q length correction factor, -; l axial length, mm; D outside diameter, mm; t wall, mm.</para>
    /// <para>Validity: that of <see cref="FailurePressure"/>.</para>
    /// <para>Reference: DNV-RP-F101, 8.2.1 (from memory).</para>
    /// </remarks>
    /// <param name="axialLength">Axial length l.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <returns>Length correction factor Q [-].</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>l 200 mm, D 812.8 mm, t 19.1 mm: Q = 1.3412.</example>
    public static double LengthCorrection(Length axialLength, Length outsideDiameter, Length wall) =>
        Math.Sqrt(1 + 0.31 * PipelineMetalLoss.LengthParameter(axialLength, outsideDiameter, wall));

    /// <summary>Failure pressure of a single defect, by DNV-RP-F101 Part B.</summary>
    /// <remarks>
    /// <para>Formula: Pf = (2 t fu / (D − t)) (1 − d/t) / (1 − d/(t Q))</para>
    /// <para>Symbols: Pf failure pressure, MPa; t wall, mm; fu tensile strength (SMTS), MPa; D outside diameter, mm; d depth, mm; Q of <see cref="LengthCorrection"/>, -. The editions since 2015 put 1.05 in front for the mean capacity.</para>
    /// <para>Validity: d/t ≤ 0.85; line pipe to X80, ductile, smooth, no cracks; an isolated defect. It is no substitute for ASME B31.3 and never raises its MAWP.</para>
    /// <para>Reference: DNV-RP-F101, 8.2.1 (from memory).</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <param name="depth">Greatest depth d, 0 to t.</param>
    /// <param name="axialLength">Axial length l.</param>
    /// <param name="tensileStrength">Tensile strength fu.</param>
    /// <returns>Failure pressure Pf, gauge.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 812.8 mm, t 19.1 mm, d 4.775 mm, l 200 mm, fu 530.9 MPa: Pf = 23.554 MPa.</example>
    public static Pressure FailurePressure(
        Length outsideDiameter,
        Length wall,
        Length depth,
        Length axialLength,
        Pressure tensileStrength
    )
    {
        var (D, t) = Shell.Of(outsideDiameter, wall);
        var r = Take.Depth(depth, t) / t;
        var fu = Take.Stress("tensileStrengthMpa", tensileStrength);
        return Pressure.FromMegapascals(
            2 * t * fu / (D - t) * Reduction(r, LengthCorrection(axialLength, outsideDiameter, wall))
        );
    }

    /// <summary>Mean capacity of a single defect, by DNV-RP-F101 since 2015.</summary>
    /// <remarks>
    /// <para>Formula: Pcap = 1.05 Pf, see <see cref="FailurePressure"/></para>
    /// <para>Symbols: those of <see cref="FailurePressure"/>.</para>
    /// <para>Validity: that of <see cref="FailurePressure"/>; the mean of tests, not a value to work to.</para>
    /// <para>Reference: DNV-RP-F101 (2015), 2.1 (from memory; the factor was seen in a public code comment).</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <param name="depth">Greatest depth d, 0 to t.</param>
    /// <param name="axialLength">Axial length l.</param>
    /// <param name="tensileStrength">Tensile strength fu.</param>
    /// <returns>Mean capacity Pcap, gauge.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 762 mm, t 17.5 mm, d 8.8 mm, l 200 mm, fu 563.8 MPa: Pcap = 21.685 MPa.</example>
    public static Pressure MeanCapacity(
        Length outsideDiameter,
        Length wall,
        Length depth,
        Length axialLength,
        Pressure tensileStrength
    ) => 1.05 * FailurePressure(outsideDiameter, wall, depth, axialLength, tensileStrength);

    /// <summary>Safe working pressure of a single defect, by DNV-RP-F101 Part B.</summary>
    /// <remarks>
    /// <para>Formula: Psw = F1 F2 Pf</para>
    /// <para>Symbols: Psw safe working pressure, MPa; F1 = 0.9 modelling factor, -; F2 operational usage factor, -; Pf of <see cref="FailurePressure"/>, MPa.</para>
    /// <para>Validity: F2 as the pipeline was designed, such as 0.72.</para>
    /// <para>Reference: DNV-RP-F101, 8.1 (from memory).</para>
    /// </remarks>
    /// <param name="failurePressure">Failure pressure Pf.</param>
    /// <param name="usageFactor">Operational usage factor F2, above 0 to 1 [-].</param>
    /// <returns>Safe working pressure Psw, gauge.</returns>
    /// <exception cref="ImpossibleInputException">The factor is not above 0 and at most 1.</exception>
    /// <example>Pf 23.554 MPa, F2 0.72: Psw = 15.263 MPa.</example>
    public static Pressure SafeWorkingPressure(Pressure failurePressure, double usageFactor) =>
        0.9 * Take.Factor("usageFactor", usageFactor) * failurePressure;

    /// <summary>Standard deviation of a measured depth over wall, by DNV-RP-F101 Part A.</summary>
    /// <remarks>
    /// <para>Formula: StD = acc / k for a relative measurement, sqrt(2) acc / (t k) for an absolute one; k = 1.28 at 80 % confidence, 1.645 at 90 %</para>
    /// <para>Symbols: StD standard deviation of d/t, -; acc accuracy, share of the wall or mm; t wall, mm; k quantile, -.</para>
    /// <para>Validity: confidence 80 % or 90 %; StD ≤ 0.16.</para>
    /// <para>Reference: DNV-RP-F101, Part A (from memory).</para>
    /// </remarks>
    /// <param name="measurement">How the depth was measured.</param>
    /// <param name="accuracy">Accuracy: share of the wall, or mm for an absolute measurement [-, mm].</param>
    /// <param name="confidence">Confidence, 0.80 or 0.90 [-].</param>
    /// <param name="wall">Wall t.</param>
    /// <returns>Standard deviation of d/t [-].</returns>
    /// <exception cref="ImpossibleInputException">The accuracy is negative, or the confidence is another one.</exception>
    /// <example>Relative, accuracy 0.1 at 80 %: StD = 0.078 (printed 0.08).</example>
    public static double DepthDeviation(DepthMeasurement measurement, double accuracy, double confidence, Length wall)
    {
        var acc = Require.NotNegative("accuracy", accuracy);
        var t = Require.Between("wallThicknessMm", wall.Millimeters, 0.001, 5_000);
        var k = confidence switch
        {
            0.8 => 1.28,
            0.9 => 1.645,
            _ => throw new ImpossibleInputException(
                "confidence",
                confidence.ToString(CultureInfo.InvariantCulture),
                "0.8 or 0.9"
            ),
        };
        return measurement == DepthMeasurement.Relative ? acc / k : Math.Sqrt(2) * acc / (t * k);
    }

    /// <summary>Partial factor of the depth, by DNV-RP-F101 Part A.</summary>
    /// <remarks>
    /// <para>Formula: Normal: γd = 1 + 4.6 a − 13.9 a²; High: γd = 1 + 4.3 a − 4.1 a²</para>
    /// <para>Symbols: γd partial factor, -; a = StD of d/t, -.</para>
    /// <para>Validity: 0 ≤ a ≤ 0.16.</para>
    /// <para>Reference: DNV-RP-F101, Part A, table of partial factors (from memory).</para>
    /// </remarks>
    /// <param name="deviation">Standard deviation a of d/t, 0 to 0.16 [-].</param>
    /// <param name="safetyClass">Safety class.</param>
    /// <returns>Partial factor γd [-].</returns>
    /// <exception cref="ImpossibleInputException">The deviation is not between 0 and 0.16.</exception>
    /// <example>a 0.08, Normal: γd = 1.279 (printed 1.28).</example>
    public static double DepthFactor(double deviation, SafetyClass safetyClass)
    {
        var a = Deviation(deviation);
        return safetyClass == SafetyClass.Normal ? 1 + 4.6 * a - 13.9 * a * a : 1 + 4.3 * a - 4.1 * a * a;
    }

    /// <summary>Fractile of the depth, by DNV-RP-F101 Part A.</summary>
    /// <remarks>
    /// <para>Formula: εd = 0 for a ≤ 0.04; εd = −1.33 + 37.5 a − 104.2 a² for 0.04 &lt; a ≤ 0.16</para>
    /// <para>Symbols: εd fractile, -; a = StD of d/t, -.</para>
    /// <para>Validity: 0 ≤ a ≤ 0.16.</para>
    /// <para>Reference: DNV-RP-F101, Part A, table of partial factors (from memory).</para>
    /// </remarks>
    /// <param name="deviation">Standard deviation a of d/t, 0 to 0.16 [-].</param>
    /// <returns>Fractile εd [-].</returns>
    /// <exception cref="ImpossibleInputException">The deviation is not between 0 and 0.16.</exception>
    /// <example>a 0.08: εd = 1.003 (printed 1.0).</example>
    public static double DepthFractile(double deviation)
    {
        var a = Deviation(deviation);
        return a <= 0.04 ? 0 : -1.33 + 37.5 * a - 104.2 * a * a;
    }

    /// <summary>Partial factor of the prediction, by DNV-RP-F101 Part A.</summary>
    /// <remarks>
    /// <para>Formula: γm = 0.74 (Normal, relative), 0.77 (Normal, absolute), 0.70 (High, relative), 0.72 (High, absolute)</para>
    /// <para>Symbols: γm partial factor, -.</para>
    /// <para>Validity: inspection with known accuracy.</para>
    /// <para>Reference: DNV-RP-F101, Part A, table of partial factors (from memory).</para>
    /// </remarks>
    /// <param name="safetyClass">Safety class; where people are near it is High.</param>
    /// <param name="measurement">How the depth was measured.</param>
    /// <returns>Partial factor γm [-].</returns>
    /// <exception cref="ImpossibleInputException">Never: every pair has a value.</exception>
    /// <example>High, absolute (ultrasonic readings): γm = 0.72.</example>
    public static double PredictionFactor(SafetyClass safetyClass, DepthMeasurement measurement) =>
        (safetyClass, measurement) switch
        {
            (SafetyClass.Normal, DepthMeasurement.Relative) => 0.74,
            (SafetyClass.Normal, _) => 0.77,
            (_, DepthMeasurement.Relative) => 0.70,
            _ => 0.72,
        };

    /// <summary>Allowable pressure of a single defect with its measuring error, by DNV-RP-F101 Part A.</summary>
    /// <remarks>
    /// <para>Formula: (d/t)* = (d/t) + εd StD; p = γm (2 t fu/(D − t)) (1 − γd (d/t)*) / (1 − γd (d/t)*/Q); 0 where γd (d/t)* ≥ 1</para>
    /// <para>Symbols: p allowable pressure, MPa; d/t measured depth over wall, -; StD its standard deviation, -; γm, γd, εd of <see cref="PredictionFactor"/>, <see cref="DepthFactor"/>, <see cref="DepthFractile"/>, -; t wall, mm; fu tensile strength, MPa; D outside diameter, mm; Q of <see cref="LengthCorrection"/>, -.</para>
    /// <para>Validity: d/t ≤ 0.85, StD ≤ 0.16; others those of <see cref="FailurePressure"/>.</para>
    /// <para>Reference: DNV-RP-F101, Part A (from memory; the form of the equation was seen in an OMAE 1999 paper).</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <param name="depthRatio">Measured depth over wall d/t, 0 to 1 [-].</param>
    /// <param name="axialLength">Axial length l.</param>
    /// <param name="tensileStrength">Tensile strength fu.</param>
    /// <param name="factors">Partial factors and deviation.</param>
    /// <returns>Allowable pressure p, gauge.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 812.8 mm, t 19.1 mm, d/t 0.25, l 200 mm, fu 530.9 MPa, γm 0.74, γd 1.28, εd 1.0, StD 0.08: p = 15.94 MPa.</example>
    public static Pressure AllowablePressure(
        Length outsideDiameter,
        Length wall,
        double depthRatio,
        Length axialLength,
        Pressure tensileStrength,
        DepthFactors factors
    )
    {
        ArgumentNullException.ThrowIfNull(factors);
        var (D, t) = Shell.Of(outsideDiameter, wall);
        var fu = Take.Stress("tensileStrengthMpa", tensileStrength);
        var measured = Require.Between("depthRatio", depthRatio, 0, 1);
        var r = factors.Depth * (measured + factors.Fractile * Deviation(factors.Deviation));
        var Q = LengthCorrection(axialLength, outsideDiameter, wall);
        return Pressure.FromMegapascals(r >= 1 ? 0 : factors.Prediction * (2 * t * fu / (D - t)) * Reduction(r, Q));
    }

    private static double Reduction(double r, double Q) => r < 1 ? (1 - r) / (1 - r / Q) : 0;

    private static double Deviation(double deviation) => Require.Between("deviation", deviation, 0, 0.16);
}

/// <summary>Partial factors of DNV-RP-F101 Part A.</summary>
/// <param name="Prediction">γm [-].</param>
/// <param name="Depth">γd [-].</param>
/// <param name="Fractile">εd [-].</param>
/// <param name="Deviation">Standard deviation of d/t, 0 to 0.16 [-].</param>
public sealed record DepthFactors(double Prediction, double Depth, double Fractile, double Deviation)
{
    /// <summary>The factors of a measurement.</summary>
    /// <param name="deviation">Standard deviation of d/t.</param>
    /// <param name="safetyClass">Safety class.</param>
    /// <param name="measurement">How the depth was measured.</param>
    /// <returns>The factors.</returns>
    public static DepthFactors Of(double deviation, SafetyClass safetyClass, DepthMeasurement measurement) =>
        new(
            CorrodedPipeSingleDefect.PredictionFactor(safetyClass, measurement),
            CorrodedPipeSingleDefect.DepthFactor(deviation, safetyClass),
            CorrodedPipeSingleDefect.DepthFractile(deviation),
            deviation
        );
}
