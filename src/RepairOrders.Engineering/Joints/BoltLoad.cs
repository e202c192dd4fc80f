using UnitsNet;

namespace RepairOrders.Engineering.Joints;

/// <summary>What the bolts of a split clamp must hold.</summary>
public static class BoltLoad
{
    /// <summary>Force that parts the halves of a clamp.</summary>
    /// <remarks>
    /// <para>Formula: F = P Ds Ls</para>
    /// <para>Symbols: P gauge pressure, MPa; Ds seal diameter, mm; Ls distance between the end seals, mm.</para>
    /// <para>Validity: pressure inside the whole seal loop.</para>
    /// <para>Reference: force balance on the split plane, derived here.</para>
    /// </remarks>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="sealDiameter">Seal diameter Ds.</param>
    /// <param name="sealLength">Distance between the end seals Ls.</param>
    /// <returns>Parting force F.</returns>
    /// <exception cref="ImpossibleInputException">A value that is negative or not finite.</exception>
    /// <example>2 MPa, 130 × 200 mm: 52.0 kN.</example>
    public static Force Parting(Pressure pressure, Length sealDiameter, Length sealLength)
    {
        var P = Require.NotNegative("pressureMpa", pressure.Megapascals);
        var Ds = Require.NotNegative("sealDiameterMm", sealDiameter.Millimeters);
        var Ls = Require.NotNegative("sealLengthMm", sealLength.Millimeters);
        return Force.FromNewtons(P * Ds * Ls);
    }

    /// <summary>End load of the pressure where the pipe may part inside the repair.</summary>
    /// <remarks>
    /// <para>Formula: F = P π D²/4</para>
    /// <para>Symbols: P gauge pressure, MPa; D diameter the seals bear on, the pipe's outside diameter at least, mm.</para>
    /// <para>Validity: pressure thrust only; other loads are added.</para>
    /// <para>Reference: force balance, derived here.</para>
    /// </remarks>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="diameter">Diameter D.</param>
    /// <returns>End load F.</returns>
    /// <exception cref="ImpossibleInputException">A value that is negative or not finite.</exception>
    /// <example>2 MPa on 114.3 mm: 20.52 kN.</example>
    public static Force EndThrust(Pressure pressure, Length diameter)
    {
        var P = Require.NotNegative("pressureMpa", pressure.Megapascals);
        var D = Require.NotNegative("sealDiameterMm", diameter.Millimeters);
        return Force.FromNewtons(P * Math.PI * D * D / 4);
    }

    /// <summary>Bolt load in operation or test: the parting force and a seal stress of m times the pressure.</summary>
    /// <remarks>
    /// <para>Formula: W = P A + 2 b m P U</para>
    /// <para>Symbols: P gauge pressure, MPa; A area inside the seal loop in the split plane, mm²; b effective width of one seal line, mm;
    /// m gasket factor, -; U length of the whole seal loop, mm.</para>
    /// <para>Validity: P the larger of design and test.</para>
    /// <para>Reference: ASME VIII-1 Appendix 2 form, from memory.</para>
    /// </remarks>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="inside">Area inside the seal loop A.</param>
    /// <param name="sealWidth">Effective seal width b.</param>
    /// <param name="gasketFactor">Gasket factor m [-].</param>
    /// <param name="loop">Length of the seal loop U.</param>
    /// <returns>Bolt load W.</returns>
    /// <exception cref="ImpossibleInputException">A value that is negative or not finite.</exception>
    /// <example>2 MPa, 26 000 mm², b 6 mm, m 0.5, 660 mm: 59.92 kN.</example>
    public static Force Operating(Pressure pressure, Area inside, Length sealWidth, double gasketFactor, Length loop)
    {
        var P = Require.NotNegative("pressureMpa", pressure.Megapascals);
        var A = Require.NotNegative("sealAreaMm2", inside.SquareMillimeters);
        var b = Require.NotNegative("sealWidthMm", sealWidth.Millimeters);
        var m = Require.NotNegative("gasketFactor", gasketFactor);
        var U = Require.NotNegative("sealLoopMm", loop.Millimeters);
        return Force.FromNewtons(P * A + 2 * b * m * P * U);
    }

    /// <summary>Bolt load that seats the seal.</summary>
    /// <remarks>
    /// <para>Formula: W = b y U</para>
    /// <para>Symbols: b effective width of one seal line, mm; y seating stress, MPa; U length of the whole seal loop, mm.</para>
    /// <para>Validity: at fitting temperature.</para>
    /// <para>Reference: ASME VIII-1 Appendix 2 form, from memory.</para>
    /// </remarks>
    /// <param name="sealWidth">Effective seal width b.</param>
    /// <param name="seatingStress">Seating stress y.</param>
    /// <param name="loop">Length of the seal loop U.</param>
    /// <returns>Bolt load W.</returns>
    /// <exception cref="ImpossibleInputException">A value that is negative or not finite.</exception>
    /// <example>b 6 mm, y 1.4 MPa, 660 mm: 5544 N.</example>
    public static Force Seating(Length sealWidth, Pressure seatingStress, Length loop)
    {
        var b = Require.NotNegative("sealWidthMm", sealWidth.Millimeters);
        var y = Require.NotNegative("seatingStressMpa", seatingStress.Megapascals);
        var U = Require.NotNegative("sealLoopMm", loop.Millimeters);
        return Force.FromNewtons(b * y * U);
    }

