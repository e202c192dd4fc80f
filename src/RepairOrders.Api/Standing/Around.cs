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
        var leaks = await LeaksOfLines(store, orders, stop);
        var live = await LiveOfSections(store, orders, at, stop);
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
                    o.LineId is { } line ? leaks.GetValueOrDefault(line, []) : LeaksOf(o),
                    string.IsNullOrEmpty(o.Section) ? null : o.Section,
                    live.GetValueOrDefault((o.Site.Id, o.Section ?? ""), []),
                    lost,
                    lost is null ? null : o.Site.Areas.Find(a => a.Name == o.Area)?.Supervisor,
                    [.. o.Columns.Batches.Where(recalled.ContainsKey).Select(b => recalled[b])]
                );
            }
        );
    }

    private static async Task<Dictionary<Guid, IReadOnlyList<LineLeak>>> LeaksOfLines(
        RepairStore store,
        IReadOnlyList<AroundKey> orders,
        CancellationToken stop
    )
    {
        Guid[] lines = [.. orders.Select(o => o.LineId).OfType<Guid>().Distinct()];
        if (lines.Length == 0)
            return [];
        var leaked = await store
            .Orders.AsNoTracking()
            .Where(o =>
                o.LineId != null
                && lines.Contains(o.LineId.Value)
                && (o.Columns.LeakedAt != null || o.Columns.LastLeakAt != null)
            )
            .Select(o => new
            {
                Line = o.LineId!.Value,
                o.Id,
                o.Number,
                o.Columns.LeakedAt,
                o.Columns.LastLeakAt,
            })
            .ToListAsync(stop);
        return leaked
            .GroupBy(l => l.Line)
            .ToDictionary(
                g => g.Key,
                g => (IReadOnlyList<LineLeak>)[.. g.SelectMany(l => LeaksOf(l.Id, l.Number, l.LeakedAt, l.LastLeakAt))]
            );
    }

    // Without a line the only leaks known to be of the same pipe are its own.
    private static IReadOnlyList<LineLeak> LeaksOf(AroundKey order) =>
        LeaksOf(order.Id, order.Number, order.Columns.LeakedAt, order.Columns.LastLeakAt);

    private static IReadOnlyList<LineLeak> LeaksOf(
        Guid id,
        string number,
        DateTimeOffset? first,
        DateTimeOffset? last
    ) => [.. new[] { first, last }.OfType<DateTimeOffset>().Distinct().Select(l => new LineLeak(id, number, l))];

    private static async Task<Dictionary<(Guid Site, string Section), IReadOnlyList<RiskClass>>> LiveOfSections(
        RepairStore store,
        IReadOnlyList<AroundKey> orders,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        Guid[] sites = [.. orders.Select(o => o.Site.Id).Distinct()];
        string[] sections = [.. orders.Select(o => o.Section).OfType<string>().Where(s => s.Length > 0).Distinct()];
        if (sections.Length == 0)
            return [];
        var live = await store
            .Orders.AsNoTracking()
            .Where(o =>
                o.Columns.Live && o.LineId != null && sites.Contains(o.SiteId) && sections.Contains(o.Line!.Section)
            )
            .Select(o => new
            {
                o.SiteId,
                o.Line!.Section,
                o.Columns.SignedClass,
                o.Columns.ClassAFrom,
                o.Columns.ClassBFrom,
                o.Columns.ClassCFrom,
                o.Columns.ClassDFrom,
            })
            .ToListAsync(stop);
        return live.GroupBy(o => (o.SiteId, o.Section))
            .ToDictionary(
                g => g.Key,
                g =>
                    (IReadOnlyList<RiskClass>)
                        [
                            // Nobody has judged it: it weighs as the gravest.
                            .. g.Select(o =>
                                    OrderToday.ClassOf(
                                        new OrderColumns
                                        {
                                            SignedClass = o.SignedClass,
                                            ClassAFrom = o.ClassAFrom,
                                            ClassBFrom = o.ClassBFrom,
                                            ClassCFrom = o.ClassCFrom,
                                            ClassDFrom = o.ClassDFrom,
                                        },
                                        at
                                    ) ?? RiskClass.A
                                )
                                .Order(),
                        ]
            );
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
}

/// <summary>A leak of a line.</summary>
internal sealed record LineLeak(Guid Order, string Number, DateTimeOffset At);

/// <summary>What the surroundings of an order are looked up by.</summary>
internal sealed record AroundKey(
    Guid Id,
    string Number,
    Sites.Site Site,
    Guid? LineId,
    string? Area,
    string? Section,
    OrderColumns Columns
)
{
    public static AroundKey Of(RepairOrder order) =>
        new(order.Id, order.Number, order.Site, order.LineId, order.Line?.Area, order.Line?.Section, order.Columns);
}
