using UnitsNet;

namespace RepairOrders.Engineering.Joints;

/// <summary>Tension and contact pressure at one place of a band, seen from its fastener.</summary>
/// <param name="Away">Angle from the nearest tightened fastener.</param>
/// <param name="Tension">Band tension there.</param>
/// <param name="Contact">Pressure under the band there.</param>
public sealed record ArcPoint(Angle Away, Force Tension, Pressure Contact);

/// <summary>Bands as thin rings: what they press with, what friction takes away, and how many are needed.</summary>
public static class BandTension
{
    /// <summary>Pressure under a tensioned band, by the balance of half a thin ring.</summary>
    /// <remarks>
    /// <para>Formula: p = T/(r w)</para>
    /// <para>Symbols: p contact pressure, MPa; T band tension, N; r contact radius under the band, mm; w band width, mm.</para>
    /// <para>Validity: band thin against its radius; away from the edges of an arc plate.</para>
    /// <para>Reference: force balance 2 T = 2 r w p, derived here.</para>
    /// </remarks>
    /// <param name="tension">Band tension T.</param>
    /// <param name="radius">Contact radius r, not the nominal bore.</param>
    /// <param name="width">Band width w.</param>
    /// <returns>Contact pressure p.</returns>
    /// <exception cref="ImpossibleInputException">A value that is not finite, a negative tension, or a radius or width of 0.</exception>
    /// <example>T 3000 N, r 61.65 mm, w 19 mm: p = 2.561 MPa.</example>
    public static Pressure ContactPressure(Force tension, Length radius, Length width)
    {
        var T = Require.NotNegative("tensionN", tension.Newtons);
        var r = Require.Positive("contactRadiusMm", radius.Millimeters);
        var w = Require.Positive("bandWidthMm", width.Millimeters);
        return Pressure.FromMegapascals(T / (r * w));
    }

    /// <summary>Tension at the fastener over tension further round, by the capstan equation.</summary>
    /// <remarks>
    /// <para>Formula: T0/T = exp(μ φ)</para>
    /// <para>Symbols: T0 tension at the fastener, N; T tension after the angle φ, rad; μ coefficient of friction, -.</para>
    /// <para>Validity: the band slides everywhere; μ 0.15 to 0.3 steel on steel (from memory), more on rust or galled stainless.</para>
    /// <para>Reference: belt friction (Euler, Eytelwein), any text on statics.</para>
    /// </remarks>
    /// <param name="friction">Coefficient of friction μ [-].</param>
    /// <param name="away">Angle φ from the nearest tightened fastener.</param>
    /// <returns>Ratio T0/T, 1 and more [-].</returns>
    /// <exception cref="ImpossibleInputException">Negative or not finite.</exception>
    /// <example>μ 0.3 over π: 2.57; over 2 π: 6.59.</example>
    public static double CapstanRatio(double friction, Angle away)
    {
        var mu = Require.Between("friction", friction, 0, 2);
        var phi = Require.Between("angleRad", away.Radians, 0, 100);
        return Math.Exp(mu * phi);
    }

    /// <summary>Mean tension over an arc as a share of that at the fastener, by the capstan equation.</summary>
    /// <remarks>
    /// <para>Formula: T̄/T0 = (1 − exp(−μ φ))/(μ φ)</para>
    /// <para>Symbols: T̄ mean tension, N; T0 tension at the fastener, N; μ coefficient of friction, -; φ arc, rad.</para>
    /// <para>Validity: as <see cref="CapstanRatio"/>.</para>
    /// <para>Reference: integral of the capstan equation, derived here.</para>
    /// </remarks>
    /// <param name="friction">Coefficient of friction μ [-].</param>
    /// <param name="arc">Arc φ from the fastener.</param>
    /// <returns>Share of the tension at the fastener, 0 to 1 [-].</returns>
    /// <exception cref="ImpossibleInputException">Negative or not finite.</exception>
    /// <example>μ 0.3 over π: 0.648.</example>
    public static double MeanShare(double friction, Angle arc)
    {
        var x = Math.Log(CapstanRatio(friction, arc));
        return x < 1e-9 ? 1 : (1 - Math.Exp(-x)) / x;
    }

