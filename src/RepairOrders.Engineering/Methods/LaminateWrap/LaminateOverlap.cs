using UnitsNet;

namespace RepairOrders.Engineering.Methods.LaminateWrap;

/// <summary>How far a laminate must reach beyond the damage.</summary>
public static class LaminateOverlap
{
    /// <summary>Geometric overlap, ISO form.</summary>
    /// <remarks>
    /// <para>Formula: l = 2 √(D t)</para>
    /// <para>Symbols: D outside diameter, t nominal wall of the pipe, mm, not of the laminate.</para>
    /// <para>Validity: at least 50 mm; over a hole at least 4 times its diameter.</para>
    /// <para>Reference: ISO 24817, from memory.</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="nominalWall">Nominal wall t.</param>
    /// <returns>Overlap l on each side.</returns>
    /// <exception cref="ImpossibleInputException">A size of 0 or less.</exception>
    /// <example>168.3 × 7.11 mm: 69.2 mm.</example>
    public static Length Iso(Length outsideDiameter, Length nominalWall) =>
        Length.FromMillimeters(2 * Math.Sqrt(Product(outsideDiameter, nominalWall)));

    /// <summary>Geometric overlap, ASME form.</summary>
    /// <remarks>
    /// <para>Formula: l = 2.5 √(D t/2)</para>
    /// <para>Symbols: as <see cref="Iso"/>.</para>
    /// <para>Validity: as <see cref="Iso"/>; it is the shorter of the two.</para>
    /// <para>Reference: ASME PCC-2 Art. 401, from memory.</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="nominalWall">Nominal wall t.</param>
    /// <returns>Overlap l on each side.</returns>
    /// <exception cref="ImpossibleInputException">A size of 0 or less.</exception>
    /// <example>168.3 × 7.11 mm: 61.2 mm.</example>
    public static Length Asme(Length outsideDiameter, Length nominalWall) =>
        Length.FromMillimeters(2.5 * Math.Sqrt(Product(outsideDiameter, nominalWall) / 2));

    /// <summary>Overlap that carries the laminate's axial force into the pipe by shear.</summary>
    /// <remarks>
    /// <para>Formula: l = 3 Ea ε t/τ</para>
    /// <para>Symbols: Ea axial modulus, τ qualified lap shear strength hot and wet, MPa; ε axial strain, -; t laminate, mm.</para>
    /// <para>Validity: factor 3 from memory, on the balance τ l = Ea ε t derived here.</para>
    /// <para>Reference: ISO 24817, from memory.</para>
    /// </remarks>
    /// <param name="axialModulus">Axial modulus Ea.</param>
    /// <param name="strain">Axial strain ε [-].</param>
    /// <param name="thickness">Laminate t.</param>
    /// <param name="lapShear">Lap shear strength τ.</param>
    /// <returns>Overlap l on each side.</returns>
    /// <exception cref="ImpossibleInputException">A lap shear strength of 0, or a value that is negative or not finite.</exception>
    /// <example>12 000 MPa, 0.25 %, 8 mm, 5 MPa: 144 mm.</example>
    public static Length BondShear(Pressure axialModulus, double strain, Length thickness, Pressure lapShear)
    {
        var Ea = Require.Positive("axialModulusMpa", axialModulus.Megapascals);
        var eps = Require.Between("strain", strain, 0, 1);
        var t = Require.NotNegative("laminateThicknessMm", thickness.Millimeters);
        var tau = Require.Positive("lapShearMpa", lapShear.Megapascals);
        return Length.FromMillimeters(3 * Ea * eps * t / tau);
    }

    /// <summary>Length of a laminate along the pipe.</summary>
    /// <remarks>
    /// <para>Formula: L = d + 2 l + 2 k</para>
    /// <para>Symbols: d damage along the pipe, l overlap, k taper, mm; k at least 5 times the thickness.</para>
    /// <para>Validity: straight pipe.</para>
    /// <para>Reference: ISO 24817, from memory.</para>
    /// </remarks>
    /// <param name="damage">Damage along the pipe d.</param>
    /// <param name="overlap">Overlap on each side l.</param>
    /// <param name="taper">Taper at each end k.</param>
    /// <returns>Length L.</returns>
    /// <exception cref="ImpossibleInputException">A value that is negative or not finite.</exception>
    /// <example>40 + 2 × 69.185 + 2 × 40 mm: 258.4 mm.</example>
    public static Length Total(Length damage, Length overlap, Length taper) =>
        Length.FromMillimeters(
            Require.NotNegative("axialLengthMm", damage.Millimeters)
                + 2 * Require.NotNegative("overlapMm", overlap.Millimeters)
                + 2 * Require.NotNegative("taperMm", taper.Millimeters)
        );

    /// <summary>What parts the low-risk from the high-risk route of the ASME articles.</summary>
    /// <remarks>
    /// <para>Formula: k = P √d, at most 0.16 MPa m^0.5</para>
    /// <para>Symbols: P gauge pressure, MPa; d leak, m.</para>
    /// <para>Validity: the printed 150 psi in^0.5 is 0.1648: the metric limit is 3 % stricter and is used.</para>
    /// <para>Reference: ASME PCC-2-2018, Art. 401-1.2.2(f).</para>
    /// </remarks>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="leak">Leak d.</param>
    /// <returns>Product k [MPa m^0.5].</returns>
    /// <exception cref="ImpossibleInputException">A value that is negative or not finite.</exception>
    /// <example>0.6 MPa, 25 mm: 0.0949.</example>
    public static double RiskProduct(Pressure pressure, Length leak) =>
        Require.NotNegative("pressureMpa", pressure.Megapascals)
        * Math.Sqrt(Require.NotNegative("holeDiameterMm", leak.Millimeters) / 1000);

    private static double Product(Length D, Length t) =>
        Require.Positive("outsideDiameterMm", D.Millimeters) * Require.Positive("wallThicknessMm", t.Millimeters);
}
