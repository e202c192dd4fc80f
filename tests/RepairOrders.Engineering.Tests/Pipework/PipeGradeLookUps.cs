using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Pipework;

public sealed class PipeGradeLookUps
{
    private static PipeGrade A106B => PipeGrades.Find("ASTM A106", "B")!;

    [Theory]
    [InlineData("API 5L", "X52", "X52 / L360")]
    [InlineData("API 5L", "L360", "X52 / L360")]
    [InlineData("ASTM A53", "B", "B (S or E)")]
    [InlineData("astm a312", "tp304l", "TP304L")]
    public void A_grade_is_found_by_any_of_its_names(string specification, string grade, string row) =>
        PipeGrades.Find(specification, grade)!.Grade.ShouldBe(row);

    [Theory]
    [InlineData("API 5L", "X53")]
    [InlineData("ASTM A106", "")]
    [InlineData("", "B")]
    public void A_grade_that_is_not_listed_is_not_found(string specification, string grade) =>
        PipeGrades.Find(specification, grade).ShouldBeNull();

    [Fact]
    public void Gray_iron_has_no_yield_strength_and_is_brittle()
    {
        var iron = PipeGrades.Find("ASTM A126", "class B")!;
        iron.YieldStrength.ShouldBeNull();
        iron.Brittle.ShouldBeTrue();
        iron.Family.ShouldBe(MetalFamily.GrayIron);
    }

    // ASME B31.3 Table A-1 (a published sheet, older edition): A106 B at 500 °F 18 900 psi.
    [Fact]
    public void Allowable_stress_falls_with_temperature()
    {
        var S = PipeGrades.AllowableStress(A106B, Temperature.FromDegreesFahrenheit(500));
        S.Result!.Value.KilopoundsForcePerSquareInch.ShouldBe(18.9, 0.05);
        S.Findings.ShouldContain(f => f.Code == "allowable-stress-editions-differ");
    }

    // ASME B31.3 302.3.2 (from memory): straight line between tabulated temperatures. X42 to X52 rows of Table A-1 were seen.
    [Fact]
    public void Between_tabulated_temperatures_the_stress_is_a_straight_line()
    {
        var plate = PipeGrades.Find("ASTM A671", "CC65")!;
        var S = PipeGrades.AllowableStress(plate, Temperature.FromDegreesFahrenheit(250)).Result!.Value;
        S.KilopoundsForcePerSquareInch.ShouldBe((21.4 + 20.6) / 2, 0.005);
    }

    [Fact]
    public void Hotter_than_its_row_is_refused_not_extrapolated()
    {
        var S = PipeGrades.AllowableStress(A106B, Temperature.FromDegreesCelsius(316));
        S.Result.ShouldBeNull();
        S.Findings.ShouldHaveSingleItem().Code.ShouldBe("temperature-above-table");
    }

    [Fact]
    public void A_row_without_hot_values_is_good_for_38_degrees_only()
    {
        var x60 = PipeGrades.Find("API 5L", "X60")!;
        PipeGrades.AllowableStress(x60, Temperature.FromDegreesCelsius(38)).Result!.Value.Megapascals.ShouldBe(172.4);
        PipeGrades.AllowableStress(x60, Temperature.FromDegreesCelsius(39)).Result.ShouldBeNull();
    }

    [Fact]
    public void Colder_than_29_below_is_refused() =>
        PipeGrades
            .AllowableStress(A106B, Temperature.FromDegreesCelsius(-30))
            .Findings.ShouldHaveSingleItem()
            .Code.ShouldBe("temperature-below-table");

    [Fact]
    public void A_grade_the_code_does_not_list_has_no_allowable_stress() =>
        PipeGrades
            .AllowableStress(PipeGrades.Find("EN 10216-2", "P265GH")!, Temperature.FromDegreesCelsius(20))
            .Findings.ShouldHaveSingleItem()
            .Code.ShouldBe("allowable-stress-not-listed");

    // ASME B31.3 Table A-1 note (from memory): TP321 seamless heavier than 9.5 mm, S 16.7 ksi.
    [Fact]
    public void Heavy_tp321_is_weaker_than_its_row()
    {
        var tp321 = PipeGrades.Find("ASTM A312", "TP321")!;
        var cold = Temperature.FromDegreesCelsius(20);
        PipeGrades
            .AllowableStress(tp321, cold, Length.FromMillimeters(9.53))
            .Result!.Value.KilopoundsForcePerSquareInch.ShouldBe(16.7, 0.05);
        PipeGrades
            .AllowableStress(tp321, cold, Length.FromMillimeters(9.5))
            .Result!.Value.KilopoundsForcePerSquareInch.ShouldBe(20.0, 0.05);
    }

    [Fact]
    public void Allowable_stress_never_rises_with_temperature()
    {
        foreach (var grade in PipeGrades.All)
        {
            var stresses = grade.Allowable.Select(a => a.Stress.Megapascals).ToList();
            stresses.Zip(stresses.Skip(1)).ShouldAllBe(p => p.Second <= p.First + 0.1, grade.Name);
        }
    }

    // Metric and customary tables are rounded apart, but never by more than the customary table's last figure.
    [Fact]
    public void Metric_and_customary_strengths_are_the_same_strength()
    {
        foreach (var grade in PipeGrades.All.Where(g => g.YieldKsi is not null && g.YieldStrength is not null))
        {
            grade.YieldStrength!.Value.KilopoundsForcePerSquareInch.ShouldBe(grade.YieldKsi!.Value, 1.0, grade.Name);
            grade.TensileStrength!.Value.KilopoundsForcePerSquareInch.ShouldBe(
                grade.TensileKsi!.Value,
                1.1,
                grade.Name
            );
        }
    }

    [Fact]
    public void Every_grade_names_its_source() =>
        PipeGrades.All.ShouldAllBe(g => g.StrengthSource.Document.Length > 0 && g.AllowableSource.Document.Length > 0);
}
