using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using static RepairOrders.Engineering.Tests.Strength.ACase;

namespace RepairOrders.Engineering.Tests.Strength;

public sealed class NeededWalls
{
    // A public ASME B31.3 calculation sheet (219.1 mm, 3 MPa, S 137.9 MPa): 2.36 mm. API RP 574 (from memory): NPS 6 to 18, 2.8 mm.
    [Fact]
    public void The_larger_of_pressure_and_structural_wall_is_needed()
    {
        var wall = RequiredWall.Assess(A106B(219.1, 8.18), Duty(3));
        wall.Result.ForPressure!.Value.Millimeters.ShouldBe(2.36, 0.005);
        wall.Result.Structural!.Value.Millimeters.ShouldBe(2.8);
        wall.Result.Required!.Value.Millimeters.ShouldBe(2.8);
        wall.Result.GovernedBy.ShouldBe("structural");
        wall.Working[^1].Substituted.ShouldBe("max(2.3627, 2.8)");
        wall.Findings.ShouldAllBe(f => f.Severity == Severity.Pass);
    }

    [Fact]
    public void At_high_pressure_the_pressure_wall_governs() =>
        RequiredWall.Assess(A106B(219.1, 8.18), Duty(6)).Result.GovernedBy.ShouldBe("pressure");

    // API RP 574 default minimum structural thickness (from memory); sizes between take the next larger one printed.
    [Theory]
    [InlineData(33.4, 1.8, 2.0)]
    [InlineData(42.2, 1.8, 2.3)]
    [InlineData(60.3, 1.8, 2.5)]
    [InlineData(73.0, 2.0, 2.8)]
    [InlineData(76.1, 2.0, 2.8)]
    [InlineData(114.3, 2.3, 3.1)]
    [InlineData(141.3, 2.8, 3.3)]
    [InlineData(457, 2.8, 3.3)]
    [InlineData(508, 3.1, 3.6)]
    [InlineData(610, 3.1, 3.6)]
    public void Structural_and_alert_thickness_go_by_size(double D, double least, double alert)
    {
        var row = StructuralMinimum.Find(MetalFamily.CarbonSteel, Mm(D), Temperature.FromDegreesCelsius(50))!;
        row.Least.Millimeters.ShouldBe(least);
        row.Alert.Millimeters.ShouldBe(alert);
    }

    [Theory]
    [InlineData(MetalFamily.CarbonSteel, 660, 50)]
    [InlineData(MetalFamily.CarbonSteel, 168.3, 206)]
    [InlineData(MetalFamily.AusteniticStainless, 168.3, 50)]
    public void Outside_the_structural_table_an_engineer_gives_the_value(
        MetalFamily metal,
        double D,
        double temperatureC
    )
    {
        var pipe = A106B(D, 9) with { Metal = metal };
        var duty = Duty(1) with { DesignTemperature = Temperature.FromDegreesCelsius(temperatureC) };
        var wall = RequiredWall.Assess(pipe, duty);
        wall.Result.Required.ShouldBeNull();
        wall.Findings.ShouldContain(f => f.Code == "structural-minimum-unknown" && f.Severity == Severity.Fail);
        RequiredWall
            .Assess(pipe, duty with { StructuralMinimum = Mm(3) })
            .Result.Required!.Value.Millimeters.ShouldBe(3);
    }

    // ASME B31.3 304.1.2(b): t ≥ D/6 or P/(S E) above 0.385 needs special consideration.
    [Fact]
    public void A_thick_wall_is_refused()
    {
        var wall = RequiredWall.Assess(A106B(100, 8) with { AllowableStress = Mpa(100) }, Duty(60));
        wall.Result.ForPressure.ShouldBeNull();
        wall.Result.Required.ShouldBeNull();
        wall.Findings.ShouldContain(f => f.Code == "wall-formula-range" && f.Blocks);
    }

    [Fact]
    public void A_pipeline_code_needs_a_yield_strength()
    {
        var wall = RequiredWall.Assess(GrayIron(), Duty(1) with { Code = WallCode.B318 });
        wall.Result.ForPressure.ShouldBeNull();
        wall.Findings.ShouldContain(f => f.Code == "yield-strength-missing");
    }

