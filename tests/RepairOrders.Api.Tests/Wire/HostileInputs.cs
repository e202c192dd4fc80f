using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Wire;

public sealed class HostileInputs(Workshop workshop)
{
    [Theory]
    [InlineData(
        "foundHow",
        "\"banana\"",
        "foundHow is \"banana\"; allowed is one of round, inspection, alarm, otherWork, report."
    )]
    [InlineData("foundHow", "1", "foundHow is \"1\"; allowed is one of round, inspection, alarm, otherWork, report.")]
    [InlineData(
        "foundHow",
        "null",
        "foundHow is nothing; allowed is one of round, inspection, alarm, otherWork, report."
    )]
    [InlineData("wantedBy", "\"2026-13-45\"", "wantedBy is \"2026-13-45\"; allowed is a day such as 2026-03-14.")]
    [InlineData("wantedBy", "\"0001-01-01\"", "wantedBy is 0001-01-01; allowed are the years 1900 to 2150.")]
    [InlineData("wantedBy", "\"9999-12-31\"", "wantedBy is 9999-12-31; allowed are the years 1900 to 2150.")]
    [InlineData("hazardous", "\"yes\"", "hazardous is \"yes\"; allowed is true or false.")]
    [InlineData("place", "null", "place is missing.")]
    [InlineData("place", "17", "place is \"17\"; allowed is text.")]
    [InlineData("place", "[\"north wall\"]", "place is a list; allowed is text.")]
    [InlineData(
        "operatingPressure",
        "\"hot\"",
        "operatingPressure is \"hot\"; allowed is 0 to 1000 bar, as a number or as text with a unit."
    )]
    [InlineData("operatingPressure", "1e999", null)]
    [InlineData("operatingPressure", "\"6 °C\"", null)]
    [InlineData("operatingPressure", "{\"value\":6,\"unit\":7}", null)]
    [InlineData("operatingPressure", "{}", null)]
    [InlineData("operatingPressure", "true", null)]
    public async Task A_wrong_value_is_refused_by_field_value_and_what_is_allowed(
        string field,
        string value,
        string? sentence
    )
    {
        var scene = await workshop.Scene();
        var problem = await Send(scene, With(scene, field, value));
        problem.Status.ShouldBe(HttpStatusCode.BadRequest, problem.Text);
        var messages = problem.Json.GetProperty("errors").GetProperty(field);
        if (sentence is not null)
            messages[0].GetString().ShouldBe(sentence);
    }

    [Fact]
    public async Task A_field_that_is_missing_unknown_or_given_twice_is_refused_by_name()
    {
        var scene = await workshop.Scene();
        var whole = Ask(scene);
        var missing = JsonSerializer.Serialize(
            JsonSerializer
                .Deserialize<Dictionary<string, JsonElement>>(whole)!
                .Where(f => f.Key is not ("leakState" or "seen"))
                .ToDictionary()
        );
        var lacks = await Send(scene, missing);
        lacks.Status.ShouldBe(HttpStatusCode.BadRequest);
        lacks.Fields.ShouldBe(["seen", "leakState"], ignoreOrder: true);
        var unknown = await Send(scene, With(scene, "wantedby2", "1"));
        unknown.Fields.ShouldBe(["wantedby2"]);
        unknown.Text.ShouldContain("allowed are site, line, place");
        var twice = await Send(scene, whole[..^1] + ",\"place\":\"elsewhere\"}");
        twice.Fields.ShouldBe(["place"]);
    }

    [Theory]
    [InlineData("a \\u0000 b")]
    [InlineData("\\\\\\u0000")]
    public async Task A_nul_character_is_refused(string text)
    {
        var scene = await workshop.Scene();
        (await Send(scene, With(scene, "seen", $"\"{text}\""))).Status.ShouldBe(HttpStatusCode.BadRequest);
    }

    [Fact]
    public async Task Text_that_only_looks_like_a_nul_character_is_kept()
    {
        var scene = await workshop.Scene();
        var answer = await Send(scene, With(scene, "seen", "\"reads \\\\u0000 on the gauge\""));
        answer.Status.ShouldBe(HttpStatusCode.Created, answer.Text);
        answer.Text.ShouldContain("\\\\u0000 on the gauge");
    }

    [Theory]
    [InlineData("\"\\ud800 half a letter\"")]
    [InlineData("\"\\uffff and \\ufffe\"")]
    [InlineData("\"'; DROP TABLE orders; --\"")]
    [InlineData("\"<script>alert(1)</script>\"")]
    [InlineData("\"‮gnirts a ​﻿\"")]
    public async Task Odd_text_is_kept_as_it_is_or_refused_but_breaks_nothing(string text)
    {
        var scene = await workshop.Scene();
        var answer = await Send(scene, With(scene, "seen", text));
        ((int)answer.Status).ShouldBeInRange(200, 499, answer.Text);
        (await scene.Mara.Register(new RegisterFilter())).Rows.Count.ShouldBe(
            answer.Status == HttpStatusCode.Created ? 1 : 0
        );
    }

