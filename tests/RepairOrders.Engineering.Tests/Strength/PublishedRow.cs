using System.Globalization;
using System.Text.Json;
using CsvHelper;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Strength;

/// <summary>One published (or recalled, or computed) check: what to put in, and the answer as it is printed.</summary>
public sealed record PublishedRow(
    string Id,
    string Topic,
    JsonElement Inputs,
    string PressureUnit,
    string LengthUnit,
    string Expected,
    string Provenance,
    string Source
)
{
    public string Function => Inputs.GetProperty("fn").GetString()!;

    public double this[string name] => Inputs.GetProperty(name).GetDouble();

    public double[] List(string name) => [.. Inputs.GetProperty(name).EnumerateArray().Select(v => v.GetDouble())];

    public double[] Lengths(string name) => [.. List(name).Select(v => v * Millimetres)];

    public string Text(string name) => Inputs.GetProperty(name).GetString()!;

    public Pressure P(string name) => Pressure.FromMegapascals(this[name] * Megapascals);

    public Length L(string name) => Length.FromMillimeters(this[name] * Millimetres);

    public double Shown(Pressure pressure) => pressure.Megapascals / Megapascals;

    public double Shown(Length length) => length.Millimeters / Millimetres;

    /// <summary>Half a unit in the last figure the source prints.</summary>
    public double Rounding
    {
        get
        {
            var decimals = Expected.Contains('.', StringComparison.Ordinal)
                ? Expected.Length - Expected.IndexOf('.', StringComparison.Ordinal) - 1
                : 0;
            return 0.5 * Math.Pow(10, -decimals) * (1 + 1e-9);
        }
    }

    public double ExpectedNumber => double.Parse(Expected, CultureInfo.InvariantCulture);

    public override string ToString() => $"{Id} {Topic} = {Expected} [{Provenance}: {Source}]";

    private double Megapascals =>
        PressureUnit switch
        {
            "MPa" => 1,
            "kPa" => 0.001,
            "bar" => 0.1,
            "psi" => 0.006894757293168361,
            "ksi" => 6.894757293168361,
            _ => throw new InvalidDataException(PressureUnit),
        };

    private double Millimetres => LengthUnit == "in" ? 25.4 : 1;

    public static IReadOnlyList<PublishedRow> Read(string file)
    {
        using var text = new StreamReader(Path.Combine(AppContext.BaseDirectory, "Published", file));
        using var csv = new CsvReader(text, CultureInfo.InvariantCulture);
        csv.Read();
        csv.ReadHeader();
        var rows = new List<PublishedRow>();
        while (csv.Read())
        {
            string Cell(string name) => csv.GetField(name)!;
            var inputs = JsonSerializer.Deserialize<JsonElement>(Cell("inputs"));
            rows.Add(
                new(
                    Cell("id"),
                    Cell("topic"),
                    inputs,
                    Cell("pressure_unit"),
                    Cell("length_unit"),
                    Cell("expected"),
                    Cell("provenance"),
                    Cell("source")
                )
            );
        }
        return rows;
    }
}
