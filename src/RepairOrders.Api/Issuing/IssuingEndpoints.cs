using System.Globalization;
using RepairOrders.Api.Figures;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Readying;
using RepairOrders.Api.Stock;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Issuing;

internal static class IssuingEndpoints
{
    public static void MapIssuing(this IEndpointRouteBuilder orders)
    {
        orders
            .MapGet("/{number}/pick-list", PickListQuery.Read)
            .Needs(Permission.ReadOrder)
            .WithSummary("What to take for the order, first to expire first");
        orders
            .MapPost("/{number}/material-issues", Issue)
            .Needs(Permission.IssueMaterial)
            .WithSummary("Hand material out for the order");
        orders
            .MapPost("/{number}/substitutions", Agree)
            .Needs(Permission.AgreeSubstitution)
            .WithSummary("Agree that something else is issued than the bill names");
        orders
            .MapPost("/{number}/material-returns", Return)
            .Needs(Permission.ReturnMaterial)
            .WithSummary("Take material back");
        orders
            .MapPost("/{number}/material-uses", Account)
            .Needs(Permission.AccountForMaterial)
            .WithSummary("Say what of the material was used or scrapped");
    }

    public static void MapCutList(this IEndpointRouteBuilder stock) =>
        stock
            .MapGet("/cut-list", CutListQuery.Read)
            .Needs(Permission.ReadOrder)
            .WithSummary("How to cut the bands of the orders that wait for their material");

