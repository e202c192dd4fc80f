using System.Net;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace RepairOrders.Api.Tests;

public sealed partial class OpenApi(Workshop workshop)
{
    private static readonly JsonSerializerOptions Readable = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    [Fact]
    public async Task The_interface_is_the_approved_one() =>
        await (await Document()).ToJsonString(Readable).ShouldBeApproved("OpenApi.approved.json");

    [Fact]
    public async Task It_is_OpenApi_3_1_and_every_reference_in_it_leads_somewhere()
    {
        var document = await Document();
        document["openapi"]!.GetValue<string>().ShouldStartWith("3.1");
        foreach (Match reference in Reference().Matches(document.ToJsonString()))
        {
            JsonNode? at = document;
            foreach (var step in reference.Groups[1].Value.Split('/'))
                at = at?[step];
            at.ShouldNotBeNull(reference.Value);
        }
    }

    [Fact]
    public async Task Every_operation_says_what_it_does_and_what_it_needs()
    {
        foreach (var (name, operation) in await Operations())
        {
            operation["summary"]?.GetValue<string>().ShouldNotBeNullOrWhiteSpace(name);
            if (name is not ("post /api/v1/session" or "post /api/v1/first-administrator"))
            {
                operation["security"].ShouldNotBeNull(name);
                operation["description"]!.GetValue<string>().ShouldStartWith("Needs ", customMessage: name);
            }
        }
    }

    [Fact]
    public async Task A_measure_may_be_sent_as_a_number_as_text_or_as_an_object()
    {
        var schemas = (await Document())["components"]!["schemas"]!;
        var kinds = schemas["Measure"]!["oneOf"]!.AsArray().Select(kind => kind!["type"]!.GetValue<string>());
        kinds.ShouldBe(["number", "string", "object"]);
        var pressure = schemas["RequestRepair"]!["properties"]!["operatingPressure"]!;
        pressure["$ref"]!.GetValue<string>().ShouldBe("#/components/schemas/Measure");
        pressure["description"]!
            .GetValue<string>()
            .ShouldStartWith("Gauge pressure in operation. 0 to 1000 bar; units: bar,");
    }

    [Fact]
    public async Task What_must_be_sent_is_said_and_what_may_be_left_out_is_not()
    {
        var request = (await Document())["components"]!["schemas"]!["RequestRepair"]!["required"]!.AsArray();
        var required = request.Select(field => field!.GetValue<string>()).ToList();
        required.ShouldContain("leakState");
        required.ShouldNotContain("wantedBy");
    }

    [Fact]
    public async Task The_readable_page_and_all_it_loads_come_from_here()
    {
        using var http = workshop.Http(new SceneClock(DateTimeOffset.UtcNow));
        var page = await http.GetStringAsync("/api/docs/");
        page.ShouldContain("RepairOrders: REST interface");
        var loaded = Loaded().Matches(page).Select(m => m.Groups[1].Value).ToList();
        loaded.ShouldNotBeEmpty();
        foreach (var address in loaded)
        {
            address.ShouldNotContain("//");
            using var answer = await http.GetAsync(new Uri(new Uri("http://localhost/api/docs/"), address));
            answer.StatusCode.ShouldBe(HttpStatusCode.OK, address);
        }
    }

    [Fact]
    public async Task The_readable_page_runs_no_script_but_its_own()
    {
        using var http = workshop.Http(new SceneClock(DateTimeOffset.UtcNow));
        using var answer = await http.GetAsync(new Uri("/api/docs/", UriKind.Relative));
        var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
        var once = Once().Match(policy).Groups[1].Value;
        once.Length.ShouldBe(32);
        var page = await answer.Content.ReadAsStringAsync();
        Script().Count(page).ShouldBeGreaterThan(0);
        Script().Matches(page).ShouldAllBe(tag => tag.Value.Contains($"nonce=\"{once}\""));
        (await http.GetAsync(new Uri("/api/docs/", UriKind.Relative)))
            .Headers.GetValues("Content-Security-Policy")
            .Single()
            .ShouldNotBe(policy);
    }

    private async Task<JsonNode> Document()
    {
        using var http = workshop.Http(new SceneClock(DateTimeOffset.UtcNow));
        return JsonNode.Parse(await http.GetStringAsync("/openapi/v1.json"))!;
    }

    private async Task<IEnumerable<(string Name, JsonNode Operation)>> Operations() =>
        (await Document())["paths"]!
            .AsObject()
            .SelectMany(path => path.Value!.AsObject().Select(o => ($"{o.Key} {path.Key}", o.Value!)));

    [GeneratedRegex("\"\\$ref\":\"#/([^\"]+)\"")]
    private static partial Regex Reference();

    [GeneratedRegex("'nonce-([0-9a-f]+)'")]
    private static partial Regex Once();

    [GeneratedRegex("<script[^>]*>")]
    private static partial Regex Script();

    [GeneratedRegex("<(?:script|link|img)[^>]*?(?:src|href)=\"([^\"]+)\"")]
    private static partial Regex Loaded();
}
