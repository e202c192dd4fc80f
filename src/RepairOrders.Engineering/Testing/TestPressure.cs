using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using UnitsNet;

namespace RepairOrders.Engineering.Testing;

/// <summary>Test pressures as the codes ask for them, and what a thinned wall lets them be.</summary>
public static class TestPressure
{
    /// <summary>Hydrostatic test pressure, ASME B31.3.</summary>
    /// <remarks>
    /// <para>Formula: PT = 1.5 P Rr; Rr = ST/S, at most 6.5.</para>
    /// <para>Symbols: PT test, P design gauge pressure, MPa; ST allowable stress at test temperature, S at design temperature, MPa, the lowest ratio of the materials tested.</para>
    /// <para>Validity: to be cut to just below yield where it would pass it, see <see cref="AtYield"/>.</para>
    /// <para>Reference: ASME B31.3, 345.4.2, eq. (24) (public pages).</para>
    /// </remarks>
    /// <param name="design">Design pressure P.</param>
    /// <param name="stressAtTest">Allowable stress ST.</param>
    /// <param name="stressAtDesign">Allowable stress S.</param>
    /// <returns>Test pressure PT.</returns>
    /// <exception cref="ImpossibleInputException">The pressure is negative or a stress is not above 0.</exception>
    /// <example>165 psi, ST = S: 247.5 psi. 1 MPa with ST/S 10: capped at 6.5, 9.75 MPa.</example>
    public static Pressure Hydrostatic(Pressure design, Pressure stressAtTest, Pressure stressAtDesign)
    {
        var P = Bar(design);
        var ST = Take.Stress("stressAtTestMpa", stressAtTest);
        var S = Take.Stress("stressAtDesignMpa", stressAtDesign);
        return Pressure.FromBars(1.5 * P * Math.Min(ST / S, 6.5));
    }

    /// <summary>Least pneumatic test pressure, ASME B31.3.</summary>
    /// <remarks>
    /// <para>Formula: PT = 1.1 P.</para>
    /// <para>Symbols: PT test, P design gauge pressure, MPa.</para>
    /// <para>Validity: not above the lesser of 1.33 P and 90 % of yield.</para>
    /// <para>Reference: ASME B31.3, 345.5.4 (from memory).</para>
    /// </remarks>
    /// <param name="design">Design pressure P.</param>
    /// <returns>Test pressure PT.</returns>
    /// <exception cref="ImpossibleInputException">The pressure is negative.</exception>
    /// <example>2.0 MPa: 2.2 MPa.</example>
    public static Pressure Pneumatic(Pressure design) => Pressure.FromBars(1.1 * Bar(design));

    /// <summary>Hydrostatic test pressure, ASME B31.1.</summary>
    /// <remarks>
    /// <para>Formula: PT = 1.5 P.</para>
    /// <para>Symbols: PT test, P design gauge pressure, MPa.</para>
    /// <para>Validity: not above what any part tested may bear.</para>
    /// <para>Reference: ASME B31.1, 137.4 (from memory).</para>
    /// </remarks>
    /// <param name="design">Design pressure P.</param>
    /// <returns>Test pressure PT.</returns>
    /// <exception cref="ImpossibleInputException">The pressure is negative.</exception>
    /// <example>2.0 MPa: 3.0 MPa.</example>
    public static Pressure PowerHydrostatic(Pressure design) => Pressure.FromBars(1.5 * Bar(design));

    /// <summary>Least pneumatic test pressure, ASME B31.1.</summary>
    /// <remarks>
    /// <para>Formula: PT = 1.2 P; up to 1.5 P is allowed.</para>
    /// <para>Symbols: PT test, P design gauge pressure, MPa.</para>
    /// <para>Validity: not above what any part tested may bear.</para>
    /// <para>Reference: ASME B31.1, 137.5 (range on a public page, clause from memory).</para>
    /// </remarks>
    /// <param name="design">Design pressure P.</param>
    /// <returns>Test pressure PT.</returns>
    /// <exception cref="ImpossibleInputException">The pressure is negative.</exception>
    /// <example>2.0 MPa: 2.4 MPa.</example>
    public static Pressure PowerPneumatic(Pressure design) => Pressure.FromBars(1.2 * Bar(design));

    /// <summary>Least pressure of a sensitive leak test, ASME B31.3.</summary>
    /// <remarks>
    /// <para>Formula: PT = min(105 kPa, 0.25 P).</para>
    /// <para>Symbols: PT test, P design gauge pressure, kPa.</para>
    /// <para>Validity: gas and bubble test.</para>
    /// <para>Reference: ASME B31.3, 345.8 (from memory).</para>
    /// </remarks>
    /// <param name="design">Design pressure P.</param>
    /// <returns>Test pressure PT.</returns>
    /// <exception cref="ImpossibleInputException">The pressure is negative.</exception>
    /// <example>2.0 MPa: 105 kPa. 200 kPa: 50 kPa.</example>
    public static Pressure SensitiveLeak(Pressure design) => Pressure.FromBars(Math.Min(1.05, 0.25 * Bar(design)));

    /// <summary>Pressure at which the thinnest wall yields.</summary>
    /// <remarks>
    /// <para>Formula: P_y = 2 Sy t_mm/D.</para>
    /// <para>Symbols: P_y gauge pressure, MPa; Sy yield strength at test temperature, MPa; t_mm least wall, mm; D outside diameter, mm.</para>
    /// <para>Validity: the least wall taken as if it ran all along the pipe; on the safe side for a local loss.</para>
    /// <para>Reference: Barlow's formula at yield.</para>
    /// </remarks>
    /// <param name="yieldStrength">Yield strength Sy.</param>
    /// <param name="leastWall">Least wall t_mm; 0 where it is through.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <returns>Pressure P_y.</returns>
    /// <exception cref="ImpossibleInputException">The strength or diameter is not above 0, or the wall does not fit.</exception>
    /// <example>240 MPa, 4 mm, 168.3 mm: 2 × 240 × 4/168.3 = 11.41 MPa.</example>
    public static Pressure AtYield(Pressure yieldStrength, Length leastWall, Length outsideDiameter)
    {
        var Sy = Take.Stress("yieldStrengthMpa", yieldStrength);
        var D = Shell.Diameter(outsideDiameter);
        var t = Require.Between("remainingWallMm", leastWall.Millimeters, 0, D / 2);
        return Pressure.FromMegapascals(2 * Sy * t / D);
    }

    private static double Bar(Pressure design) => Take.Gauge("designPressureBar", design) * 10;
}
