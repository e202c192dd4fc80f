using UnitsNet;

namespace RepairOrders.Engineering.Curing;

/// <summary>The share of a resin's reaction that has run, from kinetic data of the material.</summary>
public static class DegreeOfCure
{
    /// <summary>Degree of cure of a first-order reaction over changing temperature.</summary>
    /// <remarks>
    /// <para>Formula: α = 1 − exp(−Σ kref·exp(Ea/R·(1/Tref − 1/T))·Δt).</para>
    /// <para>Symbols: kref rate at the reference, 1/h; Ea activation energy, J/mol; R gas constant, J/(mol K); T, Tref temperatures, K; Δt
    /// length, h; α degree of cure, 0 to 1.</para>
    /// <para>Validity: first-order kinetics before vitrification; see <see cref="CapByVitrification"/>.</para>
    /// <para>Reference: first-order kinetics with the law of Arrhenius; derived here.</para>
    /// </remarks>
    /// <param name="intervals">Temperatures and lengths, °C and h.</param>
    /// <param name="rate">Rate at the reference, 1/h.</param>
    /// <param name="reference">Reference temperature, °C.</param>
    /// <param name="activationEnergy">Activation energy, kJ/mol.</param>
    /// <returns>Degree of cure [-], 0 to 1.</returns>
    /// <exception cref="ImpossibleInputException">A temperature, length, rate or energy out of range.</exception>
    /// <example>Eight hours at 25 °C, kref = 0.4 1/h at 25 °C: 1 − exp(−3.2) = 0.95924.</example>
    public static double FirstOrder(
        IEnumerable<CureInterval> intervals,
        Frequency rate,
        Temperature reference,
        MolarEnergy activationEnergy
    )
    {
        var kref = Require.Between("ratePerHour", rate.Hertz * 3600, 0, 1e6);
        var te = EquivalentTime.Of(
            intervals,
            new ArrheniusLaw(activationEnergy),
            reference,
            Temperature.FromKelvins(0)
        );
        return 1 - Math.Exp(-kref * te.Hours);
    }

    /// <summary>Degree of cure of an autocatalytic reaction over changing temperature, by the rate equation of Kamal.</summary>
    /// <remarks>
    /// <para>Formula: dα/dt = (k1 + k2·α^m)·(1 − α)^n, with k1 and k2 by Arrhenius from the reference; fourth-order Runge-Kutta, 200 steps an interval.</para>
    /// <para>Symbols: k1, k2 rates at the reference, 1/h; m, n orders, -; Ea1, Ea2 activation energies, J/mol; t time, h; α degree of cure, 0 to 1.</para>
    /// <para>Validity: before vitrification, see <see cref="CapByVitrification"/>; k·Δt up to about 100 in one interval.</para>
    /// <para>Reference: Kamal, Sourour, Polymer Engineering and Science 13 (1973) 59–64 (form from memory).</para>
    /// </remarks>
    /// <param name="intervals">Temperatures and lengths, °C and h.</param>
    /// <param name="kinetics">Rates, orders and energies of the material.</param>
    /// <param name="reference">Reference temperature of the rates, °C.</param>
    /// <returns>Degree of cure [-], 0 to 1.</returns>
    /// <exception cref="ImpossibleInputException">A temperature, length, rate, order or energy out of range.</exception>
    /// <example>k1 = 0.4 1/h, k2 = 0, n = 1, eight hours at the reference: first order again, 0.95924.</example>
    public static double Autocatalytic(
        IEnumerable<CureInterval> intervals,
        AutocatalyticKinetics kinetics,
        Temperature reference
    )
    {
        ArgumentNullException.ThrowIfNull(intervals);
        ArgumentNullException.ThrowIfNull(kinetics);
        var k1 = Require.Between("firstRatePerHour", kinetics.FirstRate.Hertz * 3600, 0, 1e6);
        var k2 = Require.Between("secondRatePerHour", kinetics.SecondRate.Hertz * 3600, 0, 1e6);
        var m = Require.Between("orderM", kinetics.M, 0, 5);
        var n = Require.Between("orderN", kinetics.N, 0, 5);
        var alpha = 0.0;
        foreach (var interval in intervals)
        {
            var dt = Require.Between("lengthH", interval.Length.Hours, 0, 1e6);
            var a = k1 * CureRate.ByArrhenius(interval.Mean, reference, kinetics.FirstEnergy);
            var b = k2 * CureRate.ByArrhenius(interval.Mean, reference, kinetics.SecondEnergy);
            alpha = Integrate(alpha, dt, x => (a + b * Math.Pow(x, m)) * Math.Pow(1 - x, n));
        }

        return alpha;
    }

