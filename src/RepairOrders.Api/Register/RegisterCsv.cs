using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Register;

/// <summary>The register as a table for a spreadsheet, written row by row as it is read.</summary>
internal static class RegisterCsv
{
    private static readonly string[] Headings =
    [
        "Number",
        "Class",
        "Class today",
        "Line",
        "Place",
        "Fluid",
        "Method",
        "Stage",
        "In service since",
        "Age (d)",
        "End date",
        "Days left",
        "Last look",
        "Next look",
        "Next thickness",
        "Extensions",
        "Permanent fix",
        "Owner",
        "Flags",
    ];

    private static readonly CsvConfiguration Rules = new(CultureInfo.InvariantCulture) { NewLine = "\r\n" };

    public static async Task Write(IAsyncEnumerable<RegisterRow> rows, Stream to, CancellationToken stop)
    {
        // With the mark at the front a spreadsheet reads the letters as they are.
        await using var text = new StreamWriter(to, new UTF8Encoding(true), leaveOpen: true);
        await using var csv = new CsvWriter(text, Rules);
        foreach (var heading in Headings)
            csv.WriteField(heading);
        await csv.NextRecordAsync();
        await foreach (var row in rows.WithCancellation(stop))
        {
            foreach (var cell in Cells(row))
                csv.WriteField(cell);
            await csv.NextRecordAsync();
        }
    }

    private static IEnumerable<string?> Cells(RegisterRow row) =>
        [
            Typed(row.Number),
            row.Class?.ToString(),
            row.ClassToday?.ToString(),
            Typed(row.Line),
            Typed(row.Place),
            Typed(row.Fluid),
            Typed(row.Method),
            Words.Of(row.Stage),
            Day(row.InServiceSince),
            Number(row.AgeDays),
            Day(row.EndDate),
            Number(row.DaysLeft),
            Day(row.LastLook),
            Day(row.NextLook),
            Day(row.NextThickness),
            Number(row.Extensions),
            Typed(row.PermanentFix),
            Typed(row.Owner),
            Typed(string.Join(" | ", row.Flags.Select(f => f.Words))),
        ];

    // A spreadsheet runs a cell that begins like a formula; what people typed is made plain text.
    internal static string? Typed(string? cell) =>
        cell is { Length: > 0 } && cell.TrimStart(' ') is ['=' or '+' or '-' or '@' or '\t' or '\r' or '\n' or '|', ..]
            ? "'" + cell
            : cell;

    private static string? Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string? Number(int? number) => number?.ToString(CultureInfo.InvariantCulture);
}
