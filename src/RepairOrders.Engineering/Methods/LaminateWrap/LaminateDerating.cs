using UnitsNet;

namespace RepairOrders.Engineering.Methods.LaminateWrap;

/// <summary>What life, temperature and cycles leave of a laminate. ISO 24817 values, all from memory.</summary>
public static class LaminateDerating
{
    /// <summary>Life factor of a laminate over a hole, class 3 line used for all classes.</summary>
    /// <remarks>
    /// <para>Formula: f = 0.666 × 10^(−0.01584 (y − 1)), 0.666 below one year</para>
    /// <para>Symbols: y design life, years.</para>
    /// <para>Validity: y ≤ 20; the maker's own survival test replaces it.</para>
    /// <para>Reference: ISO 24817 class 3, from memory, not checked against the print.</para>
    /// </remarks>
    /// <param name="years">Design life y [years].</param>
    /// <returns>Life factor f [-].</returns>
    /// <exception cref="ImpossibleInputException">A life below 0 or above 20 years.</exception>
    /// <example>4 years: 0.597; 20 years: 0.333.</example>
    public static double LifeFactor(double years)
    {
        var y = Require.Between("designLifeYears", years, 0, 20);
        return 0.666 * Math.Pow(10, -0.01584 * (Math.Max(1, y) - 1));
    }

    /// <summary>Temperature factor of strength and strain.</summary>
    /// <remarks>
    /// <para>Formula: fT = min(1, 6 × 10⁻⁵ x² + 0.001 x + 0.7014), x = Tm − Td</para>
    /// <para>Symbols: Tm greatest temperature allowed, Td design temperature, °C.</para>
    /// <para>Validity: x ≥ 0. Below it the parabola turns up again and would hand out strength above the limit.</para>
    /// <para>Reference: ISO 24817, from memory.</para>
    /// </remarks>
    /// <param name="greatest">Greatest temperature allowed Tm.</param>
    /// <param name="design">Design temperature Td.</param>
    /// <returns>Factor fT [-]; nothing above the greatest temperature: refuse.</returns>
    /// <exception cref="ImpossibleInputException">A temperature that is not finite.</exception>
    /// <example>Tm 80, Td 40 °C: 0.837; Td 10 °C: 1.</example>
    public static double? TemperatureFactor(Temperature greatest, Temperature design)
    {
        var Tm = Require.Between("greatestTemperatureC", greatest.DegreesCelsius, -273, 1000);
        var x = Tm - Require.Between("designTemperatureC", design.DegreesCelsius, -273, 1000);
        return x < 0 ? null : Math.Min(1, 6e-5 * x * x + 0.001 * x + 0.7014);
    }

    /// <summary>Greatest design temperature from that at which the resin softens.</summary>
    /// <remarks>
    /// <para>Formula: Tm = Tg − 20 K without a leak, Tg − 30 K over a leak; on heat distortion 15 K and 25 K</para>
    /// <para>Symbols: Tg glass transition of the resin as cured on site, °C.</para>
    /// <para>Validity: of the actual cure, post-cured or not. Sources differ on heat distortion; the safer is taken.</para>
    /// <para>Reference: ISO 24817 and ASME PCC-2 Art. 401, from memory.</para>
    /// </remarks>
    /// <param name="softening">Glass transition or heat distortion temperature.</param>
    /// <param name="byHeatDistortion">It is the heat distortion temperature.</param>
    /// <param name="leak">The wall is, or will be, through.</param>
    /// <returns>Greatest design temperature Tm.</returns>
    /// <exception cref="ImpossibleInputException">A temperature that is not finite.</exception>
    /// <example>Tg 100 °C over a leak: 70 °C.</example>
    public static Temperature GreatestTemperature(Temperature softening, bool byHeatDistortion, bool leak)
    {
        var Tg = Require.Between("softeningC", softening.DegreesCelsius, -273, 1000);
        var margin = byHeatDistortion ? (leak ? 25 : 15) : (leak ? 30 : 20);
        return Temperature.FromDegreesCelsius(Tg - margin);
    }

