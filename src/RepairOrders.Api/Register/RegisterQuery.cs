using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Register;

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
        var orders = store.Orders.AsNoTracking().Where(o => by.Sites.Contains(o.Site.ShortName));
        var total = count ? await orders.CountAsync(stop) : (int?)null;
        if (after is not null)
        {
            var key = Guid.TryParse(after, out var id)
                ? id
                : throw new MalformedAsk(
                    "after",
                    $"after is \"{after}\"; allowed is the key a page before gave as next."
                );
            orders = orders.Where(o => o.Id < key);
        }
        var rows = await orders
            .OrderByDescending(o => o.Id)
            .Take(limit + 1)
            .Select(o => new
            {
                o.Id,
                Row = new RegisterRow(
                    o.Number,
                    null,
                    null,
                    o.Line!.Number,
                    o.Columns.Place,
                    o.Columns.Fluid,
                    null,
                    o.Columns.Stage,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    0,
                    null,
                    null,
                    Array.Empty<FlagView>()
                ),
            })
            .ToListAsync(stop);
        return new RegisterView(
            [.. rows.Take(limit).Select(r => r.Row)],
            rows.Count > limit ? rows[limit - 1].Id.ToString() : null,
            total
        );
    }
}
