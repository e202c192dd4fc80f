using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using static RepairOrders.Engineering.Tests.Strength.ACase;

namespace RepairOrders.Engineering.Tests.Strength;

public sealed class WallLossGrids
{
    private const string Valley = "10,10,10,10,10\n10,8,5,7,10\n10,9,9,9,10";

    private static readonly GridLayout Along = new(Mm(25), Mm(20), GridUnit.Millimetre, GridRows.AlongThePipe);

    // The worked example of the documentation; the numbers are counted by hand.
    [Fact]
    public void The_deepest_reading_of_each_ring_makes_the_profile()
    {
        var grid = WallLossGrid.Read(Valley, Along);
        (grid.Stations, grid.Places).ShouldBe((5, 3));
        grid.AlongThePipe(Mm(10)).DepthsMm.ToArray().ShouldBe([0.0, 2, 5, 3, 0]);
        grid.AlongThePipe(Mm(10)).PositionsMm.ToArray().ShouldBe([0.0, 25, 50, 75, 100]);
        grid.RoundThePipe(Mm(10)).DepthsMm.ToArray().ShouldBe([0.0, 5, 1]);
    }

    [Fact]
    public void A_row_may_also_be_a_ring_round_the_pipe()
    {
        var turned = WallLossGrid.Read(
            "10,10,10\n10,8,9\n10,5,9\n10,7,9\n10,10,10",
            Along with
            {
                Rows = GridRows.RoundThePipe,
            }
        );
        turned.AlongThePipe(Mm(10)).DepthsMm.ToArray().ShouldBe([0.0, 2, 5, 3, 0]);
        var least = turned.Statistics().Least;
        (least.Row, least.Column, least.Wall.Millimeters).ShouldBe((3, 2, 5.0));
    }

    [Theory]
    [InlineData("10;10\r\n9,5;8")]
    [InlineData("10\t10\n9,5\t8\n")]
    [InlineData("# ring 1\n10, 10\n\n 9.5 ,8")]
    [InlineData("\uFEFF10,10\n9.5,8")]
    public void Commas_semicolons_and_tabs_are_understood(string csv) =>
        WallLossGrid.Read(csv, Along)[0, 1]!.Value.Millimeters.ShouldBe(9.5);

    [Fact]
    public void Inches_become_millimetres() =>
        WallLossGrid.Read("0.375,0.375\n0.25,0.375", Along with { Unit = GridUnit.Inch })[
            0,
            1
        ]!.Value.Millimeters.ShouldBe(6.35);

    [Theory]
    [InlineData("10,10\n1o,8", "csv", "row 2 column 1 '1o'")]
    [InlineData("10,10\n-1,abc", "csv", "row 2 column 1 '-1', row 2 column 2 'abc'")]
    [InlineData("10,10\n9,NaN", "csv", "row 2 column 2 'NaN'")]
    [InlineData("10,10\n9,1e400", "csv", "row 2 column 2 '1e400'")]
    [InlineData("10,10\n9,501", "csv", "row 2 column 2 '501'")]
    [InlineData("10,10\n9", "csv row 2", "1 cells")]
    [InlineData("10,10", "csv", "1 rows of 2 cells")]
    [InlineData("", "csv", "0 rows of 0 cells")]
    [InlineData(",\n,9", "csv", "a grid with fewer than two readings")]
    public void A_bad_cell_is_named_by_row_and_column(string csv, string field, string value)
    {
        var refused = Should.Throw<ImpossibleInputException>(() => WallLossGrid.Read(csv, Along));
        refused.Field.ShouldBe(field);
        refused.Value.ShouldBe(value);
    }

    [Fact]
    public void Of_many_bad_cells_ten_are_named() =>
        Should
            .Throw<ImpossibleInputException>(() =>
                WallLossGrid.Read(string.Join('\n', Enumerable.Repeat("x,y", 20)), Along)
            )
            .Value.ShouldEndWith("row 5 column 2 'y' and 30 more");

    [Fact]
    public void A_spacing_that_cannot_be_is_refused() =>
        Should
            .Throw<ImpossibleInputException>(() => WallLossGrid.Read(Valley, Along with { AxialSpacing = Mm(0) }))
            .Field.ShouldBe("axialSpacingMm");

    [Fact]
    public void A_blank_cell_was_not_read_and_is_told()
    {
        var grid = WallLossGrid.Read("10,10,10\n10,,4\n10,10,10", Along);
        grid[1, 1].ShouldBeNull();
        grid.Statistics().Missing.ShouldBe(1);
        grid.Assess(Case()).Findings.ShouldContain(f => f.Code == "grid-cells-blank" && f.Severity == Severity.Watch);
        grid.Assess(Case()).Result.Map.LossPercent[4].ShouldBeNull();
    }

    [Fact]
    public void A_reading_thicker_than_the_pipe_can_be_is_told_with_its_place()
    {
        var finding = WallLossGrid
            .Read("10,10\n10,13", Along)
            .Assess(Case())
            .Findings.Single(f => f.Code == "grid-reading-implausible");
        finding.Words.ShouldContain("row 2 column 2");
        finding.Blocks.ShouldBeTrue();
    }

    [Fact]
    public void A_grid_is_judged_by_the_effective_area_of_its_profile()
    {
        var judged = WallLossGrid.Read(Valley, Along).Assess(Case());
        judged.Result.Strength.Governs.ShouldBe("effective-area");
        var weakest = EffectiveArea.FailurePressure([0, 25, 50, 75, 100], [0, 2, 5, 3, 0], Mm(508), Mm(10), Mpa(519));
        judged.Result.Strength.SafePressure!.Value.Megapascals.ShouldBe(weakest.Megapascals / 1.39, 1e-12);
        judged.Result.Map.LossPercent[(1 * 5) + 2].ShouldBe(50);
    }

