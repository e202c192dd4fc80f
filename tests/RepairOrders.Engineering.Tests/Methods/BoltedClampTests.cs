using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Methods.BoltedClamp;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Methods;

public class BoltedClampTests
{
    private static readonly BoltedClamp Method = new();

    private static readonly Defect Thin = APipe.Thinning with
    {
        RemainingWall = Length.FromMillimeters(0.15),
        SoundWallBeside = Length.FromMillimeters(0.15),
    };

    private static MethodDesign Size(double bar, Defect defect, params (string, double)[] values) =>
        Method.Size(APipe.With(values) with { Service = APipe.At(bar), Defect = defect });

    private static Finding Of(MethodDesign design, string code) => design.Findings.Single(f => f.Code == code);

    // By hand, no source: Ls = ⌈12 + 101.6⌉ = 114, A = 114.3 × 114 = 13 030 mm², U = 2 × 228.3 = 456.6 mm,
    // W op = 1 × 13 030 + 2 × 6 × 1 × 1 × 456.6 = 18 509 N, W seat = 6 × 1.4 × 456.6 = 3835 N.
    [Fact]
    public void Bolt_loads_agree_with_a_hand_calculation()
    {
        var working = Size(10, APipe.Pinhole).Working;
        working.Single(w => w.Symbol == "W op").Value.ShouldBe(18_509, 1);
        working.Single(w => w.Symbol == "W seat").Value.ShouldBe(3835, 1);
    }

    [Fact]
    public void Bolts_are_even_fit_on_the_flanges_and_leave_pressure_on_the_seal()
    {
        var design = Size(10, APipe.Pinhole);
        (design["clampBoltCount"]!.Value % 2).ShouldBe(0);
        Of(design, "bolts-fit").Severity.ShouldBe(Severity.Pass);
        Of(design, "seal-pressure").Severity.ShouldBe(Severity.Pass);
        design["torqueNm"]!.Value.ShouldBeInRange(design["torqueLeastNm"]!.Value, design["torqueMostNm"]!.Value);
    }

    // HSE, Leak sealing repair clamps: the pipe pulled out of its clamp.
    [Fact]
    public void A_clamp_on_a_pipe_that_cannot_carry_the_end_load_is_refused_without_restraint()
    {
        Of(Size(10, Thin), "axial-without-restraint").Blocks.ShouldBeTrue();
        Size(10, Thin).CarriesAxialLoad.ShouldBeFalse();
        var held = Size(10, Thin, ("restraint", 1), ("restraintKn", 11));
        held.Holds.ShouldBeTrue();
        held.CarriesAxialLoad.ShouldBeTrue();
        held.LeastWallMm.ShouldBe(0);
        Of(Size(10, Thin, ("restraint", 1), ("restraintKn", 5)), "restraint-load").Blocks.ShouldBeTrue();
    }

    [Fact]
    public void The_ring_is_counted_as_it_will_be_at_the_end_of_life()
    {
        Size(30, APipe.Thinning).Holds.ShouldBeTrue();
        Of(Size(30, APipe.Thinning, ("growthMmPerYear", 2), ("designLifeDays", 500)), "axial-without-restraint")
            .Severity.ShouldBe(Severity.Fail);
    }

    [Fact]
    public void Injection_must_not_crush_the_thinned_pipe()
    {
        Of(Size(2, APipe.Thinning, ("injectionPressureBar", 20)), "injection-crushes").Severity.ShouldBe(Severity.Pass);
        Of(Size(2, Thin, ("injectionPressureBar", 20)), "injection-crushes").Blocks.ShouldBeTrue();
    }

    [Fact]
    public void The_clamp_is_sized_for_the_injection_where_that_is_higher() =>
        Size(2, APipe.Pinhole, ("injectionPressureBar", 40))["clampThicknessMm"]!.Value.ShouldBe(
            Size(40, APipe.Pinhole)["clampThicknessMm"]!.Value
        );

    [Fact]
    public void A_seal_that_does_not_stand_the_temperature_is_refused()
    {
        var hot = APipe.CoolingWater with { DesignTemperature = Temperature.FromDegreesCelsius(120) };
        Of(Method.Size(APipe.With() with { Service = hot }), "temperature-above-seal").Blocks.ShouldBeTrue();
    }

    [Fact]
    public void A_seal_smaller_than_the_pipe_is_impossible() =>
        Should
            .Throw<ImpossibleInputException>(() => Size(2, APipe.Pinhole, ("sealDiameterMm", 100)))
            .Field.ShouldBe("sealDiameterMm");

    [Fact]
    public void Claims_ask_for_restraint_and_refuse_gas_that_is_not_a_pit()
    {
        Method
            .Claims(APipe.Dn100, Thin, APipe.At(10))
            .Findings.ShouldContain(f => f.Code == "restraint-needed" && f.Severity == Severity.Watch);
        var gas = APipe.At(10) with { State = FluidState.Gas, Flammable = true };
        Method
            .Claims(APipe.Dn100, APipe.Thinning, gas)
            .Findings.Single(f => f.Code == "gas-not-a-pit")
            .Source.ToString()
            .ShouldBe("49 CFR 192, 717(b)(2)");
        Method
            .Claims(APipe.Dn100, APipe.Pinhole, APipe.CoolingWater with { Cyclic = true })
            .Findings.ShouldContain(f => f.Code == "vibration" && f.Severity == Severity.Fail);
    }
}
