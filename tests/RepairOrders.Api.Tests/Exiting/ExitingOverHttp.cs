using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Exiting;

public sealed class ExitingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_request_is_returned_with_a_list_and_sent_again()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Assessed(scene);
        var back = new ExitOrder(ExitKind.Returned, ExitCapacity.Engineer, "cannot be judged like this");
        await scene.Ines.Exit(number, back).ShouldBeRefused("returned-without-list");
        await scene.Ines.Exit(number, back with { Missing = ["a photograph", "which valve shuts it off"] });
        var order = await scene.Tove.Order(number);
        order.Title.Stage.ShouldBe(Stage.Returned);
        order.Next!.Action.ShouldBe("request-again");
        await scene
            .Anton.RequestAgain(number, Cast.Weep(scene.Site), order.Version)
            .ShouldBeRefused("not-your-request");
        var complete = Cast.Weep(scene.Site) with { Seen = "pinhole weeping at 4 o'clock; V-22 shuts it off" };
        await scene.Tove.RequestAgain(number, complete, order.Version);
        order = await scene.Tove.Order(number);
        order.Title.Stage.ShouldBe(Stage.Requested);
        await scene.Ines.Choose(number, AnOrder.BandedPatch, order.Version).ShouldBeRefused("not-assessed");
    }

    [Fact]
    public async Task Only_a_returned_request_is_sent_again()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        await scene
            .Tove.RequestAgain(number, Cast.Weep(scene.Site), await scene.Version(number))
            .ShouldBeRefused("not-now");
    }

    [Fact]
    public async Task A_refusal_is_an_engineers_and_operations_acknowledges_it()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Assessed(scene);
        var refuse = new ExitOrder(ExitKind.Refused, ExitCapacity.Engineer, "too thin all round: replace the section");
        await scene.Mara.Exit(number, refuse).ShouldBeRefused("exit-capacity");
        await scene
            .Olaf.SignExit(number, new(Guid.NewGuid(), ExitCapacity.OperationsInCharge))
            .ShouldBeRefused("no-exit-waits");
        var exit = await scene.Ines.Exit(number, refuse);
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Refused);
        (await scene.Olaf.Order(number)).Next!.Action.ShouldBe("sign-exit");
        var sign = new SignExit(exit.Id, ExitCapacity.OperationsInCharge, "line shut down");
        await scene.Ines.SignExit(number, sign).ShouldBeRefused("exit-signed-already");
        await scene.Mara.SignExit(number, sign).ShouldBeRefused("exit-second-capacity");
        await scene
            .Olaf.SignExit(number, sign with { As = ExitCapacity.Engineer })
            .ShouldBeRefused("exit-not-that-one");
        await scene.Olaf.SignExit(number, sign);
        (await scene.Olaf.Order(number)).Actions.ShouldNotContain(a => a.Action == "sign-exit");
    }

    [Fact]
    public async Task No_live_leak_is_left_behind_by_a_withdrawal()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        var away = new ExitOrder(ExitKind.Withdrawn, ExitCapacity.Requester, "raised twice");
        await scene.Tove.Exit(number, away).ShouldBeRefused("leak-left-behind");
        await scene.Anton.Exit(number, away).ShouldBeRefused("exit-capacity");
        var elsewhere = await AnOrder.Requested(scene, Cast.Weep(scene.Site) with { Line = "FM-200-0012" });
        await scene.Tove.Exit(number, away with { OtherOrder = elsewhere }).ShouldBeRefused("leak-left-behind");
        var same = await AnOrder.Requested(scene);
        await scene.Tove.Exit(number, away with { OtherOrder = same });
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Withdrawn);
        await scene.Tove.Exit(same, away with { LeakStopped = "the line was drained and blinded" });
    }

    [Fact]
    public async Task A_thin_spot_is_withdrawn_by_a_word()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene, Cast.Weep(scene.Site) with { LeakState = LeakState.Dry });
        await scene.Mara.Exit(number, new(ExitKind.Withdrawn, ExitCapacity.Supervisor, "the line is scrapped"));
        (await scene.Mara.Order(number)).Actions.ShouldBeEmpty();
    }
}
