using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>A local thin area in plant piping, by API 579-1/ASME FFS-1 Part 5 Level 1.</summary>
public static partial class LocalThinArea
{
    /// <summary>The allowable remaining strength factor for codes with the design margin of ASME B31.3.</summary>
    public const double AllowableStrengthFactor = 0.9;

    private const double LongestParameter = 20;

    private static readonly double[] Mt =
    [
        1.0010,
        -0.014195,
        0.29090,
        -0.096420,
        0.020890,
        -0.0030540,
        2.9570e-4,
        -1.8462e-5,
        7.1553e-7,
        -1.5631e-8,
        1.4656e-10,
    ];

    /// <summary>Length parameter of a local thin area, by API 579-1.</summary>
    /// <remarks>
    /// <para>Formula: λ = 1.285 s / sqrt(Di tc)</para>
    /// <para>Symbols: λ length parameter, -; s axial length, mm; Di inside diameter, mm; tc wall away from the loss less future loss, mm.</para>
    /// <para>Validity: none given by the source.</para>
    /// <para>Reference: API 579-1/ASME FFS-1, Part 5, eq. (5.6) (from memory).</para>
    /// </remarks>
    /// <param name="axialLength">Axial length s.</param>
    /// <param name="insideDiameter">Inside diameter Di, corroded where the loss is inside.</param>
    /// <param name="wall">Wall tc.</param>
    /// <returns>Length parameter λ [-].</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>s 100 mm, Di 154.08 mm, tc 7.11 mm: λ = 3.8824.</example>
    public static double LengthParameter(Length axialLength, Length insideDiameter, Length wall) =>
        1.285 * Take.Extent("axialLengthMm", axialLength) / Root(insideDiameter, wall);

    /// <summary>Bulging factor of a cylinder, by API 579-1 since 2007.</summary>
    /// <remarks>
    /// <para>Formula: Mt = 1.0010 − 0.014195 λ + 0.29090 λ² − 0.096420 λ³ + 0.020890 λ⁴ − 0.0030540 λ⁵ + 2.9570e-4 λ⁶ − 1.8462e-5 λ⁷ + 7.1553e-7 λ⁸ − 1.5631e-8 λ⁹ + 1.4656e-10 λ¹⁰</para>
    /// <para>Symbols: Mt bulging (Folias) factor, -; λ length parameter, -.</para>
    /// <para>Validity: 0 ≤ λ ≤ 20. Below λ = 0.05 the polynomial dips by 0.02 %; 1.0010 is used there, so that a longer area is never the stronger one.</para>
    /// <para>Reference: API 579-1/ASME FFS-1, Part 5, Table 5.2 and eq. (5.11) (from memory; the polynomial reproduces the recalled table).</para>
    /// </remarks>
    /// <param name="lengthParameter">Length parameter λ, 0 to 20 [-].</param>
    /// <returns>Bulging factor Mt [-].</returns>
    /// <exception cref="ImpossibleInputException">λ is not between 0 and 20.</exception>
    /// <example>λ 2: Mt = 1.618.</example>
    public static double Bulging(double lengthParameter)
    {
        var l = Require.Between("lengthParameter", lengthParameter, 0, LongestParameter);
        var sum = 0.0;
        for (var k = Mt.Length - 1; k >= 0; k--)
        {
            sum = sum * l + Mt[k];
        }
        return Math.Max(Mt[0], sum);
    }

    /// <summary>Bulging factor of a cylinder, by API RP 579 of 2000.</summary>
    /// <remarks>
    /// <para>Formula: Mt = sqrt(1 + 0.48 λ²)</para>
    /// <para>Symbols: Mt bulging (Folias) factor, -; λ length parameter, -.</para>
    /// <para>Validity: none given by the source; superseded in 2007, kept to check old sheets.</para>
    /// <para>Reference: API RP 579 (2000), Section 5 (from memory).</para>
    /// </remarks>
    /// <param name="lengthParameter">Length parameter λ, 0 or more [-].</param>
    /// <returns>Bulging factor Mt [-].</returns>
    /// <exception cref="ImpossibleInputException">λ is negative.</exception>
    /// <example>λ 2: Mt = 1.7088.</example>
    public static double Bulging2000(double lengthParameter)
    {
        var l = Require.Between("lengthParameter", lengthParameter, 0, 1e9);
        return Math.Sqrt(1 + 0.48 * l * l);
    }

