using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Standing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Removing;

/// <summary>The inspector's entry on the bare pipe.</summary>
internal sealed class RemovalInspection : SignedRecord<InspectRemoval>
{
    private RemovalInspection() { }

    public RemovalInspection(InspectRemoval ask)
        : base(ask) { }

    public override string Kind => "removal-inspection";

    public override string Summary => $"{Asked.Found}; cause: {Words.Of(Asked.Cause)}";

    /// <summary>Whether the class asks for it and it is not there.</summary>
    public static bool IsMissing(RepairOrder order) =>
        ClassHistory.Signed(order) is not RiskClass.D && order.Last<RemovalInspection>() is null;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (Orders.Objection.NotNow(order, "The inspector's entry", Stage.Removed) is { } no)
            return no;
        if (Authority.Objection(by, order, at) is { } lapsed)
            return lapsed;
        if (!by.IsCompetent(Competence.Inspector, order.Site.Today(at)))
            return new Objection(
                "inspector-needed",
                "The entry on the bare pipe takes an inspector, with that competence in date.",
                "an inspector"
            );
        return Removal.Crew(order).Any(p => p.Id == by.Id)
            ? new Objection(
                "own-removal",
                "You are of those who took the repair off; another person inspects the bare pipe.",
                "another inspector"
            )
            : null;
    }
}
