using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Closing;

public sealed class ClosingOverHttp(Workshop workshop)
{
    private static readonly CloseOrder WithLessons = AnOrder.CloseOut with
    {
        ChangeControlClosed = "MOC-3, closed out",
        Lessons = "rinse the low point each spring",
    };

    [Fact]
    public async Task A_class_C_order_is_closed_by_a_supervisor_who_did_not_fit_it()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Closed(scene);
        var order = await scene.Mara.Order(number);
        order.Title.Stage.ShouldBe(Stage.Closed);
        order.Actions.Where(a => a.Objection is null).Select(a => a.Action).ShouldBe(["reopen-order"]);
        (await scene.Rune.Journal(number)).BrokenAt.ShouldBeNull();
    }

    [Fact]
    public async Task Every_refusal_of_a_close_out_names_its_reason_and_who_clears_it()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InServiceWith(scene, AnOrder.Judged(scene));
        await Is("not-now", AnOrder.CloseOut);
        var lars = await scene.Hire(
            new("lars", "Lars Eide", [Role.Technician, Role.Supervisor], [.. Cast.Methods]),
            null,
            null
        );
        await scene.OrderOff(number);
        Guid[] crew = [scene.IdOf("tove"), scene.IdOf("lars")];
        var ready = AnOrder.Readiness(scene, ReadinessFor.Removal);
        await scene.Olaf.ReadyOrder(number, ready with { Fitters = crew, TalkSignedBy = crew });
        await scene.Tove.RecordRemoval(number, await scene.BarePipe(number), await scene.Version(number));
        await scene.Vera.InspectRemoval(number, AnOrder.Inspection, await scene.Version(number));
        await scene.Mara.RecordPermanentFix(number, AnOrder.Spool(scene), await scene.Version(number));

        await Is("close-capacity", WithLessons, scene.Henrik);
        await Is("fitter-may-not-close", WithLessons, lars);
        await Is("cause-not-confirmed", WithLessons with { Cause = DefectCause.Unknown });
        await Is("change-control-open", WithLessons with { ChangeControlClosed = null });
        await Is("tag-not-back", WithLessons with { TagBack = false });
        const string Lost = "gone with the cut-out piece; scrapyard and shift told to hand it in";
        await scene.Olaf.CloseOrder(
            number,
            WithLessons with
            {
                TagBack = false,
                TagLost = Lost,
            },
            await scene.Version(number)
        );
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Closed);
        await Is("not-now", WithLessons);

        async Task Is(string code, CloseOrder ask, RepairOrdersClient? by = null) =>
            await (by ?? scene.Olaf).CloseOrder(number, ask, await scene.Version(number)).ShouldBeRefused(code);
    }

    [Fact]
    public async Task Nothing_is_closed_while_material_is_out_on_it()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitted(scene);
        await scene.Proved(number);
        await scene.Mara.AcceptFirstLook(number, new());
        await scene.Olaf.AcceptRepair(number, new("day shift", IsolationsRemoved: true));
        (await scene.Signe.PickList(number)).Out.ShouldNotBeEmpty();
        await scene.PutRight(number);
        var no = await scene
            .Olaf.CloseOrder(number, AnOrder.CloseOut, await scene.Version(number))
            .ShouldBeRefused("stores-not-balanced");
        no.Message.ShouldContain("batch band lot");
        no.Clears.ShouldBe("storekeeper");
        await scene.Account(number);
        await scene.Olaf.CloseOrder(number, AnOrder.CloseOut, await scene.Version(number));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Closed);
    }

    [Fact]
    public async Task A_failure_is_closed_with_its_mode_stated_and_what_was_learnt()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var failure = await scene.Tove.ReportFailure(number, new(LeakState.Drip, "drips at the band"));
        await scene.Olaf.MakeSafe(
            number,
            new(SafeBy.Isolation, "IC 9", null, true, null, null, FailureMode.NotYetKnown)
        );
        await scene.PutRight(number);
        await Is("failure-mode-unknown", WithLessons);
        await scene.Ines.StateFailureMode(number, new(failure.Id, FailureMode.Seal, "the putty let go of wet rust"));
        await Is("lessons-missing", WithLessons with { Lessons = " " });
        await scene.Olaf.CloseOrder(number, WithLessons, await scene.Version(number));

        async Task Is(string code, CloseOrder ask) =>
            await scene.Olaf.CloseOrder(number, ask, await scene.Version(number)).ShouldBeRefused(code);
    }

    [Fact]
    public async Task A_class_A_order_is_closed_once_an_engineer_has_countersigned()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InServiceWith(scene, AnOrder.Grave(scene));
        await scene.PutRight(number);
        await Countersign(scene.Ines, Guid.NewGuid(), "no-close-out-waits");
        await scene
            .Olaf.CloseOrder(number, WithLessons with { Lessons = null }, await scene.Version(number))
            .ShouldBeRefused("lessons-missing");
        Cast.Member hats = new("berit", "Berit Moe", [Role.Supervisor, Role.IntegrityEngineer], []);
        var berit = await scene.Hire(hats, null, null);
        var closeOut = await berit.CloseOrder(number, WithLessons, await scene.Version(number));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Fixed);
        (await scene.Ines.Order(number)).Next!.Action.ShouldBe("countersign-close-out");
        await Countersign(berit, closeOut.Id, "own-close-out");
        await Countersign(scene.Ines, Guid.NewGuid(), "other-close-out");

        // A fix entered anew is another fix than the one that was closed on.
        await scene.Mara.RecordPermanentFix(number, AnOrder.Spool(scene), await scene.Version(number));
        await Countersign(scene.Ines, closeOut.Id, "no-close-out-waits");
        closeOut = await berit.CloseOrder(number, WithLessons, await scene.Version(number));
        await scene.Ines.CountersignCloseOut(number, new(closeOut.Id, "seen the pieces"));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Closed);
        (await scene.Rune.Journal(number)).BrokenAt.ShouldBeNull();

        Task<Refused> Countersign(RepairOrdersClient by, Guid id, string code) =>
            by.CountersignCloseOut(number, new(id)).ShouldBeRefused(code);
    }

    [Fact]
    public async Task A_closed_order_is_reopened_with_a_reason_and_closed_again()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fixed(scene);
        await scene
            .Ines.ReopenOrder(number, "drawing is wrong", await scene.Version(number))
            .ShouldBeRefused("not-closed");
        await scene.Olaf.CloseOrder(number, AnOrder.CloseOut, await scene.Version(number));
        var version = await scene.Version(number);
        (await Should.ThrowAsync<Refused>(() => scene.Ines.ReopenOrder(number, "", version))).Status.ShouldBe(400);
        await scene.Ines.ReopenOrder(number, "the drawing shows the old route", version);
        var open = await scene.Mara.Order(number);
        open.Title.Stage.ShouldBe(Stage.Fixed);
        var aside = open.Records.Single(r => r.Kind == "close-out");
        (aside.SetAsideBy, aside.SetAsideWhy).ShouldBe(("Ines Duarte", "the drawing shows the old route"));
        (await Should.ThrowAsync<Refused>(() => scene.Ines.ReopenOrder(number, "again", version))).Status.ShouldBe(412);
        await scene.Olaf.CloseOrder(number, AnOrder.CloseOut, open.Version);
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Closed);
        (await scene.Rune.Journal(number)).BrokenAt.ShouldBeNull();
    }
}
