using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace RepairOrders.Api.Tests.Calculations;

/// <summary>Every subject asked with one real case. Published values stand with their source; the others are computed by hand.</summary>
public sealed class CalculationsOverHttp(Workshop workshop)
{
    public static TheoryData<string> Subjects => [.. Case.Subjects];

    [Theory]
    [MemberData(nameof(Subjects))]
    public async Task Every_subject_answers_result_working_findings_and_cautions(string subject)
    {
        var heard = await (await workshop.Scene()).Calculate(subject, Case.Of(subject));
        heard.Status.ShouldBe(HttpStatusCode.OK, heard.Text);
        heard.Json.EnumerateObject().Select(p => p.Name).ShouldBe(["result", "working", "findings", "cautions"]);
        heard.Text.ShouldNotContain("NaN", Shouldly.Case.Sensitive);
        heard.Text.ShouldNotContain("Infinity", Shouldly.Case.Sensitive);
        var working = heard.Json.GetProperty("working").EnumerateArray().ToList();
        working.ShouldNotBeEmpty();
        working.ShouldContain(s => s.GetProperty("formula").GetString() != "");
        foreach (var step in working)
        {
            step.GetProperty("words").GetString().ShouldNotBeNullOrEmpty();
            step.GetProperty("unit").GetString().ShouldNotBeNullOrEmpty();
            step.GetProperty("clause").GetString().ShouldNotBeNullOrEmpty();
            var (formula, numbers) = (
                step.GetProperty("formula").GetString()!,
                step.GetProperty("substituted").GetString()!
            );
            (formula.Length == 0).ShouldBe(numbers.Length == 0, formula);
            if (formula.Length > 0)
                numbers.Any(char.IsAsciiDigit).ShouldBeTrue($"{formula}: {numbers}");
        }
    }

    [Fact]
    public void Every_subject_of_the_engine_is_a_door()
    {
        var doors = workshop
            .Services.GetRequiredService<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .Select(e => e.RoutePattern.RawText!.TrimStart('/'))
            .ToHashSet();
        Case.Subjects.Where(s => !doors.Contains($"api/v1/calculations/{s}")).ShouldBeEmpty();
        doors.ShouldContain("api/v1/pipe-sizes");
        doors.ShouldContain("api/v1/pipe-grades");
    }

    // Public B31.3 calculation sheet, 8 in sch 80, 3 MPa, A106-B, S 137.9 MPa: 2.36 mm.
    // Public fitness calculation sheet, 219.075 mm, 4 mm, S 20 000 psi: 741 psi (51.09 bar).
    [Fact]
    public async Task Wall_and_pressure_of_the_published_sheets()
    {
        var heard = await Hear("wall-thickness");
        heard.Number("forPressureMm").ShouldBe(2.36, 0.005);
        heard.Number("held.mawpBar").ShouldBe(741 * 0.0689476, 0.04);
    }

    // Public B31.3 calculation sheet, NPS 12, 550 psi, S 16 500 psi, c 0.125 in: t 0.2097, tm 0.335, ordered 0.383 in.
    [Fact]
    public async Task Wall_to_order_of_the_published_sheet()
    {
        const double Psi = 0.0689475729;
        var ask = Case.Of("wall-thickness");
        ask["pipe"]!["outsideDiameterMm"] = 12.75 * 25.4;
        ask["pipe"]!["allowableStressMpa"] = 16_500 * Psi / 10;
        ask["duty"]!["designPressureBar"] = 550 * Psi;
        ask["order"] = new JsonObject { ["allowanceMm"] = 0.125 * 25.4, ["millTolerancePercent"] = 12.5 };
        var heard = await (await workshop.Scene()).Calculate("wall-thickness", ask);
        (heard.Number("forPressureMm") / 25.4).ShouldBe(0.2097, 5e-5);
        (heard.Number("order.minimumMm") / 25.4).ShouldBe(0.335, 5e-4);
        (heard.Number("order.nominalMm") / 25.4).ShouldBe(0.383, 5e-4);
    }

    [Fact]
    public async Task A_factor_that_is_left_out_is_told()
    {
        var heard = await Hear("remaining-strength");
        var codes = heard.Json.GetProperty("findings").EnumerateArray().Select(f => f.GetProperty("code").GetString());
        codes.ShouldContain("usage-factor-default");
        codes.ShouldNotContain("safety-factor-default");
    }

    // Operator's dig report, 508 × 7.40 mm, 359 MPa, L 140 mm, d 1.97 mm: 7809.88 kPa by 0.85 dL with F 0.72. The printed
    // flow stress adds 10 000 psi (68.95 MPa), the engine's 69 MPa: 0.01 % apart.
    [Fact]
    public async Task Strength_of_the_published_dig_report()
    {
        var heard = await Hear("remaining-strength");
        var modified = heard
            .Result.GetProperty("answers")
            .EnumerateArray()
            .Single(a => a.GetProperty("code").GetString() == "b31g-modified");
        modified.GetProperty("safePressureBar").GetDouble().ShouldBe(78.0988, 0.02);
    }

