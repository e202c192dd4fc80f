using System.Text.Json;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Assessing;

public sealed class AssessingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task An_assessment_keeps_readings_working_findings_and_class()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        var record = await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        var body = record.Body.Deserialize<SignedAssessment>(RepairOrdersClient.Json)!;
        // API RP 574 (from memory): structural minimum of DN 150 is 2.8 mm; it governs over the wall for 10 bar.
        body.Judgement.RequiredWallMm.ShouldBe(2.8);
        body.Judgement.SoundWallMm.ShouldBe(6.4);
        body.Judgement.Risk.Class.ShouldBe(RiskClass.C, "water, a hole with sound metal beside it");
        body.Judgement.Risk.Reasons.ShouldNotBeEmpty();
        body.Judgement.Calculations.Select(c => c.Code).ShouldContain("required-wall");
        body.Judgement.Calculations.Single(c => c.Code == "required-wall").Working.ShouldNotBeEmpty();
        body.Judgement.RemainingLifeDays.ShouldBe(0, "the wall is through");
        body.Instruments.Single().ShouldBe(new InstrumentUsed("UT-7", new DateOnly(2029, 12, 31)));
        var order = await scene.Mara.Order(number);
        order.Title.Stage.ShouldBe(Stage.Assessed);
        order.ClassReasons.ShouldNotBeEmpty();
        order.Figures.Select(f => f.Label).ShouldContain("Wall left");
    }

    [Fact]
    public async Task A_thinned_wall_gets_its_strength_by_modified_B31G_and_its_life()
    {
        var scene = await workshop.Scene();
        var thin = AnOrder.Pinhole with
        {
            Kind = DefectKind.GeneralThinning,
            ThroughWall = false,
            HoleDiameter = null,
            AxialLength = Measure.Of(100, "mm"),
            CircumferentialLength = Measure.Of(60, "mm"),
        };
        var judged = AnOrder.Judged(scene) with
        {
            Defect = thin,
            Readings =
            [
                new(ReadingPlace.AtDefect, "4 o'clock", Measure.Of(4.2, "mm"), scene.Clock.Today, "UT-7"),
                new(ReadingPlace.Beside, "5 o'clock", Measure.Of(6.6, "mm"), scene.Clock.Today, "UT-7"),
            ],
            EarlierReadings =
            [
                new(ReadingPlace.AtDefect, "4 o'clock", Measure.Of(5.2, "mm"), new DateOnly(2024, 3, 2), "UT-7"),
            ],
        };
        var number = await AnOrder.Requested(scene);
        var record = await scene.Ines.Assess(number, judged, await scene.Version(number));
        var body = record.Body.Deserialize<SignedAssessment>(RepairOrdersClient.Json)!.Judgement;
        // 1.0 mm in two years: API 570, 7.1.1; (4.2 − 2.8)/0.5 = 2.8 years.
        body.RateMmPerYear!.Value.ShouldBe(0.5, 0.001);
        (body.RemainingLifeDays!.Value / 365.25).ShouldBe(2.8, 0.01);
        body.SafePressureBar.ShouldNotBeNull();
        body.SafePressureBar.Value.ShouldBeGreaterThan(10);
        body.Calculations.Select(c => c.Code).ShouldContain("remaining-strength");
    }

    [Fact]
    public async Task A_second_assessment_replaces_the_first_which_stays_readable()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Assessed(scene);
        await scene.Ines.Assess(
            number,
            AnOrder.Judged(scene) with
            {
                Remark = "read again",
            },
            await scene.Version(number)
        );
        var both = (await scene.Mara.Order(number)).Records.Where(r => r.Kind == "assessment").ToList();
        both.Count.ShouldBe(2);
        both.Count(r => r.SetAsideAt is null).ShouldBe(1);
    }

    [Fact]
    public async Task A_stale_version_is_told_and_nothing_is_lost()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        var seen = await scene.Version(number);
        await scene.Ines.Assess(number, AnOrder.Judged(scene), seen);
        var no = await Should.ThrowAsync<Refused>(() => scene.Pavel.Assess(number, AnOrder.Judged(scene), seen));
        no.Status.ShouldBe(412);
    }

    [Fact]
    public async Task A_technician_does_not_assess()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        var version = await scene.Version(number);
        var no = await Should.ThrowAsync<Refused>(() => scene.Tove.Assess(number, AnOrder.Judged(scene), version));
        (no.Status, no.Code).ShouldBe((403, "role"));
        var action = (await scene.Tove.Order(number)).Actions.Single(a => a.Action == "record-assessment");
        action.Objection!.Code.ShouldBe("role");
    }

    [Fact]
    public async Task Readings_take_a_listed_thickness_gauge_in_calibration()
    {
        var scene = await workshop.Scene();
        await Assess(scene, With(scene, r => r with { Instrument = "UT-99" })).ShouldBeRefused("instrument-not-listed");
        await Assess(scene, With(scene, r => r with { Instrument = "UT-1" }))
            .ShouldBeRefused("instrument-out-of-calibration");
        await Assess(scene, With(scene, r => r with { Instrument = "PG-3" })).ShouldBeRefused("instrument-wrong-kind");
    }

    [Fact]
    public async Task A_reading_of_tomorrow_is_malformed()
    {
        var scene = await workshop.Scene();
        var ask = With(scene, r => r with { On = scene.Clock.Today.AddDays(1) });
        var no = await Should.ThrowAsync<Refused>(() => Assess(scene, ask));
        no.Status.ShouldBe(400);
        no.Fields.Keys.ShouldContain("readings[0].on");
    }

    [Fact]
    public async Task A_wall_that_was_not_read_needs_a_reason()
    {
        var scene = await workshop.Scene();
        var none = AnOrder.Judged(scene) with { Readings = [] };
        await Assess(scene, none).ShouldBeRefused("wall-not-read");
        var why = none with { NotMeasuredWhy = "the jet cannot be approached" };
        var record = await Assess(scene, why);
        record
            .Body.Deserialize<SignedAssessment>(RepairOrdersClient.Json)!
            .Judgement.Risk.Likelihood.ShouldBe(5, "a wall nobody could read");
    }

    [Fact]
    public async Task An_unlisted_line_takes_its_facts_and_a_listed_one_takes_none()
    {
        var scene = await workshop.Scene();
        var unlisted = Cast.Weep(scene.Site) with { Line = null };
        await Assess(scene, AnOrder.Judged(scene), unlisted).ShouldBeRefused("line-facts-missing");
        await Assess(scene, AnOrder.Judged(scene) with { Line = Facts }).ShouldBeRefused("line-facts-twice");
        var record = await Assess(scene, AnOrder.Judged(scene) with { Line = Facts }, unlisted);
        record
            .Body.Deserialize<SignedAssessment>(RepairOrdersClient.Json)!
            .Judgement.Facts.OutsideDiameterMm.ShouldBe(168.3);
    }

    [Fact]
    public async Task Metal_structural_minimum_and_rate_must_be_known()
    {
        var scene = await workshop.Scene();
        var unlisted = Cast.Weep(scene.Site) with { Line = null };
        var judged = AnOrder.Judged(scene);
        await Assess(scene, judged with { Line = Facts with { Grade = "found on a heap" } }, unlisted)
            .ShouldBeRefused("metal-unknown");
        var bronze = new MetalGiven(MetalFamily.CopperAlloy, Measure.Of(60, "MPa"), null, null, "material check 12");
        await Assess(scene, judged with { Line = Facts, Metal = bronze }, unlisted)
            .ShouldBeRefused("structural-minimum-missing");
        await Assess(scene, judged with { Line = Facts with { YearInstalled = null } }, unlisted)
            .ShouldBeRefused("rate-unknown");
        var rated = judged with { Line = Facts with { YearInstalled = null }, CorrosionRate = Measure.Of(0.2, "mm/y") };
        var record = await Assess(scene, rated, unlisted);
        record
            .Body.Deserialize<SignedAssessment>(RepairOrdersClient.Json)!
            .Judgement.RateMmPerYear!.Value.ShouldBe(0.2, 1e-6);
    }

    [Fact]
    public async Task Nothing_is_assessed_after_the_order_was_withdrawn()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        await scene.Tove.Exit(
            number,
            new(ExitKind.Withdrawn, ExitCapacity.Requester, "seen wrong", LeakStopped: "it was rain from the roof")
        );
        var version = await scene.Version(number);
        await scene.Ines.Assess(number, AnOrder.Judged(scene), version).ShouldBeRefused("not-now");
        (await scene.Ines.Order(number)).Actions.ShouldNotContain(a => a.Action == "record-assessment");
    }

    private static readonly LineFactsGiven Facts = new(
        150,
        Measure.Of(168.3, "mm"),
        Measure.Of(7.11, "mm"),
        "ASTM A106 B",
        FluidState.Liquid,
        ServiceCategory.D,
        2,
        4,
        Flammable: false,
        Toxic: false,
        null,
        Measure.Of(10, "bar"),
        Measure.Of(50, "°C"),
        YearInstalled: 2004
    );

    private static RecordAssessment With(Scene scene, Func<ThicknessReading, ThicknessReading> change)
    {
        var judged = AnOrder.Judged(scene);
        return judged with { Readings = [.. judged.Readings.Select(change)] };
    }

    private static async Task<RecordView> Assess(Scene scene, RecordAssessment ask, RequestRepair? request = null)
    {
        var number = await AnOrder.Requested(scene, request);
        return await scene.Ines.Assess(number, ask, await scene.Version(number));
    }
}
