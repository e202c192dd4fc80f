using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using RepairOrders.Engineering.Life;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Life;

public sealed class OutlivingADate
{
    private static readonly DateOnly Read = new(2026, 1, 1);

    // DN 150 with an inside loss; the wall and strength need both leave something to chance.
    private static readonly OutlivingAsk Thinned = new(
        Read,
        new(2031, 1, 1),
        Mm(6),
        Mm(0.2),
        Rate(0.2),
        Rate(0.08),
        Mm(4),
        new(Mm(168.3), Mm(7.11), Mm(100), Mm(10), Mpa(309), Mpa(8), Mpa(0.6), 1.5),
        1e-3
    );

    private static readonly double FiveYears = (new DateOnly(2031, 1, 1).DayNumber - Read.DayNumber) / 365.25;

    [Fact]
    public void With_a_certain_rate_the_wall_is_normal()
    {
        // The worked example: margin 0.5 mm, spread 0.2 mm, Φ(−2.5). First order is exact here.
        var answer = Outliving.Before(
            Thinned with
            {
                RateSpread = Rate(0),
                RequiredWall = Mm(4.5),
                Strength = null,
                WallRateCorrelation = 0,
            }
        );
        var expected = Normal.CDF(0, 1, -(6 - 0.2 * FiveYears - 4.5) / 0.2);
        expected.ShouldBe(0.0062, 0.00005);
        answer.Result.Wall.FirstOrder.ShouldBe(expected, 1e-9);
        ShouldAgree(answer.Result.Wall, expected);
    }

