using RepairOrders.Contract;

namespace RepairOrders.Api.Orders;

/// <summary>
/// What the lists search and sort by: a summary of the records, written with them and rebuilt from them by a test. Dates only;
/// what depends on the clock is computed on each read.
/// </summary>
internal sealed record OrderColumns
{
    public Stage Stage { get; init; }
    public string Place { get; init; } = "";
    public string Fluid { get; init; } = "";

    /// <summary>When a leak was first seen; nothing for a thin spot.</summary>
    public DateTimeOffset? LeakedAt { get; init; }

    /// <summary>Class, method, end date, owner and permanent fix of the design that stands, or else of the one that awaits signatures.</summary>
    public RiskClass? SignedClass { get; init; }
    public string? Method { get; init; }
    public DateOnly? EndDate { get; init; }
    public Guid? OwnerId { get; init; }
    public string? Owner { get; init; }
    public string? PermanentFix { get; init; }
    public DateOnly? PermanentFixOn { get; init; }

    public static OrderColumns From(RepairOrder order)
    {
        var request = order.Request.Asked;
        var design = (order.ApprovedDesign ?? order.PendingDesign)?.Asked;
        return new OrderColumns
        {
            Stage = Stages.Of(order),
            Place = request.Place,
            Fluid = request.Fluid,
            LeakedAt = request.LeakState >= LeakState.Weep ? order.RaisedAt : null,
            SignedClass = Classes.Of(order),
            Method = design?.Method.Name ?? order.Last<Choosing.Choice>()?.Name,
            EndDate = Sizing.EndDates.Of(order) ?? design?.EndDate.On,
            OwnerId = design?.Ask.Owner,
            Owner = design?.OwnerName,
            PermanentFix = design?.Ask.PermanentFix?.Reference,
            PermanentFixOn = design?.Ask.PermanentFix?.On,
        };
    }
}
