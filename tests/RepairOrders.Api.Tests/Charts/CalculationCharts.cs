using System.Net;
using RepairOrders.Api.Tests.Calculations;
using RepairOrders.Contract;
using Case = RepairOrders.Api.Tests.Calculations.Case;

namespace RepairOrders.Api.Tests.Charts;

public sealed class CalculationCharts(Workshop workshop)
{
    public static TheoryData<string> Subjects => [.. Case.Subjects];

    [Theory]
    [MemberData(nameof(Subjects))]
    public async Task Every_subject_has_a_drawing_or_a_chart_with_its_table(string subject)
    {
        var scene = await workshop.Scene();
        var charts = await scene.Rune.CalculationCharts(subject, Case.Of(subject));
        charts.ShouldNotBeEmpty();
        foreach (var chart in charts)
        {
            chart.Svg.ShouldStartWith("<svg ");
            chart.Svg.ShouldNotContain("NaN", Shouldly.Case.Sensitive);
            if (chart.Code != "drawing")
                chart.Rows.ShouldNotBeEmpty();
            chart.Rows.ShouldAllBe(r => r.Count == chart.Columns.Count);
            if (Environment.GetEnvironmentVariable("LOOK") is { Length: > 0 } folder)
                await File.WriteAllTextAsync(Path.Combine(folder, $"whatif-{subject}-{chart.Code}.svg"), chart.Svg);
        }
    }

    [Fact]
    public async Task The_chart_marks_what_the_calculation_answers()
    {
        var scene = await workshop.Scene();
        var ask = Case.Of("leak-rate");
        var flow = (await scene.Calculate("leak-rate", ask)).Number("massFlowKgH");
        var chart = (await scene.Rune.CalculationCharts("leak-rate", ask)).Single();
        chart.Rows.ShouldContain(r =>
            r[0].StartsWith("here")
            && r[2] == flow.ToString("0.####", System.Globalization.CultureInfo.InvariantCulture)
        );
    }

    [Fact]
    public async Task What_the_calculation_refuses_its_charts_refuse()
    {
        var scene = await workshop.Scene();
        var ask = Case.Of("cure");
        ask["setForLoadH"] = -1;
        var heard = await scene.Send("calculations/cure/charts", ask.ToJsonString(), "application/json");
        heard.Status.ShouldBe(HttpStatusCode.BadRequest);
        heard.Fields.ShouldBe(["setForLoadH"]);
    }
}
