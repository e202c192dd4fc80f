using RepairOrders.Api.Assessing;
using RepairOrders.Api.Extending;
using RepairOrders.Api.Orders;
using RepairOrders.Api.OrderSheets;
using RepairOrders.Api.Owning;
using RepairOrders.Api.People;
using RepairOrders.Api.Revisiting;
using RepairOrders.Api.Sizing;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Register;

/// <summary>The orders that wait for one person: the same rules as on the order's page, asked of all open work.</summary>
internal static class WaitingQuery
{
    private const int Most = 100;
    private const int RecentDays = 60;

    public static async Task<WaitingView> Read(Person by, RepairStore store, DateTimeOffset at, CancellationToken stop)
    {
        var keys = await RegisterQuery.Keyed(
            Candidates(store, by, at),
            RegisterSort.Newest,
            null,
            Most + 1,
            store,
            stop
        );
        var cut = keys.Count > Most;
        keys = [.. keys.Take(Most)];
        Guid[] ids = [.. keys.Select(k => k.Id)];
        var orders = await store
            .Orders.AsNoTrackingWithIdentityResolution()
            .Whole()
            .Where(o => ids.Contains(o.Id))
            .ToDictionaryAsync(o => o.Id, stop);
        var around = await Surroundings.Of([.. orders.Values], store, stop);
        var waiting = new List<(RegisterKey Key, RepairOrder Order, ActionView Action)>();
        foreach (var key in keys)
            if (orders.TryGetValue(key.Id, out var order))
            {
                order.Surroundings = around[order.Id];
                if (NextAction.Of(order, order.Columns, NextActions.For(order, by, at), at) is { } action)
                    waiting.Add((key, order, action));
            }
        var rows = await RegisterQuery.Rows(store, [.. waiting.Select(w => w.Key)], at, stop);
        return new([.. waiting.Zip(rows, (w, row) => View(w.Order, row, w.Action)).OrderBy(w => w.Since)], cut, at);
    }

    private static IQueryable<RepairOrder> Candidates(RepairStore store, Person by, DateTimeOffset at)
    {
        var recent = at.AddDays(-RecentDays);
        return store
            .Orders.AsNoTracking()
            .Asked(store, new RegisterFilter(Live: true), by, at)
            .Where(o =>
                (o.Columns.Stage != Stage.InService && o.Columns.Stage != Stage.LineOutOfService)
                || o.Columns.ApprovalOwedUntil != null
                || o.Columns.ReassessmentOwedFrom <= at
                || o.Columns.RemovalOwedFrom <= at
                || o.Columns.LookOverdueAt <= at
                || o.Columns.EndsAt <= at
                || store.Set<Extension>().Any(r => r.OrderId == o.Id && r.SetAsideAt == null && r.At > recent)
                || store.Set<Visit>().Any(r => r.OrderId == o.Id && r.SetAsideAt == null && r.At > recent)
                || store.Set<Design>().Any(r => r.OrderId == o.Id && r.SetAsideAt == null && r.At > recent)
                || store.Set<HandOver>().Any(r => r.OrderId == o.Id && r.SetAsideAt == null && r.At > recent)
            );
    }

    private static WaitingOrder View(RepairOrder order, RegisterRow row, ActionView action)
    {
        var standing = order.Records.Where(r => r.Stands).OrderBy(r => r.At).ThenBy(r => r.Id).ToList();
        var request = order.Request.Asked;
        return new(
            row,
            action,
            standing.Count == 0 ? order.RaisedAt : standing[^1].At,
            $"{request.OperatingPressure.Entered} · {request.OperatingTemperature.Entered}",
            standing.OfType<Assessment>().LastOrDefault()?.Summary
        );
    }
}
