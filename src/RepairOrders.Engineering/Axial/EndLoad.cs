using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using UnitsNet;

namespace RepairOrders.Engineering.Axial;

/// <summary>What pulls a pipe apart, and what its wall can bear.</summary>
public static class EndLoad
{
    /// <summary>Thrust on a repair that encloses the pipe, if the pipe parts under it.</summary>
    /// <remarks>
    /// <para>Formula: F = P (π/4) Ds².</para>
    /// <para>Symbols: F thrust, N; P gauge pressure, design or test, surge included, MPa; Ds seal diameter, mm, not less than the pipe's outside.</para>
    /// <para>Validity: the seal's diameter counts, not the bore.</para>
    /// <para>Reference: pressure times area, first principles; the area as in the UK HSE note on leak sealing clamps.</para>
    /// </remarks>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="sealDiameter">Seal diameter Ds.</param>
    /// <returns>Thrust F.</returns>
    /// <exception cref="ImpossibleInputException">Pressure is negative or the diameter is not above 0.</exception>
    /// <example>2 MPa, 168.3 mm: 2 × π/4 × 168.3² = 44 493 N.</example>
    public static Force Thrust(Pressure pressure, Length sealDiameter)
    {
        var P = Take.Gauge("pressureBar", pressure);
        var Ds = Require.Between("sealDiameterMm", sealDiameter.Millimeters, 1, 1e6);
        return Force.FromNewtons(P * Math.PI / 4 * Ds * Ds);
    }

    /// <summary>Wall that a thrust alone needs, all round.</summary>
    /// <remarks>
    /// <para>Formula: t_ax = F/(π Dm S).</para>
    /// <para>Symbols: t_ax wall, mm; F end load, N; Dm mean diameter, mm; S allowable stress, MPa.</para>
    /// <para>Validity: first order, thin wall, even all round.</para>
    /// <para>Reference: force over area, first principles.</para>
    /// </remarks>
    /// <param name="load">End load F.</param>
    /// <param name="meanDiameter">Mean diameter Dm.</param>
    /// <param name="allowableStress">Allowable stress S.</param>
    /// <returns>Wall t_ax.</returns>
    /// <exception cref="ImpossibleInputException">The load is negative, or diameter or stress is not above 0.</exception>
    /// <example>44 493 N, 161.19 mm, 138 MPa: 0.6367 mm.</example>
    public static Length WallNeeded(Force load, Length meanDiameter, Pressure allowableStress)
    {
        var F = Require.Between("endLoadKn", load.Kilonewtons, 0, 1e12) * 1000;
        var Dm = Require.Between("meanDiameterMm", meanDiameter.Millimeters, 0.1, 1e6);
        var S = Take.Stress("allowableStressMpa", allowableStress);
        return Length.FromMillimeters(F / (Math.PI * Dm * S));
    }

