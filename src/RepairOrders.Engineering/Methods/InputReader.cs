using System.Globalization;

namespace RepairOrders.Engineering.Methods;

/// <summary>
/// Reads a method's inputs: checks each against its range, notes it in the working, and makes a finding of every default that
/// stands in for a measurement. A default that is a choice of design passes; one that stands for a fact is to be looked at.
/// </summary>
internal sealed class InputReader
{
    private readonly Dictionary<string, Input> inputs;
    private readonly IReadOnlyDictionary<string, double> values;
    private readonly Working working;
    private readonly List<Finding> findings;
    private readonly Dictionary<string, double> read = [];

    public InputReader(IReadOnlyList<Input> inputs, Readings readings, Working working, List<Finding> findings)
    {
        this.inputs = inputs.ToDictionary(i => i.Code);
        values = readings.Values;
        this.working = working;
        this.findings = findings;
        RefuseUnknown();
    }

    /// <summary>The input's value, noted where it is first read; a default is noted as a finding.</summary>
    public double this[string code] => read.TryGetValue(code, out var value) ? value : read[code] = Read(inputs[code]);

    /// <summary>A whole number, or the index of a choice.</summary>
    public int Count(string code) =>
        this[code] is var value && value == Math.Floor(value)
            ? (int)value
            : throw new ImpossibleInputException(
                code,
                value.ToString("G6", CultureInfo.InvariantCulture),
                "a whole number"
            );

    /// <summary>An input that may be left out, for which 0 stands.</summary>
    public double? Optional(string code) => values.TryGetValue(code, out var given) && given != 0 ? this[code] : null;

    private double Read(Input input)
    {
        var given = values.TryGetValue(input.Code, out var value);
        if (!given)
        {
            value = input.Default ?? throw new ImpossibleInputException(input.Code, "missing", Allowed(input));
            findings.Add(DefaultUsed(input, value));
        }
        Check(input, value);
        return input.Choices is null
            ? working.Given(input.Symbol, input.Words, value, input.Unit, given ? Entered : input.Source)
            : value;
    }

    private static Clause Entered { get; } = new("entered for this order", "", Provenance.Entered);

    private static Finding DefaultUsed(Input input, double value) =>
        new(
            $"default-{Hyphens(input.Code)}",
            input.Source == Sources.Chosen ? Severity.Pass : Severity.Watch,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{input.Words}: nothing was given, {Shown(input, value)} is taken ({input.Source})."
            ),
            value,
            null,
            input.Unit,
            input.Source
        );

    private static string Shown(Input input, double value) =>
        input.Choices is { } choices ? $"“{choices[(int)value]}”"
        : input.Unit == "-" ? value.ToString("G6", CultureInfo.InvariantCulture)
        : $"{value.ToString("G6", CultureInfo.InvariantCulture)} {input.Unit}";

    private static string Hyphens(string code) =>
        string.Concat(code.Select(c => char.IsUpper(c) ? $"-{char.ToLowerInvariant(c)}" : c.ToString()));

    private static void Check(Input input, double value)
    {
        if (!double.IsFinite(value) || value < input.Minimum || value > input.Maximum)
        {
            throw new ImpossibleInputException(
                input.Code,
                value.ToString("G6", CultureInfo.InvariantCulture),
                Allowed(input)
            );
        }
    }

    private static string Allowed(Input input) =>
        string.Create(CultureInfo.InvariantCulture, $"{input.Minimum:G6} to {input.Maximum:G6} {input.Unit}");

    private void RefuseUnknown()
    {
        if (values.Keys.FirstOrDefault(k => !inputs.ContainsKey(k)) is { } unknown)
        {
            throw new ImpossibleInputException(unknown, "given", $"one of {string.Join(", ", inputs.Keys)}");
        }
    }
}
