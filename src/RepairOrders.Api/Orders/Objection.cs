using RepairOrders.Contract;

namespace RepairOrders.Api.Orders;

/// <summary>Why the procedure says no. The same objection refuses, greys out and explains.</summary>
/// <remarks>
/// The convention that lets a test find them all: an objection is always written in full, <c>new Objection("its-code", …)</c>, with
/// the code as a literal, and each code stands in one place only. A test reads the sources and demands of every code a case that
/// forces it over HTTP: the code as a literal in a file named <c>…OverHttp.cs</c>.
/// </remarks>
/// <param name="Code">Lower-case words joined by hyphens, stable.</param>
/// <param name="Sentence">What is wrong and what mends it.</param>
/// <param name="Clears">Who can clear it.</param>
internal sealed record Objection(string Code, string Sentence, string Clears)
{
    public ObjectionView View => new(Code, Sentence, Clears);

    /// <summary>The step is not reached yet or over: the order sheet leaves it out.</summary>
    public bool IsOfStage { get; init; }

    /// <summary>The order is at an end.</summary>
    public static Objection? AtAnEnd(RepairOrder order) =>
        order.Columns.Open
            ? null
            : new Objection(
                "at-an-end",
                $"The order is {Words.Of(order.Stage)}: it is at an end, and nothing of it is handed over, answered or reviewed.",
                "nobody; it is at an end"
            )
            {
                IsOfStage = true,
            };

    /// <summary>The step is not open at the order's stage.</summary>
    /// <param name="order">The order.</param>
    /// <param name="what">The step as the subject of a sentence: <c>An assessment</c>.</param>
    /// <param name="open">The stages it is open at.</param>
    public static Objection? NotNow(RepairOrder order, string what, params ReadOnlySpan<Stage> open) =>
        open.Contains(order.Stage)
            ? null
            : new Objection(
                "not-now",
                $"{what} cannot be signed while the order is {Words.Of(order.Stage)}; it can while it is {Words.List(open)}.",
                "whoever signs the step before it"
            )
            {
                IsOfStage = true,
            };
}

/// <summary>Thrown where a decision is made and caught once, at the edge.</summary>
internal sealed class ProcedureRefusal(Objection objection) : Exception(objection.Sentence)
{
    public Objection Objection { get; } = objection;
}
