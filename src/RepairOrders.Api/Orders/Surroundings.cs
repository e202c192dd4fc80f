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

    public static async Task<Surroundings> Of(RepairOrder order, RepairStore store, CancellationToken stop) =>
        (await Of([order], store, stop))[order.Id];

    /// <summary>Reads them for many orders in four queries.</summary>
    public static async Task<Dictionary<Guid, Surroundings>> Of(
        IReadOnlyList<RepairOrder> orders,
        RepairStore store,
        CancellationToken stop
    )
    {
        Guid[] sites = [.. orders.Select(o => o.SiteId).Distinct()];
        var supervisors = await SupervisorsOf(store, orders, stop);
        var leaks = await LeaksOf(store, orders, stop);
        var live = await LiveOf(store, orders, sites, stop);
        var shutdowns = await store.Shutdowns.AsNoTracking().Where(s => sites.Contains(s.SiteId)).ToListAsync(stop);
        return orders.ToDictionary(
            o => o.Id,
            o => new Surroundings(
                [.. leaks.Where(l => l.Line == o.LineId && l.Order != o.Id).Select(l => l.At)],
                live.Count(l => l.Site == o.SiteId && l.Section == Section(o) && l.Order != o.Id),
                [.. supervisors.Where(s => s.Sites.Contains(o.Site.ShortName)).Select(s => s.Id)],
                [
                    .. shutdowns
                        .Where(s => o.Line is { } line && s.SiteId == o.SiteId && (s.Area ?? line.Area) == line.Area)
                        .Select(s => new SurroundingShutdown(s.Id, s.Name, s.Start)),
                ]
            )
        );
    }

    private static async Task<List<(Guid Id, IReadOnlyList<string> Sites)>> SupervisorsOf(
        RepairStore store,
        IReadOnlyList<RepairOrder> orders,
        CancellationToken stop
    )
    {
        string[] sites = [.. orders.Select(o => o.Site.ShortName).Distinct()];
        var people = await store
            .Users.AsNoTracking()
            .Where(p => !p.Disabled && p.Roles.Contains(Role.Supervisor) && p.Sites.Any(s => sites.Contains(s)))
            .Select(p => new { p.Id, p.Sites })
            .ToListAsync(stop);
        return [.. people.Select(p => (p.Id, (IReadOnlyList<string>)p.Sites))];
    }

    private static async Task<List<(Guid Order, Guid Line, DateTimeOffset At)>> LeaksOf(
        RepairStore store,
        IReadOnlyList<RepairOrder> orders,
        CancellationToken stop
    )
    {
        Guid[] lines = [.. orders.Select(o => o.LineId).OfType<Guid>().Distinct()];
        if (lines.Length == 0)
            return [];
        var leaks = await store
            .Orders.AsNoTracking()
            .Where(o => o.LineId != null && lines.Contains(o.LineId.Value) && o.Columns.LeakedAt != null)
            .Select(o => new
            {
                o.Id,
                Line = o.LineId!.Value,
                At = o.Columns.LeakedAt!.Value,
            })
            .ToListAsync(stop);
        return [.. leaks.Select(l => (l.Id, l.Line, l.At))];
    }

    // A line without a section has no neighbours that would be isolated with it.
    private static async Task<List<(Guid Order, Guid Site, string Section)>> LiveOf(
        RepairStore store,
        IReadOnlyList<RepairOrder> orders,
        Guid[] sites,
        CancellationToken stop
    )
    {
        string[] sections = [.. orders.Select(Section).OfType<string>().Distinct()];
        if (sections.Length == 0)
            return [];
        var live = await store
            .Orders.AsNoTracking()
            .Where(o =>
                o.Columns.Stage == Stage.InService
                && o.LineId != null
                && sites.Contains(o.SiteId)
                && sections.Contains(o.Line!.Section)
            )
            .Select(o => new
            {
                o.Id,
                o.SiteId,
                o.Line!.Section,
            })
            .ToListAsync(stop);
        return [.. live.Select(l => (l.Id, l.SiteId, l.Section))];
    }

    private static string? Section(RepairOrder order) =>
        order.Line?.Section is { Length: > 0 } section ? section : null;
}

/// <summary>A shutdown of the line's area.</summary>
internal sealed record SurroundingShutdown(Guid Id, string Name, DateOnly StartsOn);