    /// <summary>End load that a wall bears which is thinned or gone over part of its circumference, when its sound part is at the
    /// allowable stress; the bending that a one-sided loss brings is in it.</summary>
    /// <remarks>
    /// <para>Formula: F = S π Dm t (1 − (η θ + 2 asin(½ η sin θ))/π), θ = c/D, η = 1 − t_mm/t.</para>
    /// <para>Symbols: F end load, N; S allowable stress, MPa; Dm = D − t mean diameter, mm; t sound wall, mm; t_mm least wall, mm; c loss round the pipe, mm, at most πD; D outside diameter, mm; θ half angle of the loss, rad.</para>
    /// <para>Validity: ductile pipe, one loss, ends free to turn; exact for no loss, for a through-wall slit and for loss all round.</para>
    /// <para>Reference: net-section plastic collapse of a circumferential part-wall flaw, form of the ductile fracture handbooks (from memory), with the allowable stress for the flow stress.</para>
    /// </remarks>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="soundWall">Sound wall t.</param>
    /// <param name="leastWall">Least wall t_mm; 0 where it is through.</param>
    /// <param name="round">Loss round the pipe c.</param>
    /// <param name="allowableStress">Allowable stress S.</param>
    /// <returns>End load F.</returns>
    /// <exception cref="ImpossibleInputException">Wall, diameter or stress is not above 0, or the loss is negative or longer than the girth.</exception>
    /// <example>168.3 mm, 7.11 mm, 138 MPa, no loss: 138 × π × 161.19 × 7.11 = 496.9 kN; 3.555 mm left all round: half of it.</example>
    public static Force Capacity(
        Length outsideDiameter,
        Length soundWall,
        Length leastWall,
        Length round,
        Pressure allowableStress
    )
    {
        var (D, t) = Shell.Of(outsideDiameter, soundWall);
        var t_mm = Math.Min(t, Take.Extent("remainingWallMm", leastWall));
        var c = Require.Between("circumferentialLengthMm", round.Millimeters, 0, Math.PI * D * (1 + 1e-9));
        var S = Take.Stress("allowableStressMpa", allowableStress);
        var theta = Math.Min(c / D, Math.PI);
        var eta = 1 - t_mm / t;
        var lost = (eta * theta + 2 * Math.Asin(eta * Math.Sin(theta) / 2)) / Math.PI;
        return Force.FromNewtons(S * Math.PI * (D - t) * t * Math.Max(0, 1 - lost));
    }

    /// <summary>Even pull that strains the pipe's far side as much as a bending moment does.</summary>
    /// <remarks>
    /// <para>Formula: F = 4 M/Dm.</para>
    /// <para>Symbols: F pull, N; M bending moment, N·mm; Dm mean diameter, mm.</para>
    /// <para>Validity: thin wall, even all round.</para>
    /// <para>Reference: M/Z = F/A with Z = π Dm² t/4 and A = π Dm t, first principles.</para>
    /// </remarks>
    /// <param name="moment">Bending moment M.</param>
    /// <param name="meanDiameter">Mean diameter Dm.</param>
    /// <returns>Pull F.</returns>
    /// <exception cref="ImpossibleInputException">The moment is negative or the diameter is not above 0.</exception>
    /// <example>1000 N·m, 161.19 mm: 4 × 10⁶/161.19 = 24 815 N.</example>
    public static Force OfBending(Torque moment, Length meanDiameter)
    {
        var M = Require.Between("bendingMomentNm", moment.NewtonMeters, 0, 1e12) * 1000;
        var Dm = Require.Between("meanDiameterMm", meanDiameter.Millimeters, 0.1, 1e6);
        return Force.FromNewtons(4 * M / Dm);
    }

    /// <summary>Pressure rise where a liquid is stopped at once.</summary>
    /// <remarks>
    /// <para>Formula: dP = ρ a Δv.</para>
    /// <para>Symbols: dP pressure rise, Pa; ρ density, kg/m³; a speed of the pressure wave, m/s; Δv change of speed, m/s.</para>
    /// <para>Validity: closure within 2L/a; a about 1000 to 1400 m/s for water in steel pipe.</para>
    /// <para>Reference: Joukowsky (from memory).</para>
    /// </remarks>
    /// <param name="density">Density ρ.</param>
    /// <param name="waveSpeed">Speed of the pressure wave a.</param>
    /// <param name="speedChange">Change of speed Δv.</param>
    /// <returns>Pressure rise dP.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative.</exception>
    /// <example>1000 kg/m³, 1200 m/s, 1.5 m/s: 1.8 MPa.</example>
    public static Pressure Surge(Density density, Speed waveSpeed, Speed speedChange)
    {
        var rho = Require.Between("densityKgM3", density.KilogramsPerCubicMeter, 0, 1e5);
        var a = Require.Between("waveSpeedMS", waveSpeed.MetersPerSecond, 0, 1e5);
        var dv = Require.Between("speedChangeMS", speedChange.MetersPerSecond, 0, 1e4);
        return Pressure.FromPascals(rho * a * dv);
    }
}
