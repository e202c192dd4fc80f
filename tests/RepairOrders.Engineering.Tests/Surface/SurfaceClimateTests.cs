using CsCheck;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Surface;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Surface;

public class SurfaceClimateTests
{
    [Theory]
    [InlineData("CL01")]
    [InlineData("CL02")]
    [InlineData("CL03")]
    public void Check_of_the_gate(string id)
    {
        var check = PublishedTable.Check("surface-checks.csv", id);
        var judged = Judge(check.Number("t_air"), check.Number("rh"), check.Number("t_steel"));
        check.ShouldBeMetBy(judged.Result.Go ? 1 : 0);
    }

    [Fact]
    public void Least_steel_of_the_masonry_paint_table()
    {
        var check = PublishedTable.Check("surface-checks.csv", "DP20");
        check.ShouldBeMetBy(Judge(check.Number("t"), check.Number("rh"), 20).Result.LeastSteel.DegreesCelsius);
    }

    // The US chart's rule is dew point + 5 °F, which is 2.8 K; ours is 3 K, 0.4 °F more.
    [Fact]
    public void Least_steel_of_the_Fahrenheit_chart()
    {
        var check = PublishedTable.Check("surface-checks.csv", "DP19");
        var air = (check.Number("tf") - 32) / 1.8;
        var dew = Judge(air, check.Number("rh"), 20).Result.DewPoint.DegreesFahrenheit;
        check.ShouldBeMetBy(dew + 5);
    }

    [Theory]
    [InlineData(17.5, 70, "steel-above-dew-point", Severity.Watch)]
    [InlineData(25, 70, "steel-above-dew-point", Severity.Pass)]
    [InlineData(17.0, 70, "steel-near-dew-point", Severity.Fail)]
    [InlineData(10, 70, "steel-sweating", Severity.Fail)]
    [InlineData(25, 86, "humidity-above-limit", Severity.Fail)]
    [InlineData(45, 70, "steel-outside-material-range", Severity.Fail)]
    [InlineData(25, 96, "humidity-sensor-high", Severity.Watch)]
    public void Each_limit_is_a_finding(double steel, double humidity, string code, Severity severity) =>
        Judge(20, humidity, steel).Findings.ShouldContain(f => f.Code == code && f.Severity == severity);

    [Fact]
    public void A_sweating_line_takes_only_a_material_stated_for_wet_surfaces()
    {
        Judge(25, 90, 8).Result.Go.ShouldBeFalse();
        var wet = Judge(25, 90, 8, forWet: true);
        wet.Result.Go.ShouldBeTrue();
        wet.Result.Sweating.ShouldBeTrue();
        wet.Findings.ShouldContain(f => f.Code == "wet-surface" && f.Severity == Severity.Watch);
    }

    [Fact]
    public void No_material_goes_on_ice() =>
        Judge(-5, 100, -6, forWet: true, least: -20).Findings.ShouldContain(f => f.Code == "ice-on-steel" && f.Blocks);

    [Fact]
    public void Below_zero_the_gate_uses_the_frost_point()
    {
        var judged = Judge(2, 60, 5);
        judged.Result.Condensation.DegreesCelsius.ShouldBe(-4.3835, 0.001);
        judged.Result.DewPoint.DegreesCelsius.ShouldBe(-4.96, 0.005);
        judged.Findings.ShouldContain(f => f.Code == "frost-point-used");
    }

    [Fact]
    public void Outside_the_formula_s_validity_it_is_no_go() =>
        Judge(60, 20, 60, greatest: 80).Result.Go.ShouldBeFalse();

    [Fact]
    public void The_margin_and_the_range_may_not_be_signed_past()
    {
        Judge(20, 70, 17).Findings.ShouldContain(f => f.Code == "steel-near-dew-point" && f.Blocks);
        Judge(20, 70, 45).Findings.ShouldContain(f => f.Code == "steel-outside-material-range" && f.Blocks);
    }

    [Fact]
    public void The_working_ends_with_the_margin()
    {
        var working = Judge(20, 70, 17.5).Working;
        working.Single(s => s.Symbol == "Td").Value.ShouldBe(14.36, 0.005);
        working.Single(s => s.Symbol == "ΔT").Substituted.ShouldBe("17.5 − 14.36");
    }

    [Fact]
    public void A_range_upside_down_is_impossible() =>
        Should
            .Throw<ImpossibleInputException>(() => Judge(20, 70, 20, least: 30, greatest: 10))
            .Field.ShouldBe("greatestTemperatureC");

    [Fact]
    public void Any_reading_gets_a_finite_verdict_and_go_keeps_the_rule() =>
        Gen.Select(Gen.Double[-90, 100], Gen.Double[0.001, 100], Gen.Double[-60, 120], Gen.Bool)
            .Sample(
                (air, humidity, steel, wet) =>
                {
                    var judged = Judge(air, humidity, steel, wet, -60, 120);
                    double.IsFinite(judged.Result.Margin.Kelvins).ShouldBeTrue();
                    judged.Result.Go.ShouldBe(judged.Findings.All(f => f.Severity != Severity.Fail));
                    if (judged.Result.Go && !wet)
                    {
                        judged.Result.Margin.Kelvins.ShouldBeGreaterThanOrEqualTo(3);
                        humidity.ShouldBeLessThanOrEqualTo(85);
                    }
                }
            );

    private static Calculated<ClimateVerdict> Judge(
        double air,
        double humidity,
        double steel,
        bool forWet = false,
        double least = 5,
        double greatest = 40
    ) =>
        SurfaceClimate.Judge(
            new(
                Temperature.FromDegreesCelsius(air),
                RelativeHumidity.FromPercent(humidity),
                Temperature.FromDegreesCelsius(steel)
            ),
            new(Temperature.FromDegreesCelsius(least), Temperature.FromDegreesCelsius(greatest), forWet)
        );
}
