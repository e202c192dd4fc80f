using RepairOrders.Contract;

namespace RepairOrders.Api.Orders;

/// <summary>Why the procedure says no. The same objection refuses, greys out and explains.</summary>
internal sealed record Objection(string Code, string Sentence, string Clears)
{
    public ObjectionView View => new(Code, Sentence, Clears);
}

/// <summary>Thrown where a decision is made and caught once, at the edge.</summary>
internal sealed class ProcedureRefusal(Objection objection) : Exception(objection.Sentence)
{
    public Objection Objection { get; } = objection;
}
