using RepairOrders.Api.Consenting;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Sizing;

/// <summary>
/// What the work of the round is done by: the approved design, or the entry of the emergency list that both consents name.
/// </summary>
internal sealed record WorkPlan(
    string Method,
    IReadOnlyList<MaterialNeedView> Materials,
    IReadOnlyList<HoldPointView> HoldPoints,
    IReadOnlyList<string> Cautions,
    double SetForLoadHours,
    double FullHardnessHours,
    double CureReferenceC,
    bool IsEmergency
)
{
    /// <summary>The plan; nothing while there is neither approval nor both consents.</summary>
    public static WorkPlan? Of(RepairOrder order)
    {
        var entry = order.InRound<Consent>().LastOrDefault()?.Asked.Entry;
        var emergency =
            entry is not null
            && Planning.IsEmergency(order)
            && !Rounds.History(order).Any(h => h.Round == order.Round && h.Stage == Stage.Approved);
        if (emergency)
            return new(
                entry!.Method,
                entry.Materials,
                entry.HoldPoints,
                entry.Cautions,
                entry.SetForLoadHours,
                entry.FullHardnessHours,
                entry.CureReference.Value,
                IsEmergency: true
            );
        return order.ApprovedDesign?.Asked.Method is { } design
            ? new(
                design.Method,
                design.Materials,
                design.HoldPoints,
                design.Cautions,
                design.SetForLoadHours,
                design.FullHardnessHours,
                design.CureReferenceC,
                IsEmergency: false
            )
            : null;
    }
}