    [Fact]
    public async Task A_half_letter_in_utf8_is_refused()
    {
        var scene = await workshop.Scene();
        var bytes = Encoding.UTF8.GetBytes(With(scene, "seen", "\"x?x\""));
        bytes[Array.IndexOf(bytes, (byte)'?')] = 0xC3;
        var answer = await Send(scene, new ByteArrayContent(bytes), "application/json");
        answer.Status.ShouldBe(HttpStatusCode.BadRequest, answer.Text);
    }

    [Fact]
    public async Task Deep_nesting_is_refused()
    {
        var scene = await workshop.Scene();
        foreach (var depth in new[] { 33, 500_000 })
        {
            var deep = new string('[', depth) + new string(']', depth > 1000 ? 0 : depth);
            (await Send(scene, With(scene, "seen", deep))).Status.ShouldBe(HttpStatusCode.BadRequest);
        }
    }

    [Fact]
    public async Task A_body_beyond_the_limit_is_refused_whether_it_says_its_length_or_not()
    {
        var scene = await workshop.Scene();
        var huge = With(scene, "seen", $"\"{new string('x', 1_000_001)}\"");
        (await Send(scene, huge)).Status.ShouldBe(HttpStatusCode.RequestEntityTooLarge);
        using var unsaid = new StreamContent(new Unsized(Encoding.UTF8.GetBytes(huge)));
        var answer = await Send(scene, unsaid, "application/json");
        answer.Status.ShouldBe(HttpStatusCode.RequestEntityTooLarge, answer.Text);
        var largest = With(scene, "seen", $"\"{new string('x', 900_000)}\"");
        (await Send(scene, largest)).Fields.ShouldBe(["seen"]);
    }

    [Theory]
    [InlineData("", "application/json", 400)]
    [InlineData("{", "application/json", 400)]
    [InlineData("[]", "application/json", 400)]
    [InlineData("null", "application/json", 400)]
    [InlineData("17", "application/json", 400)]
    [InlineData("{} {}", "application/json", 400)]
    [InlineData("site=mill", "application/x-www-form-urlencoded", 415)]
    [InlineData("<order/>", "application/xml", 415)]
    public async Task What_is_no_ask_at_all_is_refused(string body, string type, int status)
    {
        var scene = await workshop.Scene();
        var answer = await Send(scene, new StringContent(body), type);
        ((int)answer.Status).ShouldBe(status, answer.Text);
        answer.Json.GetProperty("detail").GetString().ShouldNotBeNullOrEmpty();
        answer.Text.ShouldNotContain("RequestRepair");
    }

    [Theory]
    [InlineData("/api/v1/orders?limit=abc", 400, "limit is \"abc\"; allowed is a whole number.")]
    [InlineData("/api/v1/orders?limit=0", 400, null)]
    [InlineData("/api/v1/orders?limit=201", 400, null)]
    [InlineData("/api/v1/orders?after=x", 400, null)]
    [InlineData("/api/v1/orders?after=' OR 1=1 --", 400, null)]
    [InlineData("/api/v1/orders?count=perhaps", 400, "count is \"perhaps\"; allowed is true or false.")]
    [InlineData("/api/v1/orders?class=7", 400, "class is \"7\"; allowed is one of A, B, C, D.")]
    [InlineData("/api/v1/orders.csv?class=7", 400, null)]
    [InlineData("/api/v1/papers/register.pdf?class=7", 400, null)]
    [InlineData("/api/v1/orders?stage=nowhere", 400, null)]
    [InlineData("/api/v1/orders?live=perhaps", 400, "live is \"perhaps\"; allowed is true or false.")]
    [InlineData("/api/v1/orders?search=%00", 400, null)]
    [InlineData("/api/v1/orders?search=%2500", 200, null)]
    [InlineData("/api/v1/lines?search=%25_%5C", 200, null)]
    [InlineData("/api/v1/people?role=emperor", 400, null)]
    [InlineData("/api/v1/orders/..%2f..%2fetc", 404, null)]
    [InlineData("/api/v1/orders/no-such-order", 404, null)]
    [InlineData("/api/v1/lines/no-guid", 404, null)]
    [InlineData("/api/v1/nowhere", 404, null)]
    public async Task Odd_addresses_are_refused_in_words(string address, int status, string? sentence)
    {
        var scene = await workshop.Scene();
        using var http = SignedIn(scene);
        using var answer = await http.GetAsync(address);
        var text = await answer.Content.ReadAsStringAsync();
        ((int)answer.StatusCode).ShouldBe(status, text);
        if (status == 200)
            return;
        var problem = JsonDocument.Parse(text).RootElement;
        answer.Content.Headers.ContentType!.MediaType.ShouldBe("application/problem+json");
        problem.GetProperty("detail").GetString().ShouldNotBeNullOrEmpty();
        problem.GetProperty("code").GetString().ShouldNotBeNullOrEmpty();
        if (sentence is not null)
            problem.GetProperty("detail").GetString().ShouldBe(sentence);
    }

