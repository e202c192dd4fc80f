using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json;

namespace RepairOrders.Api.Tests.Calculations;

public sealed class SurveyOverHttp(Workshop workshop)
{
    private const string Batch = "calculations/remaining-strength/batch";

    private const string Heading =
        "outsideDiameterMm,wallThicknessMm,metal,allowableStressMpa,yieldStrengthMpa,tensileStrengthMpa,referenceWallMm,depthMm,axialLengthMm,circumferentialLengthMm,side,maopBar,temperatureC,positionsMm,depthsMm";

    private const string Good = "508,7.4,carbonSteel,137.9,359,455,7.4,1.97,140,60,external,72.6,15,,";

    [Fact]
    public async Task Lines_of_json_are_answered_in_place_like_one_by_one()
    {
        var scene = await workshop.Scene();
        var ask = Case.Of("remaining-strength");
        var bad = Case.Of("remaining-strength");
        bad["depthMm"] = -1;
        var unread = Case.Of("remaining-strength");
        unread["side"] = "left";
        var survey = string.Join(
            '\n',
            ask.ToJsonString(),
            bad.ToJsonString(),
            "{not json",
            unread.ToJsonString(),
            ask.ToJsonString(),
            ""
        );
        var heard = await scene.Send(Batch, survey, "application/jsonl");
        heard.Status.ShouldBe(HttpStatusCode.OK, heard.Text);
        var rows = Lines(heard.Text);
        rows.Select(r => r.GetProperty("row").GetInt32()).ShouldBe([1, 2, 3, 4, 5]);
        Problem(rows[1], "field").ShouldBe("depthMm");
        Problem(rows[1], "value").ShouldBe("-1");
        Problem(rows[2], "field").ShouldBe("row");
        Problem(rows[3], "field").ShouldBe("side");
        Problem(rows[3], "value").ShouldBe("left");
        var one = await scene.Calculate("remaining-strength", ask);
        foreach (var row in new[] { rows[0], rows[4] })
        {
            row.GetProperty("safePressureBar").GetDouble().ShouldBe(one.Number("safePressureBar"), 1e-9);
            row.GetProperty("governs").GetString().ShouldBe(one.At("governs").GetString());
        }
    }

    [Fact]
    public async Task A_row_that_no_method_answers_names_its_fault_as_if_asked_alone()
    {
        var scene = await workshop.Scene();
        var ask = Case.Of("remaining-strength");
        ask["pipe"]!["yieldStrengthMpa"] = -1;
        ask["pipe"]!["tensileStrengthMpa"] = 0;
        var alone = await scene.Send("calculations/remaining-strength", ask.ToJsonString(), "application/json");
        alone.Status.ShouldBe(HttpStatusCode.BadRequest, alone.Text);
        var survey = await scene.Send(Batch, ask.ToJsonString() + "\n", "application/jsonl");
        var field = Problem(Lines(survey.Text).ShouldHaveSingleItem(), "field");
        field.ShouldStartWith("pipe.");
        alone.Text.ShouldContain($"\"{field}\"");
    }

    [Fact]
    public async Task Rows_of_csv_are_answered_in_place()
    {
        var survey = string.Join(
            '\n',
            Heading,
            Good,
            Good.Replace("1.97", "deep", StringComparison.Ordinal),
            Good.Replace("7.4,1.97", "7.4,9", StringComparison.Ordinal),
            Good[..^1] + "0 50 140,0 1.97 0",
            ""
        );
        var heard = await (await workshop.Scene()).Send(Batch, survey, "text/csv");
        heard.Status.ShouldBe(HttpStatusCode.OK, heard.Text);
        var rows = heard.Text.Trim().Split('\n').Select(r => r.Trim()).ToList();
        rows.Count.ShouldBe(5);
        rows[0].ShouldStartWith("row,governs,safePressureBar");
        rows[1].ShouldStartWith("1,b31g-original,");
        rows[2].ShouldContain("depthMm,deep,");
        rows[3].ShouldContain("depthMm,9,");
        rows[4].ShouldStartWith("4,effective-area,");
    }

    [Fact]
    public async Task A_field_without_end_is_named_by_row_and_column()
    {
        var survey = string.Join('\n', Heading, Good, Good[..^1] + new string('1', 200_001) + ",0", Good, "");
        var heard = await (await workshop.Scene()).Send(Batch, survey, "text/csv");
        heard.Status.ShouldBe(HttpStatusCode.OK, heard.Text);
        var rows = heard.Text.Trim().Split('\n').Select(r => r.Trim()).ToList();
        rows.Count.ShouldBe(3);
        rows[1].ShouldStartWith("1,b31g-original,");
        rows[2].ShouldStartWith("2,");
        rows[2].ShouldContain("positionsMm,");
        rows[2].ShouldContain("Row 2: positionsMm is longer than 200000 characters");
        rows[2].ShouldContain("Nothing after it was read.");
    }

    [Fact]
    public async Task A_row_of_too_many_cells_is_named_and_the_survey_goes_on()
    {
        var survey = string.Join('\n', Heading, Good + ",7", Good, "");
        var heard = await (await workshop.Scene()).Send(Batch, survey, "text/csv");
        var rows = heard.Text.Trim().Split('\n').Select(r => r.Trim()).ToList();
        rows[1].ShouldContain("Row 1 has 16 cells; allowed are 15");
        rows[2].ShouldStartWith("2,b31g-original,");
    }

    [Fact]
    public async Task A_heading_without_end_is_refused()
    {
        var heard = await (await workshop.Scene()).Send(Batch, new string('x', 200_001) + "\n1\n", "text/csv");
        heard.Status.ShouldBe(HttpStatusCode.BadRequest, heard.Text);
        heard.Fields.ShouldBe(["body"]);
    }

    [Fact]
    public async Task A_heading_nobody_knows_and_another_kind_are_refused()
    {
        var scene = await workshop.Scene();
        var heading = await scene.Send(Batch, "depth\n3\n", "text/csv");
        heading.Status.ShouldBe(HttpStatusCode.BadRequest, heading.Text);
        heading.Fields.ShouldContain("depth");
        heading.Fields.ShouldContain("depthMm");
        (await scene.Send(Batch, "{}", "application/json")).Status.ShouldBe(HttpStatusCode.UnsupportedMediaType);
    }

    // The goal is seconds on two cores for a hundred thousand; a tenth of them keeps the test short.
    [Fact]
    public async Task Ten_thousand_profiles_larger_than_any_other_body_are_screened()
    {
        var points = Enumerable.Range(0, 50).ToArray();
        var positions = string.Join(' ', points.Select(i => (i * 5).ToString(CultureInfo.InvariantCulture)));
        var depths = string.Join(
            ' ',
            points.Select(i => (1 + i * 7 % 11 * 0.25).ToString(CultureInfo.InvariantCulture))
        );
        var text = new StringBuilder(Heading).Append('\n');
        for (var i = 0; i < 10_000; i++)
            text.Append(Good[..^1]).Append(positions).Append(',').Append(depths).Append('\n');
        text.Length.ShouldBeGreaterThan(4_000_000);
        var heard = await (await workshop.Scene()).Send(Batch, text.ToString(), "text/csv");
        heard.Status.ShouldBe(HttpStatusCode.OK);
        heard.Text.Trim().Split('\n').Length.ShouldBe(10_001);
        heard.Text.ShouldContain("\n10000,effective-area,");
    }

    private static List<JsonElement> Lines(string text) =>
        [.. text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonDocument.Parse(l).RootElement)];

    private static string? Problem(JsonElement row, string what) =>
        row.GetProperty("problem").GetProperty(what).GetString();
}
