using System.Globalization;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Stock;

/// <summary>
/// The books of one batch. A place holds what came to it less what left it, and no place may hold less than nothing; so what was
/// received is always in bins, out on orders, used or scrapped.
/// </summary>
internal static class Ledger
{
    public static decimal Held(IEnumerable<StockMove> moves, Func<StockSpot, Guid?, bool> there) =>
        moves.Sum(m =>
            (there(new StockSpot(m.To, m.ToBin), m.OrderId) ? m.Quantity : 0)
            - (there(new StockSpot(m.From, m.FromBin), m.OrderId) ? m.Quantity : 0)
        );

    public static decimal InBin(IEnumerable<StockMove> moves, string bin) =>
        Held(moves, (spot, _) => spot == StockSpot.In(bin));

    public static decimal OutOn(IEnumerable<StockMove> moves, Guid order) =>
        Held(moves, (spot, at) => spot.Place == StockPlace.Order && at == order);

    public static decimal UsedOn(IEnumerable<StockMove> moves, Guid order) =>
        Held(moves, (spot, at) => spot.Place == StockPlace.Used && at == order);

    /// <summary>Sums from moves, or from sums of moves.</summary>
    public static BatchBalance Balance(IEnumerable<(StockPlace From, StockPlace To, decimal Quantity)> moves)
    {
        var held = new decimal[5];
        foreach (var (from, to, quantity) in moves)
        {
            held[(int)from] -= quantity;
            held[(int)to] += quantity;
        }
        return new(
            -held[(int)StockPlace.Outside],
            held[(int)StockPlace.Bin],
            held[(int)StockPlace.Order],
            held[(int)StockPlace.Used],
            held[(int)StockPlace.Scrapped]
        );
    }

    public static BatchBalance Balance(IEnumerable<StockMove> moves) =>
        Balance(moves.Select(m => (m.From, m.To, m.Quantity)));

    /// <summary>Whether the place a move takes from holds that much.</summary>
    public static Objection? Objection(Batch batch, IEnumerable<StockMove> moves, StockMove next)
    {
        if (next.From == StockPlace.Outside)
            return null;
        var from = new StockSpot(next.From, next.FromBin);
        var held = Held(
            moves,
            (spot, order) => spot == from && (from.Place == StockPlace.Bin || order == next.OrderId)
        );
        if (held >= next.Quantity)
            return null;
        return next.From == StockPlace.Bin
            ? new Objection(
                "not-in-bin",
                $"Bin {next.FromBin} holds {Amount(held, batch)} of batch {batch.Number}, not {Amount(next.Quantity, batch)}. Look again; count the bin if the books are wrong.",
                "storekeeper"
            )
            : new Objection(
                "not-out-on-order",
                $"This order holds {Amount(held, batch)} of batch {batch.Number}, not {Amount(next.Quantity, batch)}. What is used, scrapped and returned is at most what was issued.",
                "storekeeper"
            );
    }

    public static string Amount(decimal quantity, Batch batch) =>
        string.Create(CultureInfo.InvariantCulture, $"{quantity:0.###} {batch.Item.Unit}");
}
