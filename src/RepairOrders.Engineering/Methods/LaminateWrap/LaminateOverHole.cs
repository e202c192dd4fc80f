using UnitsNet;

namespace RepairOrders.Engineering.Methods.LaminateWrap;

/// <summary>Bond and bending of a laminate over a hole.</summary>
/// <param name="Modulus">Modulus E of the laminate, the lesser of hoop and axial.</param>
/// <param name="ShearModulus">Shear modulus G.</param>
/// <param name="Poisson">Poisson's ratio ν, without unit.</param>
/// <param name="Toughness">Interlaminar or bond toughness γ, lower confidence value of the qualification; 0.2 N/mm is 200 J/m².</param>
/// <param name="ServiceFactor">Service factor f for life, temperature and cycles, without unit.</param>
public sealed record LaminateBond(
    Pressure Modulus,
    Pressure ShearModulus,
    double Poisson,
    ForcePerLength Toughness,
    double ServiceFactor
);

/// <summary>
/// What a laminate over a hole holds before the fluid peels it off (type B), ISO 24817 and ASME PCC-2 Art. 401 form, from
/// memory; both terms re-derived here. Copies that print t⁴ have the wrong dimensions.
/// </summary>
public static class LaminateOverHole
{
    /// <summary>Pressure a laminate holds over a round hole.</summary>
    /// <remarks>
    /// <para>Formula: P = f √(γ/{(1 − ν²)/E [3 d⁴/(512 t³) + d/π] + 3 d²/(64 G t)})</para>
    /// <para>Symbols: d hole at the end of life where it is largest, t laminate, mm; E, G moduli, MPa; ν Poisson's ratio, -; γ toughness, N/mm; f
    /// service factor, -.</para>
    /// <para>Validity: d ≤ √(6 D t) with the smaller of pipe wall and laminate; which of the two is meant was not verified.</para>
    /// <para>Reference: ISO 24817, 7.5.7 form, from memory; clamped disc and half-space crack derived here.</para>
    /// </remarks>
    /// <param name="hole">Hole diameter d.</param>
    /// <param name="thickness">Laminate thickness t.</param>
    /// <param name="bond">Moduli, toughness and service factor.</param>
    /// <returns>Gauge pressure P.</returns>
    /// <exception cref="ImpossibleInputException">A size or modulus of 0, or a value that is not finite.</exception>
    /// <example>d 25 mm, t 8 mm, E 12 000, G 3000 MPa, ν 0.3, γ 0.2 N/mm, f 0.333: 3.20 MPa.</example>
    public static Pressure RoundHole(Length hole, Length thickness, LaminateBond bond)
    {
        var (d, t) = Sizes(hole, thickness);
        var (E, G, nu) = Moduli(bond);
        var compliance =
            (1 - nu * nu) / E * (3 * Math.Pow(d, 4) / (512 * Math.Pow(t, 3)) + d / Math.PI) + 3 * d * d / (64 * G * t);
        return Held(bond, compliance);
    }

    /// <summary>Pressure a laminate holds over a long slot; also the safe reading of an irregular hole by its least width.</summary>
    /// <remarks>
    /// <para>Formula: P = f √(γ/{(1 − ν²)/E [W⁴/(24 t³) + π W/4] + 3 W²/(16 G t)})</para>
    /// <para>Symbols: W width of the slot, mm; the others as <see cref="RoundHole"/>.</para>
    /// <para>Validity: as <see cref="RoundHole"/>.</para>
    /// <para>Reference: clamped strip and plane-strain crack, derived here.</para>
    /// </remarks>
    /// <param name="width">Width of the slot W.</param>
    /// <param name="thickness">Laminate thickness t.</param>
    /// <param name="bond">Moduli, toughness and service factor.</param>
    /// <returns>Gauge pressure P.</returns>
    /// <exception cref="ImpossibleInputException">A size or modulus of 0, or a value that is not finite.</exception>
    /// <example>W 25 mm, the rest as the round hole's example: 1.589 MPa.</example>
    public static Pressure Slot(Length width, Length thickness, LaminateBond bond)
    {
        var (W, t) = Sizes(width, thickness);
        var (E, G, nu) = Moduli(bond);
        var compliance =
            (1 - nu * nu) / E * (Math.Pow(W, 4) / (24 * Math.Pow(t, 3)) + Math.PI * W / 4) + 3 * W * W / (16 * G * t);
        return Held(bond, compliance);
    }

    /// <summary>Energy released when a clamped disc of laminate peels, bending only.</summary>
    /// <remarks>
    /// <para>Formula: G = p² (1 − ν²) 3 d⁴/(512 E t³)</para>
    /// <para>Symbols: p pressure, E modulus, MPa; d disc, t laminate, mm; ν Poisson's ratio, -.</para>
    /// <para>Validity: thin clamped disc, small deflection.</para>
    /// <para>Reference: w = p (a² − r²)²/(64 Dp), G = p² a⁴/(128 Dp), derived here.</para>
    /// </remarks>
    /// <param name="pressure">Pressure p.</param>
    /// <param name="hole">Disc d.</param>
    /// <param name="thickness">Laminate t.</param>
    /// <param name="modulus">Modulus E.</param>
    /// <param name="poisson">Poisson's ratio ν [-].</param>
    /// <returns>Energy release rate, N/mm (kJ/m²).</returns>
    /// <exception cref="ImpossibleInputException">A size or modulus of 0, or a value that is not finite.</exception>
    /// <example>2 MPa, d 50, t 8 mm, E 20 000 MPa, ν 0.3: 0.01302 N/mm.</example>
    public static ForcePerLength DiscRelease(
        Pressure pressure,
        Length hole,
        Length thickness,
        Pressure modulus,
        double poisson
    )
    {
        var (d, t) = Sizes(hole, thickness);
        return Release(pressure, modulus, poisson, 3 * Math.Pow(d, 4) / (512 * Math.Pow(t, 3)));
    }

