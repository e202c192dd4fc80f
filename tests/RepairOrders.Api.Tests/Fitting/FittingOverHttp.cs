using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Fitting;

public sealed class FittingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task Every_refusal_on_the_way_through_the_hold_points_is_met_and_cleared()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Ready(scene);
        var points = (await scene.Tove.Fitting(number)).Points.Select(p => p.Point).ToList();
        points.ShouldNotBeEmpty();
        await Refuses("hold-point-out-of-order", () => scene.Tove.ReleaseHoldPoint(number, new(points[1].Code)));
        await Refuses("not-a-fitter", () => scene.Vera.ReleaseHoldPoint(number, new(points[0].Code)));
        foreach (var point in points)
        {
            await Lacking(scene, number, point);
            await scene.Release(number, point);
        }
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Fitted);
    }

    // Each evidence the point asks for, left out or wrong, before it is given.
    private static async Task Lacking(Scene scene, string number, HoldPointView point)
    {
        var whole = await scene.Evidenced(number, point);
        var asked = point.Evidence;
        if (asked.Contains(Evidence.ThicknessReadings))
        {
            await Is("walls-missing", whole with { Walls = whole.Walls!.Take(1).ToList() });
            await Is(
                "wall-below-design",
                whole with
                {
                    Walls = [whole.Walls![0], new("downstream end", Measure.Of(0.4, "mm"))],
                }
            );
            await Is("photo-missing", whole);
            await scene.Photograph(number, PhotoOf.HoldPoint, point.Code);
            await Is("instrument-missing", whole with { Instrument = null });
            await Is("instrument-not-listed", whole with { Instrument = "UT-0" });
            await Is("instrument-wrong-kind", whole with { Instrument = "TW-2" });
            var instruments = (await scene.Signe.Instruments(scene.Site, InstrumentKind.ThicknessGauge)).Rows;
            var old = await scene.Signe.AddInstrument(
                instruments[0].Said with
                {
                    Serial = "UT-OLD",
                    CalibrationDue = scene.Clock.Today.AddDays(-1),
                }
            );
            await Is("instrument-out-of-calibration", whole with { Instrument = "UT-OLD" });
            await scene.Signe.ChangeInstrument(
                old.Id,
                old.Said with
                {
                    CalibrationDue = scene.Clock.Today,
                    Withdrawn = "probe worn",
                },
                old.Version
            );
            await Is("instrument-withdrawn", whole with { Instrument = "UT-OLD" });
        }
        if (asked.Contains(Evidence.DiameterReadings))
            await Is("diameters-missing", whole with { Diameters = null });
        if (asked.Contains(Evidence.SurfaceGrade))
            await Is("surface-missing", whole with { Surface = null });
        if (asked.Contains(Evidence.ClimateReading))
        {
            await Is("climate-not-read", whole);
            // Ice: no material holds on it.
            await scene.Tove.RecordClimate(number, new(Measure.Of(1, "°C"), 95, Measure.Of(-2, "°C"), "HY-5"));
            await Is("climate-no-go", whole);
        }
        if (asked.Contains(Evidence.Mix))
            await Is("mix-missing", whole);
        if (asked.Contains(Evidence.TorqueReadings))
        {
            await Is("tightening-missing", whole with { Tightening = [] });
            await Is("fastener-missing", whole with { Tightening = [whole.Tightening![0]] });
            var last = whole.Tightening![^1];
            var over = last with
            {
                Torque = last.Torque is { } t ? Measure.Of(t.Value * 10, "N m") : null,
                Tension = last.Tension is { } n ? Measure.Of(n.Value * 10, "N") : null,
            };
            await Is("tightening-outside", whole with { Tightening = [.. whole.Tightening!.SkipLast(1), over] });
        }
        if (asked.Contains(Evidence.CureLog))
        {
            await Is("not-set-for-load", whole);
            await scene.LetSet(number);
        }
        if (asked.Contains(Evidence.HardnessReading))
            await Is("hardness-missing", whole with { ShoreD = [80] });

        Task<Refused> Is(string code, ReleaseHoldPoint ask) =>
            Refuses(code, () => scene.Tove.ReleaseHoldPoint(number, ask));
    }

    [Fact]
    public async Task A_release_is_signed_once_and_struck_through_by_who_may()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitting(scene);
        var points = (await scene.Tove.Fitting(number)).Points;
        await Refuses("hold-point-signed", () => scene.Tove.ReleaseHoldPoint(number, new(points[0].Point.Code)));
        await scene.Release(number, points[1].Point);
        var first = (await scene.Mara.Order(number)).Records.First(r => r.Kind == "hold-point-release");
        await Refuses(
            "release-leaned-on",
            async () => await scene.Tove.StrikeRelease(number, first.Id, "wrong end", await scene.Version(number))
        );
        var second = (await scene.Mara.Order(number)).Records.Last(r => r.Kind == "hold-point-release");
        await Refuses(
            "not-your-release",
            async () => await scene.Anton.StrikeRelease(number, second.Id, "wrong end", await scene.Version(number))
        );
        await scene.Mara.StrikeRelease(number, second.Id, "read at the wrong end", await scene.Version(number));
        (await scene.Tove.Fitting(number)).Points[1].ReleasedBy.ShouldBeNull();
        var struck = (await scene.Rune.Order(number)).Records.Single(r => r.Id == second.Id);
        struck.SetAsideWhy.ShouldBe("read at the wrong end");
    }

    [Fact]
    public async Task A_mix_is_timed_by_the_server_used_in_time_or_voided()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Ready(scene);
        var mix = await scene.SomeMix(number);
        await Refuses("climate-not-read", () => scene.Tove.StartMix(number, mix));
        await scene.Tove.RecordClimate(number, AnOrder.Dry);
        await Refuses(
            "pot-life-unknown",
            () => scene.Tove.StartMix(number, mix with { MixTemperature = Measure.Of(60, "°C") })
        );
        await Refuses("wrong-hardener", () => scene.Tove.StartMix(number, mix with { HardenerBatch = mix.Batch }));
        var stranger = await Stores.PuttyBatch(scene, "other", scene.Clock.Today.AddDays(90), 100);
        await Refuses("batch-not-issued", () => scene.Tove.StartMix(number, mix with { Batch = stranger.Id }));
        var issued = (await scene.Signe.PickList(number)).Out.First(o => o.Batch != mix.Batch);
        await Refuses("limits-missing", () => scene.Tove.StartMix(number, mix with { Batch = issued.Batch }));
        await scene.Signe.JudgeBatch(mix.Batch, new(BatchStanding.Recalled, "notice 12"));
        await Refuses("batch-recalled", () => scene.Tove.StartMix(number, mix));
        await scene.Ines.JudgeBatch(mix.Batch, new(BatchStanding.Good, "other lot"));

        var late = await scene.Tove.StartMix(number, mix);
        (await scene.Tove.Fitting(number)).Mixes.Single().MinutesLeft!.Value.ShouldBeGreaterThan(15);
        scene.Clock.Pass(TimeSpan.FromMinutes(30));
        (await scene.Tove.Fitting(number)).Mixes.Single().Tone.ShouldBe(Tone.Stop);
        await Refuses("pot-life-over", () => scene.Tove.UseMix(number, late.Id, new()));
        await scene.Tove.VoidMix(number, late.Id, "gelled in the pot", await scene.Version(number));
        (await scene.Tove.Fitting(number)).Mixes.ShouldBeEmpty();

        var inTime = await scene.Tove.StartMix(number, mix);
        await scene.Tove.UseMix(number, inTime.Id, new("under the plate"));
        await Refuses("mix-used", () => scene.Tove.UseMix(number, inTime.Id, new()));
        var clock = (await scene.Tove.Fitting(number)).Cures[0];
        clock.SetForLoad.ShouldBeFalse();
        clock.SetForLoadAt.ShouldNotBeNull();
    }

    [Fact]
    public async Task A_mix_of_two_parts_keeps_its_ratio_and_what_rests_on_it_holds_it()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        var bin = "A-1";
        await Stores.Listed(
            scene,
            new(scene.Site, "RESIN", "resin for putty", "putty", "pcs", true, false, Stores.DryResin),
            bin
        );
        await Stores.Listed(scene, new(scene.Site, "HARD-1", "its hardener", "putty", "pcs", true, false), bin);
        var day = scene.Clock.Today.AddDays(90);
        var resin = await scene.Signe.ReceiveBatch(new(scene.Site, "RESIN", "R-1", day, null, bin, 2));
        var hardener = await scene.Signe.ReceiveBatch(new(scene.Site, "HARD-1", "H-1", day, null, bin, 2));
        var line = (await scene.Signe.PickList(number)).Lines.First(l => l.Code == "putty").Line;
        await scene.Signe.IssueMaterial(
            number,
            new(scene.IdOf("tove"), [new(line, resin.Id, bin, 1), new(line, hardener.Id, bin, 1)], true)
        );
        await scene.Issue(number);
        await scene.Readied(number);
        await scene.Tove.RecordClimate(number, AnOrder.Dry);
        var mix = new StartMix(resin.Id, Measure.Of(450, "g"), hardener.Id, Measure.Of(100, "g"), Measure.Of(20, "°C"));
        await Refuses("mix-ratio", () => scene.Tove.StartMix(number, mix));
        var points = (await scene.Tove.Fitting(number)).Points.Select(p => p.Point).ToList();
        foreach (var point in points.TakeWhile(p => !p.Evidence.Contains(Evidence.Mix)))
            await scene.Release(number, point);
        await scene.Tove.RecordClimate(number, AnOrder.Dry);
        var started = await scene.Tove.StartMix(number, mix with { Mass = Measure.Of(400, "g") });
        await scene.Tove.UseMix(number, started.Id, new());
        var at = points.First(p => p.Evidence.Contains(Evidence.Mix));
        await scene.Tove.ReleaseHoldPoint(number, new(at.Code));
        await Refuses(
            "mix-leaned-on",
            async () => await scene.Tove.VoidMix(number, started.Id, "too thin", await scene.Version(number))
        );
        var hard = points.First(p => p.Evidence.Contains(Evidence.HardnessReading));
        foreach (var point in points.SkipWhile(p => p != at).Skip(1).TakeWhile(p => p != hard))
            await scene.Release(number, point);
        await scene.LetSet(number);
        await Refuses(
            "hardness-short",
            async () =>
                await scene.Tove.ReleaseHoldPoint(
                    number,
                    await scene.Evidenced(number, hard) with
                    {
                        ShoreD = [60, 61, 62],
                    }
                )
        );
    }

    [Fact]
    public async Task When_the_permit_is_over_readings_land_and_signatures_do_not()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Issued(scene);
        await scene.Olaf.ReadyOrder(
            number,
            AnOrder.Readiness(scene) with
            {
                PermitFrom = scene.Clock.Now.AddHours(1),
                PermitUntil = scene.Clock.Now.AddHours(9),
            }
        );
        var first = (await scene.Tove.Fitting(number)).Points[0].Point;
        await Refuses("permit-not-begun", () => scene.Release(number, first));
        scene.Clock.Pass(TimeSpan.FromHours(10));
        var no = await Refuses("permit-over", () => scene.Release(number, first));
        no.Message.ShouldEndWith("readings so far are kept.");
        await scene.Tove.RecordClimate(number, AnOrder.Dry);
        await scene.Readied(number);
        await scene.Release(number, first);
    }

    [Fact]
    public async Task Anyone_but_a_reader_stops_the_job_and_it_stands_until_the_cause_is_cleared()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitting(scene);
        await scene.Tove.RecordClimate(number, AnOrder.Dry);
        var mix = await scene.Tove.StartMix(number, await scene.SomeMix(number));
        await Refuses("not-stopped", () => scene.Mara.ResumeJob(number, new("nothing was wrong")));
        foreach (var who in new[] { scene.Signe, scene.Ada, scene.Henrik })
            await who.StopJob(number, new("I smell gas"));
        (await Should.ThrowAsync<Refused>(() => scene.Rune.StopJob(number, new("I smell gas")))).Status.ShouldBe(403);
        await Refuses("stopped", () => scene.Tove.UseMix(number, mix.Id, new()));
        (await scene.Tove.Fitting(number)).Stopped.ShouldBe("Henrik Vold: I smell gas");
        await Refuses("resin-not-restarted", () => scene.Mara.ResumeJob(number, new("detector reads nothing")));
        await scene.Tove.VoidMix(number, mix.Id, "scrapped at the stop", await scene.Version(number));
        await scene.Mara.ResumeJob(number, new("detector reads nothing"));
        (await scene.Tove.Fitting(number)).Stopped.ShouldBeNull();
    }

    [Fact]
    public async Task A_stop_is_taken_down_at_every_stage()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        (await scene.Tove.StopJob(number, new("somebody works here without a permit"))).Tone.ShouldBe(Tone.Stop);
        var order = await scene.Mara.Order(number);
        (order.Title.Stage, order.Title.Round).ShouldBe((Stage.InService, 1));
    }

    [Fact]
    public async Task A_pipe_not_as_written_goes_back_to_be_assessed_in_the_next_round()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitting(scene);
        await scene.Tove.StopJob(number, new("the hole is twice as long", NotAsWritten: true, "30 mm, not 15"));
        var order = await scene.Mara.Order(number);
        (order.Title.Stage, order.Title.Round).ShouldBe((Stage.Requested, 2));
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Assessed);
    }

    [Fact]
    public async Task A_stopped_job_may_go_back_to_be_assessed_and_the_earlier_round_stays_as_it_was()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitting(scene);
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number)).ShouldBeRefused("not-now");
        await scene.Anton.StopJob(number, new("the plate does not fit"));
        (await scene.Ines.Order(number)).Actions.ShouldContain(a =>
            a.Action == "record-assessment" && a.Objection == null
        );
        var first = (await scene.Mara.Order(number)).Records.Where(r => r.Round == 1).Select(r => r.Id).ToList();
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        var order = await scene.Mara.Order(number);
        (order.Title.Stage, order.Title.Round).ShouldBe((Stage.Assessed, 2));
        order
            .Records.Where(r => r.Round == 1)
            .ShouldAllBe(r => r.SetAsideAt == null && first.Contains(r.Id), "earlier rounds are read-only");
        await scene.Tove.RecordClimate(number, AnOrder.Dry).ShouldBeRefused("not-now");
    }

    [Fact]
    public async Task Ten_people_adding_at_once_all_land()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitting(scene);
        var before = (await scene.Mara.Order(number)).Records.Count;
        Task<RecordView>[] adding =
        [
            scene.Tove.RecordClimate(number, AnOrder.Dry),
            scene.Anton.RecordClimate(number, AnOrder.Dry),
            scene.Mara.RecordClimate(number, AnOrder.Dry),
            scene.Vera.RecordCure(number, new([new(null, Measure.Of(20, "°C"))], "ST-3")),
            scene.Anton.RecordCure(number, new([new(null, Measure.Of(19, "°C"))], "ST-3")),
            scene.Photograph(number, PhotoOf.HoldPoint, "plate"),
            scene.Photograph(number, PhotoOf.HoldPoint, "surface"),
            scene.Photograph(number, PhotoOf.Tag),
            scene.Signe.StopJob(number, new("gas alarm")),
            scene.Ines.RecordClimate(number, AnOrder.Dry),
        ];
        var all = await Task.WhenAll(adding);
        var order = await scene.Mara.Order(number);
        order.Records.Count.ShouldBe(before + 10);
        all.Select(r => r.Id).Except(order.Records.Select(r => r.Id)).ShouldBeEmpty();
        (await scene.Rune.Journal(number)).BrokenAt.ShouldBeNull();
    }

    [Fact]
    public async Task The_order_sheet_tells_each_person_what_he_may_do_next()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Ready(scene);
        var tove = (await scene.Tove.Order(number)).Actions.Single(a => a.Action == "release-hold-point");
        tove.Objection.ShouldBeNull();
        var vera = (await scene.Vera.Order(number)).Actions.Single(a => a.Action == "release-hold-point");
        vera.Objection!.Code.ShouldBe("not-a-fitter");
        (await scene.Signe.Order(number)).Actions.Single(a => a.Action == "stop-job").Objection.ShouldBeNull();
        (await scene.Rune.Order(number)).Actions.ShouldAllBe(a => a.Objection != null);
    }
}
