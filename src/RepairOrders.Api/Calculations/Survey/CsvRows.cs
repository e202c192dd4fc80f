using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Calculations.Survey;

/// <summary>
/// A row of CSV, its columns named as the fields of the JSON form; a profile is two columns, <c>positionsMm</c> and
/// <c>depthsMm</c>, of numbers between blanks.
/// </summary>
internal sealed class CsvRows(int number, IReadOnlyDictionary<string, string> cells) : ISurveyRow
{
    private static readonly string[] Needed =
    [
        "outsideDiameterMm",
        "wallThicknessMm",
        "metal",
        "allowableStressMpa",
        "referenceWallMm",
        "depthMm",
        "axialLengthMm",
        "circumferentialLengthMm",
        "side",
        "maopBar",
        "temperatureC",
    ];

    private static readonly string[] Columns =
    [
        .. Needed,
        "yieldStrengthMpa",
        "tensileStrengthMpa",
        "qualityFactor",
        "safetyFactor",
        "usageFactor",
        "positionsMm",
        "depthsMm",
        "futureLossMm",
        "distanceToDiscontinuityMm",
        "cyclic",
        "weldFactor",
    ];

    private const int LongestField = 200_000;

    private static readonly CsvConfiguration Form = new(CultureInfo.InvariantCulture)
    {
        MaxFieldSize = LongestField,
        BadDataFound = null,
        MissingFieldFound = null,
        TrimOptions = TrimOptions.Trim,
    };

    public int Number => number;

    public static async IAsyncEnumerable<ISurveyRow> Read(Stream body, [EnumeratorCancellation] CancellationToken stop)
    {
        using var text = new StreamReader(body, leaveOpen: true);
        using var csv = new CsvReader(text, Form);
        var heading = await Heading(csv);
        MalformedAsk.If(Problems(heading));
        var number = 0;
        while (true)
        {
            stop.ThrowIfCancellationRequested();
            var (more, fault) = await Next(csv, heading, number + 1);
            if (fault is not null)
                yield return fault;
            if (!more)
                yield break;
            if (csv.Parser.Count > heading.Length)
            {
                yield return new UnreadableRow(
                    ++number,
                    "row",
                    $"Row {number} has {csv.Parser.Count} cells; allowed are {heading.Length}, as many as the heading names."
                );
                continue;
            }
            var cells = new Dictionary<string, string>(heading.Length, StringComparer.Ordinal);
            for (var i = 0; i < heading.Length; i++)
                if (csv.GetField(i) is { Length: > 0 } cell)
                    cells[heading[i]] = cell;
            yield return new CsvRows(++number, cells);
        }
    }

    private static async Task<string[]> Heading(CsvReader csv)
    {
        try
        {
            return await csv.ReadAsync() && csv.ReadHeader()
                ? csv.HeaderRecord!
                : throw new MalformedAsk("body", "The survey has no heading; its first row names the columns.");
        }
        catch (MaxFieldSizeException)
        {
            throw new MalformedAsk(
                "body",
                $"The heading has a cell longer than {LongestField} characters; allowed are the names of the columns."
            );
        }
    }

    // A field without end is mostly a quotation mark that is never closed: what follows cannot be told from it.
    private static async Task<(bool More, UnreadableRow? Fault)> Next(CsvReader csv, string[] heading, int number)
    {
        try
        {
            return (await csv.ReadAsync(), null);
        }
        catch (MaxFieldSizeException)
        {
            var column = heading[Math.Min(csv.Parser.Count, heading.Length - 1)];
            return (
                false,
                new UnreadableRow(
                    number,
                    column,
                    $"Row {number}: {column} is longer than {LongestField} characters; allowed are up to {LongestField}. Nothing after it was read."
                )
            );
        }
    }

    private static IEnumerable<(string, string)> Problems(string[] heading)
    {
        foreach (var column in heading.Where(c => !Columns.Contains(c)))
            yield return (column, $"{column} is no column of a survey; allowed are {string.Join(", ", Columns)}.");
        foreach (var column in Needed.Except(heading))
            yield return (column, $"{column} is missing from the heading.");
        foreach (var column in heading.GroupBy(c => c).Where(g => g.Count() > 1))
            yield return (column.Key, $"{column.Key} is given twice.");
    }

    public ValueTask<CalculateRemainingStrength> Ask() =>
        ValueTask.FromResult(
            new CalculateRemainingStrength(
                new PipeToReckon(
                    Given("outsideDiameterMm"),
                    Given("wallThicknessMm"),
                    Choice<MetalFamily>("metal"),
                    Given("allowableStressMpa"),
                    Maybe("yieldStrengthMpa"),
                    Maybe("tensileStrengthMpa"),
                    Maybe("qualityFactor")
                ),
                Given("referenceWallMm"),
                Given("depthMm"),
                Given("axialLengthMm"),
                Given("circumferentialLengthMm"),
                Choice<DefectSide>("side"),
                Given("maopBar"),
                Given("temperatureC"),
                Maybe("safetyFactor"),
                Maybe("usageFactor"),
                Profile(),
                Plant()
            )
        );

