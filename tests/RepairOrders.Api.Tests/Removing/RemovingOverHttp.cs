using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Removing;

public sealed class RemovingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_repair_comes_off_a_dead_line_and_an_inspector_looks_at_the_bare_pipe()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.RemovalOrdered(scene);
        var owed = await scene.Mara.Order(number);
        owed.Title.Stage.ShouldBe(Stage.InService);
        owed.Flags.ShouldContain(f => f.Code == Flags.RemovalOwed);
        (await scene.Olaf.Order(number)).Next!.Action.ShouldBe("ready-order");
        (await scene.Readied(number, ReadinessFor.Removal)).Summary.ShouldStartWith("removal, permit PTW 881");
        (await scene.Tove.Order(number)).Next!.Action.ShouldBe("record-removal");
        await scene.Tove.RecordRemoval(number, await scene.BarePipe(number), await scene.Version(number));
        (await scene.Vera.Order(number)).Next!.Action.ShouldBe("inspect-removal");
        await scene.Vera.InspectRemoval(number, AnOrder.Inspection, await scene.Version(number));
        var off = await scene.Mara.Order(number);
        off.Title.Stage.ShouldBe(Stage.Removed);
        off.Flags.ShouldNotContain(f => f.Code == Flags.RemovalOwed);
        off.NextLook.ShouldBeNull();
        (await scene.Rune.Journal(number)).BrokenAt.ShouldBeNull();
    }

    [Fact]
    public async Task Every_refusal_of_a_removal_order_names_its_reason_and_who_clears_it()
    {
        var scene = await workshop.Scene();
        var bare = await AnOrder.Issued(scene);
        await Refuses("nothing-on-the-pipe", () => scene.OrderOff(bare));
        var number = await AnOrder.RemovalOrdered(scene);
        await Order(AnOrder.Off(scene, 6), "removal-put-off");
        var past = await Should.ThrowAsync<Refused>(() => Order(AnOrder.Off(scene, -1), ""));
        past.Status.ShouldBe(400);
        past.Fields.ShouldContainKey("by");
        await scene.Mara.OrderRemoval(number, AnOrder.Off(scene, 2), await scene.Version(number));
        (
            await Should.ThrowAsync<Refused>(() => scene.Tove.OrderRemoval(number, AnOrder.Off(scene), "1"))
        ).Status.ShouldBe(403);

        async Task Order(OrderRemoval ask, string code)
        {
            var version = await scene.Version(number);
            if (code.Length > 0)
                await scene.Mara.OrderRemoval(number, ask, version).ShouldBeRefused(code);
            else
                await scene.Mara.OrderRemoval(number, ask, version);
        }
    }

    [Fact]
    public async Task Every_refusal_of_a_readiness_for_removal_names_its_reason_and_who_clears_it()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var ready = AnOrder.Readiness(scene, ReadinessFor.Removal);
        await Is("removal-not-ordered", ready);
        await scene.OrderOff(number);
        var isolation = ready.Isolation!;
        var now = scene.Clock.Now;
        await Is("removal-on-dead-line", ready with { Isolation = null, LivePressure = Measure.Of(5, "bar") });
        await Is("not-dead", ready with { Isolation = isolation with { Reading = Measure.Of(1, "bar") } });
        await Is("proved-dead-alone", ready with { Isolation = isolation with { ProvedDeadWith = "Olaf Brekke" } });
        await Is("permit-window", ready with { PermitUntil = ready.PermitFrom });
        await Is("permit-over", ready with { PermitFrom = now.AddHours(-9), PermitUntil = now.AddHours(-1) });
        await Is("gas-test-old", ready with { GasTest = ready.GasTest with { At = now.AddHours(-5) } });
        await Is("gas-test-fails", ready with { GasTest = ready.GasTest with { LowerExplosivePercent = 12 } });
        await Is("competence-lapsed", ready with { Fitters = [scene.IdOf("signe")] });
        await Is("talk-not-signed", ready with { TalkSignedBy = [scene.IdOf("anton")] });
        await Is("standby-missing", ready with { PermitKind = PermitKind.ConfinedSpace });
        await scene.Olaf.ReadyOrder(number, ready);
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.InService);

        Task<Refused> Is(string code, ReadyOrder ask) => Refuses(code, () => scene.Olaf.ReadyOrder(number, ask));
    }

    [Fact]
    public async Task On_class_A_two_take_it_off()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InServiceWith(scene, AnOrder.Grave(scene));
        await scene.OrderOff(number);
        var alone = AnOrder.Readiness(scene, ReadinessFor.Removal) with { Fitters = [scene.IdOf("tove")] };
        await scene.Olaf.ReadyOrder(number, alone).ShouldBeRefused("two-fitters");
    }

    [Fact]
    public async Task Every_refusal_of_a_removal_names_its_reason_and_who_clears_it()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        await Is("removal-not-ordered", scene.Tove);
        await scene.OrderOff(number);
        await Is("not-ready", scene.Tove);
        var ready = AnOrder.Readiness(scene, ReadinessFor.Removal);
        var later = ready with { PermitFrom = scene.Clock.Now.AddHours(1) };
        await scene.Olaf.ReadyOrder(number, later);
        await Is("permit-not-begun", scene.Tove);
        await scene.Readied(number, ReadinessFor.Removal);
        await Is("not-on-the-removal", scene.Vera);
        await scene.Signe.StopJob(number, new("the vent next to it hisses"));
        (await scene.Mara.Order(number)).Flags.ShouldContain(f => f.Code == Flags.Stopped);
        await Is("stopped", scene.Tove);
        await scene.Olaf.ResumeJob(number, new("the vent was blinded"));
        await Is("bare-pipe-photo-missing", scene.Tove);
        var other = await scene.Photograph(number, PhotoOf.Visit);
        await Is("bare-pipe-photo-missing", scene.Tove, other.Id);
        var elsewhere = await AnOrder.Requested(scene, Cast.Weep(scene.Site) with { Line = "FM-200-0012" });
        var there = await scene.Photograph(elsewhere, PhotoOf.Removal);
        await Is("bare-pipe-photo-missing", scene.Tove, there.Id);
        var bare = await scene.BarePipe(number);
        scene.Clock.PassDays(4);
        await Is("permit-over", scene.Tove, bare.Photo);
        await scene.Readied(number, ReadinessFor.Removal);
        await scene.Tove.RecordRemoval(number, bare, await scene.Version(number));
        await scene
            .Tove.RecordRemoval(number, bare, await scene.Version(number))
            .ShouldBeRefused("nothing-on-the-pipe");

        async Task Is(string code, RepairOrdersClient by, Guid? photo = null) =>
            await by.RecordRemoval(number, new(photo, "one pinhole", true), await scene.Version(number))
                .ShouldBeRefused(code);
    }

    [Fact]
    public async Task Nobody_takes_off_what_has_failed_before_it_is_made_safe()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        await scene.Tove.ReportFailure(number, new(LeakState.Drip, "drips at the band"));
        await scene.OrderOff(number);
        await Refuses("failed-not-made-safe", () => scene.Readied(number, ReadinessFor.Removal));
        await scene.Olaf.MakeSafe(number, new(SafeBy.Isolation, "IC 9", null, true, null, null, FailureMode.Seal));
        await scene.Readied(number, ReadinessFor.Removal);
        await scene.Tove.RecordRemoval(number, await scene.BarePipe(number), await scene.Version(number));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Removed);
    }

    [Fact]
    public async Task The_entry_on_the_bare_pipe_is_an_inspectors_who_did_not_take_it_off()
    {
        var scene = await workshop.Scene();
        var on = await AnOrder.InService(scene);
        await Is("not-now", on, scene.Vera);
        var number = on;
        await scene.OrderOff(number);
        var ready = AnOrder.Readiness(scene, ReadinessFor.Removal);
        Guid[] crew = [scene.IdOf("tove"), scene.IdOf("vera")];
        await scene.Olaf.ReadyOrder(number, ready with { Fitters = crew, TalkSignedBy = crew });
        await scene.Tove.RecordRemoval(number, await scene.BarePipe(number), await scene.Version(number));
        await Is("inspector-needed", number, scene.Ines);
        await Is("own-removal", number, scene.Vera);
        await scene.Pavel.InspectRemoval(number, AnOrder.Inspection, await scene.Version(number));

        async Task Is(string code, string order, RepairOrdersClient by) =>
            await by.InspectRemoval(order, AnOrder.Inspection, await scene.Version(order)).ShouldBeRefused(code);
    }
}
