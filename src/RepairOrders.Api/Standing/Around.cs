using RepairOrders.Api.Orders;
using RepairOrders.Api.Owning;
using RepairOrders.Api.Stock;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Standing;

/// <summary>What flags must know of other rows.</summary>
/// <param name="Order">The order.</param>
/// <param name="Leaks">Leaks of the line: of this order and of others.</param>
/// <param name="Section">The section's name; nothing where the line has none.</param>
/// <param name="Carried">Classes today of the live repairs on the section, this one counted.</param>
/// <param name="OwnerLost">Why the owner can no longer sign; nothing while he can.</param>
/// <param name="Supervisor">Whom his looks go to then, by sign-in name.</param>
/// <param name="Recalled">Recalled batches in it, with the moment of the recall.</param>
internal sealed record Around(
    Guid Order,
    IReadOnlyList<LineLeak> Leaks,
    string? Section,
    IReadOnlyList<RiskClass> Carried,
    string? OwnerLost,
    string? Supervisor,
    IReadOnlyList<Since<string>> Recalled
)
{
    public static readonly Around Nothing = new(Guid.Empty, [], null, [], null, null, []);

    /// <summary>Reads it for a page of orders in a handful of small queries.</summary>
    public static async Task<Dictionary<Guid, Around>> Of(
        RepairStore store,
        IReadOnlyList<AroundKey> orders,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        var neighbours = await Neighbours(store, orders, stop);
        var owners = await Owners(store, orders, stop);
        var recalled = await Recalls(store, orders, stop);
        return orders.ToDictionary(
            o => o.Id,
            o =>
            {
                var owner = o.Columns.OwnerId is { } id ? owners.GetValueOrDefault(id) : null;
                var lost = owner is null ? null : Ownership.Lost(owner, o.Site.ShortName, at);
                return new Around(
                    o.Id,
                    [
                        .. neighbours
                            .Where(n => n.LineId == o.LineId && n.LineId is not null || n.Id == o.Id)
                            .SelectMany(n => n.Leaks),
                    ],
                    string.IsNullOrEmpty(o.Section) ? null : o.Section,
                    [
                        .. neighbours
                            .Where(n => n.Columns.Live && n.SiteId == o.Site.Id && n.Section == o.Section)
                            .Select(n => OrderToday.ClassOf(n.Columns, at))
                            .OfType<RiskClass>()
                            .Order(),
                    ],
                    lost,
                    lost is null ? null : o.Site.Areas.Find(a => a.Name == o.Area)?.Supervisor,
                    [.. o.Columns.Batches.Where(recalled.ContainsKey).Select(b => recalled[b])]
                );
            }
        );
    }

    private static async Task<List<Neighbour>> Neighbours(
        RepairStore store,
        IReadOnlyList<AroundKey> orders,
        CancellationToken stop
    )
    {
        Guid[] ids = [.. orders.Select(o => o.Id)];
        Guid[] lines = [.. orders.Select(o => o.LineId).OfType<Guid>().Distinct()];
        Guid[] sites = [.. orders.Select(o => o.Site.Id).Distinct()];
        string[] sections = [.. orders.Select(o => o.Section).OfType<string>().Where(s => s.Length > 0).Distinct()];
        return await store
            .Orders.AsNoTracking()
            .Where(o =>
                ids.Contains(o.Id)
                || (o.LineId != null && lines.Contains(o.LineId.Value) && o.Columns.LeakedAt != null)
                || (o.Columns.Live && sites.Contains(o.SiteId) && sections.Contains(o.Line!.Section))
            )
            .Select(o => new Neighbour(o.Id, o.Number, o.SiteId, o.LineId, o.Line!.Section, o.Columns))
            .ToListAsync(stop);
    }

    private static async Task<Dictionary<Guid, People.Person>> Owners(
        RepairStore store,
        IReadOnlyList<AroundKey> orders,
        CancellationToken stop
    )
    {
        Guid[] ids = [.. orders.Select(o => o.Columns.OwnerId).OfType<Guid>().Distinct()];
        return ids.Length == 0
            ? []
            : await store.Users.AsNoTracking().Where(p => ids.Contains(p.Id)).ToDictionaryAsync(p => p.Id, stop);
    }

    private static async Task<Dictionary<Guid, Since<string>>> Recalls(
        RepairStore store,
        IReadOnlyList<AroundKey> orders,
        CancellationToken stop
    )
    {
        Guid[] ids = [.. orders.SelectMany(o => o.Columns.Batches).Distinct()];
        if (ids.Length == 0)
            return [];
        var recalled = await store
            .Set<Batch>()
            .AsNoTracking()
            .Where(b => ids.Contains(b.Id) && b.Standing == BatchStanding.Recalled)
            .Select(b => new
            {
                b.Id,
                b.Number,
                At = b.Judgements.Where(j => j.Standing == BatchStanding.Recalled).Max(j => j.At),
            })
            .ToListAsync(stop);
        return recalled.ToDictionary(b => b.Id, b => new Since<string>(b.At, b.Number));
    }

    private sealed record Neighbour(
        Guid Id,
        string Number,
        Guid SiteId,
        Guid? LineId,
        string? Section,
        OrderColumns Columns
    )
    {
        public IEnumerable<LineLeak> Leaks =>
            new[] { Columns.LeakedAt, Columns.LastLeakAt }
                .OfType<DateTimeOffset>()
                .Distinct()
                .Select(l => new LineLeak(Id, Number, l));
    }
}

/// <summary>A leak of a line.</summary>
internal sealed record LineLeak(Guid Order, string Number, DateTimeOffset At);

/// <summary>What the surroundings of an order are looked up by.</summary>
internal sealed record AroundKey(
    Guid Id,
    Sites.Site Site,
    Guid? LineId,
    string? Area,
    string? Section,
    OrderColumns Columns
)
{
    public static AroundKey Of(RepairOrder order) =>
        new(order.Id, order.Site, order.LineId, order.Line?.Area, order.Line?.Section, order.Columns);
}
