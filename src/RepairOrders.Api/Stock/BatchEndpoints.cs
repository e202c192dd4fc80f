using System.ComponentModel.DataAnnotations;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Stock;

internal static class BatchEndpoints
{
    public static void MapBatches(this IEndpointRouteBuilder stock)
    {
        stock.MapGet("/batches", Batches).Needs(Permission.ReadStock).WithSummary("Batches, first to expire first");
        stock.MapPost("/batches", Receive).Needs(Permission.KeepStock).WithSummary("Take a batch into a bin");
        stock
            .MapGet("/batches/{id:guid}/whereabouts", Whereabouts)
            .Needs(Permission.ReadStock)
            .WithSummary("Where a batch is, bin by bin and order by order");
        stock
            .MapGet("/batches/{id:guid}/moves", Moves)
            .Needs(Permission.ReadStock)
            .WithSummary("Every move of a batch, oldest first");
        stock
            .MapPost("/batches/{id:guid}/judgements", Judge)
            .Needs(Permission.JudgeBatch)
            .WithSummary("Set apart, call back or free a batch");
        stock.MapPost("/moves", Move).Needs(Permission.KeepStock).WithSummary("Shift or scrap material in a bin");
    }

    private static async Task<BatchesView> Batches(
        [Required] string site,
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop,
        [StringLength(60)] string? number = null,
        [StringLength(40)] string? item = null,
        string? standing = null,
        string? after = null,
        [Range(1, ItemEndpoints.MostRows)] int limit = 50
    )
    {
        var here = await store.SiteOf(site, by, stop);
        var batches = store.Set<Batch>().AsNoTracking().Where(b => b.Item.SiteId == here.Id);
        if (!string.IsNullOrWhiteSpace(number))
            batches = batches.Where(b => EF.Functions.ILike(b.Number, $"%{number}%"));
        if (item is not null)
            batches = batches.Where(b => b.Item.Code == item);
        if (standing is not null)
        {
            var wanted = Asked(standing);
            batches = batches.Where(b => b.Standing == wanted);
        }
        if (after is not null)
        {
            var (expiry, id) = Key(after);
            batches = batches.Where(b =>
                (b.Expiry ?? DateOnly.MaxValue) > expiry
                || ((b.Expiry ?? DateOnly.MaxValue) == expiry && b.Id.CompareTo(id) > 0)
            );
        }
        var page = await batches
            .Include(b => b.Item)
            .OrderBy(b => b.Expiry ?? DateOnly.MaxValue)
            .ThenBy(b => b.Id)
            .Take(limit + 1)
            .ToListAsync(stop);
        var rows = page.Take(limit).ToList();
        var balances = await store.Balances(rows.Select(b => b.Id), stop);
        var today = here.Today(clock.Now());
        return new(
            [.. rows.Select(b => View(b, site, today, balances[b.Id]))],
            page.Count > limit ? $"{rows[^1].Expiry ?? DateOnly.MaxValue:yyyy-MM-dd}_{rows[^1].Id}" : null
        );
    }

    private static BatchStanding Asked(string standing) =>
        Enum.TryParse<BatchStanding>(standing, ignoreCase: true, out var known)
            ? known
            : throw new MalformedAsk(
                "standing",
                $"standing is \"{standing}\"; allowed is one of good, quarantined, recalled."
            );

    private static (DateOnly Expiry, Guid Id) Key(string after) =>
        after.Split('_') is [var day, var id]
        && DateOnly.TryParseExact(day, "yyyy-MM-dd", out var expiry)
        && Guid.TryParse(id, out var batch)
            ? (expiry, batch)
            : throw new MalformedAsk("after", $"after is \"{after}\"; allowed is the key a page before gave as next.");

    private static async Task<BatchView> Receive(ReceiveBatch ask, Person by, RepairStore store, TimeProvider clock)
    {
        var here = await store.SiteOf(ask.Site, by);
        var item =
            await store
                .Set<StockItem>()
                .SingleOrDefaultAsync(i => i.SiteId == here.Id && i.Code == ask.Item, CancellationToken.None)
            ?? throw new ProcedureRefusal(StockStore.NoItem(ask.Item));
        var bin = await store.Bin(here.Id, ask.Bin);
        var batch = await store
            .Set<Batch>()
            .Include(b => b.Item)
            .SingleOrDefaultAsync(b => b.ItemId == item.Id && b.Number == ask.Number, CancellationToken.None);
        RepairOrder.Refuse(Batch.Objection(ask, item, batch));
        var at = clock.Now();
        if (batch is null)
        {
            batch = new Batch
            {
                ItemId = item.Id,
                Item = item,
                Number = ask.Number,
                Expiry = ask.Expiry,
                Certificate = ask.Certificate,
            };
            store.Add(batch);
        }
        var receipt = new StockMove(
            batch.Id,
            ask.Quantity,
            StockSpot.Outside,
            StockSpot.In(bin.Code),
            "received",
            by,
            at
        );
        store.Make(batch, [], receipt);
        await store.SaveChangesAsync(CancellationToken.None);
        return await View(store, batch, ask.Site, here.Today(at), CancellationToken.None);
    }

    private static async Task<WhereaboutsView> Whereabouts(
        Guid id,
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop
    ) => await Found(await store.Batch(id, by, stop), store, clock.Now(), stop);

    private static async Task<WhereaboutsView> Judge(
        Guid id,
        JudgeBatch ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var batch = await store.Batch(id, by);
        RepairOrder.Refuse(Batch.Objection(ask, by));
        batch.Judge(ask, by, clock.Now());
        await store.SaveChangesAsync(CancellationToken.None);
        return await Found(batch, store, clock.Now(), CancellationToken.None);
    }

