using RepairOrders.Engineering.Strength;
using UnitsNet;

namespace RepairOrders.Engineering.ThroughWall;

/// <summary>The pressure a transmission line is cut to while a repair is outstanding.</summary>
public static class PressureCut
{
    /// <summary>Pressure to cut to: the least of the three that the rule names.</summary>
    /// <remarks>
    /// <para>Formula: P = min(0.8 P_found, P_F F, P_F/1.1).</para>
    /// <para>Symbols: P pressure to cut to, MPa; P_found operating pressure at discovery, MPa; P_F predicted failure pressure, MPa; F class design factor, -; all gauge.</para>
    /// <para>Validity: gas transmission lines; the rule lets any one of the three, the least is taken here.</para>
    /// <para>Reference: 49 CFR 192.933(a)(1).</para>
    /// </remarks>
    /// <param name="atDiscovery">Operating pressure at discovery P_found.</param>
    /// <param name="failure">Predicted failure pressure P_F.</param>
    /// <param name="designFactor">Class design factor F [-], above 0 to 1.</param>
    /// <returns>Pressure P.</returns>
    /// <exception cref="ImpossibleInputException">A pressure is negative or the factor is out of range.</exception>
    /// <example>7260 kPa found, 10 847 kPa failure, F 0.72: min(5808, 7810, 9861) = 5808 kPa.</example>
    public static Pressure To(Pressure atDiscovery, Pressure failure, double designFactor)
    {
        var found = Take.Gauge("operatingPressureBar", atDiscovery) * 10;
        var P_F = Take.Gauge("failurePressureBar", failure) * 10;
        var F = Require.Positive("designFactor", Require.Between("designFactor", designFactor, 0, 1));
        return Pressure.FromBars(Math.Min(0.8 * found, Math.Min(P_F * F, P_F / 1.1)));
    }
}
