using UnitsNet;

namespace RepairOrders.Engineering.Curing;

/// <summary>How much faster or slower a resin cures at one temperature than at another.</summary>
public static class CureRate
{
    /// <summary>Molar gas constant, J/(mol K): CODATA 2018, exact.</summary>
    public const double R = 8.314462618;

    /// <summary>Rate against the reference by the ten-degree rule.</summary>
    /// <remarks>
    /// <para>Formula: k/kref = Q10^((T − Tref)/10).</para>
    /// <para>Symbols: Q10 rate ratio for 10 K, -; T, Tref temperature and reference, °C; k/kref rate factor, -.</para>
    /// <para>Validity: −60 °C ≤ T ≤ 300 °C, 1 ≤ Q10 ≤ 10; a rule of thumb, not to be carried more than 20 K beyond what was tested.</para>
    /// <para>Reference: common practice, no source; epoxy-amine activation energies of 44 to 71 kJ/mol (J. Appl. Polym. Sci. 56, 1995;
    /// Thermochim. Acta 447, 2006) put Q10 between about 1.8 and 2.6 near 25 °C.</para>
    /// </remarks>
    /// <param name="at">Temperature, °C.</param>
    /// <param name="reference">Temperature the data is stated at, °C.</param>
    /// <param name="q10">Rate ratio for 10 K [-].</param>
    /// <returns>Rate factor [-].</returns>
    /// <exception cref="ImpossibleInputException">A temperature outside −60 to 300 °C, or Q10 outside 1 to 10.</exception>
    /// <example>10 °C against 25 °C with Q10 = 2: 2^(−1.5) = 0.35355.</example>
    public static double ByQ10(Temperature at, Temperature reference, double q10)
    {
        var T = Celsius("temperatureC", at);
        var Tref = Celsius("referenceTemperatureC", reference);
        Require.Between("q10", q10, 1, 10);
        return Math.Pow(q10, (T - Tref) / 10);
    }

    /// <summary>Rate against the reference by the law of Arrhenius.</summary>
    /// <remarks>
    /// <para>Formula: k/kref = exp(Ea/R·(1/Tref − 1/T)).</para>
    /// <para>Symbols: Ea activation energy, J/mol; R = 8.314462618 J/(mol K) gas constant; T, Tref absolute temperatures, K; k/kref rate factor, -.</para>
    /// <para>Validity: −60 °C ≤ T ≤ 300 °C, 0 &lt; Ea ≤ 200 kJ/mol; one mechanism of reaction, before vitrification.</para>
    /// <para>Reference: Arrhenius 1889, as in any text of physical chemistry.</para>
    /// </remarks>
    /// <param name="at">Temperature, °C.</param>
    /// <param name="reference">Temperature the data is stated at, °C.</param>
    /// <param name="activationEnergy">Activation energy, kJ/mol.</param>
    /// <returns>Rate factor [-].</returns>
    /// <exception cref="ImpossibleInputException">A temperature outside −60 to 300 °C, or an energy not above 0 or above 200 kJ/mol.</exception>
    /// <example>50 kJ/mol, 25 to 35 °C: exp(50 000/8.31446 × (1/298.15 − 1/308.15)) = 1.92.</example>
    public static double ByArrhenius(Temperature at, Temperature reference, MolarEnergy activationEnergy)
    {
        var T = Celsius("temperatureC", at) + 273.15;
        var Tref = Celsius("referenceTemperatureC", reference) + 273.15;
        var Ea = Energy(activationEnergy);
        return Math.Exp(Ea / R * (1 / Tref - 1 / T));
    }

    /// <summary>Activation energy from two rates, by the law of Arrhenius.</summary>
    /// <remarks>
    /// <para>Formula: Ea = R·ln(k2/k1)/(1/T1 − 1/T2).</para>
    /// <para>Symbols: k2/k1 ratio of rates, -; T1, T2 absolute temperatures, K; R = 8.314462618 J/(mol K); Ea activation energy, J/mol.</para>
    /// <para>Validity: T1 ≠ T2, k2/k1 &gt; 0.</para>
    /// <para>Reference: Arrhenius 1889; worked case of a solved textbook question.</para>
    /// </remarks>
    /// <param name="rateRatio">Rate at the second temperature over the rate at the first [-].</param>
    /// <param name="first">First temperature, °C.</param>
    /// <param name="second">Second temperature, °C.</param>
    /// <returns>Activation energy, J/mol.</returns>
    /// <exception cref="ImpossibleInputException">A ratio not above 0, equal temperatures, or temperatures outside −60 to 300 °C.</exception>
    /// <example>k 0.0023 at 300 K and 0.086 at 350 K: 8.31446 × ln(37.391)/(1/300 − 1/350) = 63 232 J/mol.</example>
    public static MolarEnergy ActivationEnergy(double rateRatio, Temperature first, Temperature second)
    {
        Require.Positive("rateRatio", rateRatio);
        var T1 = Celsius("firstTemperatureC", first) + 273.15;
        var T2 = Celsius("secondTemperatureC", second) + 273.15;
        if (Math.Abs(T1 - T2) < 1e-9)
        {
            throw new ImpossibleInputException(
                "secondTemperatureC",
                $"{T2 - 273.15:G6}",
                "another temperature than the first"
            );
        }

        return MolarEnergy.FromJoulesPerMole(R * Math.Log(rateRatio) / (1 / T1 - 1 / T2));
    }

    internal static double Celsius(string field, Temperature temperature) =>
        Require.Between(field, temperature.DegreesCelsius, -60, 300);

    internal static double Energy(MolarEnergy energy)
    {
        Require.Positive("activationEnergyKjMol", energy.KilojoulesPerMole);
        return Require.Between("activationEnergyKjMol", energy.KilojoulesPerMole, 0, 200) * 1000;
    }
}
