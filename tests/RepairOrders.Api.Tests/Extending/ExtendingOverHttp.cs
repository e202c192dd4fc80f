using System.Text.Json;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Extending;

/// <summary>A later end date: who may ask, on what, who decides, and what bars it.</summary>
public sealed class ExtendingOverHttp(Workshop workshop)
{
    private static readonly ChangeControl Moved = new("MOC-3", new DateOnly(2029, 1, 1));

    [Fact]
    public async Task Asked_thirty_days_ahead_on_a_fresh_survey_and_granted_by_the_manager()
    {
        var scene = await workshop.Scene();
        var (number, stop) = await AnOrder.UntilAStop(scene);
        await scene.Looked(number, stop.Start.AddDays(-35));
        await Refuses(
            "no-extension-waits",
            () => scene.Henrik.DecideExtension(number, new(Guid.CreateVersion7(), true))
        );

        var loose = await scene.Tove.Visit(number, await scene.SomeVisit(number, AnOrder.SoundWalls));
        await Refuses(
            "survey-not-countersigned",
            () => scene.Mara.AskExtension(number, AnOrder.Later(scene, loose.Id, Moved))
        );
        await scene.Pavel.CountersignVisit(number, new(loose.Id));
        await Refuses(
            "change-control-not-moved",
            () => scene.Mara.AskExtension(number, AnOrder.Later(scene, loose.Id, null))
        );
        var asked = await scene.Mara.AskExtension(number, AnOrder.Later(scene, loose.Id, Moved));
        var reckoned = asked.Body.Deserialize<SignedExtension>(RepairOrdersClient.Json)!;
        reckoned.Late.ShouldBeFalse();
        reckoned.EndDate.On.ShouldBe(stop.Start.AddDays(180), "class C: one extension of 180 days");
        await Refuses(
            "extension-pending",
            () => scene.Mara.AskExtension(number, AnOrder.Later(scene, loose.Id, Moved))
        );

        await Refuses("other-extension", () => scene.Henrik.DecideExtension(number, new(Guid.CreateVersion7(), true)));
        await Refuses("refusal-without-reason", () => scene.Henrik.DecideExtension(number, new(asked.Id, false)));
        // On class C the manager or a second engineer decides; Ines sized it.
        await Refuses("extension-capacity", () => scene.Ines.DecideExtension(number, new(asked.Id, true)));
        await scene.Henrik.DecideExtension(number, new(asked.Id, true));
        (await scene.Mara.Order(number)).Title.EndDate.ShouldBe(reckoned.EndDate.On);
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.InService);
    }

    [Fact]
    public async Task Who_asked_never_decides()
    {
        var scene = await workshop.Scene();
        var both = await scene.Hire(new("nils", "Nils Aas", [Role.Supervisor, Role.Manager], []));
        var (number, stop) = await AnOrder.UntilAStop(scene);
        await scene.Looked(number, stop.Start.AddDays(-20));
        var survey = await scene.Surveyed(number);
        var asked = await both.AskExtension(number, AnOrder.Later(scene, survey, Moved));
        asked.Body.Deserialize<SignedExtension>(RepairOrdersClient.Json)!.Late.ShouldBeTrue("less than 30 days ahead");
        await Refuses("own-extension", () => both.DecideExtension(number, new(asked.Id, true)));

        // Brought forward meanwhile, the shutdown moves the end date in: what was reckoned no longer holds.
        await scene.Mara.MoveShutdown(
            stop.Id,
            new(stop.Start.AddDays(-5), "the rotor came early"),
            (await scene.Mara.Shutdowns(scene.Site)).Single(s => s.Id == stop.Id).Version
        );
        await Refuses("end-date-moved-since", () => scene.Henrik.DecideExtension(number, new(asked.Id, true)));
        await scene.Henrik.DecideExtension(number, new(asked.Id, false, "ask again with the new date"));
        (await scene.Mara.Order(number)).Title.EndDate.ShouldBe(stop.Start.AddDays(-5));
    }

    [Fact]
    public async Task After_the_end_date_manager_and_engineer_decide_once_on_a_survey_of_the_week()
    {
        var scene = await workshop.Scene();
        var (number, stop) = await AnOrder.UntilAStop(scene);
        await scene.Looked(number, stop.Start.AddDays(-10));
        var old = await scene.Surveyed(number);
        await scene.Looked(number, stop.Start.AddDays(5));
        await Refuses("survey-too-old", () => scene.Mara.AskExtension(number, AnOrder.Later(scene, old, Moved)));
        var asked = await scene.Mara.AskExtension(number, AnOrder.Later(scene, await scene.Surveyed(number), Moved));
        var reckoned = asked.Body.Deserialize<SignedExtension>(RepairOrdersClient.Json)!;
        reckoned.AfterEnd.ShouldBeTrue();
        reckoned.Needed.ShouldBe([ExtensionCapacity.Manager, ExtensionCapacity.Engineer]);
        await scene.Henrik.DecideExtension(number, new(asked.Id, true));
        await Refuses("decided-already", () => scene.Henrik.DecideExtension(number, new(asked.Id, true)));
        await scene.Ines.DecideExtension(number, new(asked.Id, true));
        var end = (await scene.Mara.Order(number)).Title.EndDate!.Value;
        end.ShouldBe(reckoned.EndDate.On);

        await scene.Looked(number, end.AddDays(3));
        var again = await scene.Surveyed(number);
        await Refuses("late-extension-used", () => scene.Mara.AskExtension(number, AnOrder.Later(scene, again, Moved)));
    }

    [Fact]
    public async Task A_cause_nobody_knows_bars_it()
    {
        var scene = await workshop.Scene();
        var judged = AnOrder.Judged(scene);
        var (number, stop) = await AnOrder.UntilAStop(
            scene,
            judged with
            {
                Defect = judged.Defect with { Cause = DefectCause.Unknown },
                WallMappedEachSide = Measure.Of(600, "mm"),
            }
        );
        await scene.Looked(number, stop.Start.AddDays(-40));
        var survey = await scene.Surveyed(number);
        await Refuses(
            "extension-cause-unknown",
            () => scene.Mara.AskExtension(number, AnOrder.Later(scene, survey, Moved))
        );
    }

    [Fact]
    public async Task A_re_assessment_owed_comes_first()
    {
        var scene = await workshop.Scene();
        var (number, stop) = await AnOrder.UntilAStop(scene);
        await scene.Looked(number, stop.Start.AddDays(-40));
        var survey = await scene.SomeVisit(number, AnOrder.SoundWalls);
        var visit = await scene.Tove.Visit(number, survey with { Excursions = "hammer when pump 3 tripped, 14 bar" });
        await scene.Pavel.CountersignVisit(number, new(visit.Id));
        await Refuses(
            "re-assessment-first",
            () => scene.Mara.AskExtension(number, AnOrder.Later(scene, visit.Id, Moved))
        );
    }

    [Fact]
    public async Task Past_its_design_life_there_is_nothing_to_grant()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var end = (await scene.Mara.Order(number)).Title.EndDate!.Value;
        await scene.Looked(number, end.AddDays(-20));
        var survey = await scene.Surveyed(number);
        await Refuses(
            "extension-gains-nothing",
            () => scene.Mara.AskExtension(number, AnOrder.Later(scene, survey, null))
        );
    }

    [Fact]
    public async Task Over_a_year_takes_a_full_re_assessment()
    {
        var scene = await workshop.Scene();
        var (number, stop) = await AnOrder.UntilAStop(scene);
        await scene.Looked(number, stop.Start.AddDays(-35));
        var first = await scene.Mara.AskExtension(number, AnOrder.Later(scene, await scene.Surveyed(number), Moved));
        await scene.Henrik.DecideExtension(number, new(first.Id, true));
        await scene.Looked(number, stop.Start.AddDays(145));
        var survey = await scene.Surveyed(number);
        await Refuses(
            "full-re-assessment-needed",
            () => scene.Mara.AskExtension(number, AnOrder.Later(scene, survey, Moved))
        );
    }
}