    /// <summary>Bolt area for a load.</summary>
    /// <remarks>
    /// <para>Formula: A = W/Sb</para>
    /// <para>Symbols: W bolt load, N; Sb allowable stress of the bolts, MPa.</para>
    /// <para>Validity: Sb at the temperature of the load.</para>
    /// <para>Reference: ASME VIII-1 Appendix 2 form, from memory.</para>
    /// </remarks>
    /// <param name="load">Bolt load W.</param>
    /// <param name="allowable">Allowable stress Sb.</param>
    /// <returns>Area A of all bolts.</returns>
    /// <exception cref="ImpossibleInputException">An allowable of 0, or a value that is not finite.</exception>
    /// <example>52 kN at 172 MPa: 302.3 mm².</example>
    public static Area AreaNeeded(Force load, Pressure allowable)
    {
        var W = Require.NotNegative("boltLoadN", load.Newtons);
        var Sb = Require.Positive("boltAllowableMpa", allowable.Megapascals);
        return Area.FromSquareMillimeters(W / Sb);
    }

    /// <summary>Bolts for a load, an even number for the two sides of a clamp.</summary>
    /// <param name="load">Bolt load.</param>
    /// <param name="each">Load one bolt may carry.</param>
    /// <returns>At least 4, even. 59 920 N at 14 448 N each: 6.</returns>
    /// <exception cref="ImpossibleInputException">A bolt that carries nothing.</exception>
    public static int Bolts(Force load, Force each)
    {
        var W = Require.NotNegative("boltLoadN", load.Newtons);
        var one = Require.Positive("loadOfOneBoltN", each.Newtons);
        var pairs = Math.Ceiling(Math.Round(W / one / 2, 9));
        return 2 * (int)Math.Clamp(pairs, 2, 500_000);
    }

    /// <summary>Pressure left on the seal once the clamp is under pressure.</summary>
    /// <remarks>
    /// <para>Formula: p = (n F − P A)/As</para>
    /// <para>Symbols: n bolts, -; F low estimate of their preload, N; P gauge pressure, MPa; A area inside the seal loop, mm²; As area of
    /// the seal, mm².</para>
    /// <para>Validity: stiff halves; negative means the seal is open.</para>
    /// <para>Reference: force balance on the split plane, derived here.</para>
    /// </remarks>
    /// <param name="bolts">Bolts n.</param>
    /// <param name="preload">Low estimate of the preload of one bolt F.</param>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="inside">Area inside the seal loop A.</param>
    /// <param name="seal">Area of the seal As.</param>
    /// <returns>Seal pressure p; negative where the seal is open.</returns>
    /// <exception cref="ImpossibleInputException">A seal of no area, or a value that is negative or not finite.</exception>
    /// <example>6 bolts of 15 kN, 2 MPa, 26 000 mm², seal of 7920 mm²: 4.80 MPa.</example>
    public static Pressure SealPressure(int bolts, Force preload, Pressure pressure, Area inside, Area seal)
    {
        var n = Require.NotNegative("bolts", bolts);
        var F = Require.NotNegative("preloadN", preload.Newtons);
        var P = Require.NotNegative("pressureMpa", pressure.Megapascals);
        var A = Require.NotNegative("sealAreaMm2", inside.SquareMillimeters);
        var As = Require.Positive("sealFaceMm2", seal.SquareMillimeters);
        return Pressure.FromMegapascals((n * F - P * A) / As);
    }

    /// <summary>Stress in a preloaded bolt under an outside load.</summary>
    /// <remarks>
    /// <para>Formula: σ = (C P + Fi)/At</para>
    /// <para>Symbols: C stiffness constant of the joint, -; P outside load on one bolt, N; Fi preload, N; At stress area, mm².</para>
    /// <para>Validity: the joint does not open.</para>
    /// <para>Reference: Shigley, Mechanical Engineering Design, 9th ed., Example 8-3.</para>
    /// </remarks>
    /// <param name="stiffness">Stiffness constant C [-].</param>
    /// <param name="outside">Outside load on one bolt P.</param>
    /// <param name="preload">Preload Fi.</param>
    /// <param name="stressArea">Stress area At.</param>
    /// <returns>Bolt stress σ.</returns>
    /// <exception cref="ImpossibleInputException">A stress area of 0, or a value that is not finite.</exception>
    /// <example>C 0.32, 6 kip, 25 kip, 0.373 in²: 72.17 kpsi.</example>
    public static Pressure ServiceStress(double stiffness, Force outside, Force preload, Area stressArea)
    {
        var C = Require.Between("stiffnessConstant", stiffness, 0, 1);
        var P = Require.NotNegative("outsideLoadN", outside.Newtons);
        var Fi = Require.NotNegative("preloadN", preload.Newtons);
        var At = Require.Positive("stressAreaMm2", stressArea.SquareMillimeters);
        return Pressure.FromMegapascals((C * P + Fi) / At);
    }
}