    /// <summary>Energy released when a clamped strip of laminate peels, bending only.</summary>
    /// <remarks>
    /// <para>Formula: G = p² (1 − ν²) W⁴/(24 E t³)</para>
    /// <para>Symbols: W width of the strip, mm; the others as <see cref="DiscRelease"/>.</para>
    /// <para>Validity: thin clamped strip, small deflection.</para>
    /// <para>Reference: clamped strip under even pressure, derived here.</para>
    /// </remarks>
    /// <param name="pressure">Pressure p.</param>
    /// <param name="width">Width W.</param>
    /// <param name="thickness">Laminate t.</param>
    /// <param name="modulus">Modulus E.</param>
    /// <param name="poisson">Poisson's ratio ν [-].</param>
    /// <returns>Energy release rate, N/mm (kJ/m²).</returns>
    /// <exception cref="ImpossibleInputException">A size or modulus of 0, or a value that is not finite.</exception>
    /// <example>2 MPa, W 50, t 8 mm, E 20 000 MPa, ν 0.3: 0.09257 N/mm.</example>
    public static ForcePerLength StripRelease(
        Pressure pressure,
        Length width,
        Length thickness,
        Pressure modulus,
        double poisson
    )
    {
        var (W, t) = Sizes(width, thickness);
        return Release(pressure, modulus, poisson, Math.Pow(W, 4) / (24 * Math.Pow(t, 3)));
    }

    /// <summary>Thinnest laminate that holds a pressure over a round hole.</summary>
    /// <remarks>
    /// <para>Formula: <see cref="RoundHole"/> solved for t by bisection</para>
    /// <para>Symbols: those of <see cref="RoundHole"/>.</para>
    /// <para>Validity: as <see cref="RoundHole"/>. With t the pressure tends to f √(γ π E/((1 − ν²) d)); above it no thickness helps.</para>
    /// <para>Reference: as <see cref="RoundHole"/>.</para>
    /// </remarks>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="hole">Hole diameter d.</param>
    /// <param name="bond">Moduli, toughness and service factor.</param>
    /// <returns>Thickness t; nothing where no thickness holds it.</returns>
    /// <exception cref="ImpossibleInputException">A size or modulus of 0, or a value that is not finite.</exception>
    /// <example>P 1 MPa, d 25 mm, the rest as the round hole's example: 2.167 mm.</example>
    public static Length? ForRoundHole(Pressure pressure, Length hole, LaminateBond bond) =>
        Thinnest(pressure, t => RoundHole(hole, t, bond));

    /// <summary>Thinnest laminate that holds a pressure over a slot.</summary>
    /// <remarks>
    /// <para>Formula: <see cref="Slot"/> solved for t by bisection</para>
    /// <para>Symbols: those of <see cref="Slot"/>.</para>
    /// <para>Validity: as <see cref="Slot"/>.</para>
    /// <para>Reference: as <see cref="Slot"/>.</para>
    /// </remarks>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="width">Width of the slot W.</param>
    /// <param name="bond">Moduli, toughness and service factor.</param>
    /// <returns>Thickness t; nothing where no thickness holds it.</returns>
    /// <exception cref="ImpossibleInputException">A size or modulus of 0, or a value that is not finite.</exception>
    /// <example>P 1 MPa, W 25 mm, the rest as the round hole's example: 4.65 mm.</example>
    public static Length? ForSlot(Pressure pressure, Length width, LaminateBond bond) =>
        Thinnest(pressure, t => Slot(width, t, bond));

    private static Length? Thinnest(Pressure pressure, Func<Length, Pressure> holds)
    {
        Require.NotNegative("pressureMpa", pressure.Megapascals);
        var (low, high) = (1e-6, 1000.0);
        if (holds(Length.FromMillimeters(high)) < pressure)
            return null;
        for (var i = 0; i < 60; i++)
        {
            var mid = (low + high) / 2;
            if (holds(Length.FromMillimeters(mid)) < pressure)
                low = mid;
            else
                high = mid;
        }
        return Length.FromMillimeters(high);
    }

    private static Pressure Held(LaminateBond bond, double compliance)
    {
        var gamma = Require.Positive("toughnessNMm", bond.Toughness.NewtonsPerMillimeter);
        var f = Require.Between("serviceFactor", bond.ServiceFactor, 0, 1);
        return Pressure.FromMegapascals(f * Math.Sqrt(gamma / compliance));
    }

    private static ForcePerLength Release(Pressure pressure, Pressure modulus, double poisson, double shape)
    {
        var p = Require.NotNegative("pressureMpa", pressure.Megapascals);
        var E = Require.Positive("laminateModulusMpa", modulus.Megapascals);
        var nu = Require.Between("poisson", poisson, 0, 0.5);
        return ForcePerLength.FromNewtonsPerMillimeter(p * p * (1 - nu * nu) / E * shape);
    }

    private static (double Size, double Thickness) Sizes(Length size, Length thickness) =>
        (
            Require.Positive("holeDiameterMm", size.Millimeters),
            Require.Positive("laminateThicknessMm", thickness.Millimeters)
        );

    private static (double E, double G, double nu) Moduli(LaminateBond bond)
    {
        ArgumentNullException.ThrowIfNull(bond);
        return (
            Require.Positive("laminateModulusMpa", bond.Modulus.Megapascals),
            Require.Positive("shearModulusMpa", bond.ShearModulus.Megapascals),
            Require.Between("poisson", bond.Poisson, 0, 0.5)
        );
    }
}
