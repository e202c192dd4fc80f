using RepairOrders.Api.Extending;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Revisiting;
using RepairOrders.Contract;

namespace RepairOrders.Api.Standing;

/// <summary>Whether the papers still fit the pipe, as far as the order's own records tell.</summary>
internal static class Reassessment
{
    /// <summary>When the assessment behind the design in force was made.</summary>
    public static DateTimeOffset? Settled(RepairOrder order) =>
        order.ApprovedDesign is { } design ? ExtensionRules.AssessmentOf(order, design)?.At : null;

    /// <summary>From when a re-assessment is owed and why; the moment of a second missed look is foreseen.</summary>
    public static Since<string>? Owed(RepairOrder order, Course? course)
    {
        if (order.Stage is not (Stage.InService or Stage.LineOutOfService) || Settled(order) is not { } settled)
            return null;
        var visits = order
            .InRound<Visit>()
            .Where(v => v.At > settled && v.Unsettles is not null)
            .Select(v => new Since<string>(v.At, v.Unsettles!));
        var misses = (course?.SecondMisses ?? [])
            .Where(m => m > settled)
            .Select(m => new Since<string>(m, "a second look in a row was missed"));
        return visits.Concat(misses).MinBy(s => s.From);
    }
}
