using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Stock;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;

namespace RepairOrders.Api.Issuing;

/// <summary>The books of some batches, locked and open for moves to and from one order.</summary>
internal sealed class Books
{
    private readonly RepairStore store;
    private readonly RepairOrder order;
    private readonly Person by;
    private readonly DateTimeOffset at;
    private readonly IReadOnlyDictionary<Guid, Batch> batches;
    private readonly Dictionary<Guid, List<StockMove>> moves;

    private Books(
        RepairStore store,
        RepairOrder order,
        Person by,
        DateTimeOffset at,
        IReadOnlyDictionary<Guid, Batch> batches,
        ILookup<Guid, StockMove> moves
    )
    {
        this.store = store;
        this.order = order;
        this.by = by;
        this.at = at;
        this.batches = batches;
        this.moves = batches.Keys.ToDictionary(id => id, id => moves[id].ToList());
    }

    public static async Task<Books> Open(
        RepairStore store,
        RepairOrder order,
        IEnumerable<Guid> ids,
        Person by,
        DateTimeOffset at
    )
    {
        var batches = await store.LockedBatches(order.SiteId, ids);
        return new(store, order, by, at, batches, await store.Moves(batches.Keys));
    }

    /// <summary>A batch whose books are open.</summary>
    /// <exception cref="MalformedAsk">The site has no such batch.</exception>
    public Batch this[Guid id] =>
        batches.GetValueOrDefault(id)
        ?? throw new MalformedAsk("lines", $"lines names batch {id}; allowed are batches of this site.");

    /// <summary>Moves some of a batch to or from the order; refuses more than there is.</summary>
    public void Move(Batch batch, decimal quantity, StockSpot from, StockSpot to, string why)
    {
        var move = new StockMove(batch.Id, quantity, from, to, why, by, at, order.Id);
        store.Make(batch, moves[batch.Id], move);
        moves[batch.Id].Add(move);
    }
}
