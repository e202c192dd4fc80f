namespace RepairOrders.Contract;

/// <summary>What a limit says of the value put to it.</summary>
public enum FindingSeverity
{
    /// <summary>Inside the limit.</summary>
    Pass,

    /// <summary>Inside, but a default was used or the margin is small: somebody should look.</summary>
    Watch,

    /// <summary>Outside the limit.</summary>
    Fail,
}

/// <summary>One limit, the value put to it, and what follows.</summary>
/// <param name="Code">Lower-case words joined by hyphens, stable.</param>
/// <param name="Severity">Pass, watch or fail.</param>
/// <param name="Words">The finding as a sentence.</param>
/// <param name="Value">The value tested, in <paramref name="Unit"/>; nothing where the limit is not a number.</param>
/// <param name="Limit">The limit, in <paramref name="Unit"/>; nothing where the limit is not a number.</param>
/// <param name="Unit">The unit of value and limit, as printed.</param>
/// <param name="Source">Where the limit comes from.</param>
/// <param name="Absolute">Nobody may sign past it.</param>
public sealed record FindingView(
    string Code,
    FindingSeverity Severity,
    string Words,
    double? Value,
    double? Limit,
    string? Unit,
    string Source,
    bool Absolute
);

/// <summary>One line of a hand calculation.</summary>
/// <param name="Symbol">The symbol as the source writes it.</param>
/// <param name="Words">What it is.</param>
/// <param name="Formula">The formula in symbols; empty for a value put in.</param>
/// <param name="Substituted">The formula with the numbers put in; empty for a value put in.</param>
/// <param name="Value">The value in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit as printed; <c>-</c> for none.</param>
/// <param name="Clause">Where formula or value comes from.</param>
public sealed record WorkingStepView(
    string Symbol,
    string Words,
    string Formula,
    string Substituted,
    double Value,
    string Unit,
    string Clause
);

/// <summary>One calculation as it was made: enough to check it with a pocket calculator.</summary>
/// <param name="Code">The calculation: <c>required-wall</c>.</param>
/// <param name="Words">What it tells.</param>
/// <param name="Working">The hand calculation.</param>
/// <param name="Findings">Limits tested, defaults used.</param>
/// <param name="Cautions">What can hurt somebody who acts on it.</param>
public sealed record CalculationView(
    string Code,
    string Words,
    IReadOnlyList<WorkingStepView> Working,
    IReadOnlyList<FindingView> Findings,
    IReadOnlyList<string> Cautions
);

/// <summary>A class with the scores and the sentences that led to it.</summary>
/// <param name="Class">The class.</param>
/// <param name="Consequence">Consequence score, 1 to 5.</param>
/// <param name="Likelihood">Likelihood score, 1 to 5.</param>
/// <param name="Reasons">Why, one sentence a step.</param>
public sealed record RiskView(RiskClass Class, int Consequence, int Likelihood, IReadOnlyList<string> Reasons);
