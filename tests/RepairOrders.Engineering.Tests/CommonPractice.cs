using System.Globalization;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Tests.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Tests;

// Facts of the trade, of Published/common-practice.csv: no source prints them, and the engine says so wherever it rests on one.
public sealed class CommonPractice
{
    private static readonly IRepairMethod Patch = MethodCatalogue.Find("banded-patch");

    [Fact]
    public void The_backing_plate_is_of_thin_sheet()
    {
        var plate = Default(Patch, "plateThicknessMm");
        plate.Default!.Value.ShouldBeInRange(Fact("CP01"), Fact("CP02"));
        plate.Source.Provenance.ShouldBe(Provenance.CommonPractice);
    }

    [Fact]
    public void The_putty_is_kneaded_until_it_stiffens()
    {
        var mix = Patch.HoldPoints.Single(h => h.Code == "mix");
        mix.Title.ShouldContain(Text($"at least {Fact("CP03")} minutes"));
        mix.Source.Provenance.ShouldBe(Provenance.CommonPractice);
    }

    [Theory]
    [InlineData("banded-patch")]
    [InlineData("laminate-wrap")]
    public void Putty_and_resin_are_hard_after_a_day(string method)
    {
        var hard = Default(MethodCatalogue.Find(method), "fullHardnessH");
        hard.Default.ShouldBe(Fact("CP04"));
        hard.Source.Provenance.ShouldBe(Provenance.CommonPractice);
    }

    [Fact]
    public void The_surface_is_cleaned_by_hand_tool_to_a_profile()
    {
        var surface = Patch.HoldPoints.Single(h => h.Code == "surface");
        surface.Title.ShouldContain(Text($"at least St {Fact("CP06")}"));
        surface.Title.ShouldContain(Text($"near {Fact("CP05")} µm"));
        surface.Source.Provenance.ShouldBe(Provenance.CommonPractice);
    }

    [Fact]
    public void Small_pipe_is_told()
    {
        var dn = (int)Fact("CP07");
        var smallest = PipeSizes.ByDn(dn)!.OutsideDiameter;
        Told(smallest).ShouldBeFalse();
        Told(smallest * 0.9).ShouldBeTrue();
        bool Told(Length D) =>
            Patch
                .Claims(APipe.Dn100 with { OutsideDiameter = D }, APipe.Pinhole, APipe.CoolingWater)
                .Findings.Any(f => f.Code == "small-pipe" && f.Source.Provenance == Provenance.CommonPractice);
    }

    [Fact]
    public void The_putty_covers_three_times_the_defect()
    {
        var design = Patch.Size(APipe.With());
        var covered = design["plateLengthMm"]!.Value * design["plateArcMm"]!.Value;
        var damage = APipe.Pinhole.AxialLength.Millimeters * APipe.Pinhole.CircumferentialLength.Millimeters;
        (covered / damage).ShouldBeGreaterThanOrEqualTo(Fact("CP08"));
        design.Findings.ShouldContain(f => f.Source.Provenance == Provenance.CommonPractice && f.Limit == Fact("CP08"));
    }

    private static Input Default(IRepairMethod method, string code) => method.Inputs.Single(i => i.Code == code);

    private static double Fact(string id) =>
        PublishedTable.Rows("common-practice.csv").Single(r => r["id"] == id).Number("value");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
