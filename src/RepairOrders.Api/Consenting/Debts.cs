using RepairOrders.Api.Approving;
using RepairOrders.Api.Assessing;
using RepairOrders.Api.Choosing;
using RepairOrders.Api.Figures;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Sizing;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Risk;

namespace RepairOrders.Api.Consenting;

/// <summary>The papers an emergency repair owes, and by when. The clock runs from its in-service start.</summary>
internal static class Debts
{
    /// <summary>What is owed now; nothing for a repair that owes nothing or is not in service yet.</summary>
    public static DebtView? Of(RepairOrder order, DateTimeOffset at)
    {
        if (DueAt(order) is not { } due)
            return null;
        string[] owed = [.. Owed(order)];
        return owed.Length == 0 ? null : new(owed, due, at > due, Granted(order));
    }

    /// <summary>The end of the clock, while the round rests on consents and is in service.</summary>
    public static DateTimeOffset? DueAt(RepairOrder order) =>
        Planning.IsEmergency(order) && Rounds.InServiceSince(order) is { } since
            ? since + Clock(order) * (Granted(order) ? 2 : 1)
            : null;

    public static bool Granted(RepairOrder order) => order.InRound<DebtPeriod>().Any();

    private static TimeSpan Clock(RepairOrder order) =>
        Classes.Of(order) is { } known ? DecidedUnder.Figures(order).Of(known).EmergencyClock : TimeSpan.FromHours(24);

    private static IEnumerable<string> Owed(RepairOrder order)
    {
        if (order.Last<Assessment>() is null)
            yield return "assessment";
        if (order.Last<Choice>() is null)
            yield return "choice of method";
        if (order.Last<Design>() is null)
            yield return "design";
        if (order.ApprovedDesign is null)
            foreach (var place in Missing(order))
                yield return place;
        foreach (var consent in order.InRound<Consent>().Where(c => !Consents.IsConfirmed(order, c)))
            yield return $"confirmation by {consent.Asked.GivenByName}";
    }

    private static IEnumerable<string> Missing(RepairOrder order) =>
        order.PendingDesign is { } design
            ? Signatures.Missing(order, design).Select(c => $"approval as {Words.Of(c)}")
            : ["approval"];
}
