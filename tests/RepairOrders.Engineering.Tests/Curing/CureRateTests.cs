using CsCheck;
using RepairOrders.Engineering.Curing;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Curing;

public class CureRateTests
{
    [Fact]
    public void Ten_degree_rule()
    {
        var check = PublishedTable.Check("curing-checks.csv", "CUR07");
        check.ShouldBeMetBy(CureRate.ByQ10(C(check.Number("T")), C(check.Number("Tref")), 2));
    }

    // Solved question of a chemistry text, printed to three figures with temperatures in whole kelvin: 50 kJ/mol, 298 to 308 K.
    [Fact]
    public void Arrhenius_of_50_kJ_from_298_to_308_kelvin() =>
        CureRate
            .ByArrhenius(
                Temperature.FromKelvins(308),
                Temperature.FromKelvins(298),
                MolarEnergy.FromKilojoulesPerMole(50)
            )
            .ShouldBe(1.93, 0.005);

    // The text prints 63 288 J/mol; its own numbers give 63 228 (a slip of digits), which is what is expected here.
    [Fact]
    public void Activation_energy_of_the_textbook_question_with_its_printed_slip()
    {
        var check = PublishedTable.Check("curing-checks.csv", "CUR03");
        var ratio = check.Number("k2") / check.Number("k1");
        var energy = CureRate.ActivationEnergy(
            ratio,
            Temperature.FromKelvins(check.Number("T1")),
            Temperature.FromKelvins(check.Number("T2"))
        );
        check.ShouldBeMetBy(energy.JoulesPerMole);
        Math.Abs(energy.JoulesPerMole - 63288).ShouldBeGreaterThan(30);
    }

    [Fact]
    public void Activation_energy_of_the_ten_degree_rule()
    {
        var check = PublishedTable.Check("curing-checks.csv", "CUR06");
        check.ShouldBeMetBy(
            CureRate.ActivationEnergy(check.Number("q10"), C(check.Number("T1c")), C(check.Number("T2c"))).JoulesPerMole
        );
    }

    [Fact]
    public void Two_temperatures_that_are_one_are_named() =>
        Should
            .Throw<ImpossibleInputException>(() => CureRate.ActivationEnergy(2, C(20), C(20)))
            .Field.ShouldBe("secondTemperatureC");

    [Theory]
    [InlineData(0.5)]
    [InlineData(11)]
    public void Impossible_ratio_is_named(double q10) =>
        Should.Throw<ImpossibleInputException>(() => CureRate.ByQ10(C(20), C(25), q10)).Field.ShouldBe("q10");

    [Fact]
    public void Arrhenius_undoes_its_own_energy() =>
        Gen.Select(Gen.Double[1, 200], Gen.Double[-50, 20], Gen.Double[1, 50])
            .Sample(
                (energy, first, step) =>
                {
                    var ratio = CureRate.ByArrhenius(
                        C(first + step),
                        C(first),
                        MolarEnergy.FromKilojoulesPerMole(energy)
                    );
                    CureRate
                        .ActivationEnergy(ratio, C(first), C(first + step))
                        .KilojoulesPerMole.ShouldBe(energy, energy * 1e-9);
                }
            );

    [Fact]
    public void Warmer_is_never_slower() =>
        Gen.Select(Gen.Double[-60, 300], Gen.Double[-60, 300], Gen.Double[1, 10], Gen.Double[1, 200])
            .Sample(
                (one, other, q10, energy) =>
                {
                    var (cold, warm) = (C(Math.Min(one, other)), C(Math.Max(one, other)));
                    RateLaw[] laws =
                    [
                        new Q10Law(q10, q10),
                        Q10Law.SafeForCure,
                        Q10Law.SafeForPotLife,
                        new ArrheniusLaw(MolarEnergy.FromKilojoulesPerMole(energy)),
                    ];
                    laws.ShouldAllBe(law => law.Factor(warm, C(25)) >= law.Factor(cold, C(25)));
                }
            );

    private static Temperature C(double celsius) => Temperature.FromDegreesCelsius(celsius);
}
