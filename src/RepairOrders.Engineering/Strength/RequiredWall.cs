using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>The wall a straight pipe needs for internal pressure, by the piping and pipeline codes.</summary>
public static partial class RequiredWall
{
    /// <summary>Wall required for internal pressure, by ASME B31.3 eq. (3a).</summary>
    /// <remarks>
    /// <para>Formula: t = P D / (2 (S E W + P Y))</para>
    /// <para>Symbols: t required wall, mm; P gauge pressure, MPa; D outside diameter, mm; S basic allowable stress, MPa; E quality factor, -; W weld strength reduction factor, -; Y wall coefficient, -.</para>
    /// <para>Validity: t &lt; D/6 and P/(S E) ≤ 0.385; beyond, special consideration is needed.</para>
    /// <para>Reference: ASME B31.3-2012, 304.1.2, eq. (3a).</para>
    /// </remarks>
    /// <param name="pressure">Gauge design pressure P.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="allowableStress">Basic allowable stress S at temperature.</param>
    /// <param name="qualityFactor">Quality factor E, above 0 to 1 [-].</param>
    /// <param name="weldFactor">Weld strength reduction factor W, above 0 to 1 [-].</param>
    /// <param name="wallCoefficient">Wall coefficient Y of <see cref="WallCoefficient"/>, 0 to 1 [-].</param>
    /// <returns>Required wall t, without allowances.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>P 3 MPa, D 219.1 mm, S 137.9 MPa, E = W = 1, Y 0.4: t = 2.36 mm.</example>
    public static Length B313(
        Pressure pressure,
        Length outsideDiameter,
        Pressure allowableStress,
        double qualityFactor,
        double weldFactor,
        double wallCoefficient
    )
    {
        var P = Take.Gauge("designPressureBar", pressure);
        var D = Shell.Diameter(outsideDiameter);
        var S = Take.Stress("allowableStressMpa", allowableStress);
        var E = Take.Factor("qualityFactor", qualityFactor);
        var W = Take.Factor("weldFactor", weldFactor);
        var Y = Require.Between("wallCoefficient", wallCoefficient, 0, 1);
        return Length.FromMillimeters(P * D / (2 * (S * E * W + P * Y)));
    }

    /// <summary>Wall required for internal pressure from the bore, by ASME B31.3 eq. (3b).</summary>
    /// <remarks>
    /// <para>Formula: t = P (d + 2c) / (2 (S E W − P (1 − Y)))</para>
    /// <para>Symbols: t required wall, mm; P gauge pressure, MPa; d inside diameter, mm; c allowances, mm; S basic allowable stress, MPa; E, W quality and weld factor, -; Y wall coefficient, -.</para>
    /// <para>Validity: t &lt; D/6 and P/(S E) ≤ 0.385.</para>
    /// <para>Reference: ASME B31.3-2012, 304.1.2, eq. (3b).</para>
    /// </remarks>
    /// <param name="pressure">Gauge design pressure P.</param>
    /// <param name="insideDiameter">Inside diameter d.</param>
    /// <param name="allowance">Sum of corrosion, erosion and thread allowances c.</param>
    /// <param name="allowableStress">Basic allowable stress S at temperature.</param>
    /// <param name="qualityFactor">Quality factor E, above 0 to 1 [-].</param>
    /// <param name="weldFactor">Weld strength reduction factor W, above 0 to 1 [-].</param>
    /// <param name="wallCoefficient">Wall coefficient Y, 0 to 1 [-].</param>
    /// <returns>Required wall t, without allowances.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows, or P (1 − Y) is not less than S E W.</exception>
    /// <example>P 3 MPa, d 209.1 mm, c 0, S 100 MPa, E = W = 1, Y 0.4: t = 3.1940 mm, as eq. (3a) gives for D = d + 2t.</example>
    public static Length B313FromBore(
        Pressure pressure,
        Length insideDiameter,
        Length allowance,
        Pressure allowableStress,
        double qualityFactor,
        double weldFactor,
        double wallCoefficient
    )
    {
        var P = Take.Gauge("designPressureBar", pressure);
        var d = Require.Between("insideDiameterMm", insideDiameter.Millimeters, 0.1, 10_000);
        var c = Take.Extent("allowanceMm", allowance);
        var S = Take.Stress("allowableStressMpa", allowableStress);
        var E = Take.Factor("qualityFactor", qualityFactor);
        var W = Take.Factor("weldFactor", weldFactor);
        var Y = Require.Between("wallCoefficient", wallCoefficient, 0, 1);
        var net = S * E * W - P * (1 - Y);
        return net > 0
            ? Length.FromMillimeters(P * (d + 2 * c) / (2 * net))
            : throw new ImpossibleInputException("designPressureBar", $"{P * 10:G6} bar", "less than S E W / (1 − Y)");
    }

