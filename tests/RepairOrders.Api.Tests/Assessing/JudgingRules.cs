using RepairOrders.Api.Assessing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Assessing;

/// <summary>What the engine makes of a pipe: its end load, what is left of its strength, and whether a temporary repair may be made at all.</summary>
public sealed class JudgingRules
{
    private static readonly Sheaf sheaf = new();

    [Fact]
    public void A_pinhole_in_sound_wall_bears_the_end_load_of_the_design_pressure()
    {
        var judged = Judge(sheaf.Judged);
        // Pressure times area: 1 MPa × π/4 × 168.3² = 22.25 kN.
        judged.EndLoadKn!.Value.ShouldBe(22.25, 0.01);
        judged.AxialShort.ShouldBe(false);
        judged.NoTemporaryRepair.ShouldBeEmpty();
        judged.Calculations.Select(c => c.Code).ShouldContain("axial-load");
        judged.Calculations.Single(c => c.Code == "temporary-repair").Findings.ShouldNotBeEmpty();
    }

    [Fact]
    public void A_pull_from_outside_is_added_to_the_thrust() =>
        Judge(sheaf.Judged with { OutsideAxialLoad = Measure.Of(8, "kN") }).EndLoadKn!.Value.ShouldBe(30.25, 0.01);

    [Fact]
    public void A_line_that_nothing_else_holds_together_takes_a_restraint() =>
        Judge(sheaf.Judged with { Unrestrained = true }).AxialShort.ShouldBe(true);

    [Fact]
    public void Surge_takes_a_restraint_for_the_pressure_it_rises_to()
    {
        var judged = Judge(sheaf.Judged with { SurgeRise = Measure.Of(5, "bar") });
        judged.AxialShort.ShouldBe(true);
        judged.EndLoadKn!.Value.ShouldBe(1.5 * 22.25, 0.02);
    }

    [Fact]
    public void A_wall_nobody_could_read_is_taken_as_parted() =>
        Judge(sheaf.Judged with { Readings = [], NotMeasuredWhy = "the jet cannot be approached" })
            .AxialShort.ShouldBe(true);

    [Fact]
    public void A_pipe_thinned_to_under_a_fifth_all_round_takes_a_restraint_and_may_then_be_repaired()
    {
        var judged = Judge(Thinned(1.2, 500));
        judged.AxialShort.ShouldBe(true);
        judged.NoTemporaryRepair.ShouldBeEmpty("a restraint clears it");
        judged.SafePressureBar.ShouldBeNull("past 80 % depth no pressure is credited");
    }

    [Fact]
    public void The_lowest_of_the_methods_that_count_is_the_safe_pressure()
    {
        var strength = Judge(Thinned(4.2, 60));
        strength.SafePressureBar!.Value.ShouldBeGreaterThan(10);
        var findings = strength.Calculations.Single(c => c.Code == "remaining-strength").Findings;
        findings.Select(f => f.Code).ShouldContain("estimated-repair-factor");
    }

    [Fact]
    public void An_unknown_cause_bars_a_temporary_repair_until_the_wall_is_mapped_on_both_sides()
    {
        var unknown = sheaf.Judged with { Defect = AnOrder.Pinhole with { Cause = DefectCause.Unknown } };
        Judge(unknown).NoTemporaryRepair!.Single().ShouldContain("map the wall");
        Judge(unknown with { WallMappedEachSide = Measure.Of(300, "mm") }).NoTemporaryRepair.ShouldBeEmpty();
    }

    [Fact]
    public void A_crack_bars_it_until_its_growth_is_excluded()
    {
        var crack = sheaf.Judged with { Defect = AnOrder.Pinhole with { Kind = DefectKind.CrackLike } };
        Judge(crack).NoTemporaryRepair!.ShouldNotBeEmpty();
        Judge(crack with { GrowthExcludedBy = "report 7" }).NoTemporaryRepair.ShouldBeEmpty();
    }

    [Theory]
    [InlineData(MetalExclusion.BelowMinimumTemperature)]
    [InlineData(MetalExclusion.HydrogenDamage)]
    [InlineData(MetalExclusion.CreepRange)]
    public void Metal_outside_the_equations_bars_it(MetalExclusion exclusion) =>
        Judge(sheaf.Judged with { Exclusions = [exclusion] }).NoTemporaryRepair!.Count.ShouldBe(1);

    private static RecordAssessment Thinned(double left, double round) =>
        sheaf.Judged with
        {
            Defect = AnOrder.Pinhole with
            {
                Kind = DefectKind.GeneralThinning,
                ThroughWall = false,
                HoleDiameter = null,
                AxialLength = Measure.Of(100, "mm"),
                CircumferentialLength = Measure.Of(round, "mm"),
            },
            Readings =
            [
                new(ReadingPlace.AtDefect, "4 o'clock", Measure.Of(left, "mm"), sheaf.Today, "UT-7"),
                new(ReadingPlace.Beside, "5 o'clock", Measure.Of(6.6, "mm"), sheaf.Today, "UT-7"),
            ],
        };

    private static Judgement Judge(RecordAssessment ask) => Judging.Of(sheaf.Order, ask).Judge(Sheaf.Start);
}
