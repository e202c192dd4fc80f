using System.Globalization;
using RepairOrders.Engineering.Life;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Life;

public sealed class CorrosionRateRules
{
    private static readonly DateOnly New = new(2005, 6, 1);

    [Fact]
    public void Long_term_governs_where_it_is_greater()
    {
        // 12 mm to 10 mm in 5 years: public training page, 0.40 mm a year.
        var rates = CorrosionRate.Assess(
            new([Reading("2015-06-01", 12), Reading("2020-05-31", 10)], Mm(12.7), New, false, false)
        );
        rates.Result.LongTerm!.Value.MillimetresPerYear().ShouldBe(0.40, 0.005);
        rates.Result.Basis.ShouldBe(RateBasis.LongTerm);
        rates.Findings.ShouldBeEmpty();
        rates.Working.ShouldContain(s => s.Symbol == "CR_LT" && s.Unit == "mm/y");
    }

    [Fact]
    public void Short_term_governs_where_corrosion_has_quickened()
    {
        var rates = Assess([Reading("2010-06-01", 8), Reading("2020-06-01", 7.5), Reading("2021-06-01", 7.0)]);
        rates.Result.ShortTerm!.Value.MillimetresPerYear().ShouldBe(0.5, 0.001);
        rates.Result.LongTerm!.Value.MillimetresPerYear().ShouldBe(1 / 11.0, 0.001);
        rates.Result.Basis.ShouldBe(RateBasis.ShortTerm);
    }

    [Fact]
    public void Growth_of_the_wall_is_scatter_and_the_floor_governs()
    {
        var rates = Assess([Reading("2015-06-01", 7), Reading("2020-06-01", 7.2)]);
        Codes(rates).ShouldBe(["rate-negative", "rate-floor"]);
        rates.Result.Governing!.Value.MillimetresPerYear().ShouldBe(0.05, 1e-12);
        rates.Result.Basis.ShouldBe(RateBasis.Floor);
        rates.Result.LongTerm!.Value.MillimetresPerYear().ShouldBe(-0.04, 0.0001);
    }

    [Fact]
    public void With_the_floor_a_wall_that_seems_not_to_corrode_has_a_finite_life()
    {
        // 5 mm, 2.8 mm required: 2.2/0.05 = 44 years, not for ever.
        var rates = Assess([Reading("2015-06-01", 5), Reading("2020-06-01", 5)]);
        var life = RemainingLife.Forecast(rates.Result, Mm(2.8), InspectionInterval.For(4));
        life.Result.Remaining!.Value.JulianYears.ShouldBe(44, 1e-9);
    }

    [Fact]
    public void Readings_under_half_a_year_apart_give_no_short_term_rate()
    {
        var rates = Assess([Reading("2015-06-01", 8), Reading("2020-06-01", 7.5), Reading("2020-09-01", 7.0)]);
        rates.Result.ShortTerm.ShouldBeNull();
        Codes(rates).ShouldBe(["interval-short"]);
        rates.Result.Basis.ShouldBe(RateBasis.LongTerm);
    }

    [Fact]
    public void Another_spot_gives_no_rate()
    {
        var rates = Assess([
            Reading("2015-06-01", 8),
            Reading("2015-06-01", 8.5, place: "B"),
            Reading("2020-06-01", 7.0),
        ]);
        Codes(rates).ShouldBe(["other-place"]);
        rates.Result.LongTerm!.Value.MillimetresPerYear().ShouldBe(0.2, 0.001);
    }

    [Fact]
    public void The_spot_that_is_thinnest_today_is_the_one_reckoned_with()
    {
        var rates = Assess([
            Reading("2015-06-01", 8),
            Reading("2020-06-01", 7.9),
            Reading("2015-06-01", 8, place: "B"),
            Reading("2020-06-01", 5, place: "B"),
        ]);
        rates.Result.Place.ShouldBe("B");
        rates.Result.Governing!.Value.MillimetresPerYear().ShouldBe(0.6, 0.001);
    }

    [Fact]
    public void A_change_of_probe_is_told()
    {
        var rates = Assess([Reading("2015-06-01", 8), Reading("2020-06-01", 7, probe: "twin crystal")]);
        Codes(rates).ShouldContain("instruments-differ");
    }

