using System.Text.Json;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.Options;
using RepairOrders.Api.People;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using JsonOptions = Microsoft.AspNetCore.Http.Json.JsonOptions;

namespace RepairOrders.Api.Calculations.Survey;

/// <summary>
/// Screens a survey of any length: rows are read, judged and answered a block at a time, so that neither the survey nor its
/// answer is ever whole in memory.
/// </summary>
internal static class SurveyEndpoint
{
    public const long MostBytes = 512_000_000;

    // Enough to keep every core busy, little enough to stay in memory: 512 defects of 5 000 points are 40 MB.
    private const int Block = 512;

    private static readonly string[] Kinds = ["application/jsonl", "application/x-ndjson", "text/csv"];

    public static void MapSurvey(this IEndpointRouteBuilder calculations) =>
        calculations
            .MapPost("/remaining-strength/batch", Screen)
            .Accepts<string>(Kinds[0], Kinds[1..])
            .Produces<SurveyedDefect>(200, Kinds[0], Kinds[1..])
            .WithMetadata(new StreamsBody())
            .Needs(Permission.Calculate)
            .WithSummary("Strength of every defect of a survey: JSON lines or CSV, streamed both ways");

    private static async Task Screen(HttpContext context, IOptions<JsonOptions> json)
    {
        var (request, response) = (context.Request, context.Response);
        var kind = request.ContentType?.Split(';')[0].Trim().ToLowerInvariant();
        if (kind is null || !Kinds.Contains(kind))
            throw new RequestRefusal(
                415,
                "http-415",
                $"The body is of kind {kind ?? "nothing"}; allowed are {string.Join(", ", Kinds)}."
            );
        if (request.ContentLength > MostBytes)
            throw new RequestRefusal(413, "too-large", $"The survey is larger than {MostBytes / 1_000_000} MB.");
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
            size.MaxRequestBodySize = MostBytes;
        var stop = context.RequestAborted;
        response.ContentType = kind == "text/csv" ? "text/csv; charset=utf-8" : kind;
        var answers = kind == "text/csv" ? (ISurveyWriter)new CsvAnswers(response) : new JsonAnswers(response);
        var rows =
            kind == "text/csv"
                ? CsvRows.Read(request.Body, stop)
                : JsonRows.Read(request.BodyReader, json.Value.SerializerOptions, stop);
        await foreach (var block in rows.Chunk(Block).WithCancellation(stop))
            await answers.Write(await Judge(block, stop), stop);
    }

    private static async Task<SurveyedDefect[]> Judge(ISurveyRow[] block, CancellationToken stop)
    {
        var judged = new SurveyedDefect[block.Length];
        await Parallel.ForAsync(0, block.Length, stop, async (i, _) => judged[i] = await Screening.Of(block[i]));
        return judged;
    }
}

/// <summary>The endpoint reads its body itself, as it comes in.</summary>
internal sealed record StreamsBody;

/// <summary>A row as it was read.</summary>
internal interface ISurveyRow
{
    int Number { get; }

    /// <summary>The ask in the row.</summary>
    /// <exception cref="BadRow">It cannot be read.</exception>
    ValueTask<CalculateRemainingStrength> Ask();

    /// <summary>The value of a field as it stands in the row.</summary>
    string? Value(string field);
}

/// <summary>A row that cannot be read.</summary>
internal sealed class BadRow(string column, string sentence) : Exception(sentence)
{
    public string Field => column;
}

/// <summary>A row that was read, and is none.</summary>
internal sealed record UnreadableRow(int Number, string Field, string Sentence) : ISurveyRow
{
    public ValueTask<CalculateRemainingStrength> Ask() => throw new BadRow(Field, Sentence);

    public string? Value(string field) => null;
}

internal interface ISurveyWriter
{
    Task Write(IReadOnlyList<SurveyedDefect> defects, CancellationToken stop);
}
