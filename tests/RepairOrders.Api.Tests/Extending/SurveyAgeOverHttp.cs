using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Extending;

public sealed class SurveyAgeOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_survey_is_as_old_as_its_oldest_wall()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var began = scene.Clock.Today;
        scene.Clock.PassDays(7);
        await scene.Tove.Visit(number, await scene.SomeVisit(number));
        scene.Clock.PassDays(25);
        var old = await Survey(scene, number, began);
        var no = await Refuses("survey-too-old", () => Ask(scene, number, old));
        no.Message.ShouldContain("32 days old");
    }

    /// <summary>A survey whose last wall was read on an earlier day.</summary>
    private static async Task<Guid> Survey(Scene scene, string number, DateOnly readOn)
    {
        var fresh = await scene.SomeVisit(number, AnOrder.SoundWalls);
        var walls = fresh.Readings!;
        var visit = await scene.Tove.Visit(
            number,
            fresh with
            {
                Readings = [.. walls.SkipLast(1), walls[^1] with { On = readOn }],
            }
        );
        await scene.Pavel.CountersignVisit(number, new(visit.Id));
        return visit.Id;
    }

    private static Task<RecordView> Ask(Scene scene, string number, Guid survey) =>
        scene.Mara.AskExtension(
            number,
            new(SlipReason.PartsLate, "the spool is late", survey, new("job 4411", scene.Clock.Today.AddDays(90)))
        );
}
