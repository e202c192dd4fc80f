using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Shutdowns;

public sealed class ShutdownsOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_shutdown_is_moved_and_keeps_its_moves()
    {
        var scene = await workshop.Scene();
        var day = scene.Clock.Today.AddDays(150);
        var added = await scene.Mara.AddShutdown(new(scene.Site, "January stop", "Pump house 2", day));
        var moved = await scene.Henrik.MoveShutdown(
            added.Id,
            new(day.AddDays(120), "spares late"),
            (await scene.Rune.Shutdown(added.Id)).Version
        );
        moved.Start.ShouldBe(day.AddDays(120));
        var move = moved.Moves.Single();
        (move.From, move.To, move.By, move.Why).ShouldBe((day, day.AddDays(120), "Henrik Vold", "spares late"));
        (await scene.Rune.Shutdowns(scene.Site)).Single().Name.ShouldBe("January stop");
    }

    [Fact]
    public async Task A_shutdown_is_not_moved_on_an_old_version_nor_into_the_past_nor_nowhere()
    {
        var scene = await workshop.Scene();
        var day = scene.Clock.Today.AddDays(10);
        var added = await scene.Mara.AddShutdown(new(scene.Site, "Felt change", null, day));
        var version = (await scene.Mara.Shutdown(added.Id)).Version;
        await scene.Mara.MoveShutdown(added.Id, new(day.AddDays(1), "crew"), version);
        var stale = () => scene.Mara.MoveShutdown(added.Id, new(day.AddDays(2), "crew"), version);
        (await Should.ThrowAsync<Refused>(stale)).Status.ShouldBe(412);
        version = (await scene.Mara.Shutdown(added.Id)).Version;
        (await Code(() => scene.Mara.MoveShutdown(added.Id, new(day.AddDays(1), "again"), version))).ShouldBe(
            "shutdown-not-moved"
        );
        (await Code(() => scene.Mara.MoveShutdown(added.Id, new(day.AddDays(-11), "back"), version))).ShouldBe(
            "shutdown-in-the-past"
        );
        (await Code(() => scene.Mara.AddShutdown(new(scene.Site, "Felt change", null, day)))).ShouldBe(
            "shutdown-named-already"
        );
    }

    [Fact]
    public async Task One_put_off_moves_no_end_date_and_lists_who_loses_out_one_brought_forward_moves_them_in()
    {
        var scene = await workshop.Scene();
        var day = scene.Clock.Today.AddDays(90);
        var stop = await scene.Mara.AddShutdown(new(scene.Site, "summer stop", "Pump house 2", day));
        var number = await AnOrder.InService(scene);
        (await scene.Mara.Order(number)).Title.EndDate.ShouldBe(day, "the shutdown ends it before the class does");

        var put = await Move(day.AddDays(40));
        (await scene.Mara.Order(number)).Title.EndDate.ShouldBe(day);
        var loser = put.Leaning.Single();
        (loser.Number, loser.LosesOut, loser.DaysShort, loser.EndDate, loser.Owner).ShouldBe(
            (number, true, 40, day, "Mara Lindqvist")
        );

        var soon = day.AddDays(-30);
        var brought = await Move(soon);
        var order = await scene.Mara.Order(number);
        order.Title.EndDate.ShouldBe(soon);
        order
            .Records.Single(r => r.Kind == "end-date-moved-in")
            .Summary.ShouldContain("summer stop was brought forward");
        brought.Leaning.Single().LosesOut.ShouldBeFalse();

        await Move(day);
        (await scene.Mara.Order(number)).Title.EndDate.ShouldBe(soon, "nothing but an extension moves it out");
        (await scene.Rune.Journal(number)).BrokenAt.ShouldBeNull();
        await scene.TakeOff(number);
        (await scene.Mara.Shutdown(stop.Id)).Leaning.ShouldBeEmpty("what is off the pipe waits for no shutdown");

        async Task<ShutdownView> Move(DateOnly to) =>
            await scene.Mara.MoveShutdown(
                stop.Id,
                new(to, "the turbine rotor"),
                (await scene.Mara.Shutdown(stop.Id)).Version
            );
    }

    [Fact]
    public async Task Another_shutdown_of_the_area_brought_forward_is_the_next_chance_too()
    {
        var scene = await workshop.Scene();
        var (first, later) = (scene.Clock.Today.AddDays(90), scene.Clock.Today.AddDays(150));
        await scene.Mara.AddShutdown(new(scene.Site, "summer stop", null, first));
        var elsewhere = await scene.Mara.AddShutdown(new(scene.Site, "yard stop", "Yard", later));
        var second = await scene.Mara.AddShutdown(new(scene.Site, "pump stop", "Pump house 2", later));
        var number = await AnOrder.InService(scene);
        var soon = scene.Clock.Today.AddDays(40);
        await Move(elsewhere.Id, soon);
        (await scene.Mara.Order(number)).Title.EndDate.ShouldBe(first, "the yard is another area");
        await Move(second.Id, soon);
        (await scene.Mara.Order(number)).Title.EndDate.ShouldBe(soon);
        (await scene.Mara.Shutdown(elsewhere.Id)).Leaning.ShouldBeEmpty();
        var moved = (await scene.Mara.Shutdown(second.Id)).Leaning.Single();
        (moved.Number, moved.LosesOut).ShouldBe((number, false));

        await Move(second.Id, soon.AddDays(20));
        var loser = (await scene.Mara.Shutdown(second.Id)).Leaning.Single();
        (loser.Number, loser.DaysShort).ShouldBe((number, 20), "put off again, it leaves behind what it moved in");

        async Task Move(Guid id, DateOnly to) =>
            await scene.Mara.MoveShutdown(id, new(to, "crew is free"), (await scene.Mara.Shutdown(id)).Version);
    }

    [Fact]
    public async Task A_design_that_awaits_signatures_is_sized_again_when_its_shutdown_comes_sooner()
    {
        var scene = await workshop.Scene();
        var day = scene.Clock.Today.AddDays(90);
        var stop = await scene.Mara.AddShutdown(new(scene.Site, "summer stop", null, day));
        var number = await AnOrder.Sized(scene);
        var sooner = new MoveShutdown(day.AddDays(-30), "the rotor is here");
        await scene.Mara.MoveShutdown(stop.Id, sooner, (await scene.Mara.Shutdown(stop.Id)).Version);
        var print = await scene.Fingerprint(number);
        await scene
            .Mara.Approve(number, new(print, ApprovalCapacity.Supervisor))
            .ShouldBeRefused("shutdown-brought-forward");
        await scene.Ines.Size(number, AnOrder.Sizing(scene), await scene.Version(number));
        await scene.Mara.Approve(number, new(await scene.Fingerprint(number), ApprovalCapacity.Supervisor));
        (await scene.Mara.Order(number)).Title.EndDate.ShouldBe(sooner.Start);
    }

    [Fact]
    public async Task A_technician_plans_no_shutdown_and_a_stranger_to_the_site_sees_none()
    {
        var here = await workshop.Scene();
        var there = await workshop.Scene();
        var ask = new AddShutdown(here.Site, "Felt change", null, here.Clock.Today);
        (await Should.ThrowAsync<Refused>(() => here.Tove.AddShutdown(ask))).Status.ShouldBe(403);
        (await Should.ThrowAsync<Refused>(() => there.Mara.AddShutdown(ask))).Status.ShouldBe(404);
        var added = await here.Mara.AddShutdown(ask);
        (await Should.ThrowAsync<Refused>(() => there.Mara.Shutdown(added.Id))).Status.ShouldBe(404);
        (await there.Mara.Shutdowns()).ShouldBeEmpty();
    }

    private static async Task<string> Code(Func<Task> act) => (await Should.ThrowAsync<Refused>(act)).Code;
}
