using CsCheck;
using RepairOrders.Engineering.Curing;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Curing;

public class PotLifeTests
{
    private static readonly DateTimeOffset Eight = new(2027, 3, 1, 8, 0, 0, TimeSpan.Zero);
    private static readonly PotLifeData Resin = new(C(20), Duration.FromMinutes(30), Duration.FromMinutes(60));

    [Fact]
    public void Ten_degrees_warmer_leaves_less_than_half_without_product_data()
    {
        var time = PotLife.At(Resin, C(30), Eight);
        time.Result.InPot.Minutes.ShouldBe(30 / 2.6, 1e-9);
        time.Result.UsableUntil.ShouldBe(Eight.AddMinutes(30 / 2.6), TimeSpan.FromMilliseconds(1));
        time.Result.PlaceBy!.Value.ShouldBe(Eight.AddMinutes(60 / 2.6), TimeSpan.FromMilliseconds(1));
        time.Findings.ShouldContain(f => f.Code == "pot-life-law-default");
    }

    [Fact]
    public void Ten_degrees_colder_is_credited_with_the_smaller_ratio() =>
        PotLife.At(Resin, C(10), Eight).Result.InPot.Minutes.ShouldBe(30 * 1.8, 1e-9);

    [Fact]
    public void Far_above_what_was_tested_nobody_knows() =>
        PotLife.At(Resin, C(41), Eight).Findings.ShouldContain(f => f.Code == "pot-life-unknown" && f.Blocks);

    [Fact]
    public void A_log_of_the_mix_uses_pot_life_at_its_warmer_readings()
    {
        LogReading[] log = [new(Eight, C(25)), new(Eight.AddMinutes(10), C(30))];
        PotLife.Used(Resin, log).ShouldBe(2.6 * 10 / 30, 1e-9);
    }

    [Fact]
    public void No_open_time_stated_none_given() =>
        PotLife.At(Resin with { Open = null }, C(20), Eight).Result.PlaceBy.ShouldBeNull();

    [Fact]
    public void Impossible_pot_life_is_named() =>
        Should
            .Throw<ImpossibleInputException>(() => PotLife.At(Resin with { InPot = Duration.Zero }, C(20), Eight))
            .Field.ShouldBe("potLifeH");

    [Fact]
    public void Warmer_never_keeps_longer() =>
        Gen.Select(Gen.Double[-60, 300], Gen.Double[-60, 300])
            .Sample(
                (one, other) =>
                {
                    var cold = PotLife.At(Resin, C(Math.Min(one, other)), Eight).Result.InPot.Hours;
                    PotLife
                        .At(Resin, C(Math.Max(one, other)), Eight)
                        .Result.InPot.Hours.ShouldBeLessThanOrEqualTo(cold);
                }
            );

    private static Temperature C(double celsius) => Temperature.FromDegreesCelsius(celsius);
}
