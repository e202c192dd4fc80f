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
