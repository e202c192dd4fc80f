using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Methods.WeldedPatch;
using RepairOrders.Engineering.Methods.WeldedSleeve;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Methods;

public class WeldedTests
{
    private static readonly WeldedPatch Patch = new();
    private static readonly WeldedSleeve Sleeve = new();

    private static MethodDesign Size(
        IRepairMethod method,
        Defect defect,
        double bar,
        params (string, double)[] values
    ) => method.Size(APipe.With(values) with { Defect = defect, Service = APipe.At(bar) });

    private static Finding Of(MethodDesign design, string code) => design.Findings.Single(f => f.Code == code);

    // 49 CFR 192.717(b)(3), each row with its source.
    [Theory]
    [InlineData("RUL01")]
    [InlineData("RUL02")]
    [InlineData("RUL03")]
    public void The_rule_for_welded_patches(string id)
    {
        var row = PublishedTable.Rows("method-checks.csv").Single(r => r["id"] == id);
        var check = new PublishedCheck(row);
        var findings = WeldedPatchRule.Findings(
            Pressure.FromPoundsForcePerSquareInch(check.Number("smys_psi")),
            row["inputs"].Contains("\"pit\": true") ? DefectKind.Pitting : DefectKind.GeneralThinning,
            Length.FromMillimeters(check.Number("pipe_t")),
            Length.FromMillimeters(check.Number("patch_t")),
            Length.FromMillimeters(check.Number("patch_size")),
            Length.FromMillimeters(check.Number("D")),
            LimitKind.Absolute
        );
        check.ShouldBeMetBy(findings.All(f => f.Severity == Severity.Pass) ? 1 : 0);
    }

    [Fact]
    public void On_flammable_gas_nobody_may_sign_past_the_rule_for_patches()
    {
        var gas = APipe.At(10) with { State = FluidState.Gas, Flammable = true };
        Patch
            .Claims(APipe.Dn100, APipe.Thinning, gas)
            .Findings.Single(f => f.Code == "not-a-pit")
            .Blocks.ShouldBeTrue();
        Patch
            .Claims(APipe.Dn100, APipe.Thinning, APipe.At(10))
            .Findings.Single(f => f.Code == "not-a-pit")
            .Kind.ShouldBe(LimitKind.ByDeviation);
    }

    [Fact]
    public void A_patch_is_as_thick_as_the_pipe_and_its_fillet_holds()
    {
        var design = Size(Patch, Examples.SmallPit, 10);
        design["patchThicknessMm"]!.Value.ShouldBeGreaterThanOrEqualTo(6.02);
        design["patchLengthMm"].ShouldBe(50);
        Of(design, "patch-size").Severity.ShouldBe(Severity.Pass);
        Of(Size(Patch, Examples.Pit, 10, ("patchEdgeMm", 30)), "patch-size").Severity.ShouldBe(Severity.Fail);
    }

    // 49 CFR 192.715(b): not leaking, at most 20 % of yield, at least 3.2 mm.
    [Fact]
    public void Hot_work_in_service_is_refused_on_a_leak_a_high_stress_or_thin_wall()
    {
        Of(Size(Sleeve, APipe.Pinhole, 10, ("inService", 1)), "leak-in-service").Blocks.ShouldBeTrue();
        Of(Size(Sleeve, APipe.Thinning, 30, ("inService", 1)), "stress-in-service").Blocks.ShouldBeTrue();
        var thin = APipe.Thinning with { RemainingWall = Length.FromMillimeters(3) };
        Of(Size(Sleeve, thin, 2, ("inService", 1)), "wall-in-service").Blocks.ShouldBeTrue();
        Size(Sleeve, APipe.Thinning, 2, ("inService", 1)).Holds.ShouldBeTrue();
    }

    // ASME PCC-2-2018, Art. 206.
    [Fact]
    public void Type_A_never_goes_over_a_leak()
    {
        Of(Size(Sleeve, APipe.Pinhole, 10, ("sleeveType", 1)), "type-a-over-leak").Blocks.ShouldBeTrue();
        var asked = Size(Sleeve, APipe.Pinhole, 10);
        asked["endsWelded"].ShouldBe(1);
        asked.CarriesAxialLoad.ShouldBeTrue();
        var reinforced = Size(Sleeve, APipe.Thinning, 10);
        reinforced["endsWelded"].ShouldBe(0);
        reinforced["filletLegMm"].ShouldBe(0);
        reinforced.CarriesAxialLoad.ShouldBeFalse();
    }

    // By hand, no source: bore 114.3 + 3 = 117.3, t = 1.6 × 117.3/(2 × (137.9 × 0.8 − 1.6)) + 1.5 = 2.363 mm.
    [Fact]
    public void Sleeve_thickness_agrees_with_a_hand_calculation() =>
        Size(Sleeve, APipe.Pinhole, 16).Working.Single(w => w.Symbol == "t need").Value.ShouldBe(2.363, 0.001);

    [Fact]
    public void Cyclic_duty_asks_for_a_fatigue_check() =>
        Sleeve
            .Claims(APipe.Dn100, APipe.Thinning, APipe.At(10) with { Cyclic = true })
            .Findings.Single(f => f.Code == "fatigue")
            .Severity.ShouldBe(Severity.Fail);

    [Fact]
    public void Cast_iron_is_not_welded()
    {
        var iron = APipe.Dn100 with { Metal = MetalFamily.GrayIron, YieldStrength = null };
        foreach (var method in (IRepairMethod[])[Patch, Sleeve])
            method
                .Claims(iron, APipe.Thinning, APipe.At(5))
                .Findings.Single(f => f.Code == "not-weldable")
                .Blocks.ShouldBeTrue();
    }
}
