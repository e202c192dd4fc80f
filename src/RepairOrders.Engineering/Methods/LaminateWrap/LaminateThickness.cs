using UnitsNet;

namespace RepairOrders.Engineering.Methods.LaminateWrap;

/// <summary>Laminate thickness over wall that still holds fluid, ISO 24817 and ASME PCC-2 Art. 401 form, from memory; balances derived here.</summary>
public static class LaminateThickness
{
    /// <summary>Thickness for hoop load where the pipe stays elastic.</summary>
    /// <remarks>
    /// <para>Formula: t = (D/2s)(Es/Ec)(P − Ps), 0 where negative</para>
    /// <para>Symbols: D outside diameter, mm; s allowable stress of the pipe, MPa; Es, Ec moduli of pipe and laminate (hoop), MPa; P gauge
    /// pressure, Ps pressure the thinned pipe may take alone, MPa.</para>
    /// <para>Validity: no credit for pressure in the pipe at fitting.</para>
    /// <para>Reference: ISO 24817 and ASME PCC-2 Art. 401 form, from memory.</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="allowable">Allowable stress of the pipe s.</param>
    /// <param name="pipeModulus">Modulus of the pipe Es.</param>
    /// <param name="hoopModulus">Hoop modulus of the laminate Ec.</param>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="alone">Pressure the thinned pipe may take alone Ps.</param>
    /// <returns>Thickness t.</returns>
    /// <exception cref="ImpossibleInputException">A modulus or stress of 0, or a value that is not finite.</exception>
    /// <example>D 168.3 mm, s 160, Es 207 000, Ec 24 000, P 5, Ps 3.6 MPa: 6.35 mm.</example>
    public static Length ElasticHoop(
        Length outsideDiameter,
        Pressure allowable,
        Pressure pipeModulus,
        Pressure hoopModulus,
        Pressure pressure,
        Pressure alone
    )
    {
        var (D, s) = (Diameter(outsideDiameter), Require.Positive("allowableStressMpa", allowable.Megapascals));
        var Es = Require.Positive("pipeModulusMpa", pipeModulus.Megapascals);
        var Ec = Require.Positive("hoopModulusMpa", hoopModulus.Megapascals);
        var P = Require.NotNegative("pressureMpa", pressure.Megapascals);
        var Ps = Require.NotNegative("pressureAloneMpa", alone.Megapascals);
        return Length.FromMillimeters(Math.Max(0, D / (2 * s) * (Es / Ec) * (P - Ps)));
    }

    /// <summary>Thickness for axial load where the pipe stays elastic.</summary>
    /// <remarks>
    /// <para>Formula: t = (D/2s)(Es/Ea)(2 F/(π D²) − Ps), Ps = 2 s ts/D, 0 where negative</para>
    /// <para>Symbols: F axial load, tension positive, N; Ea axial modulus of the laminate, MPa; ts least wall of the whole ring, mm; the others
    /// as <see cref="ElasticHoop"/>.</para>
    /// <para>Validity: Ps from the ring, never from a local flaw method, which is longer and in hoop.</para>
    /// <para>Reference: ISO 24817 and ASME PCC-2 Art. 401 form, from memory.</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="allowable">Allowable stress of the pipe s.</param>
    /// <param name="pipeModulus">Modulus of the pipe Es.</param>
    /// <param name="axialModulus">Axial modulus of the laminate Ea.</param>
    /// <param name="axial">Axial load F.</param>
    /// <param name="alone">Axial credit of the pipe Ps.</param>
    /// <returns>Thickness t.</returns>
    /// <exception cref="ImpossibleInputException">A modulus or stress of 0, or a value that is not finite.</exception>
    /// <example>D 168.3 mm, s 160, Es 207 000, Ea 12 000, F 111 232 N, Ps 1.8 MPa: 6.35 mm.</example>
    public static Length ElasticAxial(
        Length outsideDiameter,
        Pressure allowable,
        Pressure pipeModulus,
        Pressure axialModulus,
        Force axial,
        Pressure alone
    )
    {
        var D = Diameter(outsideDiameter);
        var F = Require.NotNegative("axialLoadN", axial.Newtons);
        var end = Pressure.FromMegapascals(2 * F / (Math.PI * D * D));
        return ElasticHoop(outsideDiameter, allowable, pipeModulus, axialModulus, end, alone);
    }

