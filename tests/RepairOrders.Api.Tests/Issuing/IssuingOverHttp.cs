using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Issuing;

public sealed class IssuingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task The_pick_list_offers_what_expires_first_and_tells_what_is_wanting()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        var today = scene.Clock.Today;
        var before = await scene.Signe.PickList(number);
        before.Lines.ShouldAllBe(l => l.Picks.Count == 0 && l.Wanting == l.Quantity);
        before.LeastExpiry.ShouldBe(today.AddDays(3));
        await Putty(scene, "late", today.AddDays(300), 100);
        await Putty(scene, "soon", today.AddDays(20), 1);
        await Putty(scene, "too soon", today.AddDays(2), 100);
        var putty = Line(await scene.Signe.PickList(number), "putty");
        putty.Picks.Select(p => p.Number).First().ShouldBe("soon");
        putty.Picks[0].Tone.ShouldBe(Tone.Watch);
        putty.Picks.ShouldNotContain(p => p.Number == "too soon");
        putty.Wanting.ShouldBe(0);
        putty.Picks.Sum(p => p.Quantity).ShouldBe((decimal)putty.Quantity);
    }

    [Fact]
    public async Task What_is_issued_is_traced_to_the_order_and_found_by_a_recall()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        await scene.Issue(number);
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Issued);
        var held = (await scene.Signe.PickList(number)).Out;
        held.ShouldNotBeEmpty();
        foreach (var rest in held)
        {
            var where = await scene.Signe.Whereabouts(rest.Batch);
            where.Orders.Single().Order.ShouldBe(number);
            where.Batch.Balance.OutOnOrders.ShouldBe(rest.Quantity);
        }
        var recalled = await scene.Signe.JudgeBatch(held[0].Batch, new(BatchStanding.Recalled, "maker's notice 12"));
        recalled.Orders.Single().Live.ShouldBeFalse();
    }

    [Fact]
    public async Task A_recall_finds_the_repair_that_is_on_the_pipe()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var putty = (await scene.Signe.Batches(scene.Site, item: "PUTTY")).Rows.Single();
        var where = await scene.Signe.JudgeBatch(putty.Id, new(BatchStanding.Recalled, "maker's notice 12"));
        var held = where.Orders.Single();
        (held.Order, held.Live, held.Stage, held.Out).ShouldBe((number, true, Stage.InService, 0));
        held.Used.ShouldBeGreaterThan(0);
        await workshop.InStore(async store =>
        {
            // Other tests recall batches of their own sites at the same time.
            var here = store.Orders.Where(o => o.SiteId == scene.SiteId).Select(o => o.Id);
            var hits = await Microsoft.EntityFrameworkCore.EntityFrameworkQueryableExtensions.ToListAsync(
                Api.Stock.StockStore.OrdersHoldingRecalled(store).Where(id => here.Contains(id))
            );
            hits.Count.ShouldBe(1);
        });
    }

    [Fact]
    public async Task Every_refusal_of_an_issue_names_its_reason_and_who_clears_it()
    {
        var scene = await workshop.Scene();
        var sized = await AnOrder.Sized(scene);
        await Refuses("no-bill", () => scene.Signe.PickList(sized));
        await Refuses("not-now", () => scene.Signe.IssueMaterial(sized, Issue(scene, [])));

        var number = await AnOrder.Approved(scene);
        var today = scene.Clock.Today;
        var list = await scene.Signe.PickList(number);
        var putty = Line(list, "putty").Line;
        var good = await Putty(scene, "good", today.AddDays(90), 100);
        var locker = await Stores.PuttyBatch(scene, "night", today.AddDays(90), 10, "L-1");
        await Issues("receiver-not-on-order", putty, good.Id, receiver: "mara");
        await Issues("line-not-in-bill", 99, good.Id);
        await Issues("not-in-bin", putty, good.Id, quantity: 101);
        await Issues("bin-not-listed", putty, good.Id, bin: "Z-9");
        // Grams do not compare with sticks.
        await Issues("unit-differs", putty, locker.Id, bin: "L-1");
        var old = await Putty(scene, "old", today.AddDays(2), 10);
        await Issues("batch-expires-before-fit", putty, old.Id);
        var bad = await Putty(scene, "bad", today.AddDays(90), 10);
        await scene.Signe.JudgeBatch(bad.Id, new(BatchStanding.Quarantined, "dented"));
        await Issues("batch-quarantined", putty, bad.Id);
        await scene.Signe.JudgeBatch(bad.Id, new(BatchStanding.Recalled, "notice 12"));
        await Issues("batch-recalled", putty, bad.Id);
        var plate = Line(list, "plate").Line;
        var bare = await Item(scene, "PLATE", "plate", "pcs", certificate: null);
        await Issues("certificate-missing", plate, bare.Id);
        var other = await Item(scene, "SHEET", "sheet", "pcs", certificate: "3.1 no. 7");
        await Issues("substitution-not-agreed", plate, other.Id);
        await Refuses(
            "item-not-listed",
            () => scene.Ines.AgreeSubstitution(number, new(plate, "NONE", "thick enough"))
        );
        await scene.Ines.AgreeSubstitution(number, new(plate, "SHEET", "thicker than drawn, same steel"));
        Line(await scene.Signe.PickList(number), "plate").Picks.ShouldContain(p => p.Item == "SHEET");
        await scene.Signe.IssueMaterial(number, Issue(scene, [new(plate, other.Id, "A-1", 1)]));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Approved);
        await Refuses("not-out-on-order", () => scene.Signe.ReturnMaterial(number, new([new(other.Id, 2, "A-1")])));
        await scene.Issue(number);
        await Refuses("issued-already", () => scene.Signe.IssueMaterial(number, Issue(scene, [])));
        scene.Clock.PassDays(3);
        var next = await AnOrder.Approved(scene);
        await Refuses(
            "batch-expired",
            () => scene.Signe.IssueMaterial(next, Issue(scene, [new(putty, old.Id, "A-1", 1)]))
        );
        // A supervisor opens a locker, not the stores.
        await Refuses(
            "locker-only",
            () => scene.Olaf.IssueMaterial(next, Issue(scene, [new(putty, good.Id, "A-1", 1)]))
        );

        Task<Refused> Issues(
            string code,
            int line,
            Guid batch,
            decimal quantity = 1,
            string bin = "A-1",
            string receiver = "tove"
        ) =>
            Refuses(
                code,
                () =>
                    scene.Signe.IssueMaterial(
                        number,
                        Issue(scene, [new(line, batch, bin, quantity)]) with
                        {
                            Receiver = scene.IdOf(receiver),
                        }
                    )
            );
    }

    [Fact]
    public async Task A_supervisor_issues_from_the_locker_at_night_and_it_is_counted_next_day()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        var need = Line(await scene.Signe.PickList(number), "putty");
        await Stores.Listed(scene, new(scene.Site, "PUTTY", "putty", "putty", "pcs", true, false), "L-1");
        var batch = await scene.Signe.ReceiveBatch(
            new(scene.Site, "PUTTY", "night", scene.Clock.Today.AddDays(90), null, "L-1", 20)
        );
        (await scene.Signe.Bins(scene.Site)).Single().CountDue.ShouldBeNull();
        await scene.Olaf.IssueMaterial(number, Issue(scene, [new(need.Line, batch.Id, "L-1", 1)]));
        // A Monday.
        var bin = (await scene.Signe.Bins(scene.Site)).Single();
        (bin.CountDue, bin.CountOverdue).ShouldBe((scene.Clock.Today.AddDays(1), false));
        scene.Clock.PassDays(2);
        (await scene.Signe.Bins(scene.Site)).Single().CountOverdue.ShouldBeTrue();
        var count = await scene.Signe.CountBin(new(scene.Site, "L-1", [new(batch.Id, 19)]));
        count.Differences.ShouldBeEmpty();
        (await scene.Signe.Bins(scene.Site)).Single().CountDue.ShouldBeNull();
    }

    [Fact]
    public async Task Ten_issues_at_once_never_overdraw_a_batch()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        var band = Line(await scene.Signe.PickList(number), "band");
        var batch = await Item(scene, "BAND", "band", "mm", "3.1 no. 4", 65);
        var tries = Enumerable
            .Range(0, 10)
            .Select(async _ =>
            {
                try
                {
                    await scene.Signe.IssueMaterial(number, Issue(scene, [new(band.Line, batch.Id, "A-1", 10)]));
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
        (await scene.Signe.Whereabouts(batch.Id)).Batch.Balance.ShouldBe(new BatchBalance(65, 5, 60, 0, 0));
        Line(await scene.Signe.PickList(number), "band").Covered.ShouldBe(60, 1e-9);
    }

    [Fact]
    public async Task Material_is_used_scrapped_and_returned_until_nothing_is_out()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitting(scene);
        var held = (await scene.Signe.PickList(number)).Out;
        var first = held[0];
        await scene.Tove.AccountForMaterial(number, new([new(first.Batch, first.Quantity / 2, 0)]));
        await scene.Signe.ReturnMaterial(number, new([new(first.Batch, first.Quantity / 2, null, "bent")]));
        await Refuses("not-out-on-order", () => scene.Tove.AccountForMaterial(number, new([new(first.Batch, 1, 0)])));
        // What comes back once work has begun turns nothing back.
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Fitting);
        await scene.Account(number);
        (await scene.Signe.PickList(number)).Out.ShouldBeEmpty();
        await Refuses("nothing-is-out", () => scene.Signe.ReturnMaterial(number, new([new(first.Batch, 1, "A-1")])));
        var balance = (await scene.Signe.Whereabouts(first.Batch)).Batch.Balance;
        balance.Received.ShouldBe(balance.InBins + balance.OutOnOrders + balance.Used + balance.Scrapped);
        balance.Scrapped.ShouldBe(first.Quantity / 2);
    }

    private static IssueMaterial Issue(Scene scene, IReadOnlyList<IssueLine> lines) =>
        new(scene.IdOf("tove"), lines, HazardSheetsGiven: true);

    private static PickLineView Line(PickListView list, string code) => list.Lines.First(l => l.Code == code);

    private static async Task<BatchView> Putty(Scene scene, string number, DateOnly expiry, decimal quantity)
    {
        await Stores.Listed(
            scene,
            new(scene.Site, "PUTTY", "putty sticks", "putty", "pcs", true, false, Stores.WetPutty),
            "A-1"
        );
        return await scene.Signe.ReceiveBatch(new(scene.Site, "PUTTY", number, expiry, null, "A-1", quantity));
    }

    private static async Task<BatchView> Item(
        Scene scene,
        string code,
        string need,
        string unit,
        string? certificate,
        decimal quantity = 10
    )
    {
        await Stores.Listed(scene, new(scene.Site, code, $"{need}, steel", need, unit, false, true), "A-1");
        return await scene.Signe.ReceiveBatch(new(scene.Site, code, $"{code} lot", null, certificate, "A-1", quantity));
    }
}