    /// <summary>Wall required for internal pressure, by ASME B31.1 eq. (7).</summary>
    /// <remarks>
    /// <para>Formula: tm = P Do / (2 (S E W + P y)) + A</para>
    /// <para>Symbols: tm required wall with allowance, mm; P gauge pressure, MPa; Do outside diameter, mm; S E allowable stress with the joint's quality in it, MPa; W weld factor, -; y coefficient, -; A allowance, mm.</para>
    /// <para>Validity: none given by the source in the form used here; tabulated B31.1 stresses already contain E, so E is not put in again.</para>
    /// <para>Reference: ASME B31.1, 104.1.2, eq. (7) (from memory).</para>
    /// </remarks>
    /// <param name="pressure">Gauge design pressure P.</param>
    /// <param name="outsideDiameter">Outside diameter Do.</param>
    /// <param name="allowableStress">Allowable stress S E at temperature.</param>
    /// <param name="weldFactor">Weld strength reduction factor W, above 0 to 1 [-].</param>
    /// <param name="wallCoefficient">Coefficient y, as Y of ASME B31.3, 0 to 1 [-].</param>
    /// <param name="allowance">Allowance A for threads, corrosion and erosion.</param>
    /// <returns>Required wall tm, with the allowance.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>P 2 MPa, Do 168.3 mm, S E 118 MPa, W 1, y 0.4, A 1.5 mm: tm = 2.9167 mm.</example>
    public static Length B311(
        Pressure pressure,
        Length outsideDiameter,
        Pressure allowableStress,
        double weldFactor,
        double wallCoefficient,
        Length allowance
    )
    {
        var P = Take.Gauge("designPressureBar", pressure);
        var Do = Shell.Diameter(outsideDiameter);
        var SE = Take.Stress("allowableStressMpa", allowableStress);
        var W = Take.Factor("weldFactor", weldFactor);
        var y = Require.Between("wallCoefficient", wallCoefficient, 0, 1);
        var A = Take.Extent("allowanceMm", allowance);
        return Length.FromMillimeters(P * Do / (2 * (SE * W + P * y)) + A);
    }

    /// <summary>Wall required of a liquid pipeline, by ASME B31.4.</summary>
    /// <remarks>
    /// <para>Formula: t = Pi D / (2 F E SMYS)</para>
    /// <para>Symbols: t required wall, mm; Pi internal gauge pressure, MPa; D outside diameter, mm; F design factor, -; E weld joint factor, -; SMYS specified minimum yield strength, MPa.</para>
    /// <para>Validity: F ≤ 0.72.</para>
    /// <para>Reference: ASME B31.4, 403.2.</para>
    /// </remarks>
    /// <param name="pressure">Internal gauge pressure Pi.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="yieldStrength">Specified minimum yield strength SMYS.</param>
    /// <param name="designFactor">Design factor F, above 0 to 1 [-].</param>
    /// <param name="qualityFactor">Weld joint factor E, above 0 to 1 [-].</param>
    /// <returns>Required wall t, without allowances.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>Pi 1100 psi, D 273.05 mm, SMYS 35 000 psi, F 0.72, E 1: t = 5.96 mm.</example>
    public static Length B314(
        Pressure pressure,
        Length outsideDiameter,
        Pressure yieldStrength,
        double designFactor,
        double qualityFactor
    )
    {
        var F = Take.Factor("designFactor", designFactor);
        return Pipeline(pressure, outsideDiameter, yieldStrength, F * Take.Factor("qualityFactor", qualityFactor));
    }

