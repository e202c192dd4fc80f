using System.ComponentModel.DataAnnotations;
using System.Globalization;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Stock;

internal static class BinEndpoints
{
    public static void MapBins(this IEndpointRouteBuilder stock)
    {
        stock
            .MapGet("/bins", Bins)
            .Needs(Permission.ReadStock)
            .WithSummary("Bins, with counts due and kits that are short");
        stock.MapPost("/bins", Add).Needs(Permission.DescribeStock).WithSummary("Add a bin");
        stock.MapPut("/bins/{id:guid}", Change).Needs(Permission.DescribeStock).WithSummary("Change a bin");
        stock
            .MapGet(
                "/bins/{id:guid}/changes",
                (Guid id, Person by, RepairStore store, CancellationToken stop) =>
                    store.ChangesSeen(store.Set<Bin>(), b => b.SiteId, id, by, stop)
            )
            .Needs(Permission.ReadStock)
            .WithSummary("The changes of a bin");
        stock.MapPost("/counts", Count).Needs(Permission.KeepStock).WithSummary("Count a bin");
    }

    private static async Task<IReadOnlyList<BinView>> Bins(
        [Required] string site,
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop
    )
    {
        var here = await store.SiteOf(site, by, stop);
        var bins = await store
            .Set<Bin>()
            .AsNoTracking()
            .Where(b => b.SiteId == here.Id)
            .OrderBy(b => b.Code)
            .ToListAsync(stop);
        return await Views(bins, here, store, clock.Now(), stop);
    }

    private static async Task<BinView> Add(DescribeBin ask, Person by, RepairStore store, TimeProvider clock)
    {
        var here = await store.SiteOf(ask.Site, by);
        var taken = await store
            .Set<Bin>()
            .AnyAsync(b => b.SiteId == here.Id && b.Code == ask.Code, CancellationToken.None);
        RepairOrder.Refuse(Bin.Objection(ask, taken, await UnknownItem(ask, here, store)));
        var bin = new Bin { SiteId = here.Id, Code = ask.Code };
        bin.Describe(ask);
        store.Add(bin);
        store.Changed(bin, "bin added", null, bin.Said(ask.Site), by, clock.Now());
        await store.SaveChangesAsync(CancellationToken.None);
        return (await Views([bin], here, store, clock.Now(), CancellationToken.None))[0];
    }

    private static async Task<BinView> Change(
        Guid id,
        DescribeBin ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var here = await store.SiteOf(ask.Site, by);
        var bin =
            await store.Set<Bin>().SingleOrDefaultAsync(b => b.Id == id && b.SiteId == here.Id, CancellationToken.None)
            ?? throw new NotHere("There is no such bin that you may see.");
        if (bin.Version != seen.Value)
            throw new DbUpdateConcurrencyException();
        if (bin.Code != ask.Code)
            throw new MalformedAsk("code", $"code is {ask.Code}; allowed is {bin.Code}, a bin keeps its name.");
        RepairOrder.Refuse(Bin.Objection(ask, false, await UnknownItem(ask, here, store)));
        var old = bin.Said(ask.Site);
        bin.Describe(ask);
        store.Changed(bin, "bin changed", old, bin.Said(ask.Site), by, clock.Now());
        await store.SaveChangesAsync(CancellationToken.None);
        return (await Views([bin], here, store, clock.Now(), CancellationToken.None))[0];
    }

    private static async Task<string?> UnknownItem(DescribeBin ask, Site site, RepairStore store)
    {
        string[] codes = [.. (ask.Kit ?? []).Select(k => k.Item)];
        var known = await store
            .Set<StockItem>()
            .Where(i => i.SiteId == site.Id && codes.Contains(i.Code))
            .Select(i => i.Code)
            .ToListAsync(CancellationToken.None);
        return codes.Except(known).FirstOrDefault();
    }

