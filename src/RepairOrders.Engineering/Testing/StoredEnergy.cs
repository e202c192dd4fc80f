using RepairOrders.Engineering.Life;
using UnitsNet;

namespace RepairOrders.Engineering.Testing;

/// <summary>Energy that compressed gas holds, and how far away to stand.</summary>
public static class StoredEnergy
{
    private const double JoulesPerKilogram = 4_266_920;
    private const double AtmospherePa = 101_325;

    /// <summary>Energy of compressed gas that expands to the atmosphere without heat.</summary>
    /// <remarks>
    /// <para>Formula: E = Pt V/(k − 1) · (1 − (Pa/Pt)^((k − 1)/k)); for air and nitrogen 2.5 Pt V (1 − (Pa/Pt)^0.286).</para>
    /// <para>Symbols: E energy, J; Pt absolute test pressure, Pa; V volume under pressure, m³; k ratio of specific heats, -; Pa absolute atmosphere, Pa.</para>
    /// <para>Validity: ideal gas. The exponent is reckoned as (k − 1)/k = 2/7; the printed 0.286 gives 0.07 % more.</para>
    /// <para>Reference: ASME PCC-2, Art. 501, Mandatory Appendix II, eq. II-1 and II-2 (public page).</para>
    /// </remarks>
    /// <param name="absolutePressure">Absolute test pressure Pt; gauge pressure and one atmosphere.</param>
    /// <param name="volume">Volume V.</param>
    /// <param name="heatRatio">Ratio of specific heats k [-], over 1 to 2; air and nitrogen 1.4.</param>
    /// <param name="atmosphere">Absolute atmosphere Pa; nothing takes 101 325 Pa.</param>
    /// <returns>Energy E; 0 where the pressure is not above the atmosphere.</returns>
    /// <exception cref="ImpossibleInputException">A pressure is not above 0, the volume is negative, or the ratio is out of range.</exception>
    /// <example>1.1 MPa absolute, 1 m³: 2.5 × 1.1 × 10⁶ × (1 − 0.0921^0.2857) = 1.3587 MJ.</example>
    public static Energy Of(
        Pressure absolutePressure,
        Volume volume,
        double heatRatio = 1.4,
        Pressure? atmosphere = null
    )
    {
        var Pt = Require.Between("testPressureAbsPa", absolutePressure.Pascals, 1e-3, 1e12);
        var V = Require.Between("volumeM3", volume.CubicMeters, 0, 1e9);
        var k = Require.Between("heatRatio", heatRatio, 1.01, 2);
        var Pa = Require.Between("atmosphereAbsPa", atmosphere?.Pascals ?? AtmospherePa, 1e-3, 1e12);
        if (Pt <= Pa)
        {
            return Energy.Zero;
        }
        var left = Reproducible.Exp((k - 1) / k * Reproducible.Log(Pa / Pt));
        return Energy.FromJoules(Pt * V / (k - 1) * (1 - left));
    }

    /// <summary>The mass of TNT of the same energy.</summary>
    /// <remarks>
    /// <para>Formula: TNT = E/4 266 920.</para>
    /// <para>Symbols: TNT mass, kg; E energy, J.</para>
    /// <para>Validity: a measure of energy, no model of the burst.</para>
    /// <para>Reference: ASME PCC-2, Art. 501, Mandatory Appendix II, eq. II-3 (public page).</para>
    /// </remarks>
    /// <param name="energy">Energy E.</param>
    /// <returns>Mass TNT.</returns>
    /// <exception cref="ImpossibleInputException">The energy is negative.</exception>
    /// <example>1.358686 MJ: 0.31842 kg.</example>
    public static Mass Tnt(Energy energy) =>
        Mass.FromKilograms(Require.Between("energyJ", energy.Joules, 0, 1e30) / JoulesPerKilogram);

    /// <summary>Distance by scaled blast.</summary>
    /// <remarks>
    /// <para>Formula: R = Rs (2 TNT)^(1/3).</para>
    /// <para>Symbols: R distance, m; Rs scaled distance, m/kg^(1/3), at least 20; TNT mass, kg.</para>
    /// <para>Validity: blast only; fragments fly farther.</para>
    /// <para>Reference: ASME PCC-2, Art. 501, Mandatory Appendix III, eq. III-1 (public page).</para>
    /// </remarks>
    /// <param name="tnt">Mass TNT.</param>
    /// <param name="scaledDistance">Scaled distance Rs [m/kg^(1/3)], 20 or more.</param>
    /// <returns>Distance R.</returns>
    /// <exception cref="ImpossibleInputException">The mass is negative or the scaled distance below 20.</exception>
    /// <example>1 kg, 20: 20 × 2^(1/3) = 25.198 m.</example>
    public static Length ScaledDistance(Mass tnt, double scaledDistance = 20)
    {
        var kg = Require.Between("tntKg", tnt.Kilograms, 0, 1e24);
        var Rs = Require.Between("scaledDistance", scaledDistance, 20, 1000);
        return Length.FromMeters(kg < 1e-300 ? 0 : Rs * Reproducible.Exp(Reproducible.Log(2 * kg) / 3));
    }

    /// <summary>How far away people stand while gas is under test pressure.</summary>
    /// <remarks>
    /// <para>Formula: R = 30 m for E ≤ 135.5 MJ; 60 m for E ≤ 271 MJ; else Rs (2 TNT)^(1/3).</para>
    /// <para>Symbols: R distance, m; E energy, J; Rs = 20 m/kg^(1/3); TNT see <see cref="Tnt"/>.</para>
    /// <para>Validity: least distance without a barrier; the site may ask for more.</para>
    /// <para>Reference: ASME PCC-2, Art. 501, Mandatory Appendix III (public page).</para>
    /// </remarks>
    /// <param name="energy">Energy E.</param>
    /// <returns>Distance R.</returns>
    /// <exception cref="ImpossibleInputException">The energy is negative.</exception>
    /// <example>1.36 MJ: 30 m. 300 MJ: 70.3 kg, 20 × 140.6^(1/3) = 104 m.</example>
    public static Length StandOff(Energy energy) =>
        Require.NotNegative("energyJ", energy.Joules) switch
        {
            <= 135.5e6 => Length.FromMeters(30),
            <= 271e6 => Length.FromMeters(60),
            _ => ScaledDistance(Tnt(energy)),
        };
}