    private static async Task<IReadOnlyList<StockMoveView>> Moves(
        Guid id,
        Person by,
        RepairStore store,
        CancellationToken stop
    )
    {
        var batch = await store.Batch(id, by, stop);
        var moves = (await store.Moves([batch.Id], stop))[batch.Id].ToList();
        var numbers = await Numbers(store, moves, stop);
        return
        [
            .. moves.Select(m => new StockMoveView(
                m.At,
                m.By,
                m.Quantity,
                Spot(m.From, m.FromBin, m.OrderId, numbers),
                Spot(m.To, m.ToBin, m.OrderId, numbers),
                m.Why
            )),
        ];
    }

    private static async Task<BatchView> Move(MoveStock ask, Person by, RepairStore store, TimeProvider clock)
    {
        var seen = await store.Batch(ask.Batch, by);
        var site = await store.Sites.SingleAsync(s => s.Id == seen.Item.SiteId, CancellationToken.None);
        var from = await store.Bin(site.Id, ask.Bin);
        var to = StockSpot.Scrapped;
        if (ask.Kind == StockMoveKind.Shift)
            to = StockSpot.In((await store.Bin(site.Id, ask.To ?? throw Missing())).Code);
        var batch = (await store.LockedBatches(site.Id, [ask.Batch]))[ask.Batch];
        var before = (await store.Moves([batch.Id]))[batch.Id];
        var at = clock.Now();
        store.Make(batch, before, new StockMove(batch.Id, ask.Quantity, StockSpot.In(from.Code), to, ask.Why, by, at));
        await store.SaveChangesAsync(CancellationToken.None);
        return await View(store, batch, site.ShortName, site.Today(at), CancellationToken.None);
    }

    private static MalformedAsk Missing() => new("to", "to is missing; a shift names the bin it goes to.");

    private static async Task<WhereaboutsView> Found(
        Batch batch,
        RepairStore store,
        DateTimeOffset at,
        CancellationToken stop
    )
    {
        var site = await store.Sites.AsNoTracking().SingleAsync(s => s.Id == batch.Item.SiteId, stop);
        var moves = (await store.Moves([batch.Id], stop))[batch.Id].ToList();
        Guid[] ids = [.. moves.Select(m => m.OrderId).OfType<Guid>().Distinct()];
        var orders = await store
            .Orders.AsNoTracking()
            .Where(o => ids.Contains(o.Id))
            .Select(o => new
            {
                o.Id,
                o.Number,
                o.Columns.Place,
                o.Columns.Stage,
            })
            .ToListAsync(stop);
        var judgements = await store
            .Set<BatchJudgement>()
            .AsNoTracking()
            .Where(j => j.BatchId == batch.Id)
            .OrderBy(j => j.At)
            .ToListAsync(stop);
        return new(
            View(batch, site.ShortName, site.Today(at), Ledger.Balance(moves)),
            [
                .. moves
                    .SelectMany(m => new[] { m.FromBin, m.ToBin })
                    .OfType<string>()
                    .Distinct()
                    .Order(StringComparer.Ordinal)
                    .Select(bin => new BinHolding(bin, Ledger.InBin(moves, bin)))
                    .Where(h => h.Quantity > 0),
            ],
            [
                .. orders
                    .Select(o => new OrderHolding(
                        o.Number,
                        o.Place,
                        o.Stage,
                        OnThePipe(o.Stage),
                        Ledger.OutOn(moves, o.Id),
                        Ledger.UsedOn(moves, o.Id)
                    ))
                    .Where(h => h.Out > 0 || h.Used > 0)
                    .OrderByDescending(h => h.Live)
                    .ThenBy(h => h.Order, StringComparer.Ordinal),
            ],
            [.. judgements.Select(j => new BatchJudgementView(j.At, j.By, j.Standing, j.Why))]
        );
    }

    private static bool OnThePipe(Stage stage) =>
        stage
            is Stage.Fitting
                or Stage.Fitted
                or Stage.InService
                or Stage.Failed
                or Stage.MadeSafe
                or Stage.LineOutOfService;

    private static async Task<Dictionary<Guid, string>> Numbers(
        RepairStore store,
        IEnumerable<StockMove> moves,
        CancellationToken stop
    )
    {
        Guid[] ids = [.. moves.Select(m => m.OrderId).OfType<Guid>().Distinct()];
        return await store.Orders.Where(o => ids.Contains(o.Id)).ToDictionaryAsync(o => o.Id, o => o.Number, stop);
    }

    private static string Spot(StockPlace place, string? bin, Guid? order, Dictionary<Guid, string> numbers) =>
        place switch
        {
            StockPlace.Bin => bin!,
            StockPlace.Order => numbers[order!.Value],
            StockPlace.Used => order is { } on ? $"used on {numbers[on]}" : "used",
            _ => Words.Of(place),
        };

    private static async Task<BatchView> View(
        RepairStore store,
        Batch batch,
        string site,
        DateOnly today,
        CancellationToken stop
    ) => View(batch, site, today, (await store.Balances([batch.Id], stop))[batch.Id]);

    private static BatchView View(Batch batch, string site, DateOnly today, BatchBalance balance) =>
        new(
            batch.Id,
            site,
            batch.Item.Code,
            batch.Item.Words,
            batch.Item.Unit,
            batch.Number,
            batch.Expiry,
            batch.Certificate,
            batch.Standing,
            batch.StandingWhy,
            batch.ExpiredOn(today),
            balance
        );
}
