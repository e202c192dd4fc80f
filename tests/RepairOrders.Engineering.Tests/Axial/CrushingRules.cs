using RepairOrders.Engineering.Axial;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Axial;

public sealed class CrushingRules
{
    private static readonly CrushingCase Thin = new(
        Length.FromMillimeters(168.3),
        Length.FromMillimeters(2),
        MetalFamily.CarbonSteel,
        Pressure.FromMegapascals(240),
        null,
        null,
        Pressure.FromBars(2),
        Pressure.Zero
    );

    [Fact]
    public void Example_of_a_thinned_pipe()
    {
        var check = Crushing.Check(Thin);
        check.Result.Elastic.Megapascals.ShouldBe(0.7487, 0.00005);
        check.Result.Collapse.Megapascals.ShouldBe(0.548, 0.0005);
        check.Result.Allowed.Megapascals.ShouldBe(0.250, 0.0005);
        check.Findings.ShouldContain(f => f.Code == "crushing" && f.Severity == Severity.Pass);
        check.Findings.ShouldContain(f => f.Code == "ovality-default" && f.Severity == Severity.Watch);
    }

    [Fact]
    public void Injection_beyond_the_figure_fails_and_inside_pressure_helps()
    {
        var injected = Thin with { OutsidePressure = Pressure.FromBars(6) };
        Crushing.Check(injected).Findings.ShouldContain(f => f.Code == "crushing" && f.Severity == Severity.Fail);
        Crushing
            .Check(injected with { LeastInsidePressure = Pressure.FromBars(4) })
            .Findings.ShouldContain(f => f.Code == "crushing" && f.Severity == Severity.Pass);
    }

    [Fact]
    public void A_round_pipe_yields_at_the_lesser_of_collapse_and_ring_yield()
    {
        // With no ovality the quadratic falls apart into p = p_y or p = p_e.
        var e = Pressure.FromMegapascals(0.7487);
        Oval(e, 0).ShouldBe(0.7487, 1e-9);
        Oval(Pressure.FromMegapascals(50), 0).ShouldBe(2 * 240 * 2 / 168.3, 1e-9);
        Oval(e, 0.05).ShouldBeLessThan(Oval(e, 0.01));
    }

    [Fact]
    public void A_brittle_wall_bears_no_clamp()
    {
        var check = Crushing.Check(Thin with { Metal = MetalFamily.GrayIron, YieldStrength = null });
        check.Findings.ShouldHaveSingleItem().Blocks.ShouldBeTrue();
        check.Cautions.ShouldHaveSingleItem().ShouldContain("brittle");
    }

    [Fact]
    public void A_metal_that_is_not_listed_needs_a_modulus()
    {
        var other = Thin with { Metal = MetalFamily.Other };
        Should.Throw<ImpossibleInputException>(() => Crushing.Check(other)).Field.ShouldBe("modulusMpa");
        Crushing
            .Check(other with { Modulus = Pressure.FromGigapascals(203) })
            .Result.Elastic.Megapascals.ShouldBe(0.7487, 0.00005);
    }

    private static double Oval(Pressure elastic, double ovality) =>
        Crushing
            .OvalYield(elastic, Pressure.FromMegapascals(240), Thin.OutsideDiameter, Thin.LeastWall, ovality)
            .Megapascals;
}
