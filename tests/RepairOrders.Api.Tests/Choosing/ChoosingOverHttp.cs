using System.Text.Json;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Choosing;

public sealed class ChoosingOverHttp(Workshop workshop)
{
    private static readonly SignDeviation Basis = new(
        "banded-patch",
        "sized for the hole as it will be at the end date, calculation 77, looked at weekly"
    );

    [Fact]
    public async Task Every_method_claims_with_findings_and_sources()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Assessed(scene);
        var claims = await scene.Mara.Claims(number);
        claims.Select(c => c.Rank).ShouldBe(Enumerable.Range(1, claims.Count));
        var patch = claims.Single(c => c.Method == "banded-patch");
        patch.Inside.ShouldBeTrue();
        patch.Objection.ShouldBeNull();
        patch.Findings.ShouldAllBe(f => f.Source.Length > 0 && f.Words.Length > 0);
    }

    [Fact]
    public async Task Claims_and_choice_wait_for_the_assessment()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        await scene.Mara.Claims(number).ShouldBeRefused("not-assessed");
        await scene
            .Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number))
            .ShouldBeRefused("not-assessed");
    }

    [Fact]
    public async Task A_choice_keeps_what_all_methods_claimed()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Chosen(scene);
        var order = await scene.Mara.Order(number);
        order.Title.Stage.ShouldBe(Stage.Chosen);
        var choice = order.Records.Single(r => r.Kind == "choice");
        choice.Body.Deserialize<SignedChoice>(RepairOrdersClient.Json)!.Claims.ShouldNotBeEmpty();
    }

    [Fact]
    public async Task Another_way_must_have_been_considered()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Assessed(scene);
        var alone = AnOrder.BandedPatch with { Considered = [] };
        await scene.Ines.Choose(number, alone, await scene.Version(number)).ShouldBeRefused("no-alternative");
    }

    [Fact]
    public async Task A_method_nobody_knows_is_malformed()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Assessed(scene);
        var version = await scene.Version(number);
        var no = await Should.ThrowAsync<Refused>(() =>
            scene.Ines.Choose(number, AnOrder.BandedPatch with { Method = "chewing-gum" }, version)
        );
        no.Status.ShouldBe(400);
        no.Fields.Keys.ShouldContain("method");
    }

    [Fact]
    public async Task Crack_like_damage_blocks_every_weldless_method()
    {
        var scene = await workshop.Scene();
        var number = await Assessed(scene, AnOrder.Pinhole with { Kind = DefectKind.CrackLike });
        await scene.Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number)).ShouldBeRefused("crack-like");
        (await scene.Ines.Claims(number)).Where(c => !c.Welded).ShouldAllBe(c => c.Objection != null);
    }

    [Fact]
    public async Task Where_no_temporary_repair_is_acceptable_only_a_new_section_is_chosen()
    {
        var scene = await workshop.Scene();
        var unknown = Judged(scene, AnOrder.Pinhole with { Cause = DefectCause.Unknown }, 6.4);
        var number = await AnOrder.Assessed(scene, judged: unknown);
        var no = await scene
            .Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number))
            .ShouldBeRefused("no-temporary-repair");
        no.Message.ShouldContain("Shut the line down");
        var claims = await scene.Ines.Claims(number);
        claims
            .Where(c => c.Method != "section-replacement")
            .ShouldAllBe(c => c.Objection!.Code == "no-temporary-repair");
        claims.Single(c => c.Method == "section-replacement").Objection?.Code.ShouldNotBe("no-temporary-repair");
        await scene.Ines.Assess(
            number,
            unknown with
            {
                WallMappedEachSide = Measure.Of(300, "mm"),
            },
            await scene.Version(number)
        );
        (await scene.Ines.Claims(number)).ShouldNotContain(c =>
            c.Objection != null && c.Objection.Code == "no-temporary-repair"
        );
    }

    [Fact]
    public async Task Past_an_absolute_limit_nobody_may_sign()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Assessed(
            scene,
            Cast.Weep(scene.Site) with
            {
                Line = "HO-100-0450",
                Fluid = "heating oil",
                OperatingTemperature = Measure.Of(45, "°C"),
            },
            Judged(scene, AnOrder.Pinhole, 5.5)
        );
        await scene
            .Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number))
            .ShouldBeRefused("method-barred");
        await scene.Pavel.Deviate(number, Basis).ShouldBeRefused("absolute-limit");
    }

    [Fact]
    public async Task Outside_its_limits_a_method_takes_a_second_engineer_with_a_basis()
    {
        var scene = await workshop.Scene();
        var number = await Assessed(scene, AnOrder.Pinhole with { Growing = true });
        await scene
            .Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number))
            .ShouldBeRefused("outside-limits");
        await scene.Ines.Deviate(number, Basis).ShouldBeRefused("second-engineer-needed");
        var deviation = await scene.Pavel.Deviate(number, Basis);
        deviation.Body.Deserialize<SignedDeviation>(RepairOrdersClient.Json)!.Covers.ShouldContain("growing");
        await scene
            .Pavel.Choose(number, AnOrder.BandedPatch, await scene.Version(number))
            .ShouldBeRefused("outside-limits");
        await scene.Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Chosen);
    }

    [Fact]
    public async Task Inside_its_limits_there_is_nothing_to_deviate_from()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Assessed(scene);
        await scene.Pavel.Deviate(number, Basis).ShouldBeRefused("nothing-to-deviate");
    }

    [Fact]
    public async Task What_failed_goes_on_again_by_a_second_engineer_and_on_class_B_not_a_third_time()
    {
        var scene = await workshop.Scene();
        var river = AnOrder.Judged(scene) with { Consequences = AnOrder.FewPeople with { DrainsToWater = true } };
        var number = await AnOrder.ApprovedWith(scene, river);
        (await scene.Mara.Order(number)).Title.SignedClass.ShouldBe(RiskClass.B);
        await Fails(scene, number, river);
        await scene
            .Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number))
            .ShouldBeRefused("same-method-again");
        await scene.Pavel.Deviate(number, Basis);
        await scene.Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number));
        var sizing = AnOrder.Sizing(scene) with { ChangeControl = new("MOC-3", scene.Clock.Today.AddDays(80)) };
        await scene.Ines.Size(number, sizing, await scene.Version(number));
        var print = await scene.Fingerprint(number);
        await scene.Mara.Approve(number, new(print, ApprovalCapacity.Supervisor));
        await scene.Pavel.Approve(number, new(print, ApprovalCapacity.Engineer));
        await Fails(scene, number, river);
        await scene.Pavel.Deviate(number, Basis);
        await scene
            .Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number))
            .ShouldBeRefused("same-method-twice");
    }

    [Fact]
    public async Task In_an_emergency_what_is_on_the_pipe_is_what_is_chosen()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Consented(scene);
        await scene.Olaf.ReadyOrder(number, Emergency.Live(scene));
        await scene.Tove.ReleaseHoldPoint(number, new("defect"));
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        (await scene.Mara.Order(number)).Title.Round.ShouldBe(1, "the papers are signed beside the work");
        var other = new ChooseMethod(
            "bolted-clamp",
            [new("banded-patch", "it was only for the night")],
            "holds longer than the night patch"
        );
        await scene.Ines.Choose(number, other, await scene.Version(number)).ShouldBeRefused("not-on-the-pipe");
        await scene.Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number));
    }

    // Issued, fitted, taken into service, and found weeping; the line is isolated and the pipe judged again.
    private static async Task Fails(Scene scene, string number, RecordAssessment judged)
    {
        await scene.Issue(number);
        await scene.Readied(number);
        await scene.Fit(number);
        await scene.IntoService(number);
        await scene.Tove.ReportFailure(number, new(LeakState.Weep, "weeps at the lower band"));
        var safe = new MakeSafe(SafeBy.Isolation, "IC-9", null, AreaBarred: true, null, null, FailureMode.Seal);
        await scene.Olaf.MakeSafe(number, safe);
        await scene.Ines.Assess(number, judged, await scene.Version(number));
    }

    private static RecordAssessment Judged(Scene scene, DefectMeasured defect, double sound) =>
        AnOrder.Judged(scene) with
        {
            Defect = defect,
            Readings =
            [
                new(ReadingPlace.AtDefect, "4 o'clock", Measure.Of(3, "mm"), scene.Clock.Today, "UT-7"),
                new(ReadingPlace.Beside, "3 o'clock", Measure.Of(sound, "mm"), scene.Clock.Today, "UT-7"),
            ],
        };

    private static Task<string> Assessed(Scene scene, DefectMeasured defect) =>
        AnOrder.Assessed(scene, judged: Judged(scene, defect, 6.4));
}
