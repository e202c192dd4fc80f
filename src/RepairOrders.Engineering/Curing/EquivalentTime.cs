using UnitsNet;

namespace RepairOrders.Engineering.Curing;

/// <summary>What a changing temperature is worth, as time or temperature at one level.</summary>
public static class EquivalentTime
{
    /// <summary>Time at the reference temperature that cures a resin as far as a log did.</summary>
    /// <remarks>
    /// <para>Formula: te = Σ f(T)·Δt, f = 0 for T below the least cure temperature.</para>
    /// <para>Symbols: T mean temperature of an interval, °C; Δt its length, h; f rate factor of the law, -; te equivalent time, h.</para>
    /// <para>Validity: that of the law; one reaction, no vitrification, no exotherm credited.</para>
    /// <para>Reference: derived here: the integral of the rate over time; the ten-hour log of the example was added up by hand.</para>
    /// </remarks>
    /// <param name="intervals">Temperatures and lengths, °C and h.</param>
    /// <param name="law">How the rate changes with temperature.</param>
    /// <param name="reference">Temperature the equivalent time is stated at, °C.</param>
    /// <param name="least">Least cure temperature, °C; below it nothing is credited.</param>
    /// <returns>Equivalent time, h.</returns>
    /// <exception cref="ImpossibleInputException">A temperature outside −60 to 300 °C, a length not 0 to 1e6 h, or a constant of the law out of range.</exception>
    /// <example>An hour each at 23, 21, 18, 15, 12, 10, 10, 12, 16, 20 °C, Q10 = 2, reference 25 °C: 5.506 h; with the safe pair 2.6/1.8: 4.503 h.</example>
    public static Duration Of(
        IEnumerable<CureInterval> intervals,
        RateLaw law,
        Temperature reference,
        Temperature least
    )
    {
        ArgumentNullException.ThrowIfNull(intervals);
        ArgumentNullException.ThrowIfNull(law);
        var te = 0.0;
        foreach (var (T, dt) in Values(intervals))
        {
            if (T >= least.DegreesCelsius)
            {
                te += law.Factor(Temperature.FromDegreesCelsius(T), reference) * dt;
            }
        }

        return Duration.FromHours(te);
    }

    /// <summary>Equivalent age in the form of ASTM C1074: for cement-based fillers, never for a resin.</summary>
    /// <remarks>
    /// <para>Formula: te = Σ exp(−Q·(1/Ta − 1/Ts))·Δt.</para>
    /// <para>Symbols: Q activation energy over the gas constant, K; Ta mean temperature of an interval, K; Ts specified temperature, K; Δt
    /// length, h; te equivalent age, h.</para>
    /// <para>Validity: concrete and mortar. Its usual Q of 5000 K (41.6 kJ/mol) over-credits epoxy in the cold.</para>
    /// <para>Reference: ASTM C1074, eq. 2 (form from memory, the standard was not opened).</para>
    /// </remarks>
    /// <param name="intervals">Temperatures and lengths, °C and h.</param>
    /// <param name="q">Activation energy over the gas constant, K.</param>
    /// <param name="specified">Specified temperature, °C.</param>
    /// <returns>Equivalent age, h.</returns>
    /// <exception cref="ImpossibleInputException">A temperature outside −60 to 300 °C, a length not 0 to 1e6 h, or Q not 0 to 60 000 K.</exception>
    /// <example>An hour each at 23, 21, 18, 15, 12, 10, 10, 12, 16, 20 °C, Q = 5000 K, Ts = 20 °C: 8.006 h.</example>
    public static Duration ConcreteAge(IEnumerable<CureInterval> intervals, TemperatureDelta q, Temperature specified)
    {
        ArgumentNullException.ThrowIfNull(intervals);
        var Q = Require.Between("activationTemperatureK", q.Kelvins, 0, 60_000);
        var Ts = CureRate.Celsius("specifiedTemperatureC", specified) + 273.15;
        return Duration.FromHours(Values(intervals).Sum(i => Math.Exp(-Q * (1 / (i.T + 273.15) - 1 / Ts)) * i.dt));
    }

    /// <summary>Temperature-time factor in the form of ASTM C1074: for cement-based fillers, never for a resin.</summary>
    /// <remarks>
    /// <para>Formula: M = Σ max(0, Ta − T0)·Δt.</para>
    /// <para>Symbols: Ta mean temperature of an interval, °C; T0 datum temperature, °C; Δt length, h; M temperature-time factor, °C h.</para>
    /// <para>Validity: concrete and mortar; linear in temperature, so it over-credits epoxy in the cold.</para>
    /// <para>Reference: ASTM C1074, eq. 1 (form from memory, the standard was not opened); datum 0 °C in recent editions.</para>
    /// </remarks>
    /// <param name="intervals">Temperatures and lengths, °C and h.</param>
    /// <param name="datum">Datum temperature, °C.</param>
    /// <returns>Temperature-time factor [°C h].</returns>
    /// <exception cref="ImpossibleInputException">A temperature outside −60 to 300 °C, or a length not 0 to 1e6 h.</exception>
    /// <example>Six hours each at −5, −3, 2 and 8 °C, datum 0 °C: (2 + 8) × 6 = 60 °C h.</example>
    public static double TemperatureTimeFactor(IEnumerable<CureInterval> intervals, Temperature datum)
    {
        ArgumentNullException.ThrowIfNull(intervals);
        var T0 = CureRate.Celsius("datumTemperatureC", datum);
        return Values(intervals).Sum(i => Math.Max(0, i.T - T0) * i.dt);
    }

    /// <summary>Mean kinetic temperature: the one temperature that ages a store as much as the readings did.</summary>
    /// <remarks>
    /// <para>Formula: Tk = (ΔH/R)/(−ln(Σ exp(−ΔH/(R·Ti))/n)).</para>
    /// <para>Symbols: ΔH/R = 10 000 K (83.144 kJ/mol over 8.3144 J/(mol K)); Ti readings, K, equally spaced; n their number; Tk mean kinetic
    /// temperature, K.</para>
    /// <para>Validity: equally spaced readings; storage, not cure.</para>
    /// <para>Reference: USP general chapter 1160.</para>
    /// </remarks>
    /// <param name="readings">Readings at equal spacing, °C.</param>
    /// <returns>Mean kinetic temperature, °C.</returns>
    /// <exception cref="ImpossibleInputException">No reading, or one outside −60 to 300 °C.</exception>
    /// <example>20, 20, 20, 30 °C: 23.64 °C, where the plain mean is 22.5 °C.</example>
    public static Temperature MeanKineticTemperature(IReadOnlyList<Temperature> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        if (readings.Count == 0)
        {
            throw new ImpossibleInputException("readings", "empty", "at least one reading");
        }

        const double H = 83.144 / 0.0083144;
        var mean = readings.Average(r => Math.Exp(-H / (CureRate.Celsius("temperatureC", r) + 273.15)));
        return Temperature.FromKelvins(H / -Math.Log(mean));
    }

    private static IEnumerable<(double T, double dt)> Values(IEnumerable<CureInterval> intervals) =>
        intervals.Select(i =>
            (CureRate.Celsius("temperatureC", i.Mean), Require.Between("lengthH", i.Length.Hours, 0, 1e6))
        );
}