    // Derived by hand: least readings of the rings 10, 8, 5, 7, 10 mm.
    [Fact]
    public async Task A_grid_gives_its_profile_pits_and_heat_map()
    {
        var heard = await Hear("wall-loss-grid");
        heard
            .Result.GetProperty("along")
            .EnumerateArray()
            .Select(p => p.GetProperty("depthMm").GetDouble())
            .ShouldBe([0, 2, 5, 3, 0]);
        heard.Number("leastMm").ShouldBe(5);
        heard.Result.GetProperty("pits").GetArrayLength().ShouldBeGreaterThan(0);
        heard.At("heatMap.lossPercent").GetArrayLength().ShouldBe(15);
        heard.At("heatMap.lossPercent").EnumerateArray().Max(x => x.GetDouble()).ShouldBe(50);
    }

    [Fact]
    public async Task A_bad_cell_of_a_grid_is_named_by_row_and_column()
    {
        var ask = Case.Of("wall-loss-grid");
        ask["csv"] = "10,10,10\n10,x7,10\n10,10,-3\n";
        var heard = await (await workshop.Scene()).Calculate("wall-loss-grid", ask);
        heard.Status.ShouldBe(HttpStatusCode.BadRequest);
        heard.Fields.ShouldBe(["csv"]);
        heard.Sentence("csv").ShouldContain("x7");
        heard.Sentence("csv").ShouldContain("-3");
    }

    // Public API 570 practice examination, Q29/Q30 in inches: long-term rate by hand (9.525 − 6.477)/20 y, remaining life by
    // hand (6.477 − 3.81)/rate.
    [Fact]
    public async Task Life_of_a_wall_read_twice()
    {
        var heard = await Hear("remaining-life");
        heard.Number("longTermMmPerYear").ShouldBe(3.048 / 20, 1e-4);
        heard.Number("remainingDays").ShouldBe(2.667 / (3.048 / 20) * 365.25, 5);
    }

    [Fact]
    public async Task The_same_seed_gives_the_same_chance_near_its_estimate()
    {
        var (once, again) = (await Hear("outliving"), await Hear("outliving"));
        again.Text.ShouldBe(once.Text);
        once.Number("either").ShouldBeInRange(0, 1);
    }

    // Own rule, worked by hand: class C for 80 d with 300 d of life: looks every 20 d, thickness every 150 d; the bound on the
    // next revisit is the outage in 1.2 y, and never past the approval of 80 d.
    [Fact]
    public async Task Revisits_of_a_class_c_repair()
    {
        var heard = await Hear("revisit-plan");
        heard.Number("lookIntervalDays").ShouldBe(20);
        heard.Number("boundDays").ShouldBe(80);
    }

    // Computed: 2 MPa on 168.3 mm is 44 492.6 N.
    [Fact]
    public async Task Thrust_of_a_closed_end() => (await Hear("axial-load")).Number("thrustKn").ShouldBe(44.4926, 1e-4);

    // Computed by the flow-stress limit with the two-range bulging factor: DN 150, 7.11 mm, 2 MPa, 309 MPa: 603.94 mm.
    [Fact]
    public async Task Critical_length_of_a_slot()
    {
        var heard = await Hear("through-wall");
        heard.Number("criticalLengthMm").ShouldBe(603.94, 0.01);
        heard.Result.GetProperty("holeClasses").GetArrayLength().ShouldBe(4);
    }

    // Handbook table of air through an orifice: 1/4 in, 100 psig, 70 °F: 104 cubic feet of free air a minute.
    [Fact]
    public async Task Air_through_a_quarter_inch() =>
        (await Hear("leak-rate")).Number("volumeFlowLMin").ShouldBe(104 * 28.316847, 0.5 * 28.316847);

    [Fact]
    public async Task Carried_risk_is_the_sum_of_the_section() =>
        (await Hear("risk-class")).Result.GetProperty("sectionSum").GetInt32().ShouldBeGreaterThan(0);

    [Fact]
    public async Task Claims_are_ranked_and_the_emergency_list_is_put_to_the_leak()
    {
        var heard = await Hear("method-claims");
        heard
            .Result.GetProperty("claims")
            .EnumerateArray()
            .Select(c => c.GetProperty("rank").GetInt32())
            .ShouldBe(Enumerable.Range(1, 7));
        heard.Result.GetProperty("emergency").GetArrayLength().ShouldBe(5);
    }

