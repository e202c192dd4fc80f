namespace RepairOrders.Engineering.Methods;

/// <summary>One thing a method must be told before it can size. The sizing form and the API's validation are drawn from it.</summary>
/// <param name="Code">The name on the wire, camelCase with the unit at its end: <c>puttyThicknessMm</c>.</param>
/// <param name="Symbol">The symbol in the working.</param>
/// <param name="Words">What it is, as a label.</param>
/// <param name="Unit">The unit as printed; <c>-</c> for none.</param>
/// <param name="Minimum">Least value allowed (inclusive).</param>
/// <param name="Maximum">Greatest value allowed (inclusive).</param>
/// <param name="Default">The value used when none is given; nothing where the input must be given.</param>
/// <param name="Source">Where range and default come from.</param>
/// <param name="Choices">For an input that is a choice: the words, whose index is the value. Nothing for a number.</param>
public sealed record Input(
    string Code,
    string Symbol,
    string Words,
    string Unit,
    double Minimum,
    double Maximum,
    double? Default,
    Clause Source,
    IReadOnlyList<string>? Choices = null
);
