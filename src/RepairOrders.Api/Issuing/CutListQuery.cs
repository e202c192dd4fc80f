using System.ComponentModel.DataAnnotations;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Register;
using RepairOrders.Api.Stock;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Issuing;

/// <summary>
/// Today's cutting: the bands of every order that waits for its material in one plan, so that coils are opened once. The batches are
/// those the pick lists name.
/// </summary>
internal static class CutListQuery
{
    private const int MostOrders = 20;

    public static async Task<CutListView> Read(
        [Required] string site,
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop,
        [Range(100.0, 1_000_000.0)] double? coilMm = null
    )
    {
        if (!by.MaySee(site))
            throw new NotHere($"There is no site {site}, or it is not one of yours.");
        var at = clock.Now();
        var filter = new RegisterFilter(Site: site, Stages: [Stage.Approved, Stage.Consented], Live: true);
        var numbers = await store
            .Orders.AsNoTracking()
            .Asked(store, filter, by, at)
            .Sorted(RegisterSort.EndDate)
            .Take(MostOrders)
            .Select(o => o.Number)
            .ToListAsync(stop);
        var wanted = new List<Wanted>();
        var byHand = new List<string>();
        foreach (var number in numbers)
        {
            var order = await store.Order(number, by, null, stop);
            if (WorkPlan.Of(order) is not { } plan)
                continue;
            var (list, lots) = await PickListQuery.Of(order, plan, store, at, stop);
            foreach (var (line, offered) in list.Lines.Zip(lots))
                if (line is not { Code: "band", Picks: [var pick, ..] })
                    continue;
                else if (Pieces(number, plan, line) is { Count: > 0 } pieces)
                    wanted.Add(
                        new(pick.Item, pick.Words, pieces, [.. offered.Where(l => l.Batch.Item.Code == pick.Item)])
                    );
                else
                    byHand.Add(number);
        }
        var items = wanted.GroupBy(w => w.Item).Select(g => Plan([.. g], coilMm)).ToList();
        return new(items, byHand, at);
    }

    /// <summary>The pieces of a line that are still to be issued; none where the design does not count them.</summary>
    private static IReadOnlyList<BandOfOrder> Pieces(string number, WorkPlan plan, PickLineView line)
    {
        var count = (int)((plan.Design["bandCount"] ?? 0) * (plan.Design["piecesPerBand"] ?? 0));
        if (count == 0 || line.Unit != "mm")
            return [];
        var length = line.Quantity / count;
        var open = (int)Math.Round((line.Quantity - line.Covered) / length);
        return
        [
            .. Enumerable
                .Range(count - open + 1, open)
                .Select(i => new BandOfOrder(number, $"{number} no. {i}", length)),
        ];
    }

    // A piece may be cut from any length of the plan, so only what every order of it may be given is cut.
    private static ItemToCut Plan(IReadOnlyList<Wanted> wanted, double? coilMm)
    {
        BandOfOrder[] bands = [.. wanted.SelectMany(w => w.Bands)];
        var lots = wanted.Select(w => w.Lots).Aggregate((all, lots) => [.. all.IntersectBy(lots.Select(Spot), Spot)]);
        return new(
            wanted[0].Item,
            wanted[0].Words,
            bands,
            Calculations.CutPlan.Calculate(
                new(
                    [.. bands.Select(b => new BandToCut(b.Code, b.LengthMm))],
                    [.. lots.SelectMany(l => Lengths(l, coilMm))],
                    TimeLimitS: 1
                )
            )
        );

        static (Guid, string) Spot(InBin lot) => (lot.Batch.Id, lot.Bin);
    }

    private sealed record Wanted(
        string Item,
        string Words,
        IReadOnlyList<BandOfOrder> Bands,
        IReadOnlyList<InBin> Lots
    );

    // What is not a whole coil any more is a remnant, and goes first.
    private static IEnumerable<StockToCut> Lengths(InBin lot, double? coilMm)
    {
        var name = $"{lot.Batch.Number}, bin {lot.Bin}";
        var length = (double)lot.Quantity;
        if (coilMm is not { } coil)
            return [new(name, length)];
        var whole = (int)Math.Floor(length / coil);
        var rest = length - whole * coil;
        return
        [
            .. whole > 0 ? [new StockToCut(name, coil, whole)] : Array.Empty<StockToCut>(),
            .. rest > 0 ? [new StockToCut($"{name}, remnant", rest, Remnant: true)] : Array.Empty<StockToCut>(),
        ];
    }
}
