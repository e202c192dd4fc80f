using System.Text.Json;
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
    public async Task Nothing_is_withdrawn_while_material_is_out()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Issued(scene);
        var away = new ExitOrder(ExitKind.Withdrawn, ExitCapacity.Supervisor, "the line is scrapped") with
        {
            LeakStopped = "the line was drained and blinded",
        };
        var no = await scene.Mara.Exit(number, away).ShouldBeRefused("stores-not-balanced");
        no.Message.ShouldContain("batch");
        var taken = (await scene.Mara.Order(number))
            .Records.Where(r => r.Kind == "material-issue")
            .SelectMany(r => r.Body.Deserialize<SignedIssue>(RepairOrdersClient.Json)!.Lines);
        await scene.Signe.ReturnMaterial(
            number,
            new([.. taken.Select(l => new ReturnLine(l.Batch, l.Quantity, l.Bin))])
        );
        await scene.Mara.Exit(number, away);
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Withdrawn);
    }

    [Fact]
    public async Task Nothing_is_withdrawn_or_refused_with_the_start_of_a_repair_on_the_pipe()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitting(scene);
        await scene.Tove.StopJob(number, new("the hole is twice as long", NotAsWritten: true, "30 mm, not 15"));
        await scene
            .Mara.Exit(number, new(ExitKind.Withdrawn, ExitCapacity.Supervisor, "no use", LeakStopped: "drained"))
            .ShouldBeRefused("something-on-the-pipe");
        await scene
            .Ines.Exit(number, new(ExitKind.Refused, ExitCapacity.Engineer, "replace the section"))
            .ShouldBeRefused("something-on-the-pipe");
    }

    [Fact]
    public async Task A_repair_is_superseded_by_a_newer_one_in_service_on_the_spot()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var newer = new ExitOrder(ExitKind.Superseded, ExitCapacity.Engineer, "a sleeve stands over it");
        await scene.Ines.Exit(number, newer).ShouldBeRefused("not-superseded");
        var other = await AnOrder.Requested(scene);
        await scene.Ines.Exit(number, newer with { OtherOrder = other }).ShouldBeRefused("not-superseded");
        await scene.Ines.Exit(number, newer with { OtherOrder = number }).ShouldBeRefused("not-superseded");
    }

    [Fact]
    public async Task A_line_goes_out_of_service_on_two_signatures_and_comes_back_assessed_afresh()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var away = new ExitOrder(ExitKind.LineOutOfService, ExitCapacity.OperationsInCharge, "the mill stops");
        await scene.Olaf.Exit(number, away).ShouldBeRefused("line-not-isolated");
        var exit = await scene.Olaf.Exit(number, away with { IsolationReference = "IC-77" });
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.InService, "one signature moves nothing");
        await scene.Ines.SignExit(number, new(exit.Id, ExitCapacity.Engineer));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.LineOutOfService);
        var back = new ReturnToService("valves opened one by one, no leak");
        await scene.Mara.ReturnToService(number, back).ShouldBeRefused("return-capacity");
        await scene.Olaf.ReturnToService(number, back).ShouldBeRefused("return-not-assessed");
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        scene.Clock.Pass(TimeSpan.FromDays(400));
        await scene.Olaf.ReturnToService(number, back).ShouldBeRefused("return-past-end");
        scene.Clock.Pass(TimeSpan.FromDays(-399));
        await scene.Olaf.ReturnToService(number, back);
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.InService);
    }

    [Fact]
    public async Task A_line_of_class_B_goes_out_of_service_blinded()
    {
        var scene = await workshop.Scene();
        var near = AnOrder.Judged(scene) with
        {
            Consequences = new(PeopleNearby.Rarely, true, Measure.Of(500, "kg"), true),
        };
        var number = await AnOrder.ApprovedWith(scene, near);
        await scene.Issue(number);
        await scene.Readied(number);
        await scene.Fit(number);
        await scene.IntoService(number);
        (await scene.Mara.Order(number)).Title.SignedClass.ShouldBe(RiskClass.B);
        var away = new ExitOrder(
            ExitKind.LineOutOfService,
            ExitCapacity.OperationsInCharge,
            "the mill stops",
            IsolationReference: "IC-77"
        );
        await scene.Olaf.Exit(number, away).ShouldBeRefused("line-not-blinded");
        await scene.Olaf.Exit(number, away with { Blinded = true });
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
