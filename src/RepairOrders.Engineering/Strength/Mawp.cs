using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>The gauge pressure a wall holds: maximum allowable working pressure.</summary>
public static partial class Mawp
{
    /// <summary>Pressure a wall holds, by ASME B31.3 eq. (3a) solved for P.</summary>
    /// <remarks>
    /// <para>Formula: P = 2 S E W t / (D − 2 Y t)</para>
    /// <para>Symbols: P gauge pressure, MPa; S basic allowable stress, MPa; E, W quality and weld factor, -; t wall less loss and allowances, mm; D outside diameter, mm; Y wall coefficient, -.</para>
    /// <para>Validity: t &lt; D/6 and P/(S E) ≤ 0.385.</para>
    /// <para>Reference: ASME B31.3-2012, 304.1.2, eq. (3a).</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t that counts: measured, less loss and mechanical allowance.</param>
    /// <param name="allowableStress">Basic allowable stress S at temperature.</param>
    /// <param name="qualityFactor">Quality factor E, above 0 to 1 [-].</param>
    /// <param name="weldFactor">Weld strength reduction factor W, above 0 to 1 [-].</param>
    /// <param name="wallCoefficient">Wall coefficient Y, 0 to 1 [-].</param>
    /// <returns>Gauge pressure P.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 219.075 mm, t 4 mm, S 20 000 psi, E = W = 1, Y 0.4: P = 741 psi.</example>
    public static Pressure B313(
        Length outsideDiameter,
        Length wall,
        Pressure allowableStress,
        double qualityFactor,
        double weldFactor,
        double wallCoefficient
    )
    {
        var (D, t) = Shell.Of(outsideDiameter, wall);
        var S = Take.Stress("allowableStressMpa", allowableStress);
        var E = Take.Factor("qualityFactor", qualityFactor);
        var W = Take.Factor("weldFactor", weldFactor);
        var Y = Require.Between("wallCoefficient", wallCoefficient, 0, 0.9);
        return Pressure.FromMegapascals(2 * S * E * W * t / (D - 2 * Y * t));
    }

    /// <summary>Pressure a wall will still hold at the next inspection, by the half-life form of API 570.</summary>
    /// <remarks>
    /// <para>Formula: MAWP = 2 S E (t − 2 CR n) / D</para>
    /// <para>Symbols: MAWP gauge pressure, MPa; S allowable stress, MPa; E quality factor, -; t measured wall, mm; CR corrosion rate, mm/y; n years to the next inspection; D outside diameter, mm.</para>
    /// <para>Validity: twice the loss expected before the next inspection is taken off; 0 where nothing is left.</para>
    /// <para>Reference: API 570, 7.2, Table 7-1.</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="measuredWall">Measured wall t.</param>
    /// <param name="expectedLoss">Loss CR n expected before the next inspection.</param>
    /// <param name="allowableStress">Allowable stress S at temperature.</param>
    /// <param name="qualityFactor">Quality factor E, above 0 to 1 [-].</param>
    /// <returns>Gauge pressure MAWP.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 16 in, t 0.32 in, 0.01 in/y for 5 years, S 20 000 psi, E 1: MAWP = 550 psi.</example>
    public static Pressure HalfLife(
        Length outsideDiameter,
        Length measuredWall,
        Length expectedLoss,
        Pressure allowableStress,
        double qualityFactor
    )
    {
        var (D, t) = Shell.Of(outsideDiameter, measuredWall, "measuredWallMm");
        var loss = Take.Extent("expectedLossMm", expectedLoss);
        var S = Take.Stress("allowableStressMpa", allowableStress);
        var E = Take.Factor("qualityFactor", qualityFactor);
        return Pressure.FromMegapascals(Math.Max(0, 2 * S * E * (t - 2 * loss) / D));
    }

    /// <summary>Design pressure of a pipeline's wall, by ASME B31.4 and B31.8.</summary>
    /// <remarks>
    /// <para>Formula: P = 2 SMYS t F E T / D</para>
    /// <para>Symbols: P gauge pressure, MPa; SMYS specified minimum yield strength, MPa; t wall, mm; F design factor, -; E joint factor, -; T temperature factor, - (1 for ASME B31.4); D outside diameter, mm.</para>
    /// <para>Validity: F ≤ 0.72 by ASME B31.4, 0.72 to 0.40 by location class in ASME B31.8; T = 1 up to 121 °C.</para>
    /// <para>Reference: ASME B31.4, 403.2; ASME B31.8, 841.1.1.</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <param name="yieldStrength">Specified minimum yield strength SMYS.</param>
    /// <param name="designFactor">Design factor F, above 0 to 1 [-].</param>
    /// <param name="qualityFactor">Joint factor E, above 0 to 1 [-].</param>
    /// <param name="temperatureFactor">Temperature factor T, above 0 to 1 [-].</param>
    /// <returns>Gauge pressure P.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 273.05 mm, t 5.5 mm, SMYS 35 000 psi, F 0.72, E = T = 1: P = 1015 psi.</example>
    public static Pressure Pipeline(
        Length outsideDiameter,
        Length wall,
        Pressure yieldStrength,
        double designFactor,
        double qualityFactor,
        double temperatureFactor
    )
    {
        var F = Take.Factor("designFactor", designFactor);
        var E = Take.Factor("qualityFactor", qualityFactor);
        var T = Take.Factor("temperatureFactor", temperatureFactor);
        return Pressure.FromMegapascals(F * E * T * Barlow(outsideDiameter, wall, yieldStrength).Megapascals);
    }

    /// <summary>Pressure at which the mean hoop stress reaches a given stress, by Barlow on the outside diameter.</summary>
    /// <remarks>
    /// <para>Formula: P = 2 S t / D</para>
    /// <para>Symbols: P gauge pressure, MPa; S hoop stress, MPa; t wall, mm; D outside diameter, mm.</para>
    /// <para>Validity: thin wall.</para>
    /// <para>Reference: Barlow's formula, as ASME B31G-2012 uses it.</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <param name="stress">Hoop stress S.</param>
    /// <returns>Gauge pressure P.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 508 mm, t 7.40 mm, S = 0.72 × 359 MPa: P = 7530.5 kPa.</example>
    public static Pressure Barlow(Length outsideDiameter, Length wall, Pressure stress)
    {
        var (D, t) = Shell.Of(outsideDiameter, wall);
        return Pressure.FromMegapascals(2 * Take.Stress("stressMpa", stress) * t / D);
    }

    /// <summary>Mean hoop stress under pressure, by Barlow on the outside diameter.</summary>
    /// <remarks>
    /// <para>Formula: σ = P D / (2 t)</para>
    /// <para>Symbols: σ hoop stress, MPa; P gauge pressure, MPa; D outside diameter, mm; t wall, mm.</para>
    /// <para>Validity: thin wall.</para>
    /// <para>Reference: Barlow's formula, as the ASME B31 codes use it.</para>
    /// </remarks>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <returns>Hoop stress σ.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>P 87.4 bar, D 323.9 mm, t 10.3 mm: σ = 137.42 MPa.</example>
    public static Pressure HoopStress(Pressure pressure, Length outsideDiameter, Length wall)
    {
        var (D, t) = Shell.Of(outsideDiameter, wall);
        return Pressure.FromMegapascals(Take.Gauge("pressureBar", pressure) * D / (2 * t));
    }
}