    /// <summary>Wall required of a gas pipeline, by ASME B31.8.</summary>
    /// <remarks>
    /// <para>Formula: t = P D / (2 SMYS F E T)</para>
    /// <para>Symbols: t required wall, mm; P gauge pressure, MPa; D outside diameter, mm; SMYS specified minimum yield strength, MPa; F design factor, -; E joint factor, -; T temperature derating factor, -.</para>
    /// <para>Validity: F 0.72, 0.60, 0.50 or 0.40 by location class; T = 1 up to 121 °C.</para>
    /// <para>Reference: ASME B31.8, 841.1.1.</para>
    /// </remarks>
    /// <param name="pressure">Gauge design pressure P.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="yieldStrength">Specified minimum yield strength SMYS.</param>
    /// <param name="designFactor">Design factor F, above 0 to 1 [-].</param>
    /// <param name="qualityFactor">Joint factor E, above 0 to 1 [-].</param>
    /// <param name="temperatureFactor">Temperature derating factor T, above 0 to 1 [-].</param>
    /// <returns>Required wall t, without allowances.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>P 1100 psi, D 219.075 mm, SMYS 52 000 psi, F 0.6, E = T = 1: t = 3.86 mm.</example>
    public static Length B318(
        Pressure pressure,
        Length outsideDiameter,
        Pressure yieldStrength,
        double designFactor,
        double qualityFactor,
        double temperatureFactor
    )
    {
        var F = Take.Factor("designFactor", designFactor);
        var E = Take.Factor("qualityFactor", qualityFactor);
        var T = Take.Factor("temperatureFactor", temperatureFactor);
        return Pipeline(pressure, outsideDiameter, yieldStrength, F * E * T);
    }

    /// <summary>Wall required for internal pressure, by Barlow on the outside diameter.</summary>
    /// <remarks>
    /// <para>Formula: t = P D / (2 S)</para>
    /// <para>Symbols: t required wall, mm; P gauge pressure, MPa; D outside diameter, mm; S allowable stress, MPa.</para>
    /// <para>Validity: thin wall; on the safe side of ASME B31.3 eq. (3a), since Y is left out.</para>
    /// <para>Reference: Barlow's formula, as in the examples of API 570.</para>
    /// </remarks>
    /// <param name="pressure">Gauge design pressure P.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="allowableStress">Allowable stress S, joint quality included.</param>
    /// <returns>Required wall t, without allowances.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>P 550 psi, D 16 in, S 20 000 psi: t = 0.220 in.</example>
    public static Length Barlow(Pressure pressure, Length outsideDiameter, Pressure allowableStress)
    {
        var S = Take.Stress("allowableStressMpa", allowableStress);
        return Length.FromMillimeters(
            Take.Gauge("designPressureBar", pressure) * Shell.Diameter(outsideDiameter) / (2 * S)
        );
    }

