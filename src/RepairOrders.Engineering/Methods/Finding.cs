using System.Globalization;

namespace RepairOrders.Engineering.Methods;

/// <summary>What a limit says of the value put to it.</summary>
public enum Severity
{
    /// <summary>Inside the limit.</summary>
    Pass,

    /// <summary>Inside, but a default was used or the margin is small: somebody should look.</summary>
    Watch,

    /// <summary>Outside the limit.</summary>
    Fail,
}

/// <summary>Whether a second engineer may sign for going past a limit.</summary>
public enum LimitKind
{
    /// <summary>Nobody may sign past it.</summary>
    Absolute,

    /// <summary>A second engineer may sign past it, with a written basis.</summary>
    ByDeviation,
}

/// <summary>One limit, the value put to it, and what follows. Limits are data: a value out of range is a finding, not an exception.</summary>
/// <param name="Code">Lower-case words joined by hyphens, stable: <c>temperature-above-limit</c>.</param>
/// <param name="Severity">Pass, watch or fail.</param>
/// <param name="Words">The finding as a sentence that names value, limit and reason.</param>
/// <param name="Value">The value tested, in <paramref name="Unit"/>; nothing where the limit is not a number.</param>
/// <param name="Limit">The limit, in <paramref name="Unit"/>; nothing where the limit is not a number.</param>
/// <param name="Unit">The unit of value and limit, as printed: <c>bar</c>, <c>mm</c>, <c>°C</c>, <c>-</c>.</param>
/// <param name="Source">Where the limit comes from.</param>
/// <param name="Kind">Whether the limit can be passed by a signed deviation.</param>
public sealed record Finding(
    string Code,
    Severity Severity,
    string Words,
    double? Value,
    double? Limit,
    string? Unit,
    Clause Source,
    LimitKind Kind = LimitKind.ByDeviation
)
{
    /// <summary>A limit that nobody may sign past has been passed.</summary>
    public bool Blocks => Severity == Severity.Fail && Kind == LimitKind.Absolute;

    /// <summary>Puts a value to an upper limit.</summary>
    /// <param name="code">The finding's code.</param>
    /// <param name="what">What is tested, as the start of a sentence.</param>
    /// <param name="value">The value in <paramref name="unit"/>.</param>
    /// <param name="limit">The limit in <paramref name="unit"/>.</param>
    /// <param name="unit">The unit as printed.</param>
    /// <param name="source">Where the limit comes from.</param>
    /// <param name="kind">Whether a signed deviation can pass it.</param>
    /// <returns>Pass or fail.</returns>
    public static Finding AtMost(
        string code,
        string what,
        double value,
        double limit,
        string unit,
        Clause source,
        LimitKind kind = LimitKind.ByDeviation
    ) => Put(code, what, value, limit, unit, source, kind, value <= limit, "at most");

    /// <summary>Puts a value to a lower limit.</summary>
    /// <param name="code">The finding's code.</param>
    /// <param name="what">What is tested, as the start of a sentence.</param>
    /// <param name="value">The value in <paramref name="unit"/>.</param>
    /// <param name="limit">The limit in <paramref name="unit"/>.</param>
    /// <param name="unit">The unit as printed.</param>
    /// <param name="source">Where the limit comes from.</param>
    /// <param name="kind">Whether a signed deviation can pass it.</param>
    /// <returns>Pass or fail.</returns>
    public static Finding AtLeast(
        string code,
        string what,
        double value,
        double limit,
        string unit,
        Clause source,
        LimitKind kind = LimitKind.ByDeviation
    ) => Put(code, what, value, limit, unit, source, kind, value >= limit, "at least");

    /// <summary>A limit without a number that is met.</summary>
    /// <param name="code">The finding's code.</param>
    /// <param name="words">The finding as a sentence.</param>
    /// <param name="source">Where the limit comes from.</param>
    /// <returns>The finding.</returns>
    public static Finding Pass(string code, string words, Clause source) =>
        new(code, Severity.Pass, words, null, null, null, source);

    /// <summary>Something that somebody should look at.</summary>
    /// <param name="code">The finding's code.</param>
    /// <param name="words">The finding as a sentence.</param>
    /// <param name="source">Where it comes from.</param>
    /// <returns>The finding.</returns>
    public static Finding Watch(string code, string words, Clause source) =>
        new(code, Severity.Watch, words, null, null, null, source);

    /// <summary>A limit without a number that is passed, and that a second engineer may sign for.</summary>
    /// <param name="code">The finding's code.</param>
    /// <param name="words">The finding as a sentence.</param>
    /// <param name="source">Where the limit comes from.</param>
    /// <returns>The finding.</returns>
    public static Finding Fail(string code, string words, Clause source) =>
        new(code, Severity.Fail, words, null, null, null, source);

    /// <summary>A limit without a number that is passed, and that nobody may sign for.</summary>
    /// <param name="code">The finding's code.</param>
    /// <param name="words">The finding as a sentence.</param>
    /// <param name="source">Where the limit comes from.</param>
    /// <returns>The finding.</returns>
    public static Finding Refuse(string code, string words, Clause source) =>
        new(code, Severity.Fail, words, null, null, null, source, LimitKind.Absolute);

    private static Finding Put(
        string code,
        string what,
        double value,
        double limit,
        string unit,
        Clause source,
        LimitKind kind,
        bool holds,
        string sense
    ) =>
        new(
            code,
            holds ? Severity.Pass : Severity.Fail,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{what} is {value:G4} {unit}; allowed is {sense} {limit:G4} {unit}."
            ),
            value,
            limit,
            unit,
            source,
            kind
        );
}
