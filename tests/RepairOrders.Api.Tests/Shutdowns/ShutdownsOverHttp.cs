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
