using RepairOrders.Api.Lines;
using RepairOrders.Api.Sites;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Lines;

public sealed class LineListRules
{
    private static readonly Site Mill = new()
    {
        ShortName = "mill",
        Areas = [new Area { Name = "Pump house 2", Sections = ["CW-N"] }],
    };

    [Fact]
    public void A_line_that_agrees_with_itself_and_the_tables_passes() => Problems(CoolingWater).ShouldBeEmpty();

    // ASME B36.10M, NPS 6: 168.3 mm.
    [Fact]
    public void An_outside_diameter_that_is_not_the_sizes_is_named_with_the_listed_ones()
    {
        var (field, sentence) = Problems(CoolingWater with { OutsideDiameter = Measure.Of(159, "mm") }).Single();
        field.ShouldBe("outsideDiameter");
        sentence.ShouldStartWith("outsideDiameter is 159 mm; listed for NPS 6 (DN 150) is");
        sentence.ShouldContain("168.3");
    }

    // EN 545 ductile iron DN 150: 170 mm.
    [Fact]
    public void A_ductile_iron_diameter_of_the_size_passes() =>
        Problems(CoolingWater with { OutsideDiameter = Measure.Of(170, "mm") }).ShouldBeEmpty();

    [Fact]
    public void Pipe_that_is_not_listed_has_no_size() =>
        Problems(CoolingWater with { Nps = null, Dn = null, OutsideDiameter = Measure.Of(159, "mm") }).ShouldBeEmpty();

    [Fact]
    public void Nominal_sizes_agree_and_exist()
    {
        Problems(CoolingWater with { Dn = 100 }).Single().Sentence.ShouldBe("dn is 100; NPS 6 is DN 150.");
        Problems(CoolingWater with { Nps = "7" }).Single().Field.ShouldBe("nps");
    }

    // The thickest wall of NPS 6 in ASME B36.10M is XXS, 21.95 mm.
    [Fact]
    public void A_wall_with_a_slipped_point_is_found()
    {
        Problems(CoolingWater with { NominalWall = Measure.Of(71.1, "mm") }).Single().Field.ShouldBe("nominalWall");
        Problems(CoolingWater with { NominalWall = Measure.Of(90, "mm") }).Single().Field.ShouldBe("nominalWall");
    }

    [Fact]
    public void A_grade_is_listed_or_unknown()
    {
        Problems(CoolingWater with { Grade = "ASTM A106 Q" }).Single().Field.ShouldBe("grade");
        Problems(CoolingWater with { Grade = null }).ShouldBeEmpty();
        PipeLists.Grade("astm a53 b")!.Name.ShouldBe("ASTM A53 B (S or E)");
        PipeLists.Grade("API 5L L360")!.Name.ShouldContain("X52");
    }

    [Fact]
    public void Operation_stays_within_design()
    {
        Problems(CoolingWater with { OperatingPressure = Measure.Of(10.1, "bar") })
            .Single()
            .Field.ShouldBe("operatingPressure");
        Problems(CoolingWater with { OperatingTemperature = Measure.Of(51, "°C") })
            .Single()
            .Field.ShouldBe("operatingTemperature");
    }

    // ASME B31.3, 300.2: Category D up to 1035 kPa gauge and −29 to 186 °C, neither flammable nor toxic.
    [Theory]
    [InlineData(10.35, 50, false, false)]
    [InlineData(10.36, 50, false, true)]
    [InlineData(10, 186, false, false)]
    [InlineData(10, 187, false, true)]
    [InlineData(10, 50, true, true)]
    public void Category_D_has_its_limits(double bar, double celsius, bool flammable, bool refused) =>
        Problems(
                CoolingWater with
                {
                    DesignPressure = Measure.Of(bar, "bar"),
                    DesignTemperature = Measure.Of(celsius, "°C"),
                    Flammable = flammable,
                }
            )
            .Any(p => p.Field == "serviceCategory")
            .ShouldBe(refused);

    [Fact]
    public void Only_what_burns_ignites() =>
        Problems(CoolingWater with { AutoIgnition = Measure.Of(250, "°C") }).Single().Field.ShouldBe("autoIgnition");

    [Fact]
    public void A_line_lies_in_an_area_and_section_of_its_site()
    {
        Problems(CoolingWater with { Area = "Pump hose" })
            .Single()
            .Sentence.ShouldBe("area is \"Pump hose\"; allowed at mill is one of Pump house 2.");
        Problems(CoolingWater with { Section = "CW-S" }).Single().Field.ShouldBe("section");
    }

    [Fact]
    public void A_line_is_not_installed_next_year() =>
        Problems(CoolingWater with { YearInstalled = 2027 }).Single().Field.ShouldBe("yearInstalled");

    private static IEnumerable<(string Field, string Sentence)> Problems(LineDetails ask) =>
        LineRules.Problems(ask, Mill, 2026);

    internal static readonly LineDetails CoolingWater = new(
        "Pump house 2",
        "CW-N",
        "6",
        150,
        Measure.Of(168.3, "mm"),
        Measure.Of(7.11, "mm"),
        "ASTM A106 B",
        "cooling water, brackish",
        FluidState.Liquid,
        2,
        ServiceCategory.D,
        4,
        false,
        false,
        null,
        Measure.Of(10, "bar"),
        Measure.Of(50, "°C"),
        Measure.Of(6, "bar"),
        Measure.Of(18, "°C"),
        false,
        false,
        false,
        2004
    );
}