    [Fact]
    public void With_a_certain_reading_the_rate_is_lognormal()
    {
        var answer = Outliving.Before(Thinned with { ReadingSpread = Mm(0), Strength = null, WallRateCorrelation = 0 });
        var sigma = Math.Sqrt(Math.Log(1 + 0.4 * 0.4));
        var expected = 1 - LogNormal.CDF(Math.Log(0.2) - sigma * sigma / 2, sigma, (6 - 4) / FiveYears);
        answer.Result.Wall.FirstOrder.ShouldBe(expected, 1e-8);
        ShouldAgree(answer.Result.Wall, expected);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-0.7071067811865476)]
    [InlineData(0.5)]
    [InlineData(-1.0)]
    public void With_both_uncertain_sampling_agrees_with_quadrature(double correlation)
    {
        var answer = Outliving.Before(Thinned with { Strength = null, WallRateCorrelation = correlation });
        ShouldAgree(answer.Result.Wall, WallByQuadrature(correlation, FiveYears));
    }

    [Fact]
    public void Reading_error_and_rate_that_share_a_reading_are_worse_than_independent_ones()
    {
        var together = Outliving.Before(Thinned with { Strength = null }).Result.Wall.Sampled;
        var apart = Outliving.Before(Thinned with { Strength = null, WallRateCorrelation = 0 }).Result.Wall.Sampled;
        together.ShouldBeGreaterThan(apart);
    }

    [Fact]
    public void Strength_agrees_with_quadrature_over_the_wall_at_a_certain_pressure()
    {
        // Certain pressure and length: short in strength is short of one wall, that at which modified B31G holds 12 MPa.
        var need = Thinned.Strength! with
        {
            AxialLengthSpread = Mm(0),
            PressureSpread = Mpa(0),
        };
        var answer = Outliving.Before(
            Thinned with
            {
                Strength = need,
                WallRateCorrelation = 0,
                Rate = Rate(0.5),
                RateSpread = Rate(0.2),
            }
        );
        var sigma = Math.Sqrt(Math.Log(1 + 0.4 * 0.4));
        var wall = WallThatHolds(12, 100);
        var expected = Expectation(z =>
            1 - LogNormal.CDF(Math.Log(0.5) - sigma * sigma / 2, sigma, Math.Max(1e-9, 6 + 0.2 * z - wall) / FiveYears)
        );
        ShouldAgree(answer.Result.Strength!, expected);
    }

    [Fact]
    public void Strength_wall_is_where_modified_B31G_meets_the_pressure()
    {
        var model = new OutlivingModel(Thinned);
        foreach (var length in new[] { 5.0, 40, 100, 245, 600 })
        {
            var z4 = (length - 100) / 10;
            var wall = model.StrengthWall(new(0.0), new(z4))[0];
            wall.ShouldBe(Math.Max(WallThatHolds(12, length), 0.2 * 7.11), 1e-9);
        }
    }

    [Fact]
    public void Past_eighty_percent_depth_no_strength_is_credited()
    {
        // A pit 5 mm long could be deeper by the formula; B31G stops at 0.8 t.
        var model = new OutlivingModel(Thinned);
        model.StrengthWall(new(0.0), new((5.0 - 100) / 10))[0].ShouldBe(0.2 * 7.11, 1e-12);
    }

    [Fact]
    public void Either_way_lies_between_the_greater_and_the_sum()
    {
        var both = Outliving.Before(Thinned with { RequiredWall = Mm(3) }).Result;
        both.Either.ShouldBeGreaterThanOrEqualTo(Math.Max(both.Wall.Sampled, both.Strength!.Sampled));
        both.Either.ShouldBeLessThanOrEqualTo(both.Wall.Sampled + both.Strength.Sampled);
    }

    [Fact]
    public void First_order_agrees_with_sampling_where_the_limit_is_nearly_straight()
    {
        var answer = Outliving.Before(Thinned);
        answer.Result.Wall.FirstOrder.ShouldBe(answer.Result.Wall.Sampled, 0.05 * answer.Result.Wall.Sampled);
        answer.Result.Strength!.FirstOrder.ShouldBe(
            answer.Result.Strength.Sampled,
            4 * answer.Result.Strength.StandardError
        );
        answer.Findings.ShouldNotContain(f => f.Code == "first-order-differs");
    }

    [Fact]
    public void A_seed_gives_one_answer_to_the_last_bit()
    {
        // Counted once; any machine, any vector width, debug or release must count the same.
        var answer = Outliving.Before(Thinned).Result;
        (answer.Wall.Sampled, answer.Strength!.Sampled, answer.CrossesOn).ShouldBe(
            (0.051035, 0.000133, new DateOnly(2028, 6, 26))
        );
        BitConverter.DoubleToInt64Bits(answer.Wall.ReliabilityIndex!.Value).ShouldBe(GoldenBeta);
        Outliving.Before(Thinned with { Seed = 2 }).Result.Wall.Sampled.ShouldNotBe(0.051035);
    }

    private const long GoldenBeta = 4610074344219725051L;

    [Fact]
    public void The_target_is_reached_on_the_first_day_that_has_it()
    {
        var ask = Thinned with { Samples = 100_000, TargetProbability = 0.01 };
        var day = Outliving.Before(ask).Result.CrossesOn!.Value;
        Outliving.Before(ask with { By = day }).Result.Either.ShouldBeGreaterThanOrEqualTo(0.01);
        Outliving.Before(ask with { By = day.AddDays(-1) }).Result.Either.ShouldBeLessThan(0.01);
        var curve = Outliving.Before(ask).Result.Curve;
        curve.Zip(curve.Skip(1)).ShouldAllBe(pair => pair.First.Probability <= pair.Second.Probability);
        curve[^1].ShouldBe(new(ask.By, Outliving.Before(ask).Result.Either));
    }

    [Fact]
    public void A_wall_already_short_has_crossed_on_the_day_of_the_reading()
    {
        var answer = Outliving.Before(Thinned with { Wall = Mm(3.5), Strength = null, TargetProbability = 0.5 });
        answer.Result.CrossesOn.ShouldBe(Read);
        answer.Findings.ShouldContain(f => f.Code == "shortfall-target" && f.Severity == Severity.Fail);
        answer.Result.Wall.ReliabilityIndex!.Value.ShouldBeLessThan(0);
    }

    [Fact]
    public void Nothing_uncertain_is_told()
    {
        var answer = Outliving.Before(
            Thinned with
            {
                ReadingSpread = Mm(0),
                RateSpread = Rate(0),
                Strength = null,
                Samples = 1000,
            }
        );
        answer.Result.Wall.ShouldBe(new(0, 0.001, 0, null));
        answer.Findings.ShouldContain(f => f.Code == "first-order-not-found");
        answer.Findings.ShouldContain(f => f.Code == "few-samples-short");
    }

    [Fact]
    public void Working_prints_the_assumptions()
    {
        var words = Outliving.Before(Thinned with { Samples = 1000 }).Working.Select(s => s.Words).ToList();
        words.ShouldContain(w => w.Contains("lognormal, steady in time", StringComparison.Ordinal));
        words.ShouldContain(w => w.Contains("no error of the method itself", StringComparison.Ordinal));
        words.ShouldContain(w => w.Contains("correlation of true wall and true rate", StringComparison.Ordinal));
        words.ShouldContain(w => w.Contains("seed", StringComparison.Ordinal));
    }

    [Fact]
    public void Spread_of_a_rate_from_two_readings()
    {
        Outliving.RateSpread(Mm(0.2), Duration.FromJulianYears(4)).MillimetresPerYear().ShouldBe(0.0707, 0.00005);
    }

    [Fact]
    public void Impossible_asks_are_refused()
    {
        Field(Thinned with { By = Read.AddDays(-1) }).ShouldBe("by");
        Field(Thinned with { Rate = Rate(0) }).ShouldBe("corrosionRateMmPerYear");
        Field(Thinned with { WallRateCorrelation = 1.1 }).ShouldBe("wallRateCorrelation");
        Field(Thinned with { TargetProbability = 0 }).ShouldBe("targetProbability");
        Field(Thinned with { Samples = 100_000_000 }).ShouldBe("samples");
        Field(Thinned with { Strength = Thinned.Strength! with { SafetyFactor = 0.9 } }).ShouldBe("safetyFactor");
    }

    private static string Field(OutlivingAsk ask) =>
        Should.Throw<ImpossibleInputException>(() => Outliving.Before(ask)).Field;

    private static void ShouldAgree(Shortfall short_, double expected) =>
        short_.Sampled.ShouldBe(expected, 4 * Math.Sqrt(expected * (1 - expected) / 1_000_000));

    private static double WallByQuadrature(double rho, double years)
    {
        var sigma = Math.Sqrt(Math.Log(1 + 0.4 * 0.4));
        var mu = Math.Log(0.2) - sigma * sigma / 2;
        var own = Math.Sqrt(1 - rho * rho);
        return Expectation(z =>
        {
            var needed = (Math.Log((6 + 0.2 * z - 4) / years) - mu) / sigma;
            return own == 0 ? (rho * z > needed ? 1 : 0) : 1 - Normal.CDF(0, 1, (needed - rho * z) / own);
        });
    }

    private static double Expectation(Func<double, double> given) =>
        SimpsonRule.IntegrateComposite(z => given(z) * Normal.PDF(0, 1, z), -8, 8, 200_000);

    // Modified B31G solved for the wall by bisection, straight from the equation.
    private static double WallThatHolds(double pressure, double length)
    {
        const double D = 168.3;
        const double t = 7.11;
        var z = length * length / (D * t);
        var M = z <= 50 ? Math.Sqrt(1 + 0.6275 * z - 0.003375 * z * z) : 0.032 * z + 3.3;
        double Held(double depth) => 2 * t / D * 309 * (1 - 0.85 * depth / t) / (1 - 0.85 * depth / t / M);
        var (shallow, deep) = (0.0, t);
        for (var i = 0; i < 100; i++)
        {
            var middle = (shallow + deep) / 2;
            (shallow, deep) = Held(middle) >= pressure ? (middle, deep) : (shallow, middle);
        }
        return t - shallow;
    }

    private static Length Mm(double mm) => Length.FromMillimeters(mm);

    private static Speed Rate(double mmPerYear) => CorrosionRate.FromMillimetresPerYear(mmPerYear);

    private static Pressure Mpa(double mpa) => Pressure.FromMegapascals(mpa);
}