    /// <summary>The degree of cure at which the glass transition reaches the cure temperature and the reaction all but stops.</summary>
    /// <remarks>
    /// <para>Formula: x = (Tc − Tg0)/(Tg∞ − Tg0); α = x/(λ + (1 − λ)·x), not below 0 nor above 1.</para>
    /// <para>Symbols: Tc cure temperature, °C; Tg0, Tg∞ glass transition uncured and fully cured, °C; λ ratio of heat capacity steps, 0 to 1; α
    /// degree of cure, 0 to 1.</para>
    /// <para>Validity: Tg0 &lt; Tg∞, 0 &lt; λ ≤ 1. A repair capped here needs a post-cure before it meets its data sheet.</para>
    /// <para>Reference: DiBenedetto's equation in the form of Pascault and Williams, J. Polym. Sci. B 28 (1990) 85–95 (from memory), solved for α.</para>
    /// </remarks>
    /// <param name="cure">Cure temperature, °C.</param>
    /// <param name="uncured">Glass transition of the uncured resin, °C.</param>
    /// <param name="cured">Glass transition of the fully cured resin, °C.</param>
    /// <param name="lambda">Ratio of the heat capacity steps [-].</param>
    /// <returns>Greatest degree of cure at that temperature [-], 0 to 1.</returns>
    /// <exception cref="ImpossibleInputException">Transitions in the wrong order, a temperature outside −60 to 300 °C, or λ not above 0 or above 1.</exception>
    /// <example>Cure at 20 °C, Tg0 = −20 °C, Tg∞ = 80 °C, λ = 0.5: x = 0.4, α = 0.4/(0.5 + 0.2) = 0.571.</example>
    public static double CapByVitrification(Temperature cure, Temperature uncured, Temperature cured, double lambda)
    {
        var Tc = CureRate.Celsius("cureTemperatureC", cure);
        var Tg0 = CureRate.Celsius("uncuredGlassTransitionC", uncured);
        var TgInf = CureRate.Celsius("curedGlassTransitionC", cured);
        Require.Positive("curedLessUncuredGlassTransitionK", TgInf - Tg0);
        Require.Positive("heatCapacityRatio", lambda);
        Require.Between("heatCapacityRatio", lambda, 0, 1);
        var x = Math.Clamp((Tc - Tg0) / (TgInf - Tg0), 0, 1);
        return x / (lambda + (1 - lambda) * x);
    }

    private static double Integrate(double alpha, double length, Func<double, double> rate)
    {
        const int Steps = 200;
        var h = length / Steps;
        for (var i = 0; i < Steps; i++)
        {
            var s1 = rate(alpha);
            var s2 = rate(Math.Min(1, alpha + h / 2 * s1));
            var s3 = rate(Math.Min(1, alpha + h / 2 * s2));
            var s4 = rate(Math.Min(1, alpha + h * s3));
            alpha = Math.Min(1, alpha + h / 6 * (s1 + 2 * s2 + 2 * s3 + s4));
        }

        return alpha;
    }
}

/// <summary>Kinetic data of an autocatalytic resin, as its maker or a calorimeter gives them.</summary>
/// <param name="FirstRate">k1 at the reference, 1/h.</param>
/// <param name="FirstEnergy">Activation energy of k1, kJ/mol.</param>
/// <param name="SecondRate">k2 at the reference, 1/h.</param>
/// <param name="SecondEnergy">Activation energy of k2, kJ/mol.</param>
/// <param name="M">Order of the autocatalytic term, -.</param>
/// <param name="N">Order of what is left, -.</param>
public sealed record AutocatalyticKinetics(
    Frequency FirstRate,
    MolarEnergy FirstEnergy,
    Frequency SecondRate,
    MolarEnergy SecondEnergy,
    double M,
    double N
);
