using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.AtThePipe;

/// <summary>What is read at the pipe: the steps of the one work plan, limits before they are broken, clocks by the service's time.</summary>
public sealed class PipeOverHttp(Workshop workshop)
{
    [Fact]
    public async Task The_steps_are_the_plans_hold_points_then_tag_and_test_then_service()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Ready(scene);
        var points = (await scene.Tove.Fitting(number)).Points.Select(p => p.Point.Code);
        var pipe = await scene.Tove.AtThePipe(number);
        pipe.Steps.Select(s => s.Code).ShouldBe([.. points, "proof", "proof-witness", "first-look", "acceptance"]);
        pipe.Steps.ShouldAllBe(s => s.DoneBy == null);
        pipe.Steps[0].Objection.ShouldBeNull();
        pipe.Steps[1].Objection!.Code.ShouldBe("hold-point-out-of-order");
        pipe.ReadAt.ShouldBe(scene.Clock.Now);
    }

    [Fact]
    public async Task A_signed_step_says_by_whom_and_when_and_the_next_one_opens()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitting(scene);
        var pipe = await scene.Tove.AtThePipe(number);
        pipe.Steps[0].DoneBy.ShouldBe("Tove Aune");
        pipe.Steps[0].DoneAt.ShouldBe(scene.Clock.Now);
        pipe.Steps[0].Photos.Single().By.ShouldBe("Tove Aune");
        pipe.Steps[1].Objection.ShouldBeNull();
        // The storekeeper sees the same steps and is told why he signs none of them.
        (await scene.Signe.AtThePipe(number))
            .Steps[1]
            .Objection!.Code.ShouldBe("role");
    }

    [Fact]
    public async Task Only_those_may_be_handed_the_phone_whom_role_readiness_and_competence_let_sign()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitted(scene);
        var toves = await scene.Tove.AtThePipe(number);
        var first = await AnOrder.Ready(scene);
        var open = (await scene.Tove.AtThePipe(first)).Steps;
        open[0].Signers.Select(s => s.FullName).ShouldBe(["Anton Reyes"]);
        open[1].Signers.ShouldBeEmpty();
        // Fitters do not accept what they fitted; nobody but the named owner takes on the look.
        toves
            .Steps.Single(s => s.Kind == PipeStepKind.FirstLook)
            .Signers.Select(s => s.FullName)
            .ShouldBe(["Mara Lindqvist"]);
        await scene.Proved(number);
        var witnesses = (await scene.Tove.AtThePipe(number)).Steps.Single(s => s.Kind == PipeStepKind.ProofWitness);
        witnesses.DoneBy.ShouldBe("Pavel Horak");
    }

    [Fact]
    public async Task Limits_stand_beside_the_readings_before_they_are_broken()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Ready(scene);
        var design = (await scene.Design(number)).Method;
        var limits = (await scene.Tove.AtThePipe(number)).Limits;
        limits.LeastWallMm.ShouldBe(design.LeastWallMm);
        limits.LeastTorqueNm.ShouldBe(design["torqueLeastNm"]);
        limits.GreatestTorqueNm.ShouldBe(design["torqueMostNm"]);
        limits.GreatestTestBar!.Value.ShouldBeGreaterThan(limits.LeastTestBar!.Value);
        limits.GreatestTestWhy.ShouldNotBeNullOrEmpty();
    }

    [Fact]
    public async Task A_climate_is_judged_as_typed_exactly_as_it_is_when_signed()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Ready(scene);
        var typed = await scene.Tove.ClimateAsTyped(number, "21", "50", "68 °F");
        (await scene.Mara.Order(number)).Records.ShouldNotContain(r => r.Kind == "climate-reading");
        var signed = System.Text.Json.JsonSerializer.Deserialize<SignedClimate>(
            (await scene.Tove.RecordClimate(number, new(Measure.Of(21, "°C"), 50, Measure.Of(20, "°C"), "HY-5"))).Body,
            RepairOrdersClient.Json
        )!;
        typed.DewPointC.ShouldBe(signed.DewPointC, 1e-9);
        typed.MarginK.ShouldBe(signed.MarginK, 1e-6);
        typed.Verdicts.Select(v => (v.Item, v.Go)).ShouldBe(signed.Verdicts.Select(v => (v.Item, v.Go)));

        var wet = await scene.Tove.ClimateAsTyped(number, "21", "95", "15");
        wet.MarginK.ShouldBeLessThan(3);
        wet.Verdicts.ShouldAllBe(v => v.Go, "the putty issued is stated for wet surfaces");
        (await scene.Tove.ClimateAsTyped(number, "21", "50", "2")).Verdicts.ShouldContain(v => !v.Go);
    }

    [Theory]
    [InlineData("", "50", "20", "air")]
    [InlineData("21", "0", "20", "humidity")]
    [InlineData("21", "50", "20 mm", "steel")]
    public async Task What_cannot_be_read_is_named(string air, string humidity, string steel, string field)
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Ready(scene);
        (
            await Should.ThrowAsync<Refused>(() => scene.Tove.ClimateAsTyped(number, air, humidity, steel))
        ).Fields.Keys.ShouldBe([field]);
    }

    [Fact]
    public async Task A_mix_started_is_on_every_phone_with_the_services_start_and_end()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Ready(scene);
        foreach (
            var point in (await scene.Tove.AtThePipe(number)).Work.Points.TakeWhile(p =>
                !p.Point.Evidence.Contains(Evidence.Mix)
            )
        )
            await scene.Release(number, point.Point);
        var ask = await scene.SomeMix(number);
        (await scene.Tove.AtThePipe(number)).Batches.Select(b => b.Batch).ShouldContain(ask.Batch);
        await scene.Tove.RecordClimate(number, AnOrder.Dry);
        await scene.Tove.StartMix(number, ask);
        var clock = (await scene.Anton.AtThePipe(number)).Work.Mixes.Single();
        clock.StartedAt.ShouldBe(scene.Clock.Now);
        clock.UsableUntil.ShouldBeGreaterThan(clock.StartedAt);
    }

    [Fact]
    public async Task Before_there_is_a_plan_there_are_no_steps_and_a_stop_is_still_taken()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        (await scene.Tove.AtThePipe(number)).Steps.ShouldBeEmpty();
        (await scene.Tove.StopJob(number, new StopJob("the leak grew"))).Kind.ShouldBe("stop");
    }

    [Fact]
    public async Task A_stopped_job_names_who_may_let_it_go_on()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fitting(scene);
        (await scene.Tove.AtThePipe(number)).Resumers.ShouldBeEmpty();
        await scene.Anton.StopJob(number, new StopJob("gas alarm"));
        var pipe = await scene.Tove.AtThePipe(number);
        pipe.Work.Stopped.ShouldBe("Anton Reyes: gas alarm");
        pipe.Resumers.Select(r => r.FullName).ShouldBe(["Mara Lindqvist", "Olaf Brekke"]);
        pipe.Steps[1].Objection!.Code.ShouldBe("stopped");
    }
}