    /// <summary>Allowable strain after temperature and unequal expansion.</summary>
    /// <remarks>
    /// <para>Formula: ε = fT ε0 − |ΔT (αs − αc)|</para>
    /// <para>Symbols: fT temperature factor, -; ε0 strain allowed at room temperature, -; ΔT full swing from the cure to the worst service
    /// temperature, K; αs, αc expansion of pipe and laminate, 1/K.</para>
    /// <para>Validity: where it is 0 or less no laminate can be designed: refuse.</para>
    /// <para>Reference: ISO 24817 and ASME PCC-2 Art. 401, from memory.</para>
    /// </remarks>
    /// <param name="factor">Temperature factor fT [-].</param>
    /// <param name="strain">Strain at room temperature ε0 [-].</param>
    /// <param name="swing">Swing ΔT.</param>
    /// <param name="pipe">Expansion of the pipe αs [1/K].</param>
    /// <param name="laminate">Expansion of the laminate αc [1/K].</param>
    /// <returns>Allowable strain ε [-]; 0 or negative where nothing is left.</returns>
    /// <exception cref="ImpossibleInputException">A value that is not finite.</exception>
    /// <example>fT 0.7, ε0 0.4 %, 40 K, 12 and 18 × 10⁻⁶/K: 0.256 %.</example>
    public static double AllowableStrain(
        double factor,
        double strain,
        TemperatureDelta swing,
        double pipe,
        double laminate
    )
    {
        var fT = Require.Between("temperatureFactor", factor, 0, 1);
        var eps0 = Require.Between("strain", strain, 0, 1);
        var dT = Require.Finite("temperatureSwingK", swing.Kelvins);
        var difference =
            Require.Between("pipeExpansion", pipe, 0, 1e-3)
            - Require.Between("laminateExpansion", laminate, -1e-3, 1e-3);
        return fT * eps0 - Math.Abs(dT * difference);
    }

    /// <summary>Sustained strain a laminate may be given at room temperature, class 3.</summary>
    /// <remarks>
    /// <para>Formula: ε0 = 0.40 % to 2 years, 0.32 % to 10 years, 0.25 % to 20 years; axial 0.10 % where Ea &lt; 0.5 Ec</para>
    /// <para>Symbols: y design life, years; Ea, Ec axial and hoop modulus, MPa.</para>
    /// <para>Validity: y ≤ 20; the next longer life printed is used, nothing between is interpolated.</para>
    /// <para>Reference: ISO 24817 class 3, from memory.</para>
    /// </remarks>
    /// <param name="years">Design life y [years].</param>
    /// <returns>Strain ε0 [-].</returns>
    /// <exception cref="ImpossibleInputException">A life below 0 or above 20 years.</exception>
    /// <example>5 years: 0.32 %.</example>
    public static double SustainedStrain(double years) =>
        Require.Between("designLifeYears", years, 0, 20) switch
        {
            <= 2 => 0.0040,
            <= 10 => 0.0032,
            _ => 0.0025,
        };

    /// <summary>Factor for pressure cycles.</summary>
    /// <remarks>
    /// <para>Formula: fc = √(Rc² + (1 − Rc²)/(2.888 log10 N − 7.108)), at most 1; 1 below 7000 cycles</para>
    /// <para>Symbols: N cycles in the design life, -; Rc least over greatest pressure, -.</para>
    /// <para>Validity: N ≤ 10⁸.</para>
    /// <para>Reference: ISO 24817, from memory.</para>
    /// </remarks>
    /// <param name="cycles">Cycles N [-].</param>
    /// <param name="pressureRatio">Ratio Rc [-].</param>
    /// <returns>Factor fc [-].</returns>
    /// <exception cref="ImpossibleInputException">More than 10⁸ cycles, or a ratio outside 0 to 1.</exception>
    /// <example>N 7000, Rc 0: 0.50; N 10⁸: 0.25.</example>
    public static double CyclicFactor(double cycles, double pressureRatio)
    {
        var N = Require.Between("cycles", cycles, 0, 1e8);
        var Rc = Require.Between("pressureRatio", pressureRatio, 0, 1);
        return N < 7000 ? 1 : Math.Min(1, Math.Sqrt(Rc * Rc + (1 - Rc * Rc) / (2.888 * Math.Log10(N) - 7.108)));
    }
}
