using RepairOrders.Engineering.Joints;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Joints;

/// <summary>Published, recalled and derived rows on tightening and clamp bolts; each row of the tables names its source.</summary>
public class BoltChecks
{
    private static PublishedCheck Joint(string id) => PublishedTable.Check("joint-checks.csv", id);

    private static PublishedCheck Method(string id) => PublishedTable.Check("method-checks.csv", id);

    [Fact]
    public void Mean_and_deviation_of_ten_lubricated_bolts()
    {
        var tests = Joint("TRQ01").Numbers("x").Select(kn => Force.FromKilonewtons(kn)).ToList();
        Joint("TRQ01").ShouldBeMetBy(Preloads.Mean(tests).Kilonewtons);
        Joint("TRQ02").ShouldBeMetBy(Preloads.Deviation(tests).Kilonewtons);
    }

    [Fact]
    public void Service_stress_of_a_bolt()
    {
        var row = Joint("TRQ05");
        var stress = BoltLoad.ServiceStress(
            row.Number("Ci"),
            Force.FromPoundsForce(row.Number("P") * 1000),
            Force.FromPoundsForce(row.Number("Fi") * 1000),
            Area.FromSquareInches(row.Number("At"))
        );
        row.ShouldBeMetBy(stress.KilopoundsForcePerSquareInch);
    }

    // Answers from memory: the answer page was not seen.
    [Fact]
    public void Torque_by_nut_factor_and_by_friction()
    {
        var simple = Joint("TRQ06");
        simple.ShouldBeMetBy(
            Tightening
                .ForPreload(
                    Force.FromPoundsForce(simple.Number("F")),
                    simple.Number("K"),
                    Length.FromInches(simple.Number("d"))
                )
                .PoundForceInches
        );
        var longForm = Joint("TRQ07");
        longForm.ShouldBeMetBy(
            Tightening
                .LongForm(
                    Force.FromPoundsForce(longForm.Number("F")),
                    Length.FromInches(longForm.Number("d")),
                    Length.FromInches(longForm.Number("dm")),
                    Length.FromInches(1 / longForm.Number("n")),
                    longForm.Number("f"),
                    longForm.Number("fc")
                )
                .PoundForceInches
        );
    }

    [Theory]
    [InlineData("TRQ10")]
    [InlineData("TRQ11")]
    [InlineData("TRQ12")]
    public void Printed_torques(string id)
    {
        var row = Joint(id);
        row.ShouldBeMetBy(
            Tightening
                .ForPreload(
                    Force.FromPoundsForce(row.Number("F_lb")),
                    row.Number("K"),
                    Length.FromInches(row.Number("d_in"))
                )
                .PoundForceFeet
        );
    }

    [Theory]
    [InlineData("BND15")]
    [InlineData("BND16")]
    [InlineData("BND41")]
    public void Preload_of_an_M6(string id)
    {
        var row = Joint(id);
        row.ShouldBeMetBy(
            Tightening
                .Preload(Torque.FromNewtonMeters(row.Number("T")), row.Number("K"), Length.FromMeters(row.Number("d")))
                .Newtons
        );
    }

    [Fact]
    public void Scatter_of_a_torque_wrench_from_memory()
    {
        Preloads.Low(Force.FromNewtons(1000), 0.35).Newtons.ShouldBe(650, 1e-9);
        Preloads.High(Force.FromNewtons(1000), 0.25).Newtons.ShouldBe(1250, 1e-9);
    }

    [Fact]
    public void Every_published_nut_factor_is_in_the_library()
    {
        var printed = PublishedTable
            .Rows("torque-nut-factor.csv")
            .Where(r => !r["condition"].Contains("scatter"))
            .ToList();
        printed.Count.ShouldBe(19);
        NutFactors.All.Count.ShouldBe(printed.Count);
        foreach (var (row, factor) in printed.Zip(NutFactors.All))
        {
            factor.Condition.ShouldBe(row["condition"]);
            Same(factor.Low, row["K_low"]);
            Same(factor.Typical, row["K_typ"]);
            Same(factor.High, row["K_high"]);
            factor.Source.Document.ShouldBe(row["source"]);
        }

        static void Same(double? read, string printed) =>
            (read?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "").ShouldBe(printed);
    }

