using System.Collections;
using System.Globalization;

namespace RepairOrders.Engineering.Methods;

/// <summary>One line of a hand calculation.</summary>
/// <param name="Symbol">The symbol as the source writes it.</param>
/// <param name="Words">What it is, in words.</param>
/// <param name="Formula">The formula in symbols; empty for a value put in.</param>
/// <param name="Substituted">The formula with the numbers put in; empty for a value put in.</param>
/// <param name="Value">The value in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit as printed; <c>-</c> for none.</param>
/// <param name="Clause">Where formula or value comes from.</param>
public sealed record WorkingStep(
    string Symbol,
    string Words,
    string Formula,
    string Substituted,
    double Value,
    string Unit,
    Clause Clause
);

/// <summary>The hand calculation of a result, step by step: enough to check it with a pocket calculator.</summary>
public sealed class Working : IReadOnlyList<WorkingStep>
{
    private readonly List<WorkingStep> steps = [];

    /// <inheritdoc/>
    public int Count => steps.Count;

    /// <inheritdoc/>
    public WorkingStep this[int index] => steps[index];

    /// <summary>Notes a value that was put in.</summary>
    /// <param name="symbol">The symbol.</param>
    /// <param name="words">What it is.</param>
    /// <param name="value">The value in <paramref name="unit"/>.</param>
    /// <param name="unit">The unit as printed.</param>
    /// <param name="clause">Where it comes from.</param>
    /// <returns>The value, so that it can be noted where it is first used.</returns>
    public double Given(string symbol, string words, double value, string unit, Clause clause)
    {
        steps.Add(new(symbol, words, "", "", value, unit, clause));
        return value;
    }

    /// <summary>Notes a computed value.</summary>
    /// <param name="symbol">The symbol.</param>
    /// <param name="words">What it is.</param>
    /// <param name="formula">The formula in symbols.</param>
    /// <param name="substituted">The formula with numbers; an interpolated string, rendered in the invariant culture.</param>
    /// <param name="value">The value in <paramref name="unit"/>.</param>
    /// <param name="unit">The unit as printed.</param>
    /// <param name="clause">Where the formula comes from.</param>
    /// <returns>The value.</returns>
    public double Step(
        string symbol,
        string words,
        string formula,
        FormattableString substituted,
        double value,
        string unit,
        Clause clause
    )
    {
        ArgumentNullException.ThrowIfNull(substituted);
        steps.Add(new(symbol, words, formula, Numbers(substituted), value, unit, clause));
        return value;
    }

    /// <summary>Adds the working of a part.</summary>
    /// <param name="part">The part's working.</param>
    public void Include(IEnumerable<WorkingStep> part) => steps.AddRange(part);

    /// <inheritdoc/>
    public IEnumerator<WorkingStep> GetEnumerator() => steps.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    // Five figures, like the hand calculation they stand for; an explicit format in the string wins.
    private static string Numbers(FormattableString text)
    {
        var arguments = text.GetArguments().Select(a => a is double d ? (object)new FiveFigures(d) : a).ToArray();
        return string.Format(CultureInfo.InvariantCulture, text.Format, arguments);
    }

    private readonly record struct FiveFigures(double Value) : IFormattable
    {
        public string ToString(string? format, IFormatProvider? formatProvider) =>
            Value.ToString(string.IsNullOrEmpty(format) ? "G5" : format, CultureInfo.InvariantCulture);
    }
}
