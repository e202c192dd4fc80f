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
        var wanted = new List<(PickView Item, BandToCut Band)>();
        var byHand = new List<string>();
        foreach (var number in numbers)
        {
            var order = await store.Order(number, by, null, stop);
            if (WorkPlan.Of(order) is not { } plan)
                continue;
            var list = await PickListQuery.Of(order, plan, store, at, stop);
            foreach (var line in list.Lines.Where(l => l is { Code: "band", Picks.Count: > 0 }))
                if (Pieces(number, plan, line) is { Count: > 0 } pieces)
                    wanted.AddRange(pieces.Select(p => (line.Picks[0], p)));
                else
                    byHand.Add(number);
        }
        var place = await store.Sites.Where(s => s.ShortName == site).Select(s => s.Id).SingleAsync(stop);
        var lockers = await store
            .Set<Bin>()
            .Where(b => b.SiteId == place && b.Locker)
            .Select(b => b.Code)
            .ToListAsync(stop);
        var items = new List<ItemToCut>();
        foreach (var item in wanted.GroupBy(w => w.Item.Item))
        {
            var lots = await store.InBins(
                store
                    .Set<Batch>()
                    .Where(b => b.Item.SiteId == place && b.Item.Code == item.Key && b.Standing == BatchStanding.Good),
                stop
            );
            items.Add(
                Plan(
                    item.Key,
                    item.First().Item.Words,
                    [.. item.Select(i => i.Band)],
                    [.. lots.Where(l => !lockers.Contains(l.Bin))],
                    coilMm
                )
            );
        }
        return new(items, byHand, at);
    }

    /// <summary>The pieces of a line that are still to be issued; none where the design does not count them.</summary>
    public static IReadOnlyList<BandToCut> Pieces(string number, WorkPlan plan, PickLineView line)
    {
        var count = (int)((plan.Design["bandCount"] ?? 0) * (plan.Design["piecesPerBand"] ?? 0));
        if (count == 0 || line.Unit != "mm")
            return [];
        var length = line.Quantity / count;
        var open = (int)Math.Round((line.Quantity - line.Covered) / length);
        return [.. Enumerable.Range(count - open + 1, open).Select(i => new BandToCut($"{number} no. {i}", length))];
    }

    private static ItemToCut Plan(
        string item,
        string words,
        IReadOnlyList<BandToCut> bands,
        IReadOnlyList<InBin> lots,
        double? coilMm
    ) =>
        new(
            item,
            words,
            bands,
            Calculations.CutPlan.Calculate(new(bands, [.. lots.SelectMany(l => Lengths(l, coilMm))], TimeLimitS: 1))
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