    [Fact]
    public void Pitting_takes_the_deepest_pit_and_no_averages()
    {
        var history = new WallHistory(
            [
                Reading("2015-06-01", 8),
                Reading("2020-06-01", 7.8) with
                {
                    IsAverage = true,
                },
                Reading("2020-06-01", 6),
                Reading("2020-06-01", 5),
            ],
            Mm(8),
            null,
            Pitting: true,
            ThroughWall: false
        );
        var rates = CorrosionRate.Assess(history);
        rates.Result.Actual.Millimeters.ShouldBe(5);
        Codes(rates).ShouldBe(["average-excluded"]);
        Should
            .Throw<ImpossibleInputException>(() =>
                CorrosionRate.Assess(history with { Readings = [Reading("2020-06-01", 7) with { IsAverage = true }] })
            )
            .Message.ShouldContain("averages only");
    }

    [Fact]
    public void After_a_leak_the_rate_is_at_least_the_wall_over_the_age()
    {
        var history = new WallHistory(
            [Reading("2015-06-01", 6), Reading("2020-06-01", 5.9), Reading("2023-06-01", 0)],
            Mm(7.11),
            New,
            Pitting: true,
            ThroughWall: true
        );
        // Short term is 5.9 mm in 3 years; it is greater than 7.11/18 and governs.
        CorrosionRate.Assess(history).Result.Basis.ShouldBe(RateBasis.ShortTerm);

        var beside = history with { Readings = [Reading("2015-06-01", 6), Reading("2023-06-01", 5.9)] };
        var rates = CorrosionRate.Assess(beside);
        rates.Result.Basis.ShouldBe(RateBasis.ThroughWall);
        rates.Result.Governing!.Value.MillimetresPerYear().ShouldBe(7.11 / 18, 0.0005);
        Codes(CorrosionRate.Assess(beside with { Commissioned = null })).ShouldContain("age-unknown");
    }

    [Fact]
    public void One_reading_goes_by_the_nominal_wall_and_says_so()
    {
        var rates = Assess([Reading("2025-06-01", 5.11)]);
        rates.Result.LongTerm!.Value.MillimetresPerYear().ShouldBe(2.0 / 20, 0.0005);
        Codes(rates).ShouldBe(["initial-wall-nominal"]);
    }

    [Fact]
    public void One_reading_of_a_pipe_of_unknown_age_gives_no_rate_and_no_life()
    {
        var rates = CorrosionRate.Assess(new([Reading("2025-06-01", 5)], Mm(7.11), null, false, false));
        rates.Result.Governing.ShouldBeNull();
        rates.Findings.ShouldContain(f => f.Code == "rate-not-measured" && f.Severity == Severity.Fail);
        var life = RemainingLife.Forecast(rates.Result, Mm(2), InspectionInterval.For(1));
        life.Result.Remaining.ShouldBeNull();
        life.Result.ThicknessInterval!.Value.JulianYears.ShouldBe(5, 1e-9);
    }

    [Theory]
    [InlineData(9.0, "readings.wallMm")]
    [InlineData(-1.0, "readings.wallMm")]
    public void A_wall_that_cannot_be_is_refused(double wall, string field) =>
        Should.Throw<ImpossibleInputException>(() => Assess([Reading("2025-06-01", wall)])).Field.ShouldBe(field);

    [Fact]
    public void A_reading_before_the_pipe_was_there_is_refused() =>
        Should
            .Throw<ImpossibleInputException>(() => Assess([Reading("2001-06-01", 7)]))
            .Message.ShouldContain("2005-06-01");

    [Fact]
    public void A_life_under_sixty_days_is_not_a_plan()
    {
        var rates = new CorrosionRates(
            "A",
            Mm(3.1),
            New,
            null,
            null,
            CorrosionRate.FromMillimetresPerYear(1),
            RateBasis.LongTerm
        );
        var life = RemainingLife.Forecast(rates, Mm(3), InspectionInterval.For(2));
        life.Findings.ShouldContain(f => f.Code == "half-life-under-30-days" && f.Severity == Severity.Fail);
        life.Result.ReachesRequiredOn.ShouldBe(New.AddDays(36));
        RemainingLife
            .Forecast(rates, Mm(3.1), InspectionInterval.For(2))
            .Findings.ShouldContain(f => f.Code == "wall-short" && f.Severity == Severity.Fail);
    }

    private static Calculated<CorrosionRates> Assess(IReadOnlyList<WallReading> readings) =>
        CorrosionRate.Assess(new(readings, Mm(7.11), New, false, false));

    private static IEnumerable<string> Codes(Calculated<CorrosionRates> rates) => rates.Findings.Select(f => f.Code);

    private static WallReading Reading(string on, double mm, string place = "A", string probe = "single crystal") =>
        new(DateOnly.Parse(on, CultureInfo.InvariantCulture), Mm(mm), place, probe);

    private static Length Mm(double mm) => Length.FromMillimeters(mm);
}
