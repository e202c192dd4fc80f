using RepairOrders.Engineering.Methods;

namespace RepairOrders.Engineering;

/// <summary>A result with its hand calculation, the limits it met, and what can hurt somebody who acts on it.</summary>
/// <typeparam name="T">The result.</typeparam>
/// <param name="Result">The result.</param>
/// <param name="Working">The hand calculation, step by step.</param>
/// <param name="Findings">Limits tested, defaults used, limits that could not be tested.</param>
/// <param name="Cautions">Cautions in the words printed on screen and paper.</param>
public sealed record Calculated<T>(
    T Result,
    IReadOnlyList<WorkingStep> Working,
    IReadOnlyList<Finding> Findings,
    IReadOnlyList<string> Cautions
);
