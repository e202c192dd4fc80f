using System.Globalization;
using System.Text.Json;
using CsvHelper;
using CsvHelper.Configuration;

namespace RepairOrders.Engineering.Tests;

/// <summary>Reads a table of <c>Published/</c>; lines that start with # name its sources.</summary>
internal static class PublishedTable
{
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Rows(string file)
    {
        var settings = new CsvConfiguration(CultureInfo.InvariantCulture) { AllowComments = true };
        using var csv = new CsvReader(
            new StreamReader(Path.Combine(AppContext.BaseDirectory, "Published", file)),
            settings
        );
        csv.Read();
        csv.ReadHeader();
        var rows = new List<IReadOnlyDictionary<string, string>>();
        while (csv.Read())
        {
            rows.Add(csv.HeaderRecord!.ToDictionary(name => name, name => csv.GetField(name) ?? ""));
        }

        return rows;
    }

    /// <summary>The row of a check table with this id.</summary>
    public static PublishedCheck Check(string file, string id) => new(Rows(file).Single(r => r["id"] == id));

    public static double Number(this IReadOnlyDictionary<string, string> row, string column) =>
        double.Parse(row[column], CultureInfo.InvariantCulture);
}

/// <summary>One check case: inputs, the expected value, and the tolerance its source was printed with.</summary>
internal sealed class PublishedCheck(IReadOnlyDictionary<string, string> row)
{
    private readonly JsonElement inputs = row.TryGetValue("inputs", out var json)
        ? JsonDocument.Parse(json).RootElement
        : default;

    public double Expected => row.Number("expected");

    public double Number(string input) => inputs.GetProperty(input).GetDouble();

    public double Number(string input, double fallback) =>
        inputs.TryGetProperty(input, out var value) ? value.GetDouble() : fallback;

    public double[] Numbers(string input) => [.. inputs.GetProperty(input).EnumerateArray().Select(v => v.GetDouble())];

    public void ShouldBeMetBy(double computed)
    {
        var parts = row["tolerance"].Split(':');
        var size = double.Parse(parts[1], CultureInfo.InvariantCulture);
        computed.ShouldBe(
            Expected,
            parts[0] == "rel" ? size * Math.Abs(Expected) : size,
            $"{row["id"]}: {row["source"]}"
        );
    }
}
