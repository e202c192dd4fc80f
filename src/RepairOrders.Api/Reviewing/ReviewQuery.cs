using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Register;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Reviewing;

/// <summary>The weekly review: open work whose look is overdue or whose life is past, gravest class first, then longest late.</summary>
internal static class ReviewQuery
{
    private const int Most = 1000;

    public static async Task<ReviewView> Read(
        RepairStore store,
        string? site,
        Person by,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        var late = store
            .Orders.AsNoTracking()
            .Asked(store, new RegisterFilter(Site: site, Live: true), by, at)
            .Where(o => o.Columns.LookOverdueAt < at || (o.Columns.Stage == Stage.InService && o.Columns.EndsAt <= at));
        var orders = await RegisterQuery.Keyed(late, RegisterSort.NextLook, null, Most, store, stop);
        var rows = await RegisterQuery.Rows(store, orders, at, stop);
        var last = await Last(store, [.. orders.Select(o => o.Id)], stop);
        return new(
            [
                .. orders
                    .Zip(rows)
                    .Select(o => Row(o.First, o.Second, last[o.First.Id], at))
                    .OrderBy(r => r.Row.ClassToday ?? RiskClass.A)
                    .ThenByDescending(r => r.DaysLate)
                    .ThenBy(r => r.Row.Number, StringComparer.Ordinal),
            ],
            at
        );
    }

    private static ReviewRow Row(
        RegisterKey order,
        RegisterRow row,
        IEnumerable<SignedRecord> records,
        DateTimeOffset at
    )
    {
        var c = order.Columns;
        DateTimeOffset[] late = [c.LookDueAt ?? at, c.Stage == Stage.InService ? c.EndsAt ?? at : at];
        return new(
            row,
            (int)Math.Max(0, (at - late.Min()).TotalDays),
            OrderToday.LadderOf(c, at),
            records.OfType<LadderAnswer>().LastOrDefault() is { } answer ? $"{answer.By}: {answer.Summary}" : null,
            records.OfType<Review>().LastOrDefault() is { } review ? $"{review.By}: {review.Summary}" : null
        );
    }

    private static async Task<ILookup<Guid, SignedRecord>> Last(RepairStore store, Guid[] ids, CancellationToken stop)
    {
        var answers = await store
            .Set<LadderAnswer>()
            .AsNoTracking()
            .Where(a => ids.Contains(a.OrderId))
            .ToListAsync(stop);
        var reviews = await store.Set<Review>().AsNoTracking().Where(r => ids.Contains(r.OrderId)).ToListAsync(stop);
        return answers.Concat<SignedRecord>(reviews).Where(r => r.Stands).OrderBy(r => r.At).ToLookup(r => r.OrderId);
    }
}
