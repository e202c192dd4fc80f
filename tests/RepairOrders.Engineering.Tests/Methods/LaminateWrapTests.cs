using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Methods.LaminateWrap;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Methods;

public class LaminateWrapTests
{
    private static readonly LaminateWrap Method = new();

    private static readonly (string, double)[] Qualified =
    [
        ("softeningC", 100),
        ("lapShearMpa", 5),
        ("toughnessJm2", 200),
    ];

    private static MethodDesign Size(Defect defect, double bar, params (string, double)[] values) =>
        Method.Size(
            APipe.With([.. Qualified.Where(q => values.All(v => v.Item1 != q.Item1)), .. values]) with
            {
                Defect = defect,
                Service = APipe.At(bar),
            }
        );

    private static Finding Of(MethodDesign design, string code) => design.Findings.Single(f => f.Code == code);

    [Fact]
    public void Thinned_wall_is_reinforced_and_a_hole_is_bridged()
    {
        var thin = Size(APipe.Thinning, 30);
        thin.Holds.ShouldBeTrue();
        thin["throughWallDesign"].ShouldBe(0);
        thin["plies"]!.Value.ShouldBeGreaterThanOrEqualTo(2);

        var hole = Size(APipe.Pinhole, 30);
        hole.Holds.ShouldBeTrue();
        hole["throughWallDesign"].ShouldBe(1);
        hole["plies"]!.Value.ShouldBeGreaterThan(thin["plies"]!.Value);
        hole.CarriesAxialLoad.ShouldBeTrue();
    }

    [Fact]
    public void The_laminate_is_the_thinnest_that_passes()
    {
        var design = Size(APipe.Pinhole, 30);
        var need = design.Working.Where(w => w.Symbol is "t hoop" or "t axial" or "t hole").Max(w => w.Value);
        var ply = design["laminateThicknessMm"]!.Value / design["plies"]!.Value;
        design["laminateThicknessMm"]!.Value.ShouldBeGreaterThanOrEqualTo(need);
        (design["laminateThicknessMm"]!.Value - ply).ShouldBeLessThan(need);
    }

    [Fact]
    public void Less_than_a_millimetre_left_at_the_end_of_life_counts_as_a_hole()
    {
        var design = Size(APipe.Thinning, 5, ("growthMmPerYear", 1.2), ("designLifeYears", 2));
        Of(design, "type-b").Severity.ShouldBe(Severity.Watch);
        design["throughWallDesign"].ShouldBe(1);
    }

    [Fact]
    public void Growing_damage_without_a_rate_fails() =>
        Of(Size(APipe.Thinning with { Growing = true }, 5), "growth-not-given").Severity.ShouldBe(Severity.Fail);

    [Fact]
    public void Over_a_hole_nothing_is_sized_without_a_toughness()
    {
        var design = Size(APipe.Pinhole, 5, ("toughnessJm2", 0));
        Of(design, "toughness-not-known").Blocks.ShouldBeTrue();
        design.PressureHeldBar.ShouldBe(0);
    }

    [Fact]
    public void A_bond_too_weak_for_the_pressure_is_refused_at_any_thickness() =>
        Of(Size(APipe.Pinhole with { HoleDiameter = Length.FromMillimeters(25) }, 150), "no-thickness-holds")
            .Blocks.ShouldBeTrue();

    [Fact]
    public void A_hole_beyond_the_formula_is_refused() =>
        Of(Size(APipe.Pinhole with { HoleDiameter = Length.FromMillimeters(80) }, 1), "hole-above-formula")
            .Blocks.ShouldBeTrue();

    [Fact]
    public void Too_warm_for_the_resin_is_refused_and_no_laminate_is_given()
    {
        var design = Size(APipe.Thinning, 5, ("temperatureC", 85));
        Of(design, "temperature-above-resin").Blocks.ShouldBeTrue();
        design["plies"].ShouldBe(0);
        design.Materials.ShouldBeEmpty();
    }

