using UnitsNet;

namespace RepairOrders.Engineering.Leaks;

/// <summary>How much gas blows out of a hole, at the speed of sound or below it. All pressures are absolute.</summary>
public static class GasLeak
{
    /// <summary>Molar gas constant, J/(mol K): CODATA 2018, exact.</summary>
    private const double Rm = 8.314462618;

    /// <summary>Pressure ratio below which flow through a hole is choked.</summary>
    /// <remarks>
    /// <para>Formula: rc = (2/(k + 1))^(k/(k − 1)).</para>
    /// <para>Symbols: k ratio of specific heats, -; rc outside over inside absolute pressure, -.</para>
    /// <para>Validity: ideal gas, 1 &lt; k ≤ 1.7.</para>
    /// <para>Reference: isentropic nozzle flow, as in any text of gas dynamics; 0.528 for air is printed in orifice makers' tutorials.</para>
    /// </remarks>
    /// <param name="heatRatio">Ratio of specific heats k [-].</param>
    /// <returns>Critical pressure ratio rc [-].</returns>
    /// <exception cref="ImpossibleInputException">A ratio outside 1.01 to 1.7.</exception>
    /// <example>Air, k = 1.4: (2/2.4)^3.5 = 0.528.</example>
    public static double CriticalRatio(double heatRatio)
    {
        var k = Require.Between("heatRatio", heatRatio, 1.01, 1.7);
        return Math.Pow(2 / (k + 1), k / (k - 1));
    }

    /// <summary>Mass flow of gas through a hole, choked or not, by isentropic nozzle flow with a discharge coefficient.</summary>
    /// <remarks>
    /// <para>Formula: choked (Pb/P0 ≤ rc): m = Cd·A·P0·√(k/(Z·R·T))·(2/(k + 1))^((k + 1)/(2(k − 1))); else with r = Pb/P0:
    /// m = Cd·A·P0·√(2k/((k − 1)·Z·R·T)·(r^(2/k) − r^((k + 1)/k))).</para>
    /// <para>Symbols: Cd discharge coefficient, -; A area, m²; P0 inside, Pb outside absolute pressure, Pa; T inside temperature, K; k ratio of
    /// specific heats, -; Z compressibility, -; R = 8.314463/M gas constant, J/(kg K); M molar mass, kg/mol; m mass flow, kg/s.</para>
    /// <para>Validity: ideal gas corrected by Z, no condensation, a line that can feed the hole. P0 ≤ Pb gives 0.</para>
    /// <para>Reference: isentropic nozzle flow; TNO Yellow Book CPR 14E, section 2.5.2.3 (form).</para>
    /// </remarks>
    /// <param name="hole">Area of the hole.</param>
    /// <param name="insideAbs">Inside pressure P0, absolute.</param>
    /// <param name="outsideAbs">Outside pressure Pb, absolute.</param>
    /// <param name="temperature">Temperature inside.</param>
    /// <param name="gas">The gas.</param>
    /// <param name="dischargeCoefficient">Discharge coefficient Cd [-].</param>
    /// <returns>Mass flow.</returns>
    /// <exception cref="ImpossibleInputException">An area, pressure, temperature, gas or coefficient that cannot be.</exception>
    /// <example>Hydrogen, 50 bar absolute, 4.131 kg/m³, k 1.427, 100 mm, Cd 0.62: 15.25 kg/s.</example>
    public static MassFlow Flow(
        Area hole,
        Pressure insideAbs,
        Pressure outsideAbs,
        Temperature temperature,
        Gas gas,
        double dischargeCoefficient
    )
    {
        ArgumentNullException.ThrowIfNull(gas);
        var A = Hole.SquareMetres(hole);
        var P0 = Require.Between("insidePressureBarAbs", insideAbs.Bars, 0, 1e5) * 1e5;
        var Pb = Require.Between("outsidePressureBarAbs", outsideAbs.Bars, 0, 1e5) * 1e5;
        var T = Require.Between("fluidTemperatureC", temperature.DegreesCelsius, -270, 3000) + 273.15;
        var k = Require.Between("heatRatio", gas.HeatRatio, 1.01, 1.7);
        var Z = Require.Between("compressibility", gas.Compressibility, 0.1, 5);
        var R = SpecificConstant(gas);
        var Cd = Hole.Coefficient(dischargeCoefficient);
        if (P0 <= Pb)
        {
            return MassFlow.Zero;
        }

        var r = Pb / P0;
        var m =
            r <= CriticalRatio(k)
                ? Cd * A * P0 * Math.Sqrt(k / (Z * R * T)) * Math.Pow(2 / (k + 1), (k + 1) / (2 * (k - 1)))
                : Cd * A * P0 * Math.Sqrt(2 * k / ((k - 1) * Z * R * T) * Difference(r, k));
        return MassFlow.FromKilogramsPerSecond(m);
    }

    /// <summary>Volume of a gas flow once it has come to rest outside: free gas.</summary>
    /// <remarks>
    /// <para>Formula: Q = m·R·T/P.</para>
    /// <para>Symbols: m mass flow, kg/s; R = 8.314463/M gas constant, J/(kg K); T temperature, K; P absolute pressure, Pa; Q volume flow, m³/s.</para>
    /// <para>Validity: ideal gas at the state it is counted at.</para>
    /// <para>Reference: ideal gas law.</para>
    /// </remarks>
    /// <param name="flow">Mass flow.</param>
    /// <param name="gas">The gas.</param>
    /// <param name="pressureAbs">Pressure it is counted at, absolute.</param>
    /// <param name="temperature">Temperature it is counted at.</param>
    /// <returns>Volume flow.</returns>
    /// <exception cref="ImpossibleInputException">A flow, pressure, temperature or gas that cannot be.</exception>
    /// <example>0.0590 kg/s of air at 14.7 psia and 70 °F: 0.0492 m³/s, 104.2 cubic feet a minute.</example>
    public static VolumeFlow FreeVolume(MassFlow flow, Gas gas, Pressure pressureAbs, Temperature temperature)
    {
        ArgumentNullException.ThrowIfNull(gas);
        var m = Require.Between("massFlowKgS", flow.KilogramsPerSecond, 0, 1e12);
        var P = Require.Between("pressureBarAbs", pressureAbs.Bars, 1e-3, 1e5) * 1e5;
        var T = Require.Between("temperatureC", temperature.DegreesCelsius, -270, 3000) + 273.15;
        return VolumeFlow.FromCubicMetersPerSecond(m * SpecificConstant(gas) * T / P);
    }

    // Rounding may carry the difference a hair below zero where both pressures are all but equal.
    private static double Difference(double r, double k) => Math.Max(0, Math.Pow(r, 2 / k) - Math.Pow(r, (k + 1) / k));

    internal static double SpecificConstant(Gas gas) =>
        Rm / Require.Between("molarMassKgMol", gas.MolarMass.KilogramsPerMole, 1e-3, 1);
}