    // Public fitness sheet: ASME B31.4, 1100 psi, 273.05 mm, SMYS 35 000 psi, F 0.72: 5.96 mm; ASME B31.8, 219.075 mm, 52 000 psi, 0.6: 3.86 mm.
    [Theory]
    [InlineData(WallCode.B314, 273.05, 35_000, 0.72, 5.96)]
    [InlineData(WallCode.B318, 219.075, 52_000, 0.6, 3.86)]
    public void Pipeline_codes_go_by_yield_strength(WallCode code, double D, double psi, double F, double printed)
    {
        var pipe = A106B(D, 8) with { YieldStrength = Pressure.FromPoundsForcePerSquareInch(psi) };
        var duty = Duty(Pressure.FromPoundsForcePerSquareInch(1100).Megapascals) with { Code = code, DesignFactor = F };
        RequiredWall.Assess(pipe, duty).Result.ForPressure!.Value.Millimeters.ShouldBe(printed, 0.005);
    }

    [Fact]
    public void A_design_factor_above_0_72_and_a_hot_gas_line_are_findings()
    {
        var duty = Duty(5) with
        {
            Code = WallCode.B318,
            DesignFactor = 0.8,
            DesignTemperature = Temperature.FromDegreesCelsius(130),
        };
        var findings = RequiredWall.Assess(X65(), duty).Findings;
        findings.ShouldContain(f => f.Code == "design-factor" && f.Severity == Severity.Fail);
        findings.ShouldContain(f => f.Code == "temperature-factor" && f.Severity == Severity.Fail);
    }

    [Fact]
    public void Barlow_and_b31_1_are_there_to_be_asked()
    {
        RequiredWall
            .Assess(A106B(), Duty(2) with { Code = WallCode.Barlow })
            .Result.ForPressure!.Value.Millimeters.ShouldBe(2 * 168.3 / (2 * 137.9), 1e-12);
        RequiredWall
            .Assess(A106B() with { AllowableStress = Mpa(118) }, Duty(2) with { Code = WallCode.B311 })
            .Result.ForPressure!.Value.Millimeters.ShouldBe(1.41666667, 5e-9);
    }

    // A public fitness sheet: 219.075 mm, 4 mm measured, S 20 000 psi: 741 psi.
    [Fact]
    public void A_measured_wall_holds_its_mawp_less_twice_the_expected_loss()
    {
        var pipe = A106B(219.075, 8.18) with { AllowableStress = Pressure.FromPoundsForcePerSquareInch(20_000) };
        var today = Mawp.Assess(pipe, Duty(3), new(Mm(4), Mm(0.3), Mm(0), StrengthToday: true));
        today.Result.Mawp!.Value.PoundsForcePerSquareInch.ShouldBe(741, 0.5);
        today.Findings.ShouldContain(f => f.Code == "strength-today-only" && f.Severity == Severity.Watch);
        var later = Mawp.Assess(pipe, Duty(3), new(Mm(4), Mm(0.3), Mm(0)));
        later.Result.WallThatCounts.Millimeters.ShouldBe(3.4, 1e-12);
        later.Result.Mawp!.Value.ShouldBeLessThan(today.Result.Mawp.Value);
    }

    // The wall a code asks for holds, by the same code, the pressure it was asked for: derived.
    [Theory]
    [InlineData(WallCode.B313)]
    [InlineData(WallCode.B311)]
    [InlineData(WallCode.B314)]
    [InlineData(WallCode.B318)]
    [InlineData(WallCode.Barlow)]
    public void The_wall_of_every_code_holds_its_pressure(WallCode code)
    {
        var pipe = A106B() with { QualityFactor = 0.85 };
        var duty = Duty(7.5) with { Code = code, WeldFactor = 0.95, DesignFactor = 0.6, TemperatureFactor = 0.967 };
        var wall = RequiredWall.Assess(pipe, duty).Result.ForPressure!.Value;
        var held = Mawp.Assess(pipe, duty, new(wall, Mm(0), Mm(0)));
        held.Result.Mawp!.Value.Megapascals.ShouldBe(7.5, 1e-12);
        held.Working.ShouldContain(s => s.Symbol == "MAWP" && s.Substituted.StartsWith("2 × "));
    }

