using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Owning;

public sealed class OwningOverHttp(Workshop workshop)
{
    [Fact]
    public async Task The_owner_changes_once_the_new_one_accepts()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var offer = await scene.Mara.OfferHandOver(number, new(scene.IdOf("tove"), "I change to the night shift"));
        (await scene.Mara.Order(number)).Title.Owner.ShouldBe("Mara Lindqvist", "an offer moves nothing");
        (await scene.Tove.Order(number)).Next!.Action.ShouldBe("accept-hand-over");
        await scene.Tove.AcceptHandOver(number, new(offer.Id), await scene.Version(number));
        (await scene.Mara.Order(number)).Title.Owner.ShouldBe("Tove Aune");
    }

    [Fact]
    public async Task A_design_signed_again_in_service_names_no_other_owner()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        var other = AnOrder.Sizing(scene) with { Owner = scene.IdOf("anton") };
        await scene.Ines.Size(number, other, await scene.Version(number));
        var print = await scene.Fingerprint(number);
        await scene.Mara.Approve(number, new(print, ApprovalCapacity.Supervisor));
        await scene.Pavel.Approve(number, new(print, ApprovalCapacity.Engineer));
        (await scene.Mara.Order(number)).Title.Owner.ShouldBe("Mara Lindqvist");
    }

    [Fact]
    public async Task An_owner_who_took_it_before_the_fit_takes_on_the_first_look()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        var offer = await scene.Mara.OfferHandOver(number, new(scene.IdOf("anton"), "on leave from tomorrow"));
        await scene.Anton.AcceptHandOver(number, new(offer.Id), await scene.Version(number));
        await scene.Mara.AcceptFirstLook(number, new()).ShouldBeRefused("not-the-owner");
        await scene.Anton.AcceptFirstLook(number, new());
        (await scene.Mara.Order(number)).Title.Owner.ShouldBe("Anton Reyes");
    }

    [Fact]
    public async Task An_owner_who_leaves_is_told_by_a_flag_and_a_supervisor_hands_over_for_him()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.HandedOver(scene);
        await scene.Leaves("tove");
        (await scene.Mara.Order(number)).Flags.ShouldContain(f => f.Code == Flags.NoOwner);
        var offer = await scene.Olaf.OfferHandOver(number, new(scene.IdOf("anton"), "Tove has left"));
        await scene.Anton.AcceptHandOver(number, new(offer.Id), await scene.Version(number));
        var order = await scene.Mara.Order(number);
        order.Title.Owner.ShouldBe("Anton Reyes");
        order.Flags.ShouldNotContain(f => f.Code == Flags.NoOwner);
    }

    [Fact]
    public async Task Every_refusal_of_a_hand_over_names_its_reason_and_who_clears_it()
    {
        var scene = await workshop.Scene();
        var young = await AnOrder.Requested(scene);
        OfferHandOver To(string name) => new(scene.IdOf(name), "change of shift");
        await scene.Mara.OfferHandOver(young, To("anton")).ShouldBeRefused("no-owner-yet");
        var number = await AnOrder.InService(scene);
        await scene.Anton.OfferHandOver(number, To("tove")).ShouldBeRefused("not-yours-to-hand-over");
        await scene.Mara.OfferHandOver(number, To("signe")).ShouldBeRefused("new-owner-cannot-sign");
        await scene
            .Mara.OfferHandOver(number, new(Guid.NewGuid(), "change of shift"))
            .ShouldBeRefused("new-owner-cannot-sign");
        await scene.Mara.OfferHandOver(number, To("mara")).ShouldBeRefused("owner-already");
        await Accept(scene.Anton, Guid.NewGuid(), "no-hand-over");
        var first = await scene.Mara.OfferHandOver(number, To("tove"));
        await Accept(scene.Anton, first.Id, "hand-over-not-yours");
        var second = await scene.Mara.OfferHandOver(number, To("anton"));
        await Accept(scene.Tove, first.Id, "hand-over-not-yours");
        await Accept(scene.Anton, first.Id, "other-hand-over");
        await scene.Anton.AcceptHandOver(number, new(second.Id), await scene.Version(number));
        await Accept(scene.Anton, second.Id, "no-hand-over");

        async Task Accept(RepairOrdersClient by, Guid offer, string code) =>
            await by.AcceptHandOver(number, new(offer), await scene.Version(number)).ShouldBeRefused(code);
    }

    [Fact]
    public async Task A_closed_order_is_handed_to_nobody()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Closed(scene);
        await scene.Mara.OfferHandOver(number, new(scene.IdOf("anton"), "shift")).ShouldBeRefused("at-an-end");
    }
}