    /// <summary>Greatest tension a band may be given, two thirds of yield over its section.</summary>
    /// <remarks>
    /// <para>Formula: T = 2/3 Sy w t e</para>
    /// <para>Symbols: Sy specified minimum yield, MPa; w width, mm; t thickness, mm; e efficiency of splice or fastener end, -.</para>
    /// <para>Validity: annealed minimum yield unless a certificate says otherwise; 304 and 316 205 MPa, L grades 170 MPa (ASTM A240).</para>
    /// <para>Reference: two thirds of yield, derived here; the fastener's own limit stands apart.</para>
    /// </remarks>
    /// <param name="yield">Specified minimum yield Sy.</param>
    /// <param name="width">Band width w.</param>
    /// <param name="thickness">Band thickness t.</param>
    /// <param name="efficiency">Efficiency e of splice or fastener end [-].</param>
    /// <returns>Allowable tension.</returns>
    /// <exception cref="ImpossibleInputException">A size or stress of 0, or an efficiency outside 0 to 1.</exception>
    /// <example>205 MPa, 19 × 0.76 mm, e 1: 1973.5 N.</example>
    public static Force Allowable(Pressure yield, Length width, Length thickness, double efficiency)
    {
        var Sy = Require.Positive("bandYieldMpa", yield.Megapascals);
        var w = Require.Positive("bandWidthMm", width.Millimeters);
        var t = Require.Positive("bandThicknessMm", thickness.Millimeters);
        var e = Require.Between("jointEfficiency", efficiency, 0, 1);
        return Force.FromNewtons(2.0 / 3 * Sy * w * t * e);
    }

    /// <summary>
    /// Bands needed so that the plate presses everywhere with the fluid's pressure and a seal stress on top, whatever of the
    /// interface has come loose: no bond and no small hole is credited.
    /// </summary>
    /// <remarks>
    /// <para>Formula: n = max(2, ⌈(1 + m) P r w/(T exp(−μ φ))⌉)</para>
    /// <para>Symbols: m putty factor, -; P greatest gauge pressure at the patch, MPa; r contact radius, mm; w axial length of the
    /// plate, mm; T tension left at the fastener, N; μ friction, -; φ angle to the farthest edge of the plate, rad.</para>
    /// <para>Validity: plate stiff enough between bands; layers counted singly; bands must also fit (<see cref="BandsThatFit"/>).</para>
    /// <para>Reference: conservative envelope in the form of ASME VIII-1 Appendix 2 (H + Hp with the whole plate as seal), derived here.</para>
    /// </remarks>
    /// <param name="pressure">Greatest gauge pressure P.</param>
    /// <param name="puttyFactor">Putty factor m [-].</param>
    /// <param name="radius">Contact radius r.</param>
    /// <param name="plateLength">Axial length of the plate w.</param>
    /// <param name="tension">Tension left at the fastener T.</param>
    /// <param name="friction">Coefficient of friction μ [-].</param>
    /// <param name="away">Angle φ.</param>
    /// <returns>Number of single layers of band.</returns>
    /// <exception cref="ImpossibleInputException">A value that is negative or not finite, or a tension of 0.</exception>
    /// <example>P 1 MPa, m 1, r 61.65 mm, w 120 mm, T 1973.5 N, no friction: 8 bands; μ 0.2 over π/2: 11.</example>
    public static int BandsNeeded(
        Pressure pressure,
        double puttyFactor,
        Length radius,
        Length plateLength,
        Force tension,
        double friction,
        Angle away
    )
    {
        var need = Load(pressure, puttyFactor, radius, plateLength).Newtons;
        var each = Require.Positive("tensionN", tension.Newtons) / CapstanRatio(friction, away);
        return (int)Math.Clamp(Math.Ceiling(Math.Round(need / each, 9)), 2, 1_000_000);
    }

    /// <summary>Band force that a plate needs on the fluid's pressure and its seal stress, over half a ring.</summary>
    /// <remarks>
    /// <para>Formula: F = (1 + m) P r w</para>
    /// <para>Symbols: m putty factor, -; P gauge pressure, MPa; r contact radius, mm; w axial length of the plate, mm.</para>
    /// <para>Validity: full pressure over the whole plate and the seal stress m P on all of it.</para>
    /// <para>Reference: as <see cref="BandsNeeded"/>.</para>
    /// </remarks>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="puttyFactor">Putty factor m [-].</param>
    /// <param name="radius">Contact radius r.</param>
    /// <param name="plateLength">Axial length of the plate w.</param>
    /// <returns>Sum of the tensions of all layers at the farthest edge of the plate.</returns>
    /// <exception cref="ImpossibleInputException">A value that is negative or not finite.</exception>
    /// <example>P 1 MPa, m 1, r 61.65 mm, w 120 mm: 14 796 N.</example>
    public static Force Load(Pressure pressure, double puttyFactor, Length radius, Length plateLength)
    {
        var P = Require.NotNegative("pressureBar", pressure.Bars) / 10;
        var m = Require.NotNegative("puttyFactor", puttyFactor);
        var r = Require.Positive("contactRadiusMm", radius.Millimeters);
        var w = Require.Positive("plateLengthMm", plateLength.Millimeters);
        return Force.FromNewtons((1 + m) * P * r * w);
    }

