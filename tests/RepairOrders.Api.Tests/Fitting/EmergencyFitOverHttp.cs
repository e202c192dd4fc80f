using System.Text.Json;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Fitting;

/// <summary>A pinhole at night: technician and shift supervisor on site, the engineer by telephone.</summary>
public sealed class EmergencyFitOverHttp(Workshop workshop)
{
    [Fact]
    public async Task Two_on_site_and_one_on_the_telephone_bring_it_into_service_within_three_hours()
    {
        var scene = await workshop.Scene();
        var (band, putty) = await Emergency.Locker(scene);
        var started = scene.Clock.Now;
        var number = await AnOrder.Consented(scene);
        await scene.Olaf.ReadyOrder(number, Emergency.Live(scene));
        await Emergency.Fit(scene, number);
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Fitted);
        await Emergency.LetSet(scene, number);
        await Emergency.Prove(scene, number);
        var accept = new AcceptRepair("night shift, control room", IsolationsRemoved: true);
        await Refuses("batches-not-recorded", () => scene.Olaf.AcceptRepair(number, accept));
        await scene.Olaf.IssueMaterial(number, Emergency.FromLocker(scene, band, putty));
        await scene.Olaf.AcceptRepair(number, accept);

        var order = await scene.Mara.Order(number);
        order.Title.Stage.ShouldBe(Stage.InService);
        (scene.Clock.Now - started).ShouldBeLessThan(TimeSpan.FromHours(3));
        var locker = (await scene.Signe.Bins(scene.Site)).Single(b => b.Said.Locker);
        locker.CountDue.ShouldBe(scene.Clock.Today.AddDays(1));
        (await scene.Rune.Journal(number)).BrokenAt.ShouldBeNull();
    }

    [Fact]
    public async Task A_recalled_batch_found_after_the_fit_is_a_failure()
    {
        var scene = await workshop.Scene();
        var (band, putty) = await Emergency.Locker(scene);
        var number = await AnOrder.Consented(scene);
        await scene.Olaf.ReadyOrder(number, Emergency.Live(scene));
        await scene.Signe.JudgeBatch(putty, new(BatchStanding.Recalled, "notice 12"));
        // Found before the work, it is simply refused.
        await Refuses(
            "batch-recalled",
            () => scene.Olaf.IssueMaterial(number, Emergency.FromLocker(scene, band, putty))
        );
        await scene.Tove.ReleaseHoldPoint(number, new("defect"));
        var issue = await scene.Olaf.IssueMaterial(number, Emergency.FromLocker(scene, band, putty));
        issue.Tone.ShouldBe(Tone.Stop);
        issue.Summary.ShouldContain("recalled: notice 12");
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Failed);
    }

    [Fact]
    public async Task Batches_recorded_more_than_four_hours_after_the_fit_are_late()
    {
        var scene = await workshop.Scene();
        var (band, putty) = await Emergency.Locker(scene);
        var number = await AnOrder.Consented(scene);
        await scene.Olaf.ReadyOrder(number, Emergency.Live(scene));
        await scene.Tove.ReleaseHoldPoint(number, new("defect"));
        scene.Clock.Pass(TimeSpan.FromHours(4.1));
        var issue = await scene.Olaf.IssueMaterial(number, Emergency.FromLocker(scene, band, putty));
        issue.Body.Deserialize<SignedIssue>(RepairOrdersClient.Json)!.Late.ShouldBeTrue();
        issue.Tone.ShouldBe(Tone.Watch);
    }

    [Fact]
    public async Task Consents_lapse_twelve_hours_after_they_were_given_without_a_start()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Consented(scene);
        scene.Clock.Pass(TimeSpan.FromHours(12.1));
        await Refuses("consents-not-standing", () => scene.Olaf.ReadyOrder(number, Emergency.Live(scene)));
    }

    [Fact]
    public async Task Points_of_an_inspector_and_of_a_witness_are_held_at_night_too()
    {
        var scene = await workshop.Scene();
        var entry = Emergency.Patch(scene.Site);
        var points = entry.HoldPoints.Take(1).ToList();
        points.Add(points[0] with { Code = "eye", Title = "An inspector has looked", ReleasedBy = "inspector" });
        points.Add(points[0] with { Code = "called", Title = "The supervisor was called", Kind = HoldKind.Witness });
        var method = await Emergency.Listed(scene, entry with { HoldPoints = points });
        var number = await AnOrder.Requested(scene);
        foreach (
            var (giver, place) in new[]
            {
                ("ines", ConsentCapacity.EngineerOnCall),
                ("olaf", ConsentCapacity.OperationsInCharge),
            }
        )
            await scene.Tove.Consent(number, Emergency.Spoken(method, scene.IdOf(giver), place, scene.Clock.Now));
        await scene.Olaf.ReadyOrder(number, Emergency.Live(scene));
        await scene.Tove.ReleaseHoldPoint(number, new("defect"));
        await Refuses("wrong-signer", () => scene.Tove.ReleaseHoldPoint(number, new("eye")));
        await scene.Vera.ReleaseHoldPoint(number, new("eye"));
        var called = new ReleaseHoldPoint("called");
        await Refuses("witness-not-called", () => scene.Tove.ReleaseHoldPoint(number, called));
        await Refuses(
            "witness-wrong",
            () => scene.Tove.ReleaseHoldPoint(number, called with { Witness = Called("signe") })
        );
        var release = await scene.Tove.ReleaseHoldPoint(number, called with { Witness = Called("mara") });
        release.Body.Deserialize<SignedRelease>(RepairOrdersClient.Json)!.Witness.ShouldBe("Mara Lindqvist");

        WitnessCalled Called(string who) => new(scene.IdOf(who), scene.Clock.Now, Came: false);
    }
}
