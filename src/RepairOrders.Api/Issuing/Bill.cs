using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Issuing;

/// <summary>How much of the bill is issued.</summary>
internal static class Bill
{
    // A bill's quantity was rounded for reading; what differs by less is no shortage.
    private const double Rounding = 1e-6;

    /// <summary>How much of a line is issued and not taken back, in the bill's unit.</summary>
    public static double Covered(RepairOrder order, WorkPlan plan, int line) =>
        order
            .InRound<MaterialIssue>()
            .Where(i => i.Asked.Plan == plan.Id)
            .SelectMany(i => i.Asked.Lines)
            .Where(l => l.Line == line)
            .Sum(l => l.Covers)
        - order
            .InRound<MaterialReturn>()
            .Where(r => r.Asked.Plan == plan.Id)
            .SelectMany(r => r.Asked.Lines)
            .Where(l => l.Line == line)
            .Sum(l => l.Uncovers);

    /// <summary>What of a line is still to be issued.</summary>
    public static double Open(RepairOrder order, WorkPlan plan, int line)
    {
        var open = plan.Bill[line - 1].Quantity - Covered(order, plan, line);
        return open > Rounding * Math.Max(1, plan.Bill[line - 1].Quantity) ? open : 0;
    }

    /// <summary>Every line is covered; a bill with nothing to draw is from the start.</summary>
    public static bool Complete(RepairOrder order, WorkPlan plan, Func<int, double>? alsoCovers = null) =>
        Enumerable
            .Range(1, plan.Bill.Count)
            .All(line => Open(order, plan, line) <= (alsoCovers?.Invoke(line) ?? 0) + Rounding);

    /// <summary>A quantity in another unit; nothing where the two do not compare.</summary>
    public static double? Convert(double quantity, string from, string to) =>
        Units.TryConvert(quantity, from, to, out var converted) ? converted : null;
}