    public string? Value(string field) => cells.GetValueOrDefault(field[(field.LastIndexOf('.') + 1)..]);

    private PlantToReckon? Plant() =>
        Maybe("futureLossMm") is { } loss
            ? new(
                loss,
                Maybe("distanceToDiscontinuityMm"),
                cells.GetValueOrDefault("cyclic") switch
                {
                    null or "false" => false,
                    "true" => true,
                    var other => throw new BadRow("cyclic", $"cyclic is \"{other}\"; allowed is true or false."),
                },
                Maybe("weldFactor") ?? 1
            )
            : null;

    private List<ProfilePointView>? Profile()
    {
        var (x, d) = (Numbers("positionsMm"), Numbers("depthsMm"));
        if (x is null && d is null)
            return null;
        if (x?.Count != d?.Count)
            throw new BadRow(
                "depthsMm",
                $"depthsMm has {d?.Count ?? 0} numbers; allowed are as many as positionsMm has, {x?.Count ?? 0}."
            );
        return [.. x!.Zip(d!, (at, depth) => new ProfilePointView(at, depth))];
    }

    private List<double>? Numbers(string column) =>
        cells.TryGetValue(column, out var cell)
            ? [.. cell.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(n => Parsed(column, n))]
            : null;

    private double Given(string column) => Maybe(column) ?? throw new BadRow(column, $"{column} is missing.");

    private double? Maybe(string column) => cells.TryGetValue(column, out var cell) ? Parsed(column, cell) : null;

    private static double Parsed(string column, string cell) =>
        double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
        && double.IsFinite(number)
            ? number
            : throw new BadRow(column, $"{column} is \"{Short(cell)}\"; allowed is a number such as 7.11.");

    private T Choice<T>(string column)
        where T : struct, Enum
    {
        var cell = cells.GetValueOrDefault(column) ?? throw new BadRow(column, $"{column} is missing.");
        return Enum.GetValues<T>().Where(v => Wired(v) == cell).Cast<T?>().FirstOrDefault()
            ?? throw new BadRow(
                column,
                $"{column} is \"{Short(cell)}\"; allowed is one of {string.Join(", ", Enum.GetValues<T>().Select(Wired))}."
            );
    }

    private static string Wired<T>(T choice)
        where T : struct, Enum => System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(choice.ToString());

    private static string Short(string text) => text.Length > 60 ? text[..60] + "…" : text;
}

/// <summary>Answers as CSV, a block at a time: the response takes no synchronous writes.</summary>
internal sealed class CsvAnswers(HttpResponse response) : ISurveyWriter
{
    private bool headed;

    public async Task Write(IReadOnlyList<SurveyedDefect> defects, CancellationToken stop)
    {
        using var block = new MemoryStream();
        await using (var text = new StreamWriter(block, new UTF8Encoding(false), leaveOpen: true))
        await using (var csv = new CsvWriter(text, CultureInfo.InvariantCulture, leaveOpen: true))
        {
            if (!headed)
                Row(
                    csv,
                    "row",
                    "governs",
                    "safePressureBar",
                    "estimatedRepairFactor",
                    "originalBar",
                    "modifiedBar",
                    "effectiveBar",
                    "corrodedBar",
                    "thinAreaBar",
                    "effectiveLengthMm",
                    "problemField",
                    "problemValue",
                    "problem"
                );
            headed = true;
            foreach (var defect in defects)
                Row(csv, defect);
        }
        await response.Body.WriteAsync(block.GetBuffer().AsMemory(0, (int)block.Length), stop);
        await response.Body.FlushAsync(stop);
    }

    private static void Row(CsvWriter csv, SurveyedDefect d) =>
        Row(
            csv,
            d.Row,
            d.Governs,
            d.SafePressureBar,
            d.EstimatedRepairFactor,
            d.OriginalBar,
            d.ModifiedBar,
            d.EffectiveBar,
            d.CorrodedBar,
            d.ThinAreaBar,
            d.EffectiveLengthMm,
            d.Problem?.Field,
            d.Problem?.Value,
            d.Problem?.Sentence
        );

    private static void Row(CsvWriter csv, params ReadOnlySpan<object?> cells)
    {
        foreach (var cell in cells)
            csv.WriteField(Convert.ToString(cell, CultureInfo.InvariantCulture));
        csv.NextRecord();
    }
}
