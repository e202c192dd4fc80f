using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Issuing;

/// <summary>The storekeeper's cutting for the day: the bands of all orders that wait, from the batches of their pick lists.</summary>
public sealed class CutListOverHttp(Workshop workshop)
{
    [Fact]
    public async Task The_bands_of_all_waiting_orders_are_cut_from_one_plan()
    {
        var scene = await workshop.Scene();
        var (first, second) = (await AnOrder.Approved(scene), await AnOrder.Approved(scene));
        (await scene.Signe.CutList(scene.Site)).Items.ShouldBeEmpty("no batch can be cut yet");
        var need = (await scene.Signe.PickList(first)).Lines.Single(l => l.Code == "band");
        await Stores.Receive(scene, "band", "mm", 10_000);

        var list = await scene.Signe.CutList(scene.Site);
        var item = list.Items.ShouldHaveSingleItem();
        var dimensions = (await scene.Design(first)).Method;
        var pieces = (int)(dimensions["bandCount"] * dimensions["piecesPerBand"])!.Value;
        item.Bands.Count(b => b.Order == first).ShouldBe(pieces);
        item.Bands.Count.ShouldBe(2 * pieces);
        item.Bands.Sum(b => b.LengthMm).ShouldBe(2 * need.Quantity, 1e-6);
        var plan = item.Plan.Result;
        (plan.Found, plan.Proven, plan.Cuts.Count).ShouldBe((true, true, 1));
        plan.Cuts.SelectMany(c => c.Pieces)
            .Select(p => p.Band)
            .ShouldBe(item.Bands.Select(b => b.Code), ignoreOrder: true);
        plan.Cuts[0].LeftMm.ShouldBe(10_000 - 2 * need.Quantity, 1);

        // As coils of 2 m it is no length of ten any more.
        var coils = (await scene.Signe.CutList(scene.Site, 2000)).Items.Single().Plan.Result;
        coils.Cuts.ShouldAllBe(c => c.LengthMm == 2000);

        await scene.Issue(first);
        var rest = (await scene.Signe.CutList(scene.Site)).Items.Single();
        rest.Bands.ShouldAllBe(b => b.Order == second);
    }

    [Fact]
    public async Task Nothing_is_cut_that_no_pick_list_may_take()
    {
        var scene = await workshop.Scene();
        await AnOrder.Approved(scene);
        await Stores.Receive(scene, "band", "mm", 10_000);
        var bare = new ReceiveBatch(scene.Site, "BAND", "no papers", null, null, "A-1", 90_000);
        await scene.Signe.ReceiveBatch(bare);
        var cut = (await scene.Signe.CutList(scene.Site)).Items.Single().Plan.Result.Cuts.Single();
        cut.LengthMm.ShouldBe(10_000, "class C takes bands with a certificate only");
    }

    [Fact]
    public async Task A_coil_that_is_none_and_a_site_of_others_are_refused_by_name()
    {
        var scene = await workshop.Scene();
        var coil = await Should.ThrowAsync<Refused>(() => scene.Signe.CutList(scene.Site, 3));
        coil.Status.ShouldBe(400);
        coil.Fields.Keys.ShouldContain("coilMm");
        (await Should.ThrowAsync<Refused>(() => scene.Signe.CutList("nowhere"))).Status.ShouldBe(404);
    }
}