    [Fact]
    public void Unequal_expansion_can_use_up_all_strain() =>
        Of(
            Size(APipe.Thinning, 5, ("temperatureC", 79), ("softeningC", 100), ("laminateExpansion", 60)),
            "no-strain-left"
        )
            .Blocks.ShouldBeTrue();

    [Fact]
    public void A_leak_lowers_the_greatest_temperature_by_ten_degrees()
    {
        Size(APipe.Thinning, 5).Working.Single(w => w.Symbol == "Tm").Value.ShouldBe(80);
        Size(APipe.Pinhole, 5).Working.Single(w => w.Symbol == "Tm").Value.ShouldBe(70);
    }

    [Fact]
    public void Overlap_is_the_largest_of_geometry_shear_fifty_and_four_holes()
    {
        var design = Size(APipe.Pinhole with { HoleDiameter = Length.FromMillimeters(20) }, 5);
        design["overlapMm"]!.Value.ShouldBe(80);
        var weak = Size(APipe.Pinhole, 5, ("lapShearMpa", 0.5));
        weak["overlapMm"]!.Value.ShouldBeGreaterThan(80);
    }

    [Fact]
    public void A_slot_needs_more_than_a_round_hole_of_its_width()
    {
        var hole = APipe.Pinhole with { HoleDiameter = Length.FromMillimeters(12) };
        Need(Size(hole, 10, ("slotWidthMm", 12))).ShouldBeGreaterThan(Need(Size(hole, 10)));

        static double Need(MethodDesign d) => d.Working.Single(w => w.Symbol == "t P").Value;
    }

    [Fact]
    public void Strength_of_the_bond_has_no_default()
    {
        foreach (var code in (string[])["softeningC", "lapShearMpa"])
            Should
                .Throw<ImpossibleInputException>(() =>
                    Method.Size(APipe.With([.. Qualified.Where(q => q.Item1 != code)]) with { Defect = APipe.Thinning })
                )
                .Field.ShouldBe(code);
    }

    // ASME PCC-2-2018, Art. 401-1.2.2.
    [Fact]
    public void The_low_risk_route_is_refused_with_its_reasons()
    {
        Route(APipe.Pinhole, APipe.CoolingWater).Severity.ShouldBe(Severity.Pass);
        Route(APipe.Pinhole, APipe.At(10.34)).Words.ShouldContain("150 psi and more");
        Route(APipe.Pinhole, APipe.CoolingWater with { SafetyCritical = true }).Words.ShouldContain("protects people");
        Route(APipe.Pinhole, APipe.CoolingWater with { Flammable = true }).Words.ShouldContain("hazardous fluid");
        Route(APipe.Pinhole, APipe.CoolingWater with { DesignTemperature = Temperature.FromDegreesCelsius(49) })
            .Words.ShouldContain("48.9 °C");
        Route(APipe.Pinhole with { HoleDiameter = Length.FromMillimeters(29) }, APipe.CoolingWater)
            .Words.ShouldContain("a quarter of the diameter");
        Route(APipe.Pinhole with { HoleDiameter = Length.FromMillimeters(28) }, APipe.At(9.7))
            .Words.ShouldContain("0.16 MPa m^0.5");

        static Finding Route(Defect defect, Service service) =>
            Method
                .Claims(APipe.Dn100, defect, service)
                .Findings.Single(f => f.Code is "low-risk-route" or "high-risk-route");
    }

    [Fact]
    public void A_leak_of_flammable_fluid_needs_a_signed_basis_and_thinned_wall_a_review()
    {
        var oil = APipe.CoolingWater with { Flammable = true };
        Method
            .Claims(APipe.Dn100, APipe.Pinhole, oil)
            .Findings.Single(f => f.Code == "hazardous-leak")
            .Kind.ShouldBe(LimitKind.ByDeviation);
        Method.Claims(APipe.Dn100, APipe.Thinning, oil).Inside.ShouldBeTrue();
    }

    [Fact]
    public void Nothing_of_polymer_goes_above_auto_ignition() =>
        Method
            .Claims(APipe.Dn100, APipe.Thinning, APipe.CoolingWater with { AboveAutoIgnition = true })
            .Barred.ShouldBeTrue();
}