    private static async Task<RecordView> Issue(
        string number,
        IssueMaterial ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(MaterialIssue.Objection(order, by, at));
        var plan = WorkPlan.Of(order)!;
        var receiver = await store.PersonOf(order.Site.ShortName, ask.Receiver);
        RepairOrder.Refuse(MaterialIssue.Receiver(order, plan, receiver, at));
        if (ask.Lines.Count == 0 && plan.Bill.Count > 0)
            throw new MalformedAsk(
                "lines",
                "lines is empty; allowed is one line or more, the bill has something to draw."
            );
        var books = await Books.Open(store, order, ask.Lines.Select(l => l.Batch), by, at);
        var lines = new List<IssuedLine>();
        foreach (var line in ask.Lines)
        {
            var batch = books[line.Batch];
            var bin = await store.Bin(order.SiteId, line.Bin);
            RepairOrder.Refuse(MaterialIssue.Objection(order, plan, line, batch, bin, by, at));
            books.Move(batch, line.Quantity, StockSpot.In(bin.Code), StockSpot.Order, $"issued for {order.Number}");
            lines.Add(Issued(order, plan, line, batch, at));
        }
        var complete = Bill.Complete(order, plan, n => lines.Where(l => l.Line == n).Sum(l => l.Covers));
        var late =
            plan.Emergency
            && FittingStart.Of(order) is { } began
            && at > began + TimeSpan.FromHours(DecidedUnder.Figures(order).EmergencyIssueHours);
        var body = new SignedIssue(ask, receiver!.FullName, plan.Id, lines, complete, late);
        var record = order.Sign(new MaterialIssue(body), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    private static IssuedLine Issued(RepairOrder order, WorkPlan plan, IssueLine line, Batch batch, DateTimeOffset at)
    {
        var need = plan.Bill[line.Line - 1];
        return new(
            line.Line,
            need.Words,
            batch.Item.Code,
            batch.Item.Words,
            batch.Id,
            batch.Number,
            batch.Expiry,
            batch.Certificate,
            line.Bin,
            line.Quantity,
            batch.Item.Unit,
            Bill.Convert((double)line.Quantity, batch.Item.Unit, need.Unit)!.Value,
            batch.Item.Need != need.Code,
            MaterialIssue.FitBegan(order, plan) ? MaterialIssue.Usable(order, plan, batch, at)?.Sentence : null
        );
    }

    private static async Task<RecordView> Agree(
        string number,
        AgreeSubstitution ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(Substitution.Objection(order, by, at));
        var plan = WorkPlan.Of(order)!;
        if (ask.Line > plan.Bill.Count)
            throw new MalformedAsk("line", $"line is {ask.Line}; allowed is 1 to {plan.Bill.Count}.");
        var item =
            await store
                .Set<StockItem>()
                .SingleOrDefaultAsync(i => i.SiteId == order.SiteId && i.Code == ask.Item, CancellationToken.None)
            ?? throw new ProcedureRefusal(StockStore.NoItem(ask.Item));
        var record = order.Sign(
            new Substitution(new(ask, plan.Id, plan.Bill[ask.Line - 1].Words, item.Words)),
            by,
            at,
            ask.Why
        );
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    private static async Task<RecordView> Return(
        string number,
        ReturnMaterial ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(MaterialReturn.Objection(order, by, at));
        var plan = WorkPlan.Of(order);
        var books = await Books.Open(store, order, ask.Lines.Select(l => l.Batch), by, at);
        var lines = new List<MovedLine>();
        foreach (var line in ask.Lines)
        {
            if (line.Bin is null && string.IsNullOrWhiteSpace(line.Why))
                throw new MalformedAsk("lines", "lines holds scrap without why; say why it is thrown away.");
            var to = line.Bin is { } code
                ? StockSpot.In((await store.Bin(order.SiteId, code)).Code)
                : StockSpot.Scrapped;
            var batch = books[line.Batch];
            books.Move(batch, line.Quantity, StockSpot.Order, to, line.Why ?? $"returned from {order.Number}");
            var from = plan is null ? null : LineOf(order, plan, batch.Id);
            lines.Add(Moved(batch, line.Quantity, to) with { Line = from?.Line, Uncovers = Uncovers(from, line) });
        }
        var complete =
            plan is not null && Bill.Complete(order, plan, n => -lines.Where(l => l.Line == n).Sum(l => l.Uncovers));
        var record = order.Sign(new MaterialReturn(new(ask, plan?.Id, lines, complete)), by, at, ask.Remark);
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    private static async Task<RecordView> Account(
        string number,
        AccountForMaterial ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(MaterialUse.Objection(order, by, at));
        var books = await Books.Open(store, order, ask.Lines.Select(l => l.Batch), by, at);
        var lines = new List<MovedLine>();
        foreach (var line in ask.Lines)
        {
            if (line.Used + line.Scrapped == 0)
                throw new MalformedAsk(
                    "lines",
                    "lines holds a line with nothing used and nothing scrapped; leave it out."
                );
            foreach (var (quantity, to) in new[] { (line.Used, StockSpot.Used), (line.Scrapped, StockSpot.Scrapped) })
            {
                if (quantity == 0)
                    continue;
                var batch = books[line.Batch];
                books.Move(batch, quantity, StockSpot.Order, to, $"at the pipe of {order.Number}");
                lines.Add(Moved(batch, quantity, to));
            }
        }
        var record = order.Sign(new MaterialUse(new(ask, lines)), by, at, ask.Remark);
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    // The last issue of the batch is the one that is undone.
    private static IssuedLine? LineOf(RepairOrder order, WorkPlan plan, Guid batch) =>
        order
            .InRound<MaterialIssue>()
            .Where(i => i.Asked.Plan == plan.Id)
            .SelectMany(i => i.Asked.Lines)
            .LastOrDefault(l => l.Batch == batch);

    private static double Uncovers(IssuedLine? issued, ReturnLine line) =>
        issued is null ? 0 : issued.Covers * (double)(line.Quantity / issued.Quantity);

    private static MovedLine Moved(Batch batch, decimal quantity, StockSpot to) =>
        new(
            batch.Item.Code,
            batch.Item.Words,
            batch.Id,
            batch.Number,
            quantity,
            batch.Item.Unit,
            to.Bin is { } bin ? $"bin {bin}" : Words.Of(to.Place)
        );
}
