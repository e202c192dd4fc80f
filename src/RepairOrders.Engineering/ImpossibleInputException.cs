namespace RepairOrders.Engineering;

/// <summary>
/// A value no pipe can have: not finite, negative, or outside what the field allows. A value that is possible but outside a
/// limit is a finding instead.
/// </summary>
public sealed class ImpossibleInputException : ArgumentException
{
    /// <summary>Names the field, the value and what is allowed.</summary>
    /// <param name="field">The field as it stands on the wire, camelCase with the unit: <c>wallThicknessMm</c>.</param>
    /// <param name="value">The value as given, in words.</param>
    /// <param name="allowed">What is allowed, as the end of a sentence: <c>more than 0 and less than half the outside diameter</c>.</param>
    public ImpossibleInputException(string field, string value, string allowed)
        : base($"{field} is {value}; allowed is {allowed}.")
    {
        Field = field;
        Value = value;
        Allowed = allowed;
    }

    /// <summary>The field as it stands on the wire.</summary>
    public string Field { get; }

    /// <summary>The value as given.</summary>
    public string Value { get; }

    /// <summary>What is allowed.</summary>
    public string Allowed { get; }
}
