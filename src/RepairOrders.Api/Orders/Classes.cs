using RepairOrders.Api.Assessing;
using RepairOrders.Api.Consenting;
using RepairOrders.Contract;

namespace RepairOrders.Api.Orders;

/// <summary>The class a repair is decided under.</summary>
internal static class Classes
{
    /// <summary>
    /// That of the design that stands; else of the one that awaits signatures; else as assessed; on the emergency path until then
    /// that of the consequence with likelihood 5. Nothing before anybody has judged.
    /// </summary>
    public static RiskClass? Of(RepairOrder order) => Risk(order)?.Class;

    public static RiskView? Risk(RepairOrder order) =>
        order.ApprovedDesign?.Asked.Risk
        ?? order.PendingDesign?.Asked.Risk
        ?? order.Last<Assessment>()?.Asked.Judgement.Risk
        ?? order.InRound<Consent>().MinBy(c => c.Asked.Risk.Class)?.Asked.Risk;
}
