using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>General metal loss, by API 579-1/ASME FFS-1 Part 4: when readings may be averaged, and over what length.</summary>
public static partial class GeneralMetalLoss
{
    /// <summary>The greatest coefficient of variation at which point readings may be averaged.</summary>
    public const double GreatestVariation = 0.10;

    /// <summary>The least number of point readings that may be averaged.</summary>
    public const int LeastReadings = 15;

    private const double LongestAverage = 50;

    /// <summary>Factor of the length over which readings may be averaged, by API 579-1.</summary>
    /// <remarks>
    /// <para>Formula: Q = 1.123 sqrt(((1 − Rt)/(1 − Rt/RSFa))² − 1), at most 50; Q = 50 for Rt ≥ RSFa</para>
    /// <para>Symbols: Q factor, -; Rt remaining thickness ratio, -; RSFa allowable remaining strength factor, -.</para>
    /// <para>Validity: 0 ≤ Rt; the cap of 50 just below RSFa is the table's last value carried on (own rule).</para>
    /// <para>Reference: API 579-1/ASME FFS-1, Part 4, Table 4.8 (from memory).</para>
    /// </remarks>
    /// <param name="thicknessRatio">Remaining thickness ratio Rt, 0 or more [-].</param>
    /// <param name="allowableFactor">Allowable factor RSFa, 0.9 for ASME B31.3 [-].</param>
    /// <returns>Factor Q [-].</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>Rt 0.80, RSFa 0.9: Q = 1.68.</example>
    public static double AveragingFactor(
        double thicknessRatio,
        double allowableFactor = LocalThinArea.AllowableStrengthFactor
    )
    {
        var Rt = Require.NotNegative("thicknessRatio", thicknessRatio);
        var RSFa = Require.Between("allowableFactor", allowableFactor, 0.5, 1);
        if (Rt >= RSFa)
        {
            return LongestAverage;
        }
        var x = (1 - Rt) / (1 - Rt / RSFa);
        return Math.Min(LongestAverage, 1.123 * Math.Sqrt(x * x - 1));
    }

    /// <summary>Length over which readings may be averaged, by API 579-1.</summary>
    /// <remarks>
    /// <para>Formula: L = Q sqrt(Di tc)</para>
    /// <para>Symbols: L length, mm; Q factor of <see cref="AveragingFactor"/>, -; Di inside diameter, mm; tc wall away from the loss less future loss, mm.</para>
    /// <para>Validity: that of <see cref="AveragingFactor"/>.</para>
    /// <para>Reference: API 579-1/ASME FFS-1, Part 4, 4.4.2 (from memory).</para>
    /// </remarks>
    /// <param name="thicknessRatio">Remaining thickness ratio Rt, 0 or more [-].</param>
    /// <param name="insideDiameter">Inside diameter Di.</param>
    /// <param name="wall">Wall tc.</param>
    /// <returns>Length L.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>Rt 0.70, Di 154.08 mm, tc 7.11 mm: L = 33.71 mm.</example>
    public static Length AveragingLength(double thicknessRatio, Length insideDiameter, Length wall) =>
        Length.FromMillimeters(AveragingFactor(thicknessRatio) * LocalThinArea.Root(insideDiameter, wall));

    /// <summary>Coefficient of variation of readings.</summary>
    /// <remarks>
    /// <para>Formula: COV = s / mean, s = sqrt(Σ (x − mean)² / (n − 1))</para>
    /// <para>Symbols: COV coefficient of variation, -; s sample standard deviation, mm; x readings, mm; n number of readings.</para>
    /// <para>Validity: two readings or more, of the same wall; readings may be averaged at COV ≤ 10 % and n ≥ 15.</para>
    /// <para>Reference: API 579-1/ASME FFS-1, Part 4, 4.3.3 (from memory; the limit was seen in a public training note).</para>
    /// </remarks>
    /// <param name="readings">Readings x, above 0 [mm].</param>
    /// <returns>Coefficient of variation [-].</returns>
    /// <exception cref="ImpossibleInputException">Fewer than two readings, or one that is not above 0.</exception>
    /// <example>6.1, 5.8, 6.4, 5.9, 6.3 mm: COV = 0.0418.</example>
    public static double CoefficientOfVariation(ReadOnlySpan<double> readings)
    {
        if (readings.Length < 2)
        {
            throw new ImpossibleInputException("readingsMm", $"{readings.Length} readings", "two readings or more");
        }
        var mean = 0.0;
        foreach (var x in readings)
        {
            mean += Require.Between("readingsMm", x, 1e-6, 1e9) / readings.Length;
        }
        var squares = 0.0;
        foreach (var x in readings)
        {
            squares += (x - mean) * (x - mean);
        }
        return Math.Sqrt(squares / (readings.Length - 1)) / mean;
    }
}