    [Fact]
    public void Sound_metal_far_from_the_loss_is_cut_off_the_profile()
    {
        var sound = string.Join(',', Enumerable.Repeat("10", 40));
        var judged = WallLossGrid.Read($"{sound},6,{sound}\n{sound},10,{sound}", Along).Assess(Case());
        judged.Result.Along.DepthsMm.ToArray().ShouldBe([0.0, 4, 0]);
        judged.Result.Along.PositionsMm[0].ShouldBe(39 * 25);
    }

    // ASME B31G-2009 (from memory): pits closer than three walls, 30 mm here, are one.
    [Theory]
    [InlineData("10,6,10,10,7,10\n10,10,10,10,10,10", 2)] // 2 × 25 mm of sound metal between
    [InlineData("10,6,10,7,10,10\n10,10,10,10,10,10", 1)] // 25 mm
    [InlineData("10,6,10,10,10,10\n10,10,7,10,10,10", 1)] // corner to corner
    public void Pits_closer_than_three_walls_are_one(string csv, int groups) =>
        WallLossGrid.Read(csv, Along).Pits(Mm(508), Mm(10)).Count.ShouldBe(groups);

    [Fact]
    public void Pits_of_one_group_are_counted_and_the_deepest_leads()
    {
        var groups = WallLossGrid
            .Read("10,6,10,7,10,10,10,4,10\n10,10,10,10,10,10,10,10,10", Along)
            .Pits(Mm(508), Mm(10));
        groups.Select(g => (g.Pits, g.Depth.Millimeters)).ShouldBe([(1, 6.0), (2, 4.0)]);
        (groups[1].From.Millimeters, groups[1].AxialLength.Millimeters).ShouldBe((25.0, 75.0));
    }

    [Fact]
    public void A_grid_that_goes_all_the_way_round_joins_across_its_edge()
    {
        var rows = Enumerable.Repeat("10,10,10", 8).ToArray();
        rows[0] = rows[7] = "10,5,10";
        var csv = string.Join('\n', rows);
        var layout = Along with { CircumferentialSpacing = Mm(20) };
        var full = WallLossGrid.Read(csv, layout).Pits(Mm(8 * 20 / Math.PI), Mm(5.5));
        full.Count.ShouldBe(0); // half a millimetre of 5.5 is under a tenth
        WallLossGrid
            .Read(csv, layout)
            .Pits(Mm(8 * 20 / Math.PI), Mm(10))
            .ShouldHaveSingleItem()
            .CircumferentialLength.Millimeters.ShouldBe(40);
        WallLossGrid.Read(csv, layout).Pits(Mm(508), Mm(10)).Count.ShouldBe(2);
    }

    // API 579-1 Part 4 (from memory): COV of five readings 0.0418; fifteen may be averaged.
    [Fact]
    public void General_loss_is_judged_by_the_average_where_readings_agree()
    {
        double[] readings = [.. Enumerable.Repeat(new[] { 6.1, 5.8, 6.4, 5.9, 6.3 }, 3).SelectMany(r => r)];
        var judged = GeneralMetalLoss.Assess(A106B(), Duty(3), new(readings, Mm(7.11), Mm(0.5), DefectSide.Internal));
        judged.Result.MayAverage.ShouldBeTrue();
        judged.Result.Average!.Value.Millimeters.ShouldBe(6.1, 1e-9);
        judged.Result.Level1.ShouldBe(true);
    }

    [Fact]
    public void Readings_that_disagree_need_a_profile()
    {
        double[] readings = [7, 7, 3, 7, 7];
        var without = GeneralMetalLoss.Assess(A106B(), Duty(3), new(readings, Mm(7.11), Mm(0.5), DefectSide.Internal));
        without.Result.Level1.ShouldBeNull();
        without.Findings.ShouldContain(f => f.Code == "general-loss-not-judged");
        var profile = RiverBottom.Of([0, 30, 60, 90, 120], [0.11, 0.11, 4.11, 0.11, 0.11]);
        var with = GeneralMetalLoss.Assess(
            A106B(),
            Duty(3),
            new(readings, Mm(7.11), Mm(0.5), DefectSide.Internal, profile)
        );
        with.Result.AveragingLength.Millimeters.ShouldBeGreaterThan(0);
        with.Result.Average!.Value.Millimeters.ShouldBeInRange(3, 7);
        with.Result.Level1.ShouldNotBeNull();
    }

    [Fact]
    public void The_least_wall_has_a_floor_whatever_the_average()
    {
        double[] readings = [.. Enumerable.Repeat(7.0, 30), 1.6];
        var judged = GeneralMetalLoss.Assess(
            A106B(),
            Duty(3),
            new(readings, Mm(7.11), Mm(0.5), DefectSide.Internal, RiverBottom.Of([0, 500, 1000], [0.11, 5.51, 0.11]))
        );
        judged.Result.Level1.ShouldBe(false);
        judged.Result.Level2.ShouldBe(false);
        judged.Findings.Single(f => f.Code == "general-loss").Severity.ShouldBe(Severity.Fail);
    }

    private static StrengthCase Case() => With(X65(508, 10), 0, 0);

    private static WallDuty Duty(double megapascals) =>
        new(WallCode.B313, Mpa(megapascals), Temperature.FromDegreesCelsius(38));
}
