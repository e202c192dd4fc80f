using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using RepairOrders.Api.Wire;

namespace RepairOrders.Api.Tests.Calculations;

/// <summary>
/// Hostile numbers to every subject: the endpoint itself is called, binding and writing included, without the socket. Never a
/// fault, never a number that is none, never a promise its own findings do not keep. REPAIRORDERS_FUZZ says how many calls a
/// subject, 100000 before a release; REPAIRORDERS_FUZZ_SUBJECTS names some of them, with commas between.
/// </summary>
public sealed class FuzzedCalculations(Workshop workshop)
{
    private static readonly int Calls = int.Parse(
        Environment.GetEnvironmentVariable("REPAIRORDERS_FUZZ") ?? "500",
        CultureInfo.InvariantCulture
    );

    private static readonly string[] Chosen =
        Environment.GetEnvironmentVariable("REPAIRORDERS_FUZZ_SUBJECTS")?.Split(',') ?? [.. Case.Subjects];

    public static TheoryData<string> Subjects => [.. Case.Subjects.Where(Chosen.Contains)];

    [Theory]
    [MemberData(nameof(Subjects))]
    public async Task Hostile_numbers_are_answered_or_refused_by_field(string subject)
    {
        var endpoint = Door($"calculations/{subject}");
        var wrong = new ConcurrentDictionary<string, string>();
        var (answered, refused) = (0, 0);
        // The solver of the cut plan takes a hundred times longer than any formula.
        var calls = subject == "cut-plan" ? Math.Max(100, Calls / 20) : Calls;
        await Parallel.ForAsync(
            0,
            calls,
            async (i, _) =>
            {
                var ask = Hostile.Ask(subject, i).ToJsonString(Hostile.AsWritten);
                var (status, text) = await Call(endpoint, ask);
                if (status == 200)
                    Interlocked.Increment(ref answered);
                else
                    Interlocked.Increment(ref refused);
                if (Promises.Broken(subject, ask, status, text) is { } what)
                    wrong.TryAdd(what.Split('\n')[0], $"{what}\n{ask}");
            }
        );
        TestContext.Current.TestOutputHelper?.WriteLine($"{subject}: {answered} answered, {refused} refused");
        wrong.Values.Take(5).ShouldBeEmpty();
        answered.ShouldBeGreaterThan(calls / 50, "hostile numbers must reach the formulae, not only the door");
    }

    // A survey answers each row in its place, and as the subject answers it alone.
    [Fact]
    public async Task Hostile_rows_of_a_survey_are_answered_in_place()
    {
        const int Rows = 500;
        var (batch, alone) = (Door("calculations/remaining-strength/batch"), Door("calculations/remaining-strength"));
        var wrong = new ConcurrentBag<string>();
        for (var from = 0; from < Calls; from += Rows)
        {
            var asks = Enumerable
                .Range(from, Rows)
                .Select(i => Hostile.Ask("remaining-strength", i).ToJsonString(Hostile.AsWritten))
                .ToList();
            var (status, text) = await Call(batch, string.Join('\n', asks), "application/jsonl");
            status.ShouldBe(200, text);
            var answers = text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
            answers.Length.ShouldBe(Rows);
            await Parallel.ForAsync(
                0,
                Rows,
                async (i, _) =>
                {
                    if (Apart(answers[i], i + 1, await Call(alone, asks[i])) is { } what)
                        wrong.Add($"{what}\n{asks[i]}\n{answers[i]}");
                }
            );
        }
        wrong.Take(5).ShouldBeEmpty();
    }

    [Theory]
    [InlineData("pipe-sizes/of-girth", "?girthMm={0}")]
    [InlineData("pipe-grades/allowable-stress", "?grade=ASTM%20A106%20B&temperatureC={0}")]
    public async Task Hostile_numbers_to_the_tables_are_answered_or_refused(string path, string query)
    {
        var door = Door(path);
        for (var i = 0; i < Calls; i++)
        {
            var number = Hostile.Number(i).ToString("R", CultureInfo.InvariantCulture);
            var asked = string.Format(CultureInfo.InvariantCulture, query, Uri.EscapeDataString(number));
            var (status, text) = await Call(door, "", query: asked);
            status.ShouldBeOneOf(200, 400);
            if (status == 200)
                Promises.IsNoNumber(text).ShouldBeFalse($"{asked}: {text}");
        }
    }

    private static string? Apart(string row, int number, (int Status, string Text) alone)
    {
        using var answer = JsonDocument.Parse(row);
        var (told, refused) = (answer.RootElement, answer.RootElement.TryGetProperty("problem", out _));
        if (Promises.IsNoNumber(row))
            return "a number that is none";
        if (told.GetProperty("row").GetInt32() != number)
            return "out of place";
        if (refused != (alone.Status == 400))
            return $"alone it is {alone.Status}";
        if (refused)
            return null;
        using var single = JsonDocument.Parse(alone.Text);
        var (one, other) = (
            Told.Number(told, "safePressureBar"),
            Told.Number(single.RootElement, "result.safePressureBar")
        );
        return (one is null) == (other is null) && !(Math.Abs((one - other) ?? 0) > 1e-9 * Math.Abs(one ?? 0))
            ? null
            : $"{one} bar, alone {other} bar";
    }

    private RouteEndpoint Door(string path) =>
        workshop
            .Services.GetRequiredService<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .Single(e => e.RoutePattern.RawText!.TrimStart('/') == $"api/v1/{path}");

    private async Task<(int Status, string Text)> Call(
        RouteEndpoint endpoint,
        string ask,
        string kind = "application/json",
        string query = ""
    )
    {
        using var body = new MemoryStream(Encoding.UTF8.GetBytes(ask));
        using var answer = new MemoryStream();
        await using var scope = workshop.Services.CreateAsyncScope();
        var context = new DefaultHttpContext { RequestServices = scope.ServiceProvider };
        context.Features.Set<IHttpRequestBodyDetectionFeature>(new HasBody());
        context.Request.Method = query.Length > 0 ? "GET" : "POST";
        context.Request.QueryString = new QueryString(query);
        context.Request.ContentType = kind;
        context.Request.ContentLength = body.Length;
        context.Request.Body = body;
        context.Response.Body = answer;
        try
        {
            await endpoint.RequestDelegate!(context);
            return (context.Response.StatusCode, Encoding.UTF8.GetString(answer.ToArray()));
        }
        catch (Exception e) when (e is BadHttpRequestException { StatusCode: 400 })
        {
            return (400, "{}");
        }
        catch (Exception e) when (Refusals.Answer(e) is IStatusCodeHttpResult { StatusCode: 400 })
        {
            return (400, e is MalformedAsk bad ? string.Join(' ', bad.Fields.Keys) : "{}");
        }
        catch (Exception e)
        {
            return (500, e.ToString());
        }
    }

    private sealed class HasBody : IHttpRequestBodyDetectionFeature
    {
        public bool CanHaveBody => true;
    }
}