    /// <summary>Thickness for hoop load by strain, where the pipe may yield.</summary>
    /// <remarks>
    /// <para>Formula: t = (P D/2 − s ts)/(ε Ec), 0 where negative</para>
    /// <para>Symbols: P gauge pressure, MPa; D outside diameter, mm; s allowable stress of the pipe, MPa; ts wall at the end of the repair's life,
    /// mm, 0 for no credit; ε allowable strain, -; Ec hoop modulus of the laminate, MPa.</para>
    /// <para>Validity: no pressure in the pipe at fitting; with it, neither standard keeps the strain within its limit for all wall losses
    /// (Barron, Texas A&amp;M, 2016, abstract).</para>
    /// <para>Reference: ISO 24817 and ASME PCC-2 Art. 401 form, from memory; balance derived here.</para>
    /// </remarks>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="allowable">Allowable stress of the pipe s.</param>
    /// <param name="wall">Wall at the end of life ts.</param>
    /// <param name="strain">Allowable strain ε [-].</param>
    /// <param name="hoopModulus">Hoop modulus of the laminate Ec.</param>
    /// <returns>Thickness t.</returns>
    /// <exception cref="ImpossibleInputException">A strain or modulus of 0, or a value that is not finite.</exception>
    /// <example>P 5 MPa, D 168.3 mm, s 160 MPa, ts 2 mm, ε 0.0025, Ec 24 000 MPa: 1.679 mm; P 2 MPa and no wall: 2.805 mm.</example>
    public static Length StrainHoop(
        Pressure pressure,
        Length outsideDiameter,
        Pressure allowable,
        Length wall,
        double strain,
        Pressure hoopModulus
    )
    {
        var P = Require.NotNegative("pressureMpa", pressure.Megapascals);
        var D = Diameter(outsideDiameter);
        var carried = Carried(allowable, wall);
        return Length.FromMillimeters(Math.Max(0, P * D / 2 - carried) / Stiffness(strain, hoopModulus));
    }

    /// <summary>Thickness for axial load by strain, where the pipe may yield.</summary>
    /// <remarks>
    /// <para>Formula: t = (F/(π D) − s ts)/(ε Ea), 0 where negative</para>
    /// <para>Symbols: F axial load, tension positive, N; ts least wall of the whole ring, mm, 0 for no credit; Ea axial modulus of the laminate,
    /// MPa; the others as <see cref="StrainHoop"/>.</para>
    /// <para>Validity: no hoop load is credited against it: it could vanish.</para>
    /// <para>Reference: ISO 24817 and ASME PCC-2 Art. 401 form, from memory; balance derived here.</para>
    /// </remarks>
    /// <param name="axial">Axial load F.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="allowable">Allowable stress of the pipe s.</param>
    /// <param name="wall">Least wall of the ring at the end of life ts.</param>
    /// <param name="strain">Allowable strain ε [-].</param>
    /// <param name="axialModulus">Axial modulus of the laminate Ea.</param>
    /// <returns>Thickness t.</returns>
    /// <exception cref="ImpossibleInputException">A strain or modulus of 0, or a value that is not finite.</exception>
    /// <example>F 44 493 N, D 168.3 mm, no wall, ε 0.0025, Ea 12 000 MPa: 2.805 mm.</example>
    public static Length StrainAxial(
        Force axial,
        Length outsideDiameter,
        Pressure allowable,
        Length wall,
        double strain,
        Pressure axialModulus
    )
    {
        var F = Require.NotNegative("axialLoadN", axial.Newtons);
        var D = Diameter(outsideDiameter);
        var carried = Carried(allowable, wall);
        return Length.FromMillimeters(Math.Max(0, F / (Math.PI * D) - carried) / Stiffness(strain, axialModulus));
    }

    /// <summary>Plies for a thickness.</summary>
    /// <param name="thickness">Thickness needed.</param>
    /// <param name="ply">Thickness of a ply.</param>
    /// <returns>At least 2, rounded up. 0.8 mm of 0.6 mm plies: 2.</returns>
    /// <exception cref="ImpossibleInputException">A ply of no thickness.</exception>
    public static int Plies(Length thickness, Length ply)
    {
        var t = Require.NotNegative("laminateThicknessMm", thickness.Millimeters);
        var each = Require.Positive("plyThicknessMm", ply.Millimeters);
        return (int)Math.Clamp(Math.Ceiling(Math.Round(t / each, 9)), 2, 1_000_000);
    }

    private static double Diameter(Length D) => Require.Positive("outsideDiameterMm", D.Millimeters);

    private static double Carried(Pressure allowable, Length wall) =>
        Require.NotNegative("allowableStressMpa", allowable.Megapascals)
        * Require.NotNegative("wallAtEndMm", wall.Millimeters);

    private static double Stiffness(double strain, Pressure modulus) =>
        Require.Positive("allowableStrain", strain) * Require.Positive("laminateModulusMpa", modulus.Megapascals);
}