    private static async Task<CountView> Count(CountBin ask, Person by, RepairStore store, TimeProvider clock)
    {
        var here = await store.SiteOf(ask.Site, by);
        var bin = await store.Bin(here.Id, ask.Bin);
        var booked = await store.InBins(
            store.Set<Batch>().Where(b => b.Item.SiteId == here.Id),
            CancellationToken.None
        );
        Guid[] ids =
        [
            .. booked.Where(b => b.Bin == bin.Code).Select(b => b.Batch.Id),
            .. ask.Lines.Select(l => l.Batch),
        ];
        var batches = await store.LockedBatches(here.Id, ids);
        if (ask.Lines.FirstOrDefault(l => !batches.ContainsKey(l.Batch)) is { } stray)
            throw new MalformedAsk("lines", $"lines holds batch {stray.Batch}; allowed are batches of this site.");
        var moves = await store.Moves(batches.Keys);
        var at = clock.Now();
        var count = new StockCount(bin, by, at, ask.Remark);
        var differences = new List<CountDifference>();
        foreach (var batch in batches.Values.OrderBy(b => b.Number, StringComparer.Ordinal))
        {
            var had = Ledger.InBin(moves[batch.Id], bin.Code);
            var found = ask.Lines.Where(l => l.Batch == batch.Id).Sum(l => l.Found);
            if (found == had)
                continue;
            differences.Add(new(batch.Number, batch.Item.Code, had, found));
            var spot = StockSpot.In(bin.Code);
            store.Make(
                batch,
                moves[batch.Id],
                found < had
                    ? new StockMove(batch.Id, had - found, spot, StockSpot.Scrapped, "missing at a count", by, at)
                    : new StockMove(batch.Id, found - had, StockSpot.Outside, spot, "found over at a count", by, at)
            );
        }
        bin.CountedAt = at;
        store.Add(count);
        await store.SaveChangesAsync(CancellationToken.None);
        return new(count.Id, bin.Code, at, by.FullName, differences);
    }

    private static async Task<IReadOnlyList<BinView>> Views(
        List<Bin> bins,
        Site site,
        RepairStore store,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        var today = site.Today(at);
        string[] codes = [.. bins.SelectMany(b => b.Kit).Select(k => k.Item).Distinct()];
        var items = await store
            .Set<StockItem>()
            .AsNoTracking()
            .Where(i => i.SiteId == site.Id && codes.Contains(i.Code))
            .ToDictionaryAsync(i => i.Code, stop);
        var held = await store.InBins(
            store.Set<Batch>().Where(b => b.Item.SiteId == site.Id && codes.Contains(b.Item.Code)),
            stop
        );
        var views = new List<BinView>();
        foreach (var bin in bins)
        {
            var due = Bin.CountDue(bin.Locker, bin.Locker ? await FirstUncounted(bin, site, store, stop) : null);
            views.Add(
                new(
                    bin.Id,
                    bin.Version.ToString(CultureInfo.InvariantCulture),
                    bin.Said(site.ShortName),
                    bin.CountedAt,
                    due,
                    due < today,
                    [.. Short(bin, items, held, today)]
                )
            );
        }
        return views;
    }

    private static IEnumerable<KitShort> Short(
        Bin bin,
        Dictionary<string, StockItem> items,
        IReadOnlyList<InBin> held,
        DateOnly today
    ) =>
        bin
            .Kit.Select(k => new KitShort(
                k.Item,
                items[k.Item].Words,
                k.Least,
                held.Where(h =>
                        h.Bin == bin.Code && h.Batch.Item.Code == k.Item && FirstExpiryFirst.Usable(h.Batch, today)
                    )
                    .Sum(h => h.Quantity),
                items[k.Item].Unit
            ))
            .Where(k => k.InBin < k.Least);

    private static async Task<DateOnly?> FirstUncounted(Bin bin, Site site, RepairStore store, CancellationToken stop)
    {
        var first = await store
            .Set<StockMove>()
            .Where(m =>
                m.FromBin == bin.Code
                && m.To == StockPlace.Order
                && (bin.CountedAt == null || m.At > bin.CountedAt)
                && store.Set<Batch>().Any(b => b.Id == m.BatchId && b.Item.SiteId == site.Id)
            )
            .OrderBy(m => m.At)
            .Select(m => (DateTimeOffset?)m.At)
            .FirstOrDefaultAsync(stop);
        return first is { } at ? site.Today(at) : null;
    }
}
