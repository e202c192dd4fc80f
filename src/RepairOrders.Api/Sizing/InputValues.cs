using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;

namespace RepairOrders.Api.Sizing;

/// <summary>Reads what was typed for a method's inputs, each in its own unit.</summary>
internal static class InputValues
{
    public static IReadOnlyDictionary<string, double> Read(
        IReadOnlyList<Input> inputs,
        IReadOnlyDictionary<string, InputValue> values
    )
    {
        Dictionary<string, double> read = [];
        List<(string Field, string Sentence)> problems = [];
        foreach (var (code, typed) in values)
            if (inputs.FirstOrDefault(i => i.Code == code) is not { } input)
                problems.Add(
                    (
                        $"values.{code}",
                        $"values.{code} is no input of this method; allowed is one of {string.Join(", ", inputs.Select(i => i.Code))}."
                    )
                );
            else if (Value(input, typed.Text) is { } value && value >= input.Minimum && value <= input.Maximum)
                read[code] = value;
            else
                problems.Add(($"values.{code}", $"values.{code} is \"{typed.Text}\"; {Allowed(input)}."));
        MalformedAsk.If(problems);
        return read;
    }

    private static double? Value(Input input, string text)
    {
        var choice = input.Choices is null ? -1 : input.Choices.ToList().IndexOf(text.Trim());
        if (choice >= 0)
            return choice;
        return Measure.TryRead(text, input.Unit, out var measure) ? measure!.Value : null;
    }

    private static string Allowed(Input input) =>
        input.Choices is { } choices
            ? $"allowed is one of {string.Join(", ", choices)}"
            : FormattableString.Invariant($"allowed is {input.Minimum:G6} to {input.Maximum:G6} {input.Unit}");
}