    /// <summary>Gauge pressure that a number of bands resists.</summary>
    /// <remarks>
    /// <para>Formula: P = n T exp(−μ φ)/((1 + m) r w)</para>
    /// <para>Symbols: n layers of band, -; the others as <see cref="BandsNeeded"/>.</para>
    /// <para>Validity: as <see cref="BandsNeeded"/>.</para>
    /// <para>Reference: as <see cref="BandsNeeded"/>.</para>
    /// </remarks>
    /// <param name="layers">Layers of band n.</param>
    /// <param name="tension">Tension left at the fastener T.</param>
    /// <param name="friction">Coefficient of friction μ [-].</param>
    /// <param name="away">Angle φ.</param>
    /// <param name="puttyFactor">Putty factor m [-].</param>
    /// <param name="radius">Contact radius r.</param>
    /// <param name="plateLength">Axial length of the plate w.</param>
    /// <returns>Gauge pressure P.</returns>
    /// <exception cref="ImpossibleInputException">A value that is negative or not finite.</exception>
    /// <example>4 bands of 1973.5 N, one fastener, μ 0.2 over π, m 1, r 61.65 mm, w 120 mm: 0.285 MPa.</example>
    public static Pressure Resisted(
        int layers,
        Force tension,
        double friction,
        Angle away,
        double puttyFactor,
        Length radius,
        Length plateLength
    )
    {
        var n = Require.NotNegative("layers", layers);
        var T = Require.NotNegative("tensionN", tension.Newtons);
        var perMegapascal = Load(Pressure.FromMegapascals(1), puttyFactor, radius, plateLength).Newtons;
        return Pressure.FromMegapascals(n * T / CapstanRatio(friction, away) / perMegapascal);
    }

    /// <summary>Bands that fit side by side on a plate.</summary>
    /// <param name="plateLength">Axial length of the plate.</param>
    /// <param name="width">Band width.</param>
    /// <param name="gap">Clear gap between bands.</param>
    /// <returns>⌊(plate + gap)/(width + gap)⌋. 120 mm, 19 mm, 2 mm: 5.</returns>
    /// <exception cref="ImpossibleInputException">A width of 0 or a negative length.</exception>
    public static int BandsThatFit(Length plateLength, Length width, Length gap)
    {
        var L = Require.Positive("plateLengthMm", plateLength.Millimeters);
        var w = Require.Positive("bandWidthMm", width.Millimeters);
        var g = Require.NotNegative("bandGapMm", gap.Millimeters);
        return (int)Math.Min(1_000_000, Math.Floor(Math.Round((L + g) / (w + g), 9)));
    }

    /// <summary>Stress a band loses when it grows more with heat than the pipe it holds.</summary>
    /// <remarks>
    /// <para>Formula: Δσ = E (αb − αp)(T2 − T1)</para>
    /// <para>Symbols: E modulus of the band, MPa; αb, αp expansion of band and pipe, 1/K; T1 temperature at fitting, T2 in service.</para>
    /// <para>Validity: band and pipe at one temperature; elastic. Negative means the band gains.</para>
    /// <para>Reference: free expansion and Hooke's law, derived here.</para>
    /// </remarks>
    /// <param name="modulus">Modulus of the band E.</param>
    /// <param name="band">Expansion of the band αb [1/K].</param>
    /// <param name="pipe">Expansion of the pipe αp [1/K].</param>
    /// <param name="rise">Temperature in service less that at fitting.</param>
    /// <returns>Stress lost Δσ.</returns>
    /// <exception cref="ImpossibleInputException">A value that is not finite, or a modulus of 0.</exception>
    /// <example>193 GPa, 16.5 and 12.0 × 10⁻⁶/K, 60 K: 52.1 MPa.</example>
    public static Pressure HeatSlackening(Pressure modulus, double band, double pipe, TemperatureDelta rise)
    {
        var E = Require.Positive("bandModulusMpa", modulus.Megapascals);
        Require.Between("bandExpansion", band, 0, 1e-3);
        Require.Between("pipeExpansion", pipe, 0, 1e-3);
        var dT = Require.Finite("temperatureRiseK", rise.Kelvins);
        return Pressure.FromMegapascals(E * (band - pipe) * dT);
    }

