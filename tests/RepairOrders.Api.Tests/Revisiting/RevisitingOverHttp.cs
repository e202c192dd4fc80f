using System.Text.Json;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Revisiting;

public sealed class RevisitingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_look_shows_who_stood_there_and_what_he_saw()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var good = await scene.SomeVisit(number);
        await Refuses("tag-not-seen", () => scene.Tove.Visit(number, good with { TagScan = null }));
        await Refuses(
            "tag-not-seen",
            () => scene.Tove.Visit(number, good with { TagScan = null, TagPhoto = good.Photo })
        );
        await Refuses("tag-of-another", () => scene.Tove.Visit(number, good with { TagScan = "mill-9999" }));
        await Refuses("visit-photo-missing", () => scene.Tove.Visit(number, good with { Photo = null }));
        await Refuses(
            "visit-photo-missing",
            () => scene.Tove.Visit(number, good with { Photo = Guid.CreateVersion7() })
        );
        await Refuses(
            "action-missing",
            () => scene.Tove.Visit(number, good with { Result = VisitResult.StayWithAction })
        );
        await Refuses(
            "weep-is-failure",
            () => scene.Tove.Visit(number, good with { State = LeakState.Weep, Result = VisitResult.FitToStay })
        );
        await Refuses("nothing-to-countersign", () => scene.Pavel.CountersignVisit(number, new(Guid.CreateVersion7())));
        var visit = await scene.Tove.Visit(number, good with { TagScan = $"https://mill.example/orders/{number}" });
        visit
            .Body.Deserialize<SignedVisit>(RepairOrdersClient.Json)!
            .CountersignNeeded.ShouldBeFalse("class C, no walls");
        await Refuses("visit-photo-used", () => scene.Tove.Visit(number, good));
    }

    [Fact]
    public async Task An_instrument_out_of_calibration_reads_nothing()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var survey = await scene.SomeVisit(number, AnOrder.SoundWalls);
        var off = survey with { Readings = [.. survey.Readings!.Select(r => r with { Instrument = "UT-1" })] };
        await Refuses("instrument-out-of-calibration", () => scene.Tove.Visit(number, off));
    }

    [Fact]
    public async Task Walls_take_another_engineers_name()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var visit = await scene.Ines.Visit(number, await scene.SomeVisit(number, AnOrder.SoundWalls));
        await Refuses("own-visit", () => scene.Ines.CountersignVisit(number, new(visit.Id)));
        await Refuses("visit-waits-not", () => scene.Pavel.CountersignVisit(number, new(Guid.CreateVersion7())));
        await scene.Pavel.CountersignVisit(number, new(visit.Id));
        await Refuses("nothing-to-countersign", () => scene.Pavel.CountersignVisit(number, new(visit.Id)));
    }

    [Fact]
    public async Task A_wall_below_its_forecast_owes_a_re_assessment_and_moves_the_end_in()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var before = (await scene.Mara.Order(number)).Title.EndDate!.Value;
        scene.Clock.PassDays(25);
        var visit = await scene.Tove.Visit(
            number,
            await scene.SomeVisit(number, ("3 o'clock", 5.2), ("5 o'clock", 6.5))
        );
        var made = visit.Body.Deserialize<SignedVisit>(RepairOrdersClient.Json)!;
        made.Walls.ShouldContain(w => w.Below);
        made.EndDateIn.ShouldNotBeNull();
        var order = await scene.Mara.Order(number);
        order.Title.EndDate.ShouldBe(made.EndDateIn);
        order.Title.EndDate!.Value.ShouldBeLessThan(before);
        order.Flags.ShouldContain(f => f.Code == Flags.ReassessmentOwed);

        // Signing the papers again settles it; the end date does not move out by that.
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        await scene.Ines.Size(
            number,
            AnOrder.Sizing(scene) with
            {
                PlannedFitOn = scene.Clock.Today,
            },
            await scene.Version(number)
        );
        var print = await scene.Fingerprint(number);
        await scene.Mara.Approve(number, new(print, ApprovalCapacity.Supervisor));
        await scene.Pavel.Approve(number, new(print, ApprovalCapacity.Engineer));
        var settled = await scene.Mara.Order(number);
        settled.Title.Stage.ShouldBe(Stage.InService);
        settled.Flags.ShouldNotContain(f => f.Code == Flags.ReassessmentOwed);
        settled.Title.EndDate!.Value.ShouldBeLessThanOrEqualTo(made.EndDateIn!.Value);
    }
}
