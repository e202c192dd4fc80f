using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Stock;

/// <summary>How the stores' books are read and written.</summary>
internal static class StockStore
{
    public static Objection NoItem(string code) =>
        new Objection(
            "item-not-listed",
            $"Item {code} is not in the stores' list. Use one that is, or have it listed first.",
            "storekeeper"
        );

    public static Objection NoBin(string code) =>
        new Objection(
            "bin-not-listed",
            $"There is no bin {code}. Use one that is listed, or have it listed first.",
            "storekeeper"
        );

    public static async Task<Site> SiteOf(
        this RepairStore store,
        string shortName,
        Person by,
        CancellationToken stop = default
    )
    {
        var site = await store.Sites.SingleOrDefaultAsync(s => s.ShortName == shortName, stop);
        return site is null || !by.MaySee(shortName)
            ? throw new NotHere($"There is no site {shortName} that you may see.")
            : site;
    }

    public static async Task<Bin> Bin(this RepairStore store, Guid site, string code) =>
        await store.Set<Bin>().SingleOrDefaultAsync(b => b.SiteId == site && b.Code == code, CancellationToken.None)
        ?? throw new ProcedureRefusal(NoBin(code));

    /// <summary>The batch with its item, if the person may see its site.</summary>
    public static async Task<Batch> Batch(
        this RepairStore store,
        Guid id,
        Person by,
        CancellationToken stop = default
    ) =>
        await store
            .Set<Batch>()
            .Include(b => b.Item)
            .Where(b => store.Sites.Any(s => s.Id == b.Item.SiteId && by.Sites.Contains(s.ShortName)))
            .SingleOrDefaultAsync(b => b.Id == id, stop)
        ?? throw new NotHere("There is no such batch that you may see.");

    /// <summary>
    /// The batches of a site with their items, their books locked until the transaction ends: what is read stays true until it
    /// is written, so nothing is ever issued twice. Locked in one order, so that two issues never wait for each other.
    /// </summary>
    public static async Task<IReadOnlyDictionary<Guid, Batch>> LockedBatches(
        this RepairStore store,
        Guid site,
        IEnumerable<Guid> ids
    )
    {
        Guid[] wanted = [.. ids.Distinct()];
        await store.Database.ExecuteSqlAsync(
            $"SELECT id FROM batches WHERE id = ANY({wanted}) ORDER BY id FOR UPDATE",
            CancellationToken.None
        );
        return await store
            .Set<Batch>()
            .Include(b => b.Item)
            .Where(b => wanted.Contains(b.Id) && b.Item.SiteId == site)
            .ToDictionaryAsync(b => b.Id, CancellationToken.None);
    }

    /// <summary>Every move of some batches, oldest first; take it under their lock where something will be written.</summary>
    public static async Task<ILookup<Guid, StockMove>> Moves(
        this RepairStore store,
        IEnumerable<Guid> batches,
        CancellationToken stop = default
    )
    {
        Guid[] wanted = [.. batches];
        var moves = await store
            .Set<StockMove>()
            .AsNoTracking()
            .Where(m => wanted.Contains(m.BatchId))
            .OrderBy(m => m.At)
            .ThenBy(m => m.Id)
            .ToListAsync(stop);
        return moves.ToLookup(m => m.BatchId);
    }

    /// <summary>Makes moves of one batch, each after the one before it; refuses the first that takes more than there is.</summary>
    public static void Make(this RepairStore store, Batch batch, IEnumerable<StockMove> before, params StockMove[] next)
    {
        var moves = before.ToList();
        foreach (var move in next)
        {
            RepairOrder.Refuse(Ledger.Objection(batch, moves, move));
            moves.Add(move);
            store.Set<StockMove>().Add(move);
        }
    }

    public static async Task<Dictionary<Guid, BatchBalance>> Balances(
        this RepairStore store,
        IEnumerable<Guid> batches,
        CancellationToken stop
    )
    {
        Guid[] wanted = [.. batches];
        var sums = await store
            .Set<StockMove>()
            .Where(m => wanted.Contains(m.BatchId))
            .GroupBy(m => new
            {
                m.BatchId,
                m.From,
                m.To,
            })
            .Select(g => new { g.Key, Quantity = g.Sum(m => m.Quantity) })
            .ToListAsync(stop);
        return wanted.ToDictionary(
            id => id,
            id => Ledger.Balance(sums.Where(s => s.Key.BatchId == id).Select(s => (s.Key.From, s.Key.To, s.Quantity)))
        );
    }

    /// <summary>What lies in which bin, of the batches asked for.</summary>
    public static async Task<IReadOnlyList<InBin>> InBins(
        this RepairStore store,
        IQueryable<Batch> batches,
        CancellationToken stop
    )
    {
        var moves = store.Set<StockMove>().Where(m => batches.Any(b => b.Id == m.BatchId));
        var held = await moves
            .Where(m => m.ToBin != null)
            .Select(m => new
            {
                m.BatchId,
                Bin = m.ToBin,
                m.Quantity,
            })
            .Concat(
                moves
                    .Where(m => m.FromBin != null)
                    .Select(m => new
                    {
                        m.BatchId,
                        Bin = m.FromBin,
                        Quantity = -m.Quantity,
                    })
            )
            .GroupBy(h => new { h.BatchId, h.Bin })
            .Select(g => new
            {
                g.Key.BatchId,
                g.Key.Bin,
                Quantity = g.Sum(h => h.Quantity),
            })
            .Where(h => h.Quantity > 0)
            .ToListAsync(stop);
        var all = await batches.AsNoTracking().Include(b => b.Item).ToDictionaryAsync(b => b.Id, stop);
        return
        [
            .. held.Where(h => all.ContainsKey(h.BatchId)).Select(h => new InBin(all[h.BatchId], h.Bin!, h.Quantity)),
        ];
    }

    /// <summary>What is out on an order and not accounted for; a close-out needs this to be empty.</summary>
    public static async Task<IReadOnlyList<OutOnOrder>> OutOn(
        this RepairStore store,
        Guid order,
        CancellationToken stop = default
    )
    {
        var moves = await store.Set<StockMove>().AsNoTracking().Where(m => m.OrderId == order).ToListAsync(stop);
        Guid[] ids = [.. moves.Select(m => m.BatchId).Distinct()];
        var batches = await store
            .Set<Batch>()
            .AsNoTracking()
            .Include(b => b.Item)
            .Where(b => ids.Contains(b.Id))
            .ToListAsync(stop);
        return
        [
            .. batches
                .Select(b => new OutOnOrder(b, Ledger.OutOn(moves.Where(m => m.BatchId == b.Id), order)))
                .Where(o => o.Quantity != 0),
        ];
    }

    /// <summary>The orders that hold some of a batch that was called back: out on them or used in their repair.</summary>
    public static IQueryable<Guid> OrdersHoldingRecalled(this RepairStore store) =>
        store
            .Set<StockMove>()
            .Where(m =>
                m.OrderId != null
                && store.Set<Batch>().Any(b => b.Id == m.BatchId && b.Standing == BatchStanding.Recalled)
            )
            .GroupBy(m => new { m.OrderId, m.BatchId })
            .Where(g =>
                g.Sum(m =>
                    m.From == StockPlace.Bin ? m.Quantity
                    : m.To == StockPlace.Bin || m.To == StockPlace.Scrapped ? -m.Quantity
                    : 0
                ) > 0
            )
            .Select(g => g.Key.OrderId!.Value);
}

/// <summary>Material out on an order.</summary>
internal sealed record OutOnOrder(Batch Batch, decimal Quantity);