    /// <summary>Line load with which a band digs into the edge of an arc plate. It seals nothing and is never credited.</summary>
    /// <remarks>
    /// <para>Formula: F = 2 T sin(δ/2), cos δ = D/Ds</para>
    /// <para>Symbols: T tension, N; δ kink of the band at the plate's edge, rad; D outside diameter, mm; Ds diameter over the plate, mm.</para>
    /// <para>Validity: plate of less than a full circle, band on bare pipe beside it.</para>
    /// <para>Reference: force balance at the kink, derived here.</para>
    /// </remarks>
    /// <param name="tension">Band tension T.</param>
    /// <param name="outsideDiameter">Outside diameter of the pipe D.</param>
    /// <param name="overPlate">Diameter over the plate Ds.</param>
    /// <returns>Load on each edge from each band.</returns>
    /// <exception cref="ImpossibleInputException">A plate smaller than the pipe, or a value that is not finite.</exception>
    /// <example>1973.5 N, D 114.3 mm, Ds 123.3 mm: 754 N.</example>
    public static Force EdgeLoad(Force tension, Length outsideDiameter, Length overPlate)
    {
        var T = Require.NotNegative("tensionN", tension.Newtons);
        var D = Require.Positive("outsideDiameterMm", outsideDiameter.Millimeters);
        var Ds = Require.Between("diameterOverPlateMm", overPlate.Millimeters, D, 1e6);
        return Force.FromNewtons(2 * T * Math.Sin(Math.Acos(D / Ds) / 2));
    }

    /// <summary>External pressure at which a long thin ring collapses.</summary>
    /// <remarks>
    /// <para>Formula: pcr = 2 E/(1 − ν²) (t/D)³</para>
    /// <para>Symbols: E modulus, MPa; ν Poisson's ratio, -; t wall, mm; D outside diameter, mm.</para>
    /// <para>Validity: long, round, elastic, thin (t &lt; D/20); on the safe side for a short loaded length. Use a third of it.</para>
    /// <para>Reference: Bresse's ring formula, in any text on shells.</para>
    /// </remarks>
    /// <param name="modulus">Modulus of the pipe E.</param>
    /// <param name="poisson">Poisson's ratio ν [-].</param>
    /// <param name="wall">Wall t.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <returns>Collapse pressure, outside over inside.</returns>
    /// <exception cref="ImpossibleInputException">A size of 0, or a Poisson's ratio outside 0 to 0.5.</exception>
    /// <example>207 GPa, ν 0.3, 2 mm on 114.3 mm: 2.44 MPa.</example>
    public static Pressure RingCollapse(Pressure modulus, double poisson, Length wall, Length outsideDiameter)
    {
        var E = Require.Positive("pipeModulusMpa", modulus.Megapascals);
        var nu = Require.Between("poisson", poisson, 0, 0.5);
        var t = Require.NotNegative("wallMm", wall.Millimeters);
        var D = Require.Positive("outsideDiameterMm", outsideDiameter.Millimeters);
        return Pressure.FromMegapascals(2 * E / (1 - nu * nu) * Math.Pow(t / D, 3));
    }

    /// <summary>Tension and contact pressure round the arc, from the fastener to the farthest point.</summary>
    /// <param name="tension">Tension at the fastener.</param>
    /// <param name="friction">Coefficient of friction, without unit.</param>
    /// <param name="farthest">Angle to the farthest point.</param>
    /// <param name="radius">Contact radius.</param>
    /// <param name="width">Band width.</param>
    /// <param name="steps">Steps to divide the arc into.</param>
    /// <returns>One point more than <paramref name="steps"/>, the fastener first.</returns>
    /// <exception cref="ImpossibleInputException">A value that is negative or not finite.</exception>
    public static IReadOnlyList<ArcPoint> RoundTheArc(
        Force tension,
        double friction,
        Angle farthest,
        Length radius,
        Length width,
        int steps
    )
    {
        Require.Between("steps", steps, 1, 10_000);
        return [.. Enumerable.Range(0, steps + 1).Select(i => Point(farthest * i / steps))];

        ArcPoint Point(Angle away)
        {
            var left = tension / CapstanRatio(friction, away);
            return new(away, left, ContactPressure(left, radius, width));
        }
    }
}
