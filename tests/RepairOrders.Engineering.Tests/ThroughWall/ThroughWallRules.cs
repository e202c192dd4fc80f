using RepairOrders.Engineering.Leaks;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using RepairOrders.Engineering.Tests.Life;
using RepairOrders.Engineering.ThroughWall;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.ThroughWall;

public sealed class ThroughWallRules
{
    public static TheoryData<string> Rows =>
        LifeAndLoads.Ids("crit_len", "cfr46_class", "marine_class", "reduced_pressure_192_933", "orifice_liquid");

    private static readonly Pipe Dn300 = new(
        Mm(323.8),
        Mm(6.35),
        MetalFamily.CarbonSteel,
        Mpa(240),
        Mpa(415),
        Mpa(138),
        1
    );

    [Theory, MemberData(nameof(Rows))]
    public void As_published(string id)
    {
        var row = LifeAndLoads.Row(id);
        row.ShouldBe(Computed(row));
    }

    private static double Computed(LifeAndLoads row) =>
        row.Function switch
        {
            "crit_len" => CriticalLength
                .Of(Mpa(row["P"]), Mm(row["D"]), Mm(row["t"]), Mpa(row["sflow"]))!
                .Value.Millimeters,
            "cfr46_class" => PipingClass.ByRegulations(
                row.Text("service"),
                Pressure.FromPoundsForcePerSquareInch(row["psi"]),
                Temperature.FromDegreesFahrenheit(row["F"])
            ),
            "marine_class" => PipingClass.BySociety(
                row.Text("medium"),
                Pressure.FromBars(row["bar"]),
                Temperature.FromDegreesCelsius(row["C"])
            ),
            "reduced_pressure_192_933" => PressureCut
                .To(Pressure.FromKilopascals(row["op"]), Pressure.FromKilopascals(row["pf"]), row["F"])
                .Kilopascals,
            "orifice_liquid" => LiquidLeak
                .Flow(
                    Hole.Round(Mm(row["dia_mm"])),
                    Pressure.FromPascals(row["dP_Pa"]),
                    Density.FromKilogramsPerCubicMeter(row["rho"]),
                    row.Or("Cd", 0.61)
                )
                .KilogramsPerSecond,
            _ => throw new InvalidOperationException(row.Function),
        };

    [Fact]
    public void At_the_critical_length_modified_B31G_through_the_wall_is_at_flow()
    {
        // The same bulging factor as the strength method: the length solved for must give the stress back.
        foreach (var pressure in new[] { 1.0, 2, 4, 8, 10 })
        {
            var L = CriticalLength.Of(Mpa(pressure), Mm(323.8), Mm(6.35), Mpa(309))!.Value;
            var M = PipelineMetalLoss.BulgingModified(PipelineMetalLoss.LengthParameter(L, Mm(323.8), Mm(6.35)));
            (pressure * 323.8 / 12.7 * M).ShouldBe(309, M is > 4.89 and < 4.91 ? 0.5 : 1e-9 * 309, $"{pressure} MPa");
        }
    }

    [Fact]
    public void Rupture_is_credible_where_the_flaw_is_near_its_critical_length()
    {
        var flaw = new ThroughWallCase(Dn300, Mm(6.35), Mm(15), Mm(0), Mpa(10), Mpa(309));
        var check = CriticalLength.Check(flaw);
        check.Findings.ShouldContain(f => f.Code == "critical-length" && f.Severity == Severity.Fail && !f.Blocks);
        check.Findings.ShouldContain(f => f.Code == "leak-or-rupture" && f.Severity == Severity.Watch);
        check.Cautions.ShouldHaveSingleItem().ShouldContain("Rupture");
        CriticalLength
            .Check(flaw with { FlawLength = Mm(40) })
            .Findings.ShouldContain(f => f.Code == "critical-length" && f.Blocks);
    }

    [Fact]
    public void A_pinhole_at_low_stress_leaks()
    {
        var check = CriticalLength.Check(new(Dn300, Mm(6.35), Mm(3), Mm(2), Mpa(1), Mpa(309)));
        check.Findings.ShouldAllBe(f => f.Severity == Severity.Pass);
        check.Result.Length.Millimeters.ShouldBe(5);
    }

    [Fact]
    public void A_brittle_pipe_has_no_ductile_limit()
    {
        var iron = Dn300 with { Metal = MetalFamily.GrayIron, YieldStrength = null };
        var check = CriticalLength.Check(new(iron, Mm(6.35), Mm(3), Mm(0), Mpa(1), Mpa(309)));
        check.Result.CriticalLength.ShouldBeNull();
        check.Findings.ShouldHaveSingleItem().Blocks.ShouldBeTrue();
    }

