using RepairOrders.Contract;
using static RepairOrders.Contract.ApprovalCapacity;

namespace RepairOrders.Api.Tests.Approving;

public sealed class ApprovingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task Supervisor_and_engineer_approve_a_class_C_patch()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        var order = await scene.Mara.Order(number);
        order.Title.Stage.ShouldBe(Stage.Approved);
        order.Title.SignedClass.ShouldBe(RiskClass.C);
        order.Title.Method.ShouldBe("Banded patch");
        order.Title.Owner.ShouldBe("Mara Lindqvist");
        order.Title.EndDate.ShouldNotBeNull();
        (await scene.Rune.Journal(number)).BrokenAt.ShouldBeNull();
    }

    [Fact]
    public async Task The_sheet_says_to_each_what_he_may_sign_and_why_not()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Sized(scene);
        (await Approve(scene.Mara)).ShouldBeNull();
        (await Approve(scene.Pavel)).ShouldBeNull();
        (await Approve(scene.Henrik))!.Code.ShouldBe("capacity");
        (await Approve(scene.Tove))!.Code.ShouldBe("role");
        (await scene.Mara.Order(number)).Next!.Action.ShouldBe("approve-order");

        async Task<ObjectionView?> Approve(RepairOrdersClient client) =>
            (await client.Order(number)).Actions.Single(a => a.Action == "approve-order").Objection;
    }

    [Fact]
    public async Task What_may_not_be_signed_is_refused()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Sized(scene);
        var print = await scene.Fingerprint(number);
        await scene.Mara.Approve(number, new(new string('0', 64), Supervisor)).ShouldBeRefused("design-changed");
        await scene.Mara.Approve(number, new(print, Engineer)).ShouldBeRefused("capacity");
        await scene.Mara.Approve(number, new(print, Supervisor));
        await scene.Mara.Approve(number, new(print, Supervisor)).ShouldBeRefused("signed-already");
        await scene.Olaf.Approve(number, new(print, Supervisor)).ShouldBeRefused("place-filled");
        await scene.Ines.Approve(number, new(print, Engineer));
        await scene.Pavel.Approve(number, new(print, Engineer)).ShouldBeRefused("nothing-to-sign");
    }

    [Fact]
    public async Task Nobody_approves_his_own_request()
    {
        var scene = await workshop.Scene();
        var number = await SizedFor(scene, scene.Mara);
        var print = await scene.Fingerprint(number);
        await scene.Mara.Approve(number, new(print, Supervisor)).ShouldBeRefused("own-request");
        await scene.Henrik.Approve(number, new(print, Supervisor)).ShouldBeRefused("capacity");
        await scene.Olaf.Approve(number, new(print, Supervisor));
    }

    [Fact]
    public async Task The_manager_signs_for_the_only_supervisor_who_raised_it()
    {
        var scene = await workshop.Scene();
        var number = await SizedFor(scene, scene.Mara);
        await scene.Leaves("olaf");
        await scene.Henrik.Approve(number, new(await scene.Fingerprint(number), Supervisor));
        await scene.Ines.Approve(number, new(await scene.Fingerprint(number), Engineer));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Approved);
    }

    [Fact]
    public async Task Class_A_takes_supervisor_second_engineer_and_manager()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Assessed(scene, judged: Grave(scene));
        await scene.Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number));
        var under = AnOrder.Sizing(scene) with { ChangeControl = new("MOC-3", scene.Clock.Today.AddDays(80)) };
        await scene.Ines.Size(number, under, await scene.Version(number));
        var order = await scene.Mara.Order(number);
        order.Title.SignedClass.ShouldBe(RiskClass.A);
        var print = order.Fingerprint!;
        await scene.Ines.Approve(number, new(print, Engineer)).ShouldBeRefused("own-work");
        await scene.Mara.Approve(number, new(print, Supervisor));
        await scene.Pavel.Approve(number, new(print, Engineer));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Sized);
        await scene.Henrik.Approve(number, new(print, Manager));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Approved);
    }

    [Fact]
    public async Task A_line_list_or_an_assessment_that_changed_asks_for_a_new_design()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Sized(scene);
        var print = await scene.Fingerprint(number);
        await scene.Line("CW-150-3104", l => l.DesignPressureBar = 12);
        await scene.Mara.Approve(number, new(print, Supervisor)).ShouldBeRefused("facts-changed");
        await scene.Line("CW-150-3104", l => l.DesignPressureBar = 10);
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        await scene.Mara.Approve(number, new(print, Supervisor)).ShouldBeRefused("nothing-to-sign");
    }

    [Fact]
    public async Task An_outside_signer_signs_within_scope_and_dates()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Sized(scene);
        var print = await scene.Fingerprint(number);
        var yesterday = scene.Clock.Today.AddDays(-1);
        Cast.Member member = new("nils", "Nils Outside", [Role.IntegrityEngineer], []);
        var lapsed = await scene.Hire(member, "second engineer", yesterday);
        await lapsed.Approve(number, new(print, Engineer)).ShouldBeRefused("authority-lapsed");
        var narrow = await scene.Hire(member with { Name = "nora" }, "witness at tests", scene.Clock.Today);
        await narrow.Approve(number, new(print, Engineer)).ShouldBeRefused("outside-scope");
        var right = await scene.Hire(member with { Name = "nina" }, "second engineer", scene.Clock.Today);
        await right.Approve(number, new(print, Engineer));
    }

    [Fact]
    public async Task The_manager_signs_in_place_of_the_only_supervisor_for_what_he_raised()
    {
        var scene = await workshop.Scene();
        var number = await SizedFor(scene, scene.Mara);
        var print = await scene.Fingerprint(number);
        await scene.Henrik.Approve(number, new(print, Supervisor)).ShouldBeRefused("capacity");
        await scene.Leaves("olaf");
        await scene.Mara.Approve(number, new(print, Supervisor)).ShouldBeRefused("own-request");
        await scene.Henrik.Approve(number, new(print, Supervisor));
        await scene.Ines.Approve(number, new(print, Engineer));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Approved);
    }

    [Fact]
    public async Task The_manager_does_not_sign_twice_as_supervisor_and_as_manager()
    {
        var scene = await workshop.Scene();
        var number = (await scene.Mara.Request(Cast.Weep(scene.Site))).Title.Number;
        await scene.Ines.Assess(number, Grave(scene), await scene.Version(number));
        await scene.Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number));
        var sizing = AnOrder.Sizing(scene) with { ChangeControl = new("MOC-4", scene.Clock.Today.AddDays(80)) };
        await scene.Ines.Size(number, sizing, await scene.Version(number));
        await scene.Leaves("olaf");
        var print = await scene.Fingerprint(number);
        await scene.Henrik.Approve(number, new(print, Supervisor));
        await scene.Henrik.Approve(number, new(print, Manager)).ShouldBeRefused("signed-already");
    }

    [Fact]
    public async Task An_approval_is_withdrawn_by_who_gave_it_and_given_again()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        var order = await scene.Mara.Order(number);
        var own = order.Records.Single(r => r.Kind == "approval" && r.By == "Mara Lindqvist");
        await scene
            .Ines.WithdrawApproval(number, own.Id, "not mine", order.Version)
            .ShouldBeRefused("not-your-signature");
        order.Actions.ShouldContain(a => a.Action == "withdraw-approval" && a.Objection == null);
        await scene.Mara.WithdrawApproval(number, own.Id, "the shutdown comes earlier", order.Version);
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Sized);
        await scene.Mara.Approve(number, new(order.Fingerprint!, Supervisor));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Approved);
    }

    [Fact]
    public async Task No_approval_is_taken_back_once_work_has_begun()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitting(scene);
        var order = await scene.Mara.Order(number);
        var own = order.Records.Single(r => r.Kind == "approval" && r.By == "Mara Lindqvist");
        await scene.Mara.WithdrawApproval(number, own.Id, "not after all", order.Version).ShouldBeRefused("work-begun");
    }

    [Fact]
    public async Task In_service_a_design_made_before_the_last_assessment_is_not_signed()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        await scene
            .Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number))
            .ShouldBeRefused("method-on-the-pipe");
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        await scene.Ines.Size(number, AnOrder.Sizing(scene), await scene.Version(number));
        var print = await scene.Fingerprint(number);
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        await scene.Mara.Approve(number, new(print, Supervisor)).ShouldBeRefused("assessed-since");
        await scene.Ines.Size(number, AnOrder.Sizing(scene), await scene.Version(number));
        await scene.Mara.Approve(number, new(await scene.Fingerprint(number), Supervisor));
    }

    [Fact]
    public async Task Two_sign_at_once_and_both_land()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Sized(scene);
        var print = await scene.Fingerprint(number);
        await Task.WhenAll(
            scene.Mara.Approve(number, new(print, Supervisor)),
            scene.Pavel.Approve(number, new(print, Engineer))
        );
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Approved);
        (await scene.Rune.Journal(number)).BrokenAt.ShouldBeNull();
    }

    // People near, no way to shut it off in ten minutes, by the river.
    private static RecordAssessment Grave(Scene scene) =>
        AnOrder.Judged(scene) with
        {
            Consequences = new(PeopleNearby.MannedArea, false, Measure.Of(500, "kg"), true),
        };

    private static async Task<string> SizedFor(Scene scene, RepairOrdersClient requester)
    {
        var number = (await requester.Request(Cast.Weep(scene.Site))).Title.Number;
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        await scene.Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number));
        await scene.Ines.Size(number, AnOrder.Sizing(scene), await scene.Version(number));
        return number;
    }
}
