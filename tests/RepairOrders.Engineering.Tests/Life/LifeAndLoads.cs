using System.Globalization;
using System.Text.Json;
using CsvHelper;

namespace RepairOrders.Engineering.Tests.Life;

// One row of Published/life-and-loads.csv: what a source prints (or what first principles give), and to how many decimals.
// The tolerance is half a unit of the last decimal, nothing more.
internal sealed record LifeAndLoads(
    string Id,
    string Inputs,
    string Expected,
    int Decimals,
    string Source,
    string Provenance
)
{
    private static readonly Dictionary<string, LifeAndLoads> Rows = Read();

    public static LifeAndLoads Row(string id) => Rows[id];

    public static TheoryData<string> Ids(params string[] functions) =>
        [.. Rows.Values.Where(r => functions.Contains(r.Text("fn"))).Select(r => r.Id)];

    public static IEnumerable<string> Functions => Rows.Values.Select(r => r.Text("fn")).Distinct();

    public string Function => Text("fn");

    public double this[string name] => JsonDocument.Parse(Inputs).RootElement.GetProperty(name).GetDouble();

    public double Or(string name, double otherwise) =>
        JsonDocument.Parse(Inputs).RootElement.TryGetProperty(name, out var value) ? value.GetDouble() : otherwise;

    public string Text(string name) => JsonDocument.Parse(Inputs).RootElement.GetProperty(name).GetString()!;

    public void ShouldBe(double computed) =>
        computed.ShouldBe(
            double.Parse(Expected, CultureInfo.InvariantCulture),
            0.5 * Math.Pow(10, -Decimals),
            $"{Id}, {Source} ({Provenance})"
        );

    private static Dictionary<string, LifeAndLoads> Read()
    {
        using var file = new StreamReader(Path.Combine(AppContext.BaseDirectory, "Published", "life-and-loads.csv"));
        using var csv = new CsvReader(file, CultureInfo.InvariantCulture);
        csv.Read();
        csv.ReadHeader();
        var rows = new Dictionary<string, LifeAndLoads>();
        while (csv.Read())
        {
            rows.Add(
                csv["id"]!,
                new(
                    csv["id"]!,
                    csv["inputs"]!,
                    csv["expected"]!,
                    csv.GetField<int>("decimals"),
                    csv["source"]!,
                    csv["provenance"]!
                )
            );
        }
        return rows;
    }
}
