using CsCheck;
using RepairOrders.Engineering.Curing;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Curing;

public class CureTests
{
    private static readonly DateTimeOffset Eight = new(2027, 3, 1, 8, 0, 0, TimeSpan.Zero);
    private static readonly CureData Putty = new(C(25), Duration.FromHours(2), Duration.FromHours(24), C(5));

    [Fact]
    public void Ten_degrees_colder_takes_2_6_times_as_long_without_product_data()
    {
        var times = Cure.At(Putty, C(15));
        times.Result.SetForLoad!.Value.Hours.ShouldBe(5.2, 1e-9);
        times.Result.FullHardness!.Value.Hours.ShouldBe(62.4, 1e-9);
        times.Findings.ShouldContain(f => f.Code == "cure-law-default" && f.Severity == Severity.Watch);
    }

    // Common practice, no source: about 15 minutes at 30 °C to a tack-free set, full hardness after 24 hours.
    // The published paste of a military manual hardens in 17 minutes at normal temperature; the safe side at 25 °C is 24 minutes.
    [Fact]
    public void Putty_that_sets_in_a_quarter_of_an_hour_at_30_degrees_takes_24_minutes_at_25()
    {
        var putty = new CureData(C(30), Duration.FromMinutes(15), Duration.FromHours(24), C(5));
        var set = Cure.At(putty, C(25)).Result.SetForLoad!.Value;
        set.Minutes.ShouldBe(15 * Math.Sqrt(2.6), 1e-9);
        set.Minutes.ShouldBeGreaterThan(17);
    }

    [Fact]
    public void Below_the_least_temperature_it_never_sets()
    {
        var times = Cure.At(Putty, C(4.9));
        times.Result.SetForLoad.ShouldBeNull();
        times.Findings.ShouldContain(f => f.Code == "below-least-cure-temperature");
    }

    [Fact]
    public void A_log_is_credited_at_the_mean_temperature_of_each_interval()
    {
        var progress = Cure.Over(Putty, Log((0, 15), (1, 15), (2, 25)), []);
        progress.Result.Equivalent.Hours.ShouldBe(1 / 2.6 + Math.Pow(2.6, -0.5), 1e-12);
        progress.Working.Count(s => s.Symbol == "Δte").ShouldBe(2);
        progress.Result.LeftToLoad!.Value.Hours.ShouldBe(2 - progress.Result.Equivalent.Hours, 1e-12);
    }

    [Fact]
    public void Set_for_load_is_not_full_hardness()
    {
        var progress = Cure.Over(Putty, Log((0, 25), (1, 25), (2.5, 25)), []);
        progress.Result.SetForLoad.ShouldBeTrue();
        progress.Result.FullyHard.ShouldBeFalse();
        progress.Result.ReadyForLoadAt.ShouldBe(Eight.AddHours(2));
        progress.Findings.ShouldContain(f => f.Code == "set-for-load" && f.Severity == Severity.Pass);
        progress.Findings.ShouldContain(f => f.Code == "full-hardness-not-reached" && f.Severity == Severity.Watch);
    }

    [Fact]
    public void Too_early_a_load_may_not_be_signed_past() =>
        Cure.Over(Putty, Log((0, 25), (1, 25)), [])
            .Findings.ShouldContain(f => f.Code == "set-for-load-not-reached" && f.Blocks);

    [Fact]
    public void Nothing_is_credited_across_a_gap()
    {
        var progress = Cure.Over(Putty, Log((0, 25), (1, 25), (4, 25)), []);
        progress.Result.Equivalent.Hours.ShouldBe(1, 1e-12);
        progress.Findings.ShouldContain(f => f.Code == "log-gap" && f.Value == 3);
    }

    [Fact]
    public void A_forecast_says_when_it_is_ready()
    {
        var progress = Cure.Over(Putty, Log((0, 25), (1, 25)), Log((2, 15), (3, 15), (4, 15)));
        var first = Math.Pow(2.6, -0.5);
        progress.Result.ReadyForLoadAt!.Value.ShouldBe(
            Eight.AddHours(2 + (1 - first) * 2.6),
            TimeSpan.FromMilliseconds(1)
        );
        progress.Result.FullyHardAt.ShouldBeNull();
    }

    [Fact]
    public void One_reading_credits_nothing() => Cure.Over(Putty, Log((0, 25)), []).Result.Equivalent.Hours.ShouldBe(0);

    [Fact]
    public void Beyond_the_tested_range_the_rate_is_held()
    {
        var hot = Cure.At(Putty, C(80));
        hot.Result.Factor.ShouldBe(1.8 * 1.8, 1e-9);
        hot.Findings.ShouldContain(f => f.Code == "beyond-tested-range");
    }

    [Fact]
    public void The_material_s_own_law_overrides_the_default()
    {
        var own = Putty with { Law = new ArrheniusLaw(MolarEnergy.FromKilojoulesPerMole(55)) };
        var times = Cure.At(own, C(15));
        times.Result.Factor.ShouldBe(CureRate.ByArrhenius(C(15), C(25), MolarEnergy.FromKilojoulesPerMole(55)));
        times.Findings.ShouldNotContain(f => f.Code == "cure-law-default");
    }

    [Fact]
    public void A_forecast_before_the_log_ends_is_named() =>
        Should
            .Throw<ImpossibleInputException>(() => Cure.Over(Putty, Log((0, 25), (2, 25)), Log((1, 25))))
            .Field.ShouldBe("forecast[0].at");

    [Fact]
    public void Readings_out_of_order_are_named() =>
        Should
            .Throw<ImpossibleInputException>(() => Cure.Over(Putty, Log((1, 25), (0, 25)), []))
            .Field.ShouldBe("log[1].at");

    [Fact]
    public void Full_hardness_before_set_is_impossible() =>
        Should
            .Throw<ImpossibleInputException>(() => Cure.At(Putty with { FullHardness = Duration.FromHours(1) }, C(20)))
            .Field.ShouldBe("fullHardnessH");

    [Fact]
    public void A_warmer_log_never_cures_less() =>
        Gen.Select(Gen.Double[-20, 90].Array[2, 12], Gen.Double[0, 20])
            .Sample(
                (readings, warmer) =>
                {
                    var cold = Cure.Over(Putty, Log([.. readings.Select((t, i) => ((double)i, t))]), []);
                    var warm = Cure.Over(Putty, Log([.. readings.Select((t, i) => ((double)i, t + warmer))]), []);
                    warm.Result.Equivalent.Hours.ShouldBeGreaterThanOrEqualTo(cold.Result.Equivalent.Hours);
                }
            );

    private static LogReading[] Log(params (double Hours, double Celsius)[] readings) =>
        [.. readings.Select(r => new LogReading(Eight.AddHours(r.Hours), C(r.Celsius)))];

    private static Temperature C(double celsius) => Temperature.FromDegreesCelsius(celsius);
}