    // Public fitness sheet: ASME B31.4, 273.05 mm, 5.5 mm, SMYS 35 000 psi, F 0.72: 1015 psi.
    [Fact]
    public void A_pipeline_holds_by_its_yield_strength()
    {
        var pipe = A106B(273.05, 5.5) with { YieldStrength = Pressure.FromPoundsForcePerSquareInch(35_000) };
        var duty = Duty(1) with { Code = WallCode.B314 };
        var held = Mawp.Assess(pipe, duty, new(Mm(5.5), Mm(0), Mm(0)));
        held.Result.Mawp!.Value.PoundsForcePerSquareInch.ShouldBe(1015, 0.5);
        Mawp.Assess(GrayIron(), duty, new(Mm(5), Mm(0), Mm(0))).Result.Mawp.ShouldBeNull();
    }

    [Theory]
    [InlineData(WallCode.B313)]
    [InlineData(WallCode.B318)]
    [InlineData(WallCode.Barlow)]
    public void Beyond_a_thin_wall_no_pressure_and_no_wall_are_given(WallCode code)
    {
        var pipe = A106B(100, 20);
        var held = Mawp.Assess(pipe, Duty(1) with { Code = code }, new(Mm(20), Mm(0), Mm(0)));
        held.Result.Mawp.ShouldBeNull();
        held.Findings.ShouldContain(f => f.Code == "wall-formula-range" && f.Blocks);
        RequiredWall.Assess(pipe, Duty(90) with { Code = code }).Result.ForPressure.ShouldBeNull();
    }

    // Public ASME B31.3 sheet, NPS 12: t 0.2097 in, c 0.125 in: tm 0.335 in, ordered 0.383 in.
    [Fact]
    public void The_wall_to_order_has_its_allowance_and_tolerance()
    {
        var t = Length.FromInches(0.2097);
        var order = RequiredWall.ToOrder(t, Length.FromInches(0.125), 0.125, null);
        order.Result.Minimum.Inches.ShouldBe(0.335, 5e-4);
        order.Result.Nominal.Inches.ShouldBe(0.383, 5e-4);
        order.Findings.ShouldBeEmpty();
        RequiredWall
            .ToOrder(t, Length.FromInches(0.125), null, null)
            .Findings.ShouldContain(f => f.Code == "mill-tolerance-default");
        RequiredWall.ToOrder(Mm(14.261), Mm(3), null, Mm(0.3)).Result.Nominal.Millimeters.ShouldBe(17.561, 1e-9);
    }

    [Fact]
    public void A_quality_factor_beside_a_stress_of_b31_1_is_asked_about() =>
        RequiredWall
            .Assess(A106B() with { QualityFactor = 0.85 }, Duty(2) with { Code = WallCode.B311 })
            .Findings.ShouldContain(f => f.Code == "quality-factor-in-stress");

    [Fact]
    public void A_wall_that_will_be_gone_holds_nothing()
    {
        var held = Mawp.Assess(A106B(), Duty(1), new(Mm(1), Mm(0.6), Mm(0)));
        held.Result.Mawp!.Value.ShouldBe(Pressure.Zero);
        held.Findings.ShouldContain(f => f.Code == "mawp-against-design" && f.Severity == Severity.Fail);
    }

    [Fact]
    public void A_reading_a_quarter_above_nominal_is_taken_again()
    {
        Mawp.Assess(A106B(), Duty(1), new(Mm(7.11 * 1.25), Mm(0), Mm(0))).Result.Mawp.ShouldNotBeNull();
        Mawp.Assess(A106B(), Duty(1), new(Mm(9), Mm(0), Mm(0))).Result.Mawp.ShouldBeNull();
    }

    [Theory]
    [InlineData(-1, 100, "designPressureBar")]
    [InlineData(1, 0, "outsideDiameterMm")]
    public void What_no_pipe_can_have_is_refused_by_name(double P, double D, string field) =>
        Should
            .Throw<ImpossibleInputException>(() => RequiredWall.B313(Mpa(P), Mm(D), Mpa(100), 1, 1, 0.4))
            .Field.ShouldBe(field);

    [Fact]
    public void A_wall_of_half_the_diameter_is_no_pipe() =>
        Should
            .Throw<ImpossibleInputException>(() => Mawp.Barlow(Mm(100), Mm(50), Mpa(100)))
            .Field.ShouldBe("wallThicknessMm");

    private static WallDuty Duty(double megapascals) =>
        new(WallCode.B313, Mpa(megapascals), Temperature.FromDegreesCelsius(38));
}
