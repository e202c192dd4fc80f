using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Orders;

/// <summary>What the rules of an order must know of the world round it. Read with the order, never stored with it.</summary>
/// <param name="LeaksOnLine">When other orders on the line first saw a leak.</param>
/// <param name="LiveOnSection">Other repairs in service on the isolatable section.</param>
/// <param name="Supervisors">Supervisors of the site who can sign.</param>
/// <param name="Shutdowns">Shutdowns of the line's area.</param>
internal sealed record Surroundings(
    IReadOnlyList<DateTimeOffset> LeaksOnLine,
    int LiveOnSection,
    IReadOnlyList<Guid> Supervisors,
    IReadOnlyList<SurroundingShutdown> Shutdowns
)
{
    public static readonly Surroundings None = new([], 0, [], []);

    /// <summary>Earlier leaks on the line that still count: 24 months back from when the order was raised.</summary>
    public int EarlierLeaks(RepairOrder order) =>
        LeaksOnLine.Count(l => l < order.RaisedAt && l >= order.RaisedAt.AddMonths(-24));

    public static async Task<Surroundings> Of(RepairOrder order, RepairStore store, CancellationToken stop)
    {
        var site = order.Site.ShortName;
        var supervisors = await store
            .Users.Where(p => !p.Disabled && p.Roles.Contains(Role.Supervisor) && p.Sites.Contains(site))
            .Select(p => p.Id)
            .ToListAsync(stop);
        if (order.Line is not { } line)
            return None with { Supervisors = supervisors };
        var leaks = await store
            .Orders.Where(o => o.LineId == line.Id && o.Id != order.Id && o.Columns.LeakedAt != null)
            .Select(o => o.Columns.LeakedAt!.Value)
            .ToListAsync(stop);
        var live = await store.Orders.CountAsync(
            o =>
                o.SiteId == order.SiteId
                && o.Id != order.Id
                && o.Line!.Section == line.Section
                && o.Columns.Stage == Stage.InService,
            stop
        );
        var shutdowns = await store
            .Shutdowns.Where(s => s.SiteId == order.SiteId && (s.Area == null || s.Area == line.Area))
            .Select(s => new SurroundingShutdown(s.Id, s.Name, s.Start))
            .ToListAsync(stop);
        return new(leaks, live, supervisors, shutdowns);
    }
}

/// <summary>A shutdown of the line's area.</summary>
internal sealed record SurroundingShutdown(Guid Id, string Name, DateOnly StartsOn);
