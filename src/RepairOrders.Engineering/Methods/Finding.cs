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
}