    /// <summary>Remaining strength factor of a local thin area, by API 579-1 Level 1.</summary>
    /// <remarks>
    /// <para>Formula: RSF = Rt / (1 − (1 − Rt)/Mt); RSF = 1 for Rt ≥ 1; RSF = Rt for λ &gt; 20, an area without end</para>
    /// <para>Symbols: RSF remaining strength factor, -; Rt = (tmm − FCA)/tc remaining thickness ratio, -; Mt bulging factor of <see cref="Bulging"/>, -; tmm least wall, FCA future corrosion allowance, tc wall away from the loss less FCA, mm; λ length parameter, -.</para>
    /// <para>Validity: Rt ≥ 0.20; tmm − FCA ≥ 1.3 mm; 1.8 sqrt(Di tc) or more from a discontinuity; not cyclic, brittle or in the creep range.</para>
    /// <para>Reference: API 579-1/ASME FFS-1, Part 5, eq. (5.12) (from memory).</para>
    /// </remarks>
    /// <param name="thicknessRatio">Remaining thickness ratio Rt, 0 or more [-].</param>
    /// <param name="lengthParameter">Length parameter λ, 0 or more [-].</param>
    /// <returns>Remaining strength factor RSF [-].</returns>
    /// <exception cref="ImpossibleInputException">A value is negative.</exception>
    /// <example>tmm 4.0 mm, FCA 0.5 mm, tc 7.11 mm, λ 3.8824: Rt = 0.49226, RSF = 0.61516.</example>
    public static double RemainingStrengthFactor(double thicknessRatio, double lengthParameter)
    {
        var Rt = Require.NotNegative("thicknessRatio", thicknessRatio);
        var l = Require.NotNegative("lengthParameter", lengthParameter);
        if (Rt >= 1)
        {
            return 1;
        }
        return l > LongestParameter ? Rt : Rt / (1 - (1 - Rt) / Bulging(l));
    }

    /// <summary>Pressure a local thin area holds, by API 579-1.</summary>
    /// <remarks>
    /// <para>Formula: MAWPr = MAWP RSF / RSFa for RSF &lt; RSFa, else MAWP</para>
    /// <para>Symbols: MAWPr reduced pressure, MAWP pressure of the uniform wall tc, MPa; RSF, RSFa remaining strength factor and its allowable, -.</para>
    /// <para>Validity: MAWP of the uniform wall tc; with the least wall the thin spot would count twice, with the nominal wall the answer is unsafe.</para>
    /// <para>Reference: API 579-1/ASME FFS-1, Part 2, eq. (2.2) (from memory).</para>
    /// </remarks>
    /// <param name="mawp">MAWP of the wall tc, gauge.</param>
    /// <param name="strengthFactor">Remaining strength factor RSF, 0 or more [-].</param>
    /// <param name="allowableFactor">Allowable factor RSFa, 0.9 for ASME B31.3 [-].</param>
    /// <returns>Reduced pressure MAWPr, gauge.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>MAWP 12.0 MPa, RSF 0.61516, RSFa 0.9: MAWPr = 8.2021 MPa.</example>
    public static Pressure ReducedPressure(
        Pressure mawp,
        double strengthFactor,
        double allowableFactor = AllowableStrengthFactor
    )
    {
        var MAWP = Take.Gauge("mawpBar", mawp);
        var RSF = Require.NotNegative("strengthFactor", strengthFactor);
        var RSFa = Require.Between("allowableFactor", allowableFactor, 0.5, 1);
        return Pressure.FromMegapascals(RSF < RSFa ? MAWP * RSF / RSFa : MAWP);
    }

    /// <summary>Least distance from a structural discontinuity, by API 579-1.</summary>
    /// <remarks>
    /// <para>Formula: Lmsd = 1.8 sqrt(Di tc)</para>
    /// <para>Symbols: Lmsd distance, mm; Di inside diameter, mm; tc wall away from the loss less future loss, mm.</para>
    /// <para>Validity: nozzles, branches, supports, elbow welds, flanges.</para>
    /// <para>Reference: API 579-1/ASME FFS-1, Part 5, 5.4.2 (from memory; seen applied on a public sheet).</para>
    /// </remarks>
    /// <param name="insideDiameter">Inside diameter Di.</param>
    /// <param name="wall">Wall tc.</param>
    /// <returns>Least distance Lmsd.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>Di 154.08 mm, tc 7.11 mm: Lmsd = 59.58 mm.</example>
    public static Length LeastDistanceToDiscontinuity(Length insideDiameter, Length wall) =>
        Length.FromMillimeters(1.8 * Root(insideDiameter, wall));

    internal static double Root(Length insideDiameter, Length wall) =>
        Math.Sqrt(
            Require.Between("insideDiameterMm", insideDiameter.Millimeters, 0.1, 10_000)
                * Require.Between("wallThicknessMm", wall.Millimeters, 0.001, 5_000)
        );
}