    [Fact]
    public async Task A_method_nobody_offers_is_405()
    {
        var scene = await workshop.Scene();
        using var http = SignedIn(scene);
        using var answer = await http.PatchAsync("/api/v1/orders", null);
        answer.StatusCode.ShouldBe(HttpStatusCode.MethodNotAllowed);
        (await answer.Content.ReadAsStringAsync()).ShouldContain("\"code\"");
    }

    [Theory]
    [InlineData(null, 428)]
    [InlineData("\"banana\"", 412)]
    [InlineData("\"-1\"", 412)]
    [InlineData("*", 412)]
    public async Task A_version_is_asked_for_and_must_be_one(string? version, int status)
    {
        var scene = await workshop.Scene();
        using var http = SignedIn(scene, scene.Ada);
        using var call = new HttpRequestMessage(HttpMethod.Put, $"/api/v1/sites/{scene.Site}")
        {
            Content = new StringContent(
                "{\"name\":\"Mill\",\"timeZone\":\"Etc/UTC\",\"areas\":[]}",
                Encoding.UTF8,
                "application/json"
            ),
        };
        call.Headers.Add("Idempotency-Key", "k");
        if (version is not null)
            call.Headers.TryAddWithoutValidation("If-Match", version);
        using var answer = await http.SendAsync(call);
        ((int)answer.StatusCode).ShouldBe(status);
    }

    [Fact]
    public async Task A_write_without_a_key_is_refused()
    {
        var scene = await workshop.Scene();
        using var http = SignedIn(scene);
        using var body = new StringContent(Ask(scene), Encoding.UTF8, "application/json");
        using var answer = await http.PostAsync("/api/v1/orders", body);
        answer.StatusCode.ShouldBe(HttpStatusCode.BadRequest);
        (await answer.Content.ReadAsStringAsync()).ShouldContain("idempotency-key-missing");
    }

    [Theory]
    [InlineData("Bearer")]
    [InlineData("Bearer ")]
    [InlineData("Bearer x")]
    [InlineData("Bearer 00000000000000000000000000000000000000000000000000000000000000000")]
    [InlineData("Basic bWFyYTpzZWNyZXQ=")]
    public async Task Odd_tokens_let_nobody_in(string header)
    {
        var scene = await workshop.Scene();
        using var http = workshop.Http(scene.Clock);
        http.DefaultRequestHeaders.TryAddWithoutValidation("Authorization", header);
        using var answer = await http.GetAsync("/api/v1/orders");
        answer.StatusCode.ShouldBe(HttpStatusCode.Unauthorized);
        answer.Headers.WwwAuthenticate.ToString().ShouldBe("Bearer");
        (await answer.Content.ReadAsStringAsync()).ShouldContain("not-signed-in");
    }

    private static string Ask(Scene scene) => JsonSerializer.Serialize(Cast.Weep(scene.Site), RepairOrdersClient.Json);

    private static string With(Scene scene, string field, string value)
    {
        var fields = JsonSerializer.Deserialize<Dictionary<string, JsonElement>>(Ask(scene))!;
        fields.Remove(field);
        return JsonSerializer.Serialize(fields)[..^1] + $",\"{field}\":{value}}}";
    }

    private HttpClient SignedIn(Scene scene, RepairOrdersClient? who = null)
    {
        var http = workshop.Http(scene.Clock);
        http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", (who ?? scene.Tove).Token);
        return http;
    }

    private Task<Answer> Send(Scene scene, string body) => Send(scene, new StringContent(body), "application/json");

    private async Task<Answer> Send(Scene scene, HttpContent body, string type)
    {
        using var http = SignedIn(scene);
        body.Headers.ContentType = new MediaTypeHeaderValue(type);
        using var call = new HttpRequestMessage(HttpMethod.Post, "/api/v1/orders") { Content = body };
        call.Headers.Add("Idempotency-Key", Guid.NewGuid().ToString());
        using var answer = await http.SendAsync(call);
        return new Answer(answer.StatusCode, await answer.Content.ReadAsStringAsync());
    }

    private sealed record Answer(HttpStatusCode Status, string Text)
    {
        public JsonElement Json => JsonDocument.Parse(Text).RootElement;

        public IEnumerable<string> Fields => Json.GetProperty("errors").EnumerateObject().Select(f => f.Name);
    }

    private sealed class Unsized(byte[] bytes) : MemoryStream(bytes)
    {
        public override bool CanSeek => false;
    }
}
