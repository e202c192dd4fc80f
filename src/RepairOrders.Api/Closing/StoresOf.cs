using RepairOrders.Api.Orders;
using RepairOrders.Api.Stock;
using RepairOrders.Api.Store;

namespace RepairOrders.Api.Closing;

/// <summary>What the stores' books still have out on an order.</summary>
internal static class StoresOf
{
    /// <summary>Batches with material out, each in words; empty when the books balance.</summary>
    public static async Task<IReadOnlyList<string>> Order(RepairStore store, RepairOrder order)
    {
        var moves = await store
            .Set<StockMove>()
            .AsNoTracking()
            .Where(m => m.OrderId == order.Id)
            .ToListAsync(CancellationToken.None);
        Guid[] ids = [.. moves.Select(m => m.BatchId).Distinct()];
        var batches = await store
            .Set<Batch>()
            .AsNoTracking()
            .Include(b => b.Item)
            .Where(b => ids.Contains(b.Id))
            .OrderBy(b => b.Number)
            .ToListAsync(CancellationToken.None);
        return
        [
            .. batches
                .Select(b => (Batch: b, Out: Ledger.OutOn(moves.Where(m => m.BatchId == b.Id), order.Id)))
                .Where(b => b.Out != 0)
                .Select(b => $"{b.Out:0.###} {b.Batch.Item.Unit} of {b.Batch.Item.Words}, batch {b.Batch.Number}"),
        ];
    }
}