    /// <summary>Basic wall of a ship's pipe, by IACS UR P1.</summary>
    /// <remarks>
    /// <para>Formula: t0 = P D / (20 K e + P)</para>
    /// <para>Symbols: t0 basic wall, mm; P gauge pressure, bar; D outside diameter, mm; K permissible stress, N/mm²; e strength ratio of the joint, -.</para>
    /// <para>Validity: Do/Di ≤ 1.7; bending, corrosion and negative tolerance are added to t0.</para>
    /// <para>Reference: IACS UR P1.2.2, eq. (2) (2007 text).</para>
    /// </remarks>
    /// <param name="pressure">Gauge design pressure P.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="permissibleStress">Permissible stress K.</param>
    /// <param name="jointRatio">Strength ratio e, above 0 to 1 [-].</param>
    /// <returns>Basic wall t0, without additions.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>P 10 bar, D 168.3 mm, K 140 N/mm², e 1: t0 = 0.599 mm.</example>
    public static Length IacsP1(
        Pressure pressure,
        Length outsideDiameter,
        Pressure permissibleStress,
        double jointRatio
    )
    {
        var P = Take.Gauge("designPressureBar", pressure) * 10; // the source's constant 20 is for bar
        var D = Shell.Diameter(outsideDiameter);
        var K = Take.Stress("permissibleStressMpa", permissibleStress);
        var e = Take.Factor("jointRatio", jointRatio);
        return Length.FromMillimeters(P * D / (20 * K * e + P));
    }

    /// <summary>Wall to order, with allowance and a mill tolerance in per cent, by ASME B31.3.</summary>
    /// <remarks>
    /// <para>Formula: T = (t + c) / (1 − m)</para>
    /// <para>Symbols: T wall to order, mm; t required wall, mm; c allowances, mm; m mill under-tolerance, -.</para>
    /// <para>Validity: m of the specification: 0.125 for A53, A106, A312 and API 5L seamless over 4 mm. For ordering new pipe; never taken off a measured wall.</para>
    /// <para>Reference: ASME B31.3, 304.1.1, eq. (2).</para>
    /// </remarks>
    /// <param name="required">Required wall t.</param>
    /// <param name="allowance">Allowances c.</param>
    /// <param name="millTolerance">Mill under-tolerance m, 0 to 0.5 [-].</param>
    /// <returns>Least nominal wall T to order.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>t 0.2097 in, c 0.125 in, m 0.125: T = 0.3825 in (printed 0.383).</example>
    public static Length OrderWall(Length required, Length allowance, double millTolerance)
    {
        var m = Require.Between("millTolerance", millTolerance, 0, 0.5);
        return Length.FromMillimeters(
            (Take.Extent("requiredWallMm", required) + Take.Extent("allowanceMm", allowance)) / (1 - m)
        );
    }

    /// <summary>Wall to order, with allowance and a fixed mill tolerance, by ASME B31.3.</summary>
    /// <remarks>
    /// <para>Formula: T = t + c + m</para>
    /// <para>Symbols: T wall to order, mm; t required wall, mm; c allowances, mm; m mill under-tolerance, mm.</para>
    /// <para>Validity: plate pipe (m = 0.3 mm) and API 5L seamless up to 4 mm (m = 0.5 mm): a fixed tolerance is added, not divided by.</para>
    /// <para>Reference: ASME B31.3, 304.1.1, eq. (2); tolerances of the pipe's specification.</para>
    /// </remarks>
    /// <param name="required">Required wall t.</param>
    /// <param name="allowance">Allowances c.</param>
    /// <param name="millTolerance">Mill under-tolerance m.</param>
    /// <returns>Least nominal wall T to order.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>t 14.261 mm, c 3.0 mm, m 0.3 mm: T = 17.561 mm.</example>
    public static Length OrderWall(Length required, Length allowance, Length millTolerance) =>
        Length.FromMillimeters(
            Take.Extent("requiredWallMm", required)
                + Take.Extent("allowanceMm", allowance)
                + Take.Extent("millToleranceMm", millTolerance)
        );

    private static Length Pipeline(Pressure pressure, Length outsideDiameter, Pressure yieldStrength, double factor)
    {
        var P = Take.Gauge("designPressureBar", pressure);
        var SMYS = Take.Stress("yieldStrengthMpa", yieldStrength);
        return Length.FromMillimeters(P * Shell.Diameter(outsideDiameter) / (2 * SMYS * factor));
    }
}
