using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Stock;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Issuing;

/// <summary>A pick list, and line by line every lot that may be taken for it, as full as the bins hold it.</summary>
internal sealed record Picking(PickListView List, IReadOnlyList<IReadOnlyList<InBin>> Lots);

/// <summary>What to take for an order: what expires first goes first, and nothing is offered twice.</summary>
internal static class PickListQuery
{
    private const int SoonDays = 30;

    public static async Task<PickListView> Read(
        string number,
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop
    )
    {
        var order = await store.Order(number, by, null, stop);
        var plan =
            WorkPlan.Of(order)
            ?? throw new ProcedureRefusal(
                new Objection(
                    "no-bill",
                    "There is no approved design and no consented emergency method, so there is no bill to pick by.",
                    "whoever approves or consents"
                )
            );
        return (await Of(order, plan, store, clock.Now(), stop)).List;
    }

    public static async Task<Picking> Of(
        RepairOrder order,
        WorkPlan plan,
        RepairStore store,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        var today = order.Site.Today(at);
        var least = plan.Emergency ? today : FirstExpiryFirst.LeastExpiry(today, plan.FitOn);
        var offered = await Offered(store, order, plan, stop);
        var lots = offered.ToList();
        var lines = new List<PickLineView>();
        for (var line = 1; line <= plan.Bill.Count; line++)
            lines.Add(Line(order, plan, line, lots, least, today));
        var rest = await store.OutOn(order.Id, stop);
        var list = new PickListView(
            order.Number,
            plan.Name,
            plan.FitOn,
            least,
            lines,
            [
                .. rest.Select(o => new OutView(
                    o.Batch.Id,
                    o.Batch.Number,
                    o.Batch.Item.Code,
                    o.Batch.Item.Words,
                    o.Quantity,
                    o.Batch.Item.Unit
                )),
            ]
        );
        return new(list, [.. lines.Select(l => Usable(l.Line))]);

        IReadOnlyList<InBin> Usable(int line) =>
            [
                .. offered.Where(l =>
                    FirstExpiryFirst.Usable(l.Batch, least)
                    && (Fits(order, plan, line, l, named: true) || Fits(order, plan, line, l, named: false))
                ),
            ];
    }

    private static async Task<IReadOnlyList<InBin>> Offered(
        RepairStore store,
        RepairOrder order,
        WorkPlan plan,
        CancellationToken stop
    )
    {
        string[] needs = [.. plan.Bill.Select(n => n.Code)];
        string[] agreed =
        [
            .. order.InRound<Substitution>().Where(s => s.Asked.Plan == plan.Id).Select(s => s.Asked.Ask.Item),
        ];
        var lots = await store.InBins(
            store
                .Set<Batch>()
                .Where(b =>
                    b.Item.SiteId == order.SiteId && (needs.Contains(b.Item.Need) || agreed.Contains(b.Item.Code))
                ),
            stop
        );
        if (plan.Emergency)
            return lots;
        // A locker is for the night; by day the stores issue from their own bins.
        var lockers = await store
            .Set<Bin>()
            .Where(b => b.SiteId == order.SiteId && b.Locker)
            .Select(b => b.Code)
            .ToListAsync(stop);
        return [.. lots.Where(l => !lockers.Contains(l.Bin))];
    }

    private static PickLineView Line(
        RepairOrder order,
        WorkPlan plan,
        int line,
        List<InBin> lots,
        DateOnly least,
        DateOnly today
    )
    {
        var need = plan.Bill[line - 1];
        var open = Bill.Open(order, plan, line);
        var picks = new List<PickView>();
        // What the bill names first; what an engineer agreed to only for the rest.
        foreach (var named in new[] { true, false })
        foreach (
            var unit in lots.Where(l => Fits(order, plan, line, l, named))
                .Select(l => l.Batch.Item.Unit)
                .Distinct()
                .ToList()
        )
        {
            var wanted = Up(Bill.Convert(open, need.Unit, unit)!.Value);
            foreach (
                var pick in FirstExpiryFirst.Picks(
                    lots.Where(l => l.Batch.Item.Unit == unit && Fits(order, plan, line, l, named)),
                    wanted,
                    least
                )
            )
            {
                picks.Add(View(pick, today));
                open -= Bill.Convert((double)pick.Quantity, unit, need.Unit)!.Value;
                var at = lots.FindIndex(l => l.Batch.Id == pick.Batch.Id && l.Bin == pick.Bin);
                lots[at] = lots[at] with { Quantity = lots[at].Quantity - pick.Quantity };
            }
        }
        return new(
            line,
            need.Code,
            need.Words,
            need.Quantity,
            need.Unit,
            Bill.Covered(order, plan, line),
            picks,
            open > 1e-6 * Math.Max(1, need.Quantity) ? open : 0
        );
    }

    private static bool Fits(RepairOrder order, WorkPlan plan, int line, InBin lot, bool named)
    {
        var need = plan.Bill[line - 1];
        var item = lot.Batch.Item;
        return Bill.Convert(1, item.Unit, need.Unit) is not null
            && !MaterialIssue.LacksCertificate(plan, lot.Batch)
            && (
                named
                    ? item.Need == need.Code
                    : item.Need != need.Code && Substitution.Agreed(order, plan, line, item.Code)
            );
    }

    // The books keep thousandths; what is cut off would leave the line short.
    private static decimal Up(double quantity) =>
        quantity <= 0 ? 0 : Math.Ceiling((decimal)Math.Round(quantity * 1000, 6)) / 1000;

    private static PickView View(InBin pick, DateOnly today) =>
        new(
            pick.Bin,
            pick.Batch.Id,
            pick.Batch.Number,
            pick.Batch.Item.Code,
            pick.Batch.Item.Words,
            pick.Batch.Expiry,
            pick.Batch.Certificate,
            pick.Quantity,
            pick.Batch.Item.Unit,
            pick.Batch.Expiry < today.AddDays(SoonDays) ? Tone.Watch : Tone.Go
        );
}
