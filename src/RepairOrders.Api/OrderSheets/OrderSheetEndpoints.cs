using System.Globalization;
using RepairOrders.Api.People;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.OrderSheets;

internal static class OrderSheetEndpoints
{
    public static void MapOrderSheets(this IEndpointRouteBuilder orders)
    {
        orders.MapGet("/{number}", Sheet).Needs(Permission.ReadOrder).WithSummary("The order as you see it now");
        orders
            .MapGet("/{number}/version", Version)
            .Needs(Permission.ReadOrder)
            .WithSummary("The order's version alone: whether anything was signed since");
        orders
            .MapGet("/{number}/journal", Journal)
            .Needs(Permission.ReadOrder)
            .WithSummary("Its history, the chain verified");
    }

    private static async Task<OrderSheet> Sheet(
        string number,
        Person by,
        RepairStore store,
        TimeProvider clock,
        HttpResponse response,
        CancellationToken stop
    )
    {
        var order = await store.Order(number, by, null, stop);
        var related = await store
            .Orders.Where(o => o.LineId != null && o.LineId == order.LineId && o.Id != order.Id)
            .OrderByDescending(o => o.Id)
            .Select(o => o.Number)
            .Take(20)
            .ToListAsync(stop);
        response.Headers.ETag = $"\"{order.Version}\"";
        var at = clock.Now();
        var around = await Around.Of(store, [AroundKey.Of(order)], at, stop);
        return OrderSheetQuery.Sheet(order, by, at, related, around[order.Id]);
    }

    private static async Task<OrderVersion> Version(string number, Person by, RepairStore store, CancellationToken stop)
    {
        var order =
            await store
                .Orders.Where(o => o.Number == number && by.Sites.Contains(o.Site.ShortName))
                .Select(o => new { o.Version })
                .SingleOrDefaultAsync(stop)
            ?? throw new NotHere($"There is no order {number} that you may see.");
        return new(order.Version.ToString(CultureInfo.InvariantCulture));
    }

    private static async Task<JournalView> Journal(string number, Person by, RepairStore store, CancellationToken stop)
    {
        var order = await store.Order(number, by, null, stop);
        var entries = await store
            .Journal.AsNoTracking()
            .Where(j => j.OrderId == order.Id)
            .OrderBy(j => j.Line)
            .ToListAsync(stop);
        return new JournalView(
            [.. entries.Select(e => new JournalLine(e.Line, e.At, e.By, e.What, e.Why, e.Hash))],
            Orders.JournalChain.BrokenAt(order, entries)
        );
    }
}
