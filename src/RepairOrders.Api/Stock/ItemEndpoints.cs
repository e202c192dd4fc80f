using System.ComponentModel.DataAnnotations;
using System.Globalization;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Stock;

internal static class ItemEndpoints
{
    public const int MostRows = 200;

    public static void MapItems(this IEndpointRouteBuilder stock)
    {
        stock.MapGet("/items", Items).Needs(Permission.ReadStock).WithSummary("Stock items, by code");
        stock.MapPost("/items", Add).Needs(Permission.DescribeStock).WithSummary("Add a stock item");
        stock.MapPut("/items/{id:guid}", Change).Needs(Permission.DescribeStock).WithSummary("Change a stock item");
        stock
            .MapGet(
                "/items/{id:guid}/changes",
                (Guid id, Person by, RepairStore store, CancellationToken stop) =>
                    store.ChangesSeen(store.Set<StockItem>(), i => i.SiteId, id, by, stop)
            )
            .Needs(Permission.ReadStock)
            .WithSummary("The changes of a stock item");
    }

    private static async Task<StockItemsView> Items(
        [Required] string site,
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop,
        [StringLength(100)] string? search = null,
        string? after = null,
        [Range(1, MostRows)] int limit = 50
    )
    {
        var here = await store.SiteOf(site, by, stop);
        var items = store.Set<StockItem>().AsNoTracking().Where(i => i.SiteId == here.Id);
        if (!string.IsNullOrWhiteSpace(search))
            items = items.Where(i =>
                EF.Functions.ILike(i.Code, $"%{search}%") || EF.Functions.ILike(i.Words, $"%{search}%")
            );
        if (after is not null)
            items = items.Where(i => i.Code.CompareTo(after) > 0);
        var page = await items.OrderBy(i => i.Code).Take(limit + 1).ToListAsync(stop);
        var rows = page.Take(limit).ToList();
        Guid[] ids = [.. rows.Select(i => i.Id)];
        var today = here.Today(clock.Now());
        var usable = await store.InBins(
            store
                .Set<Batch>()
                .Where(b =>
                    ids.Contains(b.ItemId)
                    && b.Standing == BatchStanding.Good
                    && (b.Expiry == null || b.Expiry >= today)
                ),
            stop
        );
        return new(
            [.. rows.Select(i => View(i, site, usable.Where(u => u.Batch.ItemId == i.Id).Sum(u => u.Quantity)))],
            page.Count > limit ? rows[^1].Code : null
        );
    }

    private static async Task<StockItemView> Add(
        DescribeStockItem ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var here = await store.SiteOf(ask.Site, by);
        Check(ask);
        var taken = await store
            .Set<StockItem>()
            .AnyAsync(i => i.SiteId == here.Id && i.Code == ask.Code, CancellationToken.None);
        RepairOrder.Refuse(StockItem.Objection(ask, taken));
        var item = new StockItem { SiteId = here.Id, Code = ask.Code };
        item.Describe(ask);
        store.Add(item);
        store.Changed(item, "item added", null, item.Said(ask.Site), by, clock.Now());
        await store.SaveChangesAsync(CancellationToken.None);
        return View(item, ask.Site, 0);
    }

    private static async Task<StockItemView> Change(
        Guid id,
        DescribeStockItem ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var here = await store.SiteOf(ask.Site, by);
        Check(ask);
        var item =
            await store
                .Set<StockItem>()
                .SingleOrDefaultAsync(i => i.Id == id && i.SiteId == here.Id, CancellationToken.None)
            ?? throw new NotHere("There is no such item that you may see.");
        if (item.Version != seen.Value)
            throw new DbUpdateConcurrencyException();
        if (item.Code != ask.Code)
            throw new MalformedAsk("code", $"code is {ask.Code}; allowed is {item.Code}, an item keeps its number.");
        var old = item.Said(ask.Site);
        item.Describe(ask);
        store.Changed(item, "item changed", old, item.Said(ask.Site), by, clock.Now());
        await store.SaveChangesAsync(CancellationToken.None);
        return View(item, ask.Site, 0);
    }

    private static void Check(DescribeStockItem ask)
    {
        if (StockItem.Contradictions(ask) is { Count: > 0 } wrong)
            throw new MalformedAsk(wrong);
    }

    private static StockItemView View(StockItem item, string site, decimal inBins) =>
        new(item.Id, item.Version.ToString(CultureInfo.InvariantCulture), inBins, item.Said(site));
}
