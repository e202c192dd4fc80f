using UnitsNet;

namespace RepairOrders.Engineering.Leaks;

/// <summary>How much liquid runs out of a hole. For risk and loss, not for design.</summary>
public static class LiquidLeak
{
    /// <summary>Mass flow of liquid through a hole, by Torricelli with a discharge coefficient.</summary>
    /// <remarks>
    /// <para>Formula: m = Cd·A·√(2·ρ·Δp).</para>
    /// <para>Symbols: Cd discharge coefficient, -; A area of the hole, m²; ρ density, kg/m³; Δp inside less outside pressure, Pa; m mass flow, kg/s.</para>
    /// <para>Validity: turbulent, no flashing; for a liquid that flashes it is an upper bound. Δp ≤ 0 gives 0.</para>
    /// <para>Reference: Torricelli 1643, as in any text of hydraulics; sharp-edged holes have Cd 0.60 to 0.62.</para>
    /// </remarks>
    /// <param name="hole">Area of the hole.</param>
    /// <param name="pressureDrop">Inside less outside pressure.</param>
    /// <param name="density">Density of the liquid.</param>
    /// <param name="dischargeCoefficient">Discharge coefficient Cd [-].</param>
    /// <returns>Mass flow.</returns>
    /// <exception cref="ImpossibleInputException">An area, pressure, density or coefficient that cannot be.</exception>
    /// <example>10 mm round, 20 bar, 1000 kg/m³, Cd 0.61: 0.61 × 7.854e−5 × √(2 × 1000 × 2e6) = 3.0300 kg/s.</example>
    public static MassFlow Flow(Area hole, Pressure pressureDrop, Density density, double dischargeCoefficient)
    {
        var A = Hole.SquareMetres(hole);
        var dp = Require.Between("pressureDropBar", pressureDrop.Bars, -1e5, 1e5) * 1e5;
        var rho = Require.Between("densityKgM3", density.KilogramsPerCubicMeter, 1, 30_000);
        var Cd = Hole.Coefficient(dischargeCoefficient);
        return MassFlow.FromKilogramsPerSecond(Cd * A * Math.Sqrt(2 * rho * Math.Max(0, dp)));
    }

    /// <summary>Leakage at another pressure, by the leakage exponent of water distribution.</summary>
    /// <remarks>
    /// <para>Formula: Q2/Q1 = (P2/P1)^N1.</para>
    /// <para>Symbols: Q1, Q2 flows at the gauge pressures P1, P2; N1 leakage exponent, -.</para>
    /// <para>Validity: 0.5 ≤ N1 ≤ 2.5: 0.5 a rigid round hole, 1.0 a mean of networks, up to 2.5 a slit that opens.</para>
    /// <para>Reference: van Zyl, Clayton, The effect of pressure on leakage in water distribution systems, Water Management 160 (2007).</para>
    /// </remarks>
    /// <param name="from">Gauge pressure P1 at which the leakage is known.</param>
    /// <param name="to">Gauge pressure P2.</param>
    /// <param name="exponent">Leakage exponent N1 [-].</param>
    /// <returns>Ratio of the leakage at P2 to that at P1 [-].</returns>
    /// <exception cref="ImpossibleInputException">A pressure not above 0, or an exponent outside 0.5 to 2.5.</exception>
    /// <example>Pressure halved, N1 = 0.5: 0.5^0.5 = 0.707, 29 % less.</example>
    public static double AtPressure(Pressure from, Pressure to, double exponent)
    {
        var P1 = Require.Between("fromPressureBar", Require.Positive("fromPressureBar", from.Bars), 1e-6, 1e5);
        var P2 = Require.Between("toPressureBar", to.Bars, 0, 1e5);
        return Math.Pow(P2 / P1, Require.Between("leakageExponent", exponent, 0.5, 2.5));
    }

    /// <summary>Reynolds number of a leak, to see whether a discharge coefficient holds.</summary>
    /// <remarks>
    /// <para>Formula: Re = 4·m/(π·d·μ), d = √(4·A/π).</para>
    /// <para>Symbols: m mass flow, kg/s; A area of the hole, m²; d its equivalent diameter, m; μ dynamic viscosity, Pa s.</para>
    /// <para>Validity: a compact hole; a long slit has a smaller hydraulic diameter.</para>
    /// <para>Reference: definition; below about 10 000 the coefficient of a sharp-edged hole is no longer steady (from memory).</para>
    /// </remarks>
    /// <param name="flow">Mass flow.</param>
    /// <param name="hole">Area of the hole.</param>
    /// <param name="viscosity">Dynamic viscosity.</param>
    /// <returns>Reynolds number [-].</returns>
    /// <exception cref="ImpossibleInputException">A flow, area or viscosity that cannot be.</exception>
    /// <example>3.03 kg/s of water, 1.002 mPa s, through 10 mm: 4 × 3.03/(π × 0.01 × 0.001002) = 385 000.</example>
    public static double Reynolds(MassFlow flow, Area hole, DynamicViscosity viscosity)
    {
        var m = Require.Between("massFlowKgS", flow.KilogramsPerSecond, 0, 1e9);
        var d = Math.Sqrt(4 * Hole.SquareMetres(hole) / Math.PI);
        var mu = Require.Between("viscosityMpaS", viscosity.MillipascalSeconds, 1e-6, 1e9) / 1000;
        return 4 * m / (Math.PI * d * mu);
    }
}
