using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Stock;

public sealed class StockOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_batch_is_received_shifted_and_scrapped_and_its_books_balance()
    {
        var scene = await workshop.Scene();
        var batch = await Stores.PuttyBatch(scene, "7", scene.Clock.Today.AddDays(200), 500);
        await scene.Signe.AddBin(new DescribeBin(scene.Site, "B-2", "stores, second row", false));
        await scene.Signe.MoveStock(new MoveStock(batch.Id, StockMoveKind.Shift, "A-1", "B-2", 200, "nearer the door"));
        await scene.Signe.MoveStock(new MoveStock(batch.Id, StockMoveKind.Scrap, "B-2", null, 50, "tin dropped"));
        var where = await scene.Mara.Whereabouts(batch.Id);
        where.Batch.Balance.ShouldBe(new BatchBalance(500, 450, 0, 0, 50));
        where.Bins.ShouldBe([new BinHolding("A-1", 300), new BinHolding("B-2", 150)]);
        var moves = await scene.Rune.StockMoves(batch.Id);
        moves
            .Select(m => (m.From, m.To, m.Quantity))
            .ShouldBe([("outside", "A-1", 500), ("A-1", "B-2", 200), ("B-2", "scrapped", 50)]);
    }

    [Fact]
    public async Task Every_change_of_an_item_and_a_bin_stands_in_its_history()
    {
        var scene = await workshop.Scene();
        await Stores.PuttyBatch(scene, "7", scene.Clock.Today.AddDays(200), 500);
        var item = (await scene.Signe.StockItems(scene.Site)).Rows[0];
        await scene.Signe.ChangeStockItem(item.Id, item.Said with { Words = "putty, other tin" }, item.Version);
        var changes = await scene.Rune.StockItemChanges(item.Id);
        changes.Select(c => c.What).ShouldBe(["item added", "item changed"]);
        changes[1].Old!.ShouldContain(item.Said.Words);
        changes[1].New!.ShouldContain("putty, other tin");
        var bin = (await scene.Signe.Bins(scene.Site))[0];
        await scene.Signe.ChangeBin(bin.Id, bin.Said with { Words = "moved to the back" }, bin.Version);
        (await scene.Rune.BinChanges(bin.Id)).Select(c => c.By).ShouldAllBe(by => by == "Signe Dahl");
        (await scene.Rune.VerifyChanges()).Broken.ShouldBeEmpty();
        var other = await workshop.Scene();
        (await Should.ThrowAsync<Refused>(() => other.Signe.BinChanges(bin.Id))).Status.ShouldBe(404);
    }

    [Fact]
    public async Task More_than_a_bin_holds_is_refused_and_nothing_moves()
    {
        var scene = await workshop.Scene();
        var batch = await Stores.PuttyBatch(scene, "7", scene.Clock.Today.AddDays(200), 500);
        var no = await Should.ThrowAsync<Refused>(() =>
            scene.Signe.MoveStock(new MoveStock(batch.Id, StockMoveKind.Scrap, "A-1", null, 501, "tin dropped"))
        );
        (no.Status, no.Code).ShouldBe((409, "not-in-bin"));
        no.Clears.ShouldBe("storekeeper");
        (await scene.Signe.Whereabouts(batch.Id)).Batch.Balance.InBins.ShouldBe(500);
    }

    [Fact]
    public async Task Ten_takings_at_once_never_overdraw_a_bin()
    {
        var scene = await workshop.Scene();
        var batch = await Stores.PuttyBatch(scene, "7", scene.Clock.Today.AddDays(200), 65);
        var tries = Enumerable
            .Range(0, 10)
            .Select(async i =>
            {
                try
                {
                    await scene.Signe.MoveStock(
                        new MoveStock(batch.Id, StockMoveKind.Scrap, "A-1", null, 10, $"tin {i} dropped")
                    );
                    return "";
                }
                catch (Refused no)
                {
                    return no.Code;
                }
            });
        var answers = await Task.WhenAll(tries);
        answers.Count(a => a.Length == 0).ShouldBe(6);
        answers.Where(a => a.Length > 0).Distinct().ShouldBe(["not-in-bin"]);
        (await scene.Signe.Whereabouts(batch.Id)).Batch.Balance.ShouldBe(new BatchBalance(65, 5, 0, 0, 60));
    }

    [Fact]
    public async Task Unknown_items_bins_and_taken_names_are_refused_each_with_its_code()
    {
        var scene = await workshop.Scene();
        await Stores.PuttyBatch(scene, "7", scene.Clock.Today.AddDays(200), 500);
        await Refuses("item-not-listed", () => scene.Signe.ReceiveBatch(Receipt(scene) with { Item = "NONE" }));
        await Refuses("bin-not-listed", () => scene.Signe.ReceiveBatch(Receipt(scene) with { Bin = "Z-9" }));
        await Refuses("expiry-missing", () => scene.Signe.ReceiveBatch(Receipt(scene) with { Expiry = null }));
        await Refuses(
            "batch-differs",
            () => scene.Signe.ReceiveBatch(Receipt(scene) with { Expiry = scene.Clock.Today })
        );
        await Refuses("item-code-taken", () => scene.Signe.AddStockItem(Stores.Putty(scene.Site)));
        await Refuses("bin-taken", () => scene.Signe.AddBin(new DescribeBin(scene.Site, "A-1", "again", false)));
        await Refuses(
            "item-not-listed",
            () => scene.Signe.AddBin(new DescribeBin(scene.Site, "L-1", "locker", true, [new KitLine("NONE", 1)]))
        );
    }

    [Fact]
    public async Task Fields_that_cannot_be_are_named()
    {
        var scene = await workshop.Scene();
        await Stores.PuttyBatch(scene, "7", scene.Clock.Today.AddDays(200), 500);
        var none = await Should.ThrowAsync<Refused>(() =>
            scene.Signe.ReceiveBatch(Receipt(scene) with { Quantity = 0 })
        );
        (none.Status, none.Fields.Keys.Single()).ShouldBe((400, "quantity"));
        var wrong = await Should.ThrowAsync<Refused>(() =>
            scene.Signe.AddStockItem(
                Stores.Putty(scene.Site) with
                {
                    Code = "PUT-13",
                    Limits = Stores.WetPutty with { GreatestTemperature = Measure.Of(2, "°C") },
                }
            )
        );
        wrong.Fields["limits.greatestTemperature"].Single().ShouldContain("allowed is 5 °C or more");
    }

    [Fact]
    public async Task A_recall_finds_the_bins_and_only_an_engineer_frees_the_batch()
    {
        var scene = await workshop.Scene();
        var batch = await Stores.PuttyBatch(scene, "7-K", scene.Clock.Today.AddDays(200), 500);
        var found = await scene.Signe.Batches(scene.Site, number: "7");
        found.Rows.Single().Id.ShouldBe(batch.Id);
        var where = await scene.Signe.JudgeBatch(batch.Id, new JudgeBatch(BatchStanding.Recalled, "maker's notice 12"));
        where.Bins.Single().ShouldBe(new BinHolding("A-1", 500));
        where.Batch.StandingWhy.ShouldBe("maker's notice 12");
        (await scene.Signe.StockItems(scene.Site)).Rows.Single().InBins.ShouldBe(0);
        await Refuses(
            "engineer-frees",
            () => scene.Signe.JudgeBatch(batch.Id, new JudgeBatch(BatchStanding.Good, "it looks fine"))
        );
        where = await scene.Ines.JudgeBatch(batch.Id, new JudgeBatch(BatchStanding.Good, "not of the recalled lot"));
        where.Judgements.Select(j => j.Standing).ShouldBe([BatchStanding.Recalled, BatchStanding.Good]);
    }

    [Fact]
    public async Task A_count_finds_what_is_missing_and_what_is_over()
    {
        var scene = await workshop.Scene();
        var seven = await Stores.PuttyBatch(scene, "7", scene.Clock.Today.AddDays(200), 500);
        var eight = await Stores.PuttyBatch(scene, "8", scene.Clock.Today.AddDays(300), 200);
        var nine = await Stores.PuttyBatch(scene, "9", scene.Clock.Today.AddDays(300), 90);
        var count = await scene.Signe.CountBin(
            new CountBin(scene.Site, "A-1", [new CountLine(seven.Id, 480), new CountLine(eight.Id, 210)])
        );
        count.Differences.ShouldBe([
            new CountDifference("7", "PUT-12", 500, 480),
            new CountDifference("8", "PUT-12", 200, 210),
            new CountDifference("9", "PUT-12", 90, 0),
        ]);
        (await scene.Signe.Whereabouts(seven.Id)).Batch.Balance.ShouldBe(new BatchBalance(500, 480, 0, 0, 20));
        (await scene.Signe.Whereabouts(eight.Id)).Batch.Balance.ShouldBe(new BatchBalance(210, 210, 0, 0, 0));
        (await scene.Signe.Whereabouts(nine.Id)).Batch.Balance.Scrapped.ShouldBe(90);
    }

    [Fact]
    public async Task A_kit_below_its_minimum_shows_until_it_is_filled()
    {
        var scene = await workshop.Scene();
        var batch = await Stores.PuttyBatch(scene, "7", scene.Clock.Today.AddDays(200), 300, "L-1");
        var bin = (await scene.Signe.Bins(scene.Site)).Single();
        bin.Wanting.ShouldBeEmpty();
        bin = await scene.Signe.ChangeBin(bin.Id, bin.Said with { Kit = [new KitLine("PUT-12", 500)] }, bin.Version);
        bin.Wanting.Single().InBin.ShouldBe(300);
        // What has expired is no kit.
        scene.Clock.PassDays(201);
        (await scene.Signe.Bins(scene.Site)).Single().Wanting.Single().InBin.ShouldBe(0);
        (await scene.Signe.Whereabouts(batch.Id)).Batch.Expired.ShouldBeTrue();
        await Stores.PuttyBatch(scene, "8", scene.Clock.Today.AddDays(200), 500, "L-1");
        (await scene.Signe.Bins(scene.Site)).Single().Wanting.ShouldBeEmpty();
    }

    [Fact]
    public async Task Two_people_changing_one_item_lose_nothing()
    {
        var scene = await workshop.Scene();
        var item = await scene.Signe.AddStockItem(Stores.Putty(scene.Site));
        await scene.Ines.ChangeStockItem(item.Id, item.Said with { Words = "putty, 250 g tin" }, item.Version);
        var late = await Should.ThrowAsync<Refused>(() =>
            scene.Signe.ChangeStockItem(item.Id, item.Said with { Words = "putty, 1 kg tin" }, item.Version)
        );
        late.Status.ShouldBe(412);
        (await scene.Signe.StockItems(scene.Site)).Rows.Single().Said.Words.ShouldBe("putty, 250 g tin");
    }

    [Fact]
    public async Task Lists_come_in_pages_and_other_sites_are_not_seen()
    {
        var scene = await workshop.Scene();
        for (var i = 1; i <= 5; i++)
            await Stores.PuttyBatch(scene, $"lot {i}", scene.Clock.Today.AddDays(600 - 100 * i), 10);
        var first = await scene.Signe.Batches(scene.Site, limit: 2);
        var second = await scene.Signe.Batches(scene.Site, after: first.Next, limit: 2);
        var last = await scene.Signe.Batches(scene.Site, after: second.Next, limit: 2);
        first
            .Rows.Concat(second.Rows)
            .Concat(last.Rows)
            .Select(r => r.Number)
            .ShouldBe(["lot 5", "lot 4", "lot 3", "lot 2", "lot 1"]);
        last.Next.ShouldBeNull();
        var elsewhere = await workshop.Scene();
        (await Should.ThrowAsync<Refused>(() => elsewhere.Signe.Batches(scene.Site))).Status.ShouldBe(404);
        (await Should.ThrowAsync<Refused>(() => elsewhere.Signe.Whereabouts(first.Rows[0].Id))).Status.ShouldBe(404);
    }

    [Fact]
    public async Task A_technician_reads_the_books_and_changes_nothing()
    {
        var scene = await workshop.Scene();
        var batch = await Stores.PuttyBatch(scene, "7", scene.Clock.Today.AddDays(200), 500);
        (await scene.Tove.Batches(scene.Site)).Rows.Count.ShouldBe(1);
        var no = await Should.ThrowAsync<Refused>(() =>
            scene.Tove.MoveStock(new MoveStock(batch.Id, StockMoveKind.Scrap, "A-1", null, 1, "tin dropped"))
        );
        no.Status.ShouldBe(403);
    }

    private static ReceiveBatch Receipt(Scene scene) =>
        new(scene.Site, "PUT-12", "7", scene.Clock.Today.AddDays(200), null, "A-1", 10);
}