    [Fact]
    public void Without_pressure_nothing_runs() =>
        CriticalLength.Of(Pressure.Zero, Mm(323.8), Mm(6.35), Mpa(309)).ShouldBeNull();

    [Theory]
    [InlineData(2, "1-to-3-mm", "small", "pinhole", "pinhole")]
    [InlineData(3.0, "1-to-3-mm", "small", "pinhole", "pinhole")]
    [InlineData(10, "3-to-10-mm", "medium", "pinhole", "small")]
    [InlineData(21, "10-to-50-mm", "medium", "hole", "medium")]
    [InlineData(42, "10-to-50-mm", "large", "hole", "large")]
    [InlineData(51, "50-to-150-mm", "large", "hole", "separation-capable")]
    [InlineData(400, "over-150-mm", "rupture", "rupture", "separation-capable")]
    public void Hole_classes_by_every_scheme(
        double hole,
        string producers,
        string inspection,
        string gas,
        string own
    ) => HoleClasses.Of(Mm(hole), Mm(323.8)).Select(c => c.Code).ShouldBe([producers, inspection, gas, own]);

    [Fact]
    public void A_hole_of_a_quarter_of_a_small_pipe_may_part_it() =>
        HoleClasses.OfService(Mm(16), Mm(60.3)).Code.ShouldBe("separation-capable");

    [Fact]
    public void Equivalent_diameter_of_a_slot() =>
        HoleClasses.EquivalentDiameter(Area.FromSquareMillimeters(150)).Millimeters.ShouldBe(13.82, 0.005);

    [Theory]
    // Class-society table (special service craft rules, Pt 15 Ch 1 Table 1.3.1), limits of class II and III; equal is inside.
    [InlineData("steam", 7, 170, 3)]
    [InlineData("steam", 7, 171, 2)]
    [InlineData("steam", 16, 300, 2)]
    [InlineData("steam", 16.1, 300, 1)]
    [InlineData("thermal-oil", 7, 150, 3)]
    [InlineData("thermal-oil", 16, 301, 1)]
    [InlineData("flammable", 7, 60, 3)]
    [InlineData("flammable", 7, 61, 2)]
    [InlineData("flammable", 16, 151, 1)]
    [InlineData("other", 16, 200, 3)]
    [InlineData("other", 16.1, 200, 2)]
    [InlineData("other", 40, 300, 2)]
    [InlineData("toxic", 0, 20, 1)]
    [InlineData("corrosive", 0, 20, 1)]
    public void Classes_of_the_societies(string medium, double bar, double celsius, int expected) =>
        PipingClass
            .BySociety(medium, Pressure.FromBars(bar), Temperature.FromDegreesCelsius(celsius))
            .ShouldBe(expected);

    [Theory]
    // 46 CFR 56.04-2 Table 1: class I where pressure or temperature is above its limit.
    [InlineData("gas", 150, 650, 2)]
    [InlineData("gas", 151, 100, 1)]
    [InlineData("gas", 100, 651, 1)]
    [InlineData("liquefied-flammable-gas", 150, 0, 2)]
    [InlineData("liquefied-flammable-gas", 151, 0, 1)]
    [InlineData("water", 225, 350, 2)]
    [InlineData("fuel", 150, 150, 2)]
    [InlineData("oil", 225, 400, 2)]
    [InlineData("oil", 226, 400, 1)]
    [InlineData("cargo", 225, 150, 2)]
    [InlineData("cargo", 225, 151, 1)]
    [InlineData("poison", 0, 60, 1)]
    public void Classes_of_the_regulations(string medium, double psi, double fahrenheit, int expected) =>
        PipingClass
            .ByRegulations(
                medium,
                Pressure.FromPoundsForcePerSquareInch(psi),
                Temperature.FromDegreesFahrenheit(fahrenheit)
            )
            .ShouldBe(expected);

    [Fact]
    public void A_medium_that_is_not_listed_is_refused() =>
        Should
            .Throw<ImpossibleInputException>(() =>
                PipingClass.BySociety("beer", Pressure.Zero, Temperature.FromDegreesCelsius(20))
            )
            .Message.ShouldContain("thermal-oil");

    private static Length Mm(double mm) => Length.FromMillimeters(mm);

    private static Pressure Mpa(double mpa) => Pressure.FromMegapascals(mpa);
}