    // Q10 of 2: ten kelvin warmer is twice as fast, by definition.
    [Fact]
    public async Task A_cure_ten_kelvin_warmer_takes_half_the_time()
    {
        var heard = await Hear("cure");
        heard.Number("times.setForLoadH").ShouldBe(2, 1e-9);
        heard.Number("progress.equivalentTimeH").ShouldBe(2, 1e-9);
        heard.At("progress.readyForLoadAt").GetDateTimeOffset().Hour.ShouldBe(10);
    }

    // Dew-point table of the DIN 4108 type: 20 °C and 50 %: 9.3 °C.
    [Fact]
    public async Task Dew_point_and_the_first_dry_hours()
    {
        var heard = await Hear("surface-climate");
        heard.Number("dewPointTemperatureC").ShouldBe(9.3, 0.05);
        heard.Result.GetProperty("go").GetBoolean().ShouldBeTrue();
        heard.At("firstLongEnough.from").GetDateTimeOffset().Hour.ShouldBe(7);
    }

    // Computed: M6, 3 N m: 1667 N at K 0.30, 1000 N at K 0.50.
    [Fact]
    public async Task Preload_of_an_m6()
    {
        var heard = await Hear("tightening");
        heard.Number("preloadLowKn").ShouldBe(1.0, 1e-9);
        heard.Number("preloadHighKn").ShouldBe(1.6667, 5e-5);
    }

    // ASME B31.3, 345.4.2: 1.5 times design; the clamp is rated 16 bar.
    [Fact]
    public async Task A_water_test_at_one_and_a_half_times_design() =>
        (await Hear("pressure-test")).Number("pressureBar").ShouldBe(15, 1e-9);

    [Fact]
    public async Task A_test_never_goes_above_what_the_wall_holds()
    {
        var ask = Case.Of("pressure-test");
        ask["pipeHoldsBar"] = 9;
        var heard = await (await workshop.Scene()).Calculate("pressure-test", ask);
        heard.Number("pressureBar").ShouldBeLessThanOrEqualTo(9);
        heard.Result.GetProperty("servicePressureOnly").GetBoolean().ShouldBeTrue();
    }

    // Derived by hand: 600 + 400 and 500 + 400 from two coils, 100 mm left.
    [Fact]
    public async Task Bands_from_two_coils()
    {
        var heard = await Hear("cut-plan");
        heard.Result.GetProperty("cuts").GetArrayLength().ShouldBe(2);
        heard.Result.GetProperty("proven").GetBoolean().ShouldBeTrue();
        heard.Number("longestRemnantMm").ShouldBe(100, 0.1);
    }

    // Derived by hand: 4000 mm from coils of 1500 mm with 80 mm overlap takes three pieces, 4160 mm in all.
    [Fact]
    public async Task A_band_longer_than_any_stock_is_spliced()
    {
        var ask = JsonNode.Parse(
            """{"bands":[{"code":"A","lengthMm":4000}],"stock":[{"code":"coil","lengthMm":1500,"count":5}],"spliceOverlapMm":80}"""
        )!;
        var heard = await (await workshop.Scene()).Calculate("cut-plan", ask);
        heard.Result.GetProperty("splices").GetInt32().ShouldBe(2);
        heard
            .Result.GetProperty("cuts")
            .EnumerateArray()
            .SelectMany(c => c.GetProperty("pieces").EnumerateArray())
            .Sum(p => p.GetProperty("lengthMm").GetDouble())
            .ShouldBe(4160, 1e-6);
    }

    // API RP 574, Table 1: NPS 2-1/2 is 73.0 mm; the other family has 76.1 mm, and no match is chosen for anybody.
    [Fact]
    public async Task A_girth_finds_its_diameter_and_a_grade_its_stress()
    {
        var scene = await workshop.Scene();
        var girth = await scene.Send("pipe-sizes/of-girth?girthMm=229.3", "", "", get: true);
        girth.Status.ShouldBe(HttpStatusCode.OK, girth.Text);
        girth
            .Result.GetProperty("matches")
            .EnumerateArray()
            .ShouldContain(m => Math.Abs(m.GetProperty("outsideDiameterMm").GetDouble() - 73) < 0.06);
        var grade = await scene.Send(
            "pipe-grades/allowable-stress?grade=ASTM%20A106%20B&temperatureC=38",
            "",
            "",
            get: true
        );
        grade.Status.ShouldBe(HttpStatusCode.OK, grade.Text);
        grade.Number("allowableStressMpa").ShouldBe(138, 0.5);
    }

    [Fact]
    public async Task What_a_method_must_be_told_can_be_read()
    {
        var heard = await (await workshop.Scene()).Send("calculations/laminate-wrap/inputs", "", "", get: true);
        heard.Json.EnumerateArray().Select(i => i.GetProperty("code").GetString()).ShouldContain("softeningC");
    }

    private async Task<Heard> Hear(string subject)
    {
        var heard = await (await workshop.Scene()).Calculate(subject, Case.Of(subject));
        heard.Status.ShouldBe(HttpStatusCode.OK, heard.Text);
        return heard;
    }
}
