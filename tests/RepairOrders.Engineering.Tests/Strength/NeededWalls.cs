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
