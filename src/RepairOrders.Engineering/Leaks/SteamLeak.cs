using UnitsNet;

namespace RepairOrders.Engineering.Leaks;

/// <summary>How much dry saturated steam blows out of a hole. All pressures are absolute.</summary>
public static class SteamLeak
{
    /// <summary>Outside over inside absolute pressure above which Napier's rule no longer holds, -.</summary>
    public const double CriticalRatio = 0.577;

    // 51.43 lb/h for a square inch and a pound a square inch, in kg/(s m² Pa).
    private const double Napier = 51.43 * 0.45359237 / 3600 / (0.0254 * 0.0254) / 6894.757293168;

    /// <summary>Mass flow of dry saturated steam through a hole, by Napier's rule with a discharge coefficient.</summary>
    /// <remarks>
    /// <para>Formula: W = 51.43·A·P·Cd.</para>
    /// <para>Symbols: A area, in²; P inside absolute pressure, psi; Cd discharge coefficient, -; W mass flow, lb/h.</para>
    /// <para>Validity: dry saturated steam, outside/inside absolute pressure ≤ 0.577; above that ratio it is an upper bound. P not above the
    /// outside pressure gives 0.</para>
    /// <para>Reference: Napier's rule, as in US DOE Steam Tip Sheet 1 (which has Cd 0.729 built in). The often-copied W = 24.24·P·D² already
    /// holds Cd 0.60: no second coefficient there.</para>
    /// </remarks>
    /// <param name="hole">Area of the hole.</param>
    /// <param name="insideAbs">Inside pressure P, absolute.</param>
    /// <param name="outsideAbs">Outside pressure, absolute.</param>
    /// <param name="dischargeCoefficient">Discharge coefficient Cd [-].</param>
    /// <returns>Mass flow.</returns>
    /// <exception cref="ImpossibleInputException">An area, pressure or coefficient that cannot be.</exception>
    /// <example>1/4 in round, 50 psig (64.7 psia), Cd 0.60: 51.43 × 0.049087 × 64.7 × 0.60 = 98 lb/h.</example>
    public static MassFlow Flow(Area hole, Pressure insideAbs, Pressure outsideAbs, double dischargeCoefficient)
    {
        var A = Hole.SquareMetres(hole);
        var P = Require.Between("insidePressureBarAbs", insideAbs.Bars, 0, 221) * 1e5;
        var Pb = Require.Between("outsidePressureBarAbs", outsideAbs.Bars, 0, 1e5) * 1e5;
        var Cd = Hole.Coefficient(dischargeCoefficient);
        return P <= Pb ? MassFlow.Zero : MassFlow.FromKilogramsPerSecond(Napier * A * P * Cd);
    }
}
