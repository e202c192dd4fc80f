using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Register;

/// <summary>A page of the register: one query for the rows, and a few small ones for what their flags must know of other rows.</summary>
internal static class RegisterQuery
{
    public static async Task<RegisterView> Read(
        RepairStore store,
        RegisterFilter filter,
        string? after,
        int limit,
        bool count,
        Person by,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        var orders = store.Orders.AsNoTracking().Asked(store, filter, by, at);
        var total = count ? await orders.CountAsync(stop) : (int?)null;
        var page = await Keyed(orders, filter.Sort, after, limit + 1, store, stop);
        var rows = await Rows(store, [.. page.Take(limit)], at, stop);
        return new RegisterView(
            rows,
            page.Count > limit ? RegisterOrder.Key(filter.Sort, page[limit - 1].Columns, page[limit - 1].Id) : null,
            total
        );
    }

    /// <summary>Rows a page at a time, for what is streamed; no list of them all is ever held.</summary>
    public static async IAsyncEnumerable<RegisterRow> All(
        RepairStore store,
        RegisterFilter filter,
        Person by,
        DateTimeOffset at,
        [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken stop
    )
    {
        string? after = null;
        do
        {
            var page = await Read(store, filter, after, RegisterEndpoints.MostRows, false, by, at, stop);
            foreach (var row in page.Rows)
                yield return row;
            after = page.Next;
        } while (after is not null);
    }

    /// <summary>The rows of a list of orders, flags and all.</summary>
    public static async Task<IReadOnlyList<RegisterRow>> Rows(
        RepairStore store,
        IReadOnlyList<RegisterKey> orders,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        var around = await Around.Of(store, [.. orders.Select(o => o.Around)], at, stop);
        return [.. orders.Select(o => Row(o, around[o.Id], at))];
    }

    public static async Task<List<RegisterKey>> Keyed(
        IQueryable<RepairOrder> orders,
        RegisterSort sort,
        string? after,
        int limit,
        RepairStore store,
        CancellationToken stop
    )
    {
        var page = await orders
            .After(sort, after)
            .Sorted(sort)
            .Take(limit)
            .Select(o => new
            {
                o.Id,
                o.Number,
                o.SiteId,
                o.LineId,
                Line = o.Line!.Number,
                o.Line.Area,
                o.Line.Section,
                o.Columns,
            })
            .ToListAsync(stop);
        Guid[] ids = [.. page.Select(p => p.SiteId).Distinct()];
        var sites = await store.Sites.AsNoTracking().Where(s => ids.Contains(s.Id)).ToDictionaryAsync(s => s.Id, stop);
        return
        [
            .. page.Select(p => new RegisterKey(
                p.Id,
                p.Number,
                sites[p.SiteId],
                p.LineId,
                p.Line,
                p.Area,
                p.Section,
                p.Columns
            )),
        ];
    }

    private static RegisterRow Row(RegisterKey order, Around around, DateTimeOffset at)
    {
        var c = order.Columns;
        var zone = order.Site.Zone();
        var today = OrderToday.Of(c, around, zone, at);
        var since = c.InServiceSince is { } start ? zone.Day(start) : (DateOnly?)null;
        return new RegisterRow(
            order.Number,
            c.SignedClass,
            today.Class,
            order.Line,
            c.Place,
            c.Fluid,
            c.Method,
            c.Stage,
            since,
            since is { } from ? zone.Day(at).DayNumber - from.DayNumber : null,
            c.EndDate,
            today.DaysLeft,
            c.LastLookAt is { } look ? zone.Day(look) : null,
            today.NextLook,
            today.NextThickness,
            c.Extensions,
            c.PermanentFix,
            c.Owner,
            today.Flags,
            order.Area
        );
    }
}

/// <summary>An order as a list reads it.</summary>
internal sealed record RegisterKey(
    Guid Id,
    string Number,
    Site Site,
    Guid? LineId,
    string? Line,
    string? Area,
    string? Section,
    OrderColumns Columns
)
{
    public AroundKey Around => new(Id, Number, Site, LineId, Area, Section, Columns);
}