    [Fact]
    public void Parting_force_and_end_thrust()
    {
        var parting = Method("CLM01");
        parting.ShouldBeMetBy(
            BoltLoad
                .Parting(
                    Pressure.FromMegapascals(parting.Number("P")),
                    Length.FromMillimeters(parting.Number("Dseal")),
                    Length.FromMillimeters(parting.Number("Lseal"))
                )
                .Newtons
        );
        var thrust = Method("CLM02");
        thrust.ShouldBeMetBy(
            BoltLoad
                .EndThrust(Pressure.FromMegapascals(thrust.Number("P")), Length.FromMillimeters(thrust.Number("D")))
                .Newtons
        );
    }

    [Fact]
    public void Bolt_area_load_and_number()
    {
        var area = Method("CLM03");
        area.ShouldBeMetBy(
            BoltLoad
                .AreaNeeded(Force.FromNewtons(area.Number("F")), Pressure.FromMegapascals(area.Number("Sb")))
                .SquareMillimeters
        );
        var load = Method("CLM04");
        load.ShouldBeMetBy(
            BoltLoad
                .Operating(
                    Pressure.FromMegapascals(load.Number("P")),
                    Area.FromSquareMillimeters(load.Number("area")),
                    Length.FromMillimeters(load.Number("b")),
                    load.Number("m"),
                    Length.FromMillimeters(load.Number("perim"))
                )
                .Newtons
        );
        var bolts = Method("CLM05");
        bolts.ShouldBeMetBy(
            BoltLoad.Bolts(Force.FromNewtons(bolts.Number("F")), Force.FromNewtons(bolts.Number("per_bolt")))
        );
    }

    // Stress areas printed in ISO 898-1, from memory.
    [Theory]
    [InlineData("M8", 36.6)]
    [InlineData("M16", 157)]
    [InlineData("M24", 353)]
    public void Stress_area_of_a_bolt(string name, double printed) =>
        MetricBolt.All.Single(b => b.Name == name).StressArea.SquareMillimeters.ShouldBe(printed, 0.5);

    [Fact]
    public void A_clamp_under_pressure_keeps_or_loses_its_seal()
    {
        Seal(15).Megapascals.ShouldBe((6 * 15_000 - 52_000) / 7920.0, 1e-9);
        Seal(8).Megapascals.ShouldBeLessThan(0);

        static Pressure Seal(double kn) =>
            BoltLoad.SealPressure(
                6,
                Force.FromKilonewtons(kn),
                Pressure.FromMegapascals(2),
                Area.FromSquareMillimeters(26_000),
                Area.FromSquareMillimeters(7920)
            );
    }

    [Fact]
    public void Seating_load() =>
        BoltLoad
            .Seating(Length.FromMillimeters(6), Pressure.FromMegapascals(1.4), Length.FromMillimeters(660))
            .Newtons.ShouldBe(5544, 1e-9);

    [Theory]
    [InlineData(4, new[] { 1, 3, 2, 4 })]
    [InlineData(8, new[] { 1, 5, 3, 7, 2, 6, 4, 8 })]
    public void Screws_are_tightened_crosswise(int screws, int[] expected) =>
        Passes.Of(Torque.FromNewtonMeters(90), screws)[0].Sequence.ShouldBe(expected);

    [Fact]
    public void Passes_end_at_full_torque_once_round()
    {
        var passes = Passes.Of(Torque.FromNewtonMeters(90), 8);
        passes.Select(p => p.Torque.NewtonMeters).ShouldBe([30, 60, 90, 90]);
        passes[^1].Sequence.ShouldBe([1, 2, 3, 4, 5, 6, 7, 8]);
        passes.ShouldAllBe(p => p.Sequence.Count == 8 && p.Sequence.Distinct().Count() == 8);
    }

    [Fact]
    public void A_plan_says_when_no_torque_does_both()
    {
        var plan = Tightening.Plan(
            Torque.FromNewtonMeters(3),
            Length.FromMillimeters(6),
            0.3,
            0.5,
            Force.FromNewtons(1500),
            Force.FromNewtons(1973.5),
            2
        );
        plan.Result.PreloadLow.Newtons.ShouldBe(1000, 1e-9);
        plan.Result.PreloadHigh.Newtons.ShouldBe(5000.0 / 3, 1e-9);
        plan.Result.TorqueLeast.NewtonMeters.ShouldBeGreaterThan(plan.Result.TorqueMost.NewtonMeters);
        plan.Findings.Single(f => f.Code == "preload-low").Severity.ShouldBe(Severity.Fail);
        plan.Working.Count(s => s.Formula.Length > 0).ShouldBe(4);
    }
}
