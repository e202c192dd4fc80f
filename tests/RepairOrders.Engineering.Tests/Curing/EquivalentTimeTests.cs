using CsCheck;
using RepairOrders.Engineering.Curing;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Curing;

public class EquivalentTimeTests
{
    [Theory]
    [InlineData("CUR08", 2, 2)]
    [InlineData("CUR21", 2.6, 1.8)]
    public void Ten_hour_log_by_the_ten_degree_rule(string id, double below, double above)
    {
        var check = PublishedTable.Check("curing-checks.csv", id);
        var law = new Q10Law(check.Number("q10_below", below), check.Number("q10_above", above));
        var te = EquivalentTime.Of(
            Intervals(check.Numbers("temps"), check.Number("dt")),
            law,
            C(check.Number("Tref")),
            C(-60)
        );
        check.ShouldBeMetBy(te.Hours);
    }

    [Theory]
    [InlineData("CUR09")]
    [InlineData("CUR12")]
    public void Temperature_time_factor_of_the_concrete_standard(string id)
    {
        var check = PublishedTable.Check("curing-checks.csv", id);
        check.ShouldBeMetBy(
            EquivalentTime.TemperatureTimeFactor(
                Intervals(check.Numbers("temps"), check.Number("dt")),
                C(check.Number("T0"))
            )
        );
    }

    [Theory]
    [InlineData("CUR10")]
    [InlineData("CUR11")]
    public void Equivalent_age_of_the_concrete_standard(string id)
    {
        var check = PublishedTable.Check("curing-checks.csv", id);
        var age = EquivalentTime.ConcreteAge(
            Intervals(check.Numbers("temps"), check.Number("dt")),
            TemperatureDelta.FromKelvins(check.Number("Q", 5000)),
            C(check.Number("Ts", 20))
        );
        check.ShouldBeMetBy(age.Hours);
    }

    [Fact]
    public void Kinetic_constant_of_the_pharmacopoeia()
    {
        var check = PublishedTable.Check("curing-checks.csv", "CUR05");
        check.ShouldBeMetBy(check.Number("a") / check.Number("b"));
    }

    [Fact]
    public void Mean_kinetic_temperature()
    {
        var check = PublishedTable.Check("curing-checks.csv", "CUR13");
        check.ShouldBeMetBy(
            EquivalentTime.MeanKineticTemperature([.. check.Numbers("temps").Select(C)]).DegreesCelsius
        );
    }

    [Fact]
    public void Mean_kinetic_temperature_lies_between_the_mean_and_the_greatest() =>
        Gen.Double[-30, 60]
            .Array[1, 30]
            .Sample(readings =>
                EquivalentTime
                    .MeanKineticTemperature([.. readings.Select(C)])
                    .DegreesCelsius.ShouldBeInRange(readings.Average() - 1e-9, readings.Max() + 1e-9)
            );

    [Fact]
    public void Below_the_least_temperature_nothing_is_credited() =>
        EquivalentTime.Of(Intervals([4, 25], 1), Q10Law.SafeForCure, C(25), C(5)).Hours.ShouldBe(1, 1e-12);

    [Fact]
    public void At_the_reference_equivalent_time_is_clock_time() =>
        Gen.Select(Gen.Double[0, 40], Gen.Double[0.01, 48])
            .Sample(
                (reference, hours) =>
                    EquivalentTime
                        .Of(Intervals([reference], hours), Q10Law.SafeForCure, C(reference), C(-60))
                        .Hours.ShouldBe(hours, hours * 1e-12)
            );

    [Fact]
    public void First_order_degree_of_cure()
    {
        var check = PublishedTable.Check("curing-checks.csv", "CUR14");
        var alpha = DegreeOfCure.FirstOrder(
            Intervals(check.Numbers("temps"), check.Number("dt_h")),
            Frequency.FromHertz(check.Number("k_ref") / 3600),
            C(check.Number("Tref")),
            MolarEnergy.FromJoulesPerMole(check.Number("Ea"))
        );
        check.ShouldBeMetBy(alpha);
    }

    [Fact]
    public void Autocatalytic_cure_without_its_second_term_is_first_order()
    {
        var kinetics = Kinetics(0.4, 0, 1, 1);
        DegreeOfCure
            .Autocatalytic(Intervals([25, 25, 25, 25, 25, 25, 25, 25], 1), kinetics, C(25))
            .ShouldBe(0.95924, 5e-6);
    }

    // k1 = 0: dα/dt = k2·α(1 − α) stays at zero; with α0 > 0 it is the logistic curve. Both parts run from k1 = k2 = k:
    // dα/dt = k(1 + α)(1 − α), so α = tanh(k·t). Derived here.
    [Fact]
    public void Autocatalytic_cure_with_equal_rates_is_a_hyperbolic_tangent() =>
        DegreeOfCure
            .Autocatalytic(Intervals([25, 25, 25], 1), Kinetics(0.5, 0.5, 1, 1), C(25))
            .ShouldBe(Math.Tanh(1.5), 1e-8);

    [Fact]
    public void Degree_of_cure_stays_between_nothing_and_all() =>
        Gen.Select(Gen.Double[0, 1e6], Gen.Double[0, 1e6], Gen.Double[0, 5], Gen.Double[0, 5], Gen.Double[-60, 300])
            .Sample(
                (k1, k2, m, n, T) =>
                    DegreeOfCure.Autocatalytic(Intervals([T], 1), Kinetics(k1, k2, m, n), C(25)).ShouldBeInRange(0, 1)
            );

    [Theory]
    [InlineData(20, 0.5714)]
    [InlineData(-30, 0)]
    [InlineData(90, 1)]
    public void Vitrification_caps_the_cure(double cure, double expected) =>
        DegreeOfCure.CapByVitrification(C(cure), C(-20), C(80), 0.5).ShouldBe(expected, 5e-5);

    private static AutocatalyticKinetics Kinetics(double k1, double k2, double m, double n) =>
        new(
            Frequency.FromHertz(k1 / 3600),
            MolarEnergy.FromKilojoulesPerMole(55),
            Frequency.FromHertz(k2 / 3600),
            MolarEnergy.FromKilojoulesPerMole(55),
            m,
            n
        );

    private static IEnumerable<CureInterval> Intervals(IEnumerable<double> temperatures, double hours) =>
        temperatures.Select(t => new CureInterval(C(t), Duration.FromHours(hours)));

    private static Temperature C(double celsius) => Temperature.FromDegreesCelsius(celsius);
}
