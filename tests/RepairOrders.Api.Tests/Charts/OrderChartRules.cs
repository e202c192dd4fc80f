using RepairOrders.Api.Assessing;
using RepairOrders.Api.Charts;
using RepairOrders.Api.Drawing;
using RepairOrders.Api.Tests.Drawing;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Charts;

/// <summary>The charts of an order whose wall was surveyed on a grid.</summary>
public sealed class OrderChartRules
{
    // Thinning along the bottom of a 168 mm pipe, five lines of nine stations: nothing was read at one place.
    private const string Grid = """
        6.6;6.5;6.4;6.2;6.0;6.1;6.3;6.5;6.6
        6.5;6.2;5.6;5.0;4.6;4.9;5.5;6.1;6.5
        6.4;5.8;4.7;3.9;3.1;3.6;4.8;5.7;6.4
        6.5;6.1;5.4;4.8;4.4;4.7;;6.0;6.5
        6.6;6.4;6.3;6.1;5.9;6.0;6.2;6.4;6.6
        """;

    [Fact]
    public void A_survey_gives_grid_profile_strength_and_trend()
    {
        var charts = OrderCharts.Of(Surveyed().Order);
        foreach (var chart in charts)
            Pictures.Show(chart.Picture, "survey-" + chart.Code);
        charts.Select(c => c.Code).ShouldBe(["thickness-grid", "river-bottom", "strength", "thickness-trend"]);
        var grid = charts[0];
        grid.Columns.Count.ShouldBe(10);
        // 22 mm round a pipe of 168.3 mm are 0.5 of 12 hours.
        grid.Rows.Select(r => r[0]).ShouldBe(["5", "5.5", "6", "6.5", "7"]);
        grid.Rows[3][7].ShouldBe("not read");
        charts[1]
            .Rows.Max(r => double.Parse(r[1], System.Globalization.CultureInfo.InvariantCulture))
            .ShouldBe(3.5, 1e-9);
    }

    [Theory]
    [InlineData("survey-thickness-grid")]
    [InlineData("survey-river-bottom")]
    [InlineData("survey-strength")]
    [InlineData("survey-thickness-trend")]
    public void No_two_texts_of_a_chart_lie_on_each_other_and_none_leaves_it(string name)
    {
        var picture = OrderCharts.Of(Surveyed().Order).Single(c => "survey-" + c.Code == name).Picture;
        var texts = Pictures.Boxes(picture).Where(b => b.What.Length > 0).ToList();
        foreach (var (what, box) in texts)
        {
            box.Left.ShouldBeGreaterThanOrEqualTo(-0.5, what);
            box.Right.ShouldBeLessThanOrEqualTo(picture.Width + 0.5, what);
            box.Bottom.ShouldBeLessThanOrEqualTo(picture.Height + 0.5, what);
        }
        for (var i = 0; i < texts.Count; i++)
        for (var k = i + 1; k < texts.Count; k++)
            texts[i].Box.Overlaps(texts[k].Box).ShouldBeFalse($"\"{texts[i].What}\" and \"{texts[k].What}\"");
    }

    [Fact]
    public void The_strength_of_a_surveyed_wall_is_no_less_than_that_of_its_deepest_point_alone()
    {
        var surveyed = Surveyed().Order.Last<Assessment>()!.Asked;
        var spot = Surveyed(withSurvey: false).Order.Last<Assessment>()!.Asked;
        surveyed.Judgement.ThinnestMm.ShouldBe(3.1);
        surveyed.Judgement.Calculations.Select(c => c.Code).ShouldContain("wall-loss-grid");
        surveyed.Judgement.SafePressureBar!.Value.ShouldBeGreaterThanOrEqualTo(spot.Judgement.SafePressureBar!.Value);
    }

    [Fact]
    public void A_cell_that_is_no_wall_is_named()
    {
        var no = Should.Throw<MalformedAsk>(() => Surveyed("6.6;6.5\n6.4;thin"));
        no.Message.ShouldContain("row 2 column 2 'thin'");
    }

    [Fact]
    public void Days_are_marked_at_the_first_of_months_and_years()
    {
        var day = new DateOnly(2026, 3, 2).DayNumber;
        Said(day, day + 130).ShouldBe(["2026-03", "2026-04", "2026-05", "2026-06", "2026-07", "2026-08"]);
        Said(day - 365 * 12, day + 400).ShouldBe(["2014", "2019", "2024", "2029"]);
        Said(day, day + 9).ShouldBe(["03-02", "03-09", "03-16"]);
    }

    private static IEnumerable<string> Said(double from, double to)
    {
        var axis = Axis.Calendar([from, to]);
        axis.Share(from).ShouldBeInRange(0, 1);
        axis.Share(to).ShouldBeInRange(0, 1);
        return axis.Ticks.Select(axis.Words);
    }

    private static Sheaf Surveyed(string readings = Grid, bool withSurvey = true)
    {
        var sheaf = new Sheaf();
        var ask = sheaf.Judged;
        return sheaf.Assessed(
            ask with
            {
                Readings =
                [
                    new(ReadingPlace.Beside, "3 o'clock", Measure.Of(6.6, "mm"), sheaf.Today, "UT-7"),
                    new(ReadingPlace.AtDefect, "6 o'clock", Measure.Of(3.1, "mm"), sheaf.Today, "UT-7"),
                ],
                EarlierReadings =
                [
                    new(ReadingPlace.AtDefect, "6 o'clock", Measure.Of(5.2, "mm"), sheaf.Today.AddYears(-6), "UT-7"),
                    new(ReadingPlace.AtDefect, "6 o'clock", Measure.Of(4.1, "mm"), sheaf.Today.AddYears(-3), "UT-7"),
                ],
                Defect = ask.Defect with
                {
                    Kind = DefectKind.GeneralThinning,
                    ThroughWall = false,
                    HoleDiameter = null,
                    ClockHours = 6,
                    AxialLength = Measure.Of(160, "mm"),
                    CircumferentialLength = Measure.Of(80, "mm"),
                },
                Survey = withSurvey
                    ? new(
                        readings,
                        GridUnit.Millimetre,
                        GridRows.AlongThePipe,
                        Measure.Of(20, "mm"),
                        Measure.Of(22, "mm"),
                        5,
                        sheaf.Today,
                        "UT-7"
                    )
                    : null,
            }
        );
    }
}
