using System.Buffers;
using System.IO.Pipelines;
using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.Json.Nodes;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Calculations.Survey;

/// <summary>A line of JSON.</summary>
internal sealed class JsonRows(int number, byte[] line, JsonSerializerOptions options) : ISurveyRow
{
    private const int LongestLine = 1_000_000;

    public int Number => number;

    public static async IAsyncEnumerable<ISurveyRow> Read(
        PipeReader body,
        JsonSerializerOptions options,
        [EnumeratorCancellation] CancellationToken stop
    )
    {
        var number = 0;
        while (true)
        {
            var read = await body.ReadAsync(stop);
            var rest = read.Buffer;
            while (rest.PositionOf((byte)'\n') is { } end)
            {
                var line = rest.Slice(0, end).ToArray();
                rest = rest.Slice(rest.GetPosition(1, end));
                if (!IsBlank(line))
                    yield return new JsonRows(++number, line, options);
            }
            if (rest.Length > LongestLine)
            {
                yield return new UnreadableRow(
                    ++number,
                    "row",
                    $"Row {number} is longer than {LongestLine} bytes; allowed are up to {LongestLine}. Nothing after it was read."
                );
                yield break;
            }
            if (read.IsCompleted)
            {
                var last = rest.ToArray();
                body.AdvanceTo(rest.End);
                if (!IsBlank(last))
                    yield return new JsonRows(++number, last, options);
                yield break;
            }
            body.AdvanceTo(rest.Start, rest.End);
        }
    }

    public async ValueTask<CalculateRemainingStrength> Ask()
    {
        try
        {
            return JsonSerializer.Deserialize<CalculateRemainingStrength>(line, options)
                ?? throw new BadRow("row", "The row is nothing; allowed is an object.");
        }
        catch (JsonException fault)
        {
            using var again = new MemoryStream(line, writable: false);
            var (field, sentences) = (await JsonFault.Read(fault, again, CancellationToken.None)).First();
            throw new BadRow(
                field == "body" ? "row" : field,
                sentences[0].Replace("body", "row", StringComparison.Ordinal)
            );
        }
    }

    public string? Value(string field)
    {
        try
        {
            var at = JsonNode.Parse(line);
            foreach (var step in field.Split('.'))
            {
                var name = step.Split('[')[0];
                at = at?[name];
                if (
                    step.Contains('[', StringComparison.Ordinal) && int.TryParse(step.Split('[', ']')[1], out var index)
                )
                    at = at?[index];
            }
            return at is JsonValue ? at.ToString() : null;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or ArgumentException)
        {
            return null;
        }
    }

    private static bool IsBlank(ReadOnlySpan<byte> line) => line.TrimStart(" \t\r"u8).IsEmpty;
}

/// <summary>Answers as lines of JSON.</summary>
internal sealed class JsonAnswers(HttpResponse response) : ISurveyWriter
{
    private static readonly byte[] NewLine = "\n"u8.ToArray();

    public async Task Write(IReadOnlyList<SurveyedDefect> defects, CancellationToken stop)
    {
        foreach (var defect in defects)
        {
            response.BodyWriter.Write(JsonSerializer.SerializeToUtf8Bytes(defect, RepairOrdersClient.Json));
            response.BodyWriter.Write(NewLine);
        }
        await response.BodyWriter.FlushAsync(stop);
    }
}
