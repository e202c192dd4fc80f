using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Pipework;

public sealed class PipeSizeLookUps
{
    [Theory]
    [InlineData("2-1/2")]
    [InlineData("2 1/2")]
    [InlineData("2.5")]
    public void A_size_is_found_however_its_fraction_is_written(string nps) => PipeSizes.ByNps(nps)!.Dn.ShouldBe(65);

    [Theory]
    [InlineData("7")]
    [InlineData("")]
    [InlineData("1/0")]
    [InlineData("DN150")]
    [InlineData("1-1/2-3")]
    public void What_is_no_listed_size_is_not_found(string nps) => PipeSizes.ByNps(nps).ShouldBeNull();

    [Fact]
    public void Nominal_diameter_and_nominal_pipe_size_name_the_same_pipe() =>
        PipeSizes.ByDn(150).ShouldBe(PipeSizes.ByNps("6"));

    [Theory]
    [InlineData("40")]
    [InlineData("Sch 40")]
    [InlineData("SCH.40")]
    public void A_schedule_is_found_however_it_is_written(string schedule) =>
        PipeSizes.ByNps("6")!.Wall(schedule)!.Wall.Millimeters.ShouldBe(7.11);

    [Fact]
    public void A_wall_that_is_not_listed_is_not_interpolated()
    {
        var six = PipeSizes.ByNps("6")!;
        six.Wall("60").ShouldBeNull();
        var finding = PipeSizes.WallFindings(six, "60").ShouldHaveSingleItem();
        finding.Code.ShouldBe("schedule-not-listed");
        finding.Blocks.ShouldBeTrue();
    }

    // ASME B36.10M: STD and 40 part at NPS 12, XS and 80 at NPS 10, 10 and 10S at NPS 14; XXS is thinner than 160 at NPS 8.
    [Theory]
    [InlineData("10", "STD", 0)]
    [InlineData("12", "STD", 1)]
    [InlineData("8", "XS", 0)]
    [InlineData("10", "XS", 1)]
    [InlineData("12", "10", 0)]
    [InlineData("14", "10", 1)]
    [InlineData("8", "XXS", 1)]
    public void A_schedule_whose_twin_differs_is_a_trap(string nps, string schedule, int traps) =>
        PipeSizes.WallFindings(PipeSizes.ByNps(nps)!, schedule).Count(f => f.Code == "schedule-trap").ShouldBe(traps);

    // ASME B36.10M: within a size no higher schedule number has a thinner wall.
    [Fact]
    public void Walls_never_decrease_with_the_schedule_number()
    {
        string[] rising = ["5", "10", "20", "30", "40", "60", "80", "100", "120", "140", "160"];
        foreach (var size in PipeSizes.All)
        {
            var walls = rising.Select(size.Wall).OfType<ScheduleWall>().Select(w => w.Wall.Millimeters).ToList();
            walls.ShouldBeInOrder(SortDirection.Ascending, $"NPS {size.Nps}");
        }
    }

    // ASME B36.10M: from NPS 14 the diameter is NPS × 25.4 mm, to the rounding of the metric table (0.4 mm).
    [Fact]
    public void From_nps_14_the_diameter_is_the_size_in_inches()
    {
        foreach (var size in PipeSizes.All.Where(s => s.Dn >= 350))
        {
            var inches = double.Parse(size.Nps, System.Globalization.CultureInfo.InvariantCulture);
            size.OutsideDiameter.Millimeters.ShouldBe(inches * 25.4, 0.41);
        }
    }

    // The worked example of the documentation; the trap of DN 65, 73.0 mm in ASME and 76.1 mm in EN 10220.
    [Fact]
    public void A_girth_finds_the_pipe_it_was_measured_on()
    {
        PipeSizes.OutsideDiameterFromGirth(Length.FromMillimeters(528.7)).Millimeters.ShouldBe(168.29, 0.005);
        var found = PipeSizes.FromGirth(Length.FromMillimeters(239));
        found.Result[0].Listed.OutsideDiameter.Millimeters.ShouldBe(76.1);
        found.Result.ShouldNotContain(m => m.Listed.OutsideDiameter.Millimeters == 73.0);
    }

    [Fact]
    public void A_girth_between_two_families_names_both()
    {
        var found = PipeSizes.FromGirth(Length.FromMillimeters(140.5 * Math.PI));
        found.Findings.ShouldHaveSingleItem().Code.ShouldBe("diameter-ambiguous");
        found.Result.Select(m => m.Listed.OutsideDiameter.Millimeters).ShouldContain(139.7);
        found.Result.Select(m => m.Listed.OutsideDiameter.Millimeters).ShouldContain(141.3);
    }

    [Fact]
    public void A_girth_that_fits_nothing_says_so() =>
        PipeSizes
            .FromGirth(Length.FromMillimeters(2000 * Math.PI * 0.97))
            .Findings.ShouldHaveSingleItem()
            .Code.ShouldBe("diameter-not-listed");

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void A_girth_no_pipe_can_have_is_refused_by_name(double millimetres) =>
        Should
            .Throw<ImpossibleInputException>(() =>
                PipeSizes.OutsideDiameterFromGirth(Length.FromMillimeters(millimetres))
            )
            .Field.ShouldBe("girthMm");

    // EN 10220 mass formula; ASME B36.10M prints 28.26 kg/m (from memory).
    [Fact]
    public void Mass_by_length_is_that_of_the_table() =>
        PipeSizes
            .MassByLength(Length.FromMillimeters(168.3), Length.FromMillimeters(7.11))
            .KilogramsPerMeter.ShouldBe(28.26, 0.005);

    [Fact]
    public void Every_diameter_names_its_source() =>
        PipeSizes.Diameters.ShouldAllBe(d => d.Source.Document.Length > 0 && d.OutsideDiameter.Millimeters > 0);
}
