using RepairOrders.Contract;

namespace RepairOrders.Api.Tests;

/// <summary>Looks and surveys of a repair in service.</summary>
internal static partial class AnOrder
{
    public static readonly (string Spot, double Mm)[] SoundWalls = [("3 o'clock", 6.4), ("5 o'clock", 6.6)];

    /// <summary>In service until a shutdown 150 days off, on a patch good for two years.</summary>
    public static async Task<(string Number, ShutdownView Stop)> UntilAStop(
        Scene scene,
        RecordAssessment? judged = null
    )
    {
        var stop = await scene.Mara.AddShutdown(new(scene.Site, "summer stop", null, scene.Clock.Today.AddDays(150)));
        var values = new Dictionary<string, InputValue>(PatchValues) { ["designLifeDays"] = 700 };
        var number = await ApprovedWith(
            scene,
            judged,
            sizing: Sizing(scene) with
            {
                Values = values,
                ChangeControl = new("MOC-3", scene.Clock.Today.AddDays(700)),
            }
        );
        await scene.Issue(number);
        await scene.Readied(number);
        await scene.Fit(number);
        await scene.IntoService(number);
        return (number, stop);
    }

    /// <summary>A dry look by Tove; with walls it is a survey.</summary>
    public static async Task<RecordVisit> SomeVisit(
        this Scene scene,
        string number,
        params (string Spot, double Mm)[] walls
    )
    {
        var photo = await scene.Photograph(number, PhotoOf.Visit);
        return new(
            number,
            null,
            LeakState.Dry,
            Moved: false,
            EdgesState.Sound,
            photo.Id,
            VisitResult.FitToStay,
            Readings: walls.Length == 0
                ? null
                :
                [
                    .. walls.Select(w => new ThicknessReading(
                        ReadingPlace.Beside,
                        w.Spot,
                        Measure.Of(w.Mm, "mm"),
                        scene.Clock.Today,
                        "UT-7"
                    )),
                ]
        );
    }

    /// <summary>Walls read by Tove, countersigned by Pavel.</summary>
    public static async Task<Guid> Surveyed(this Scene scene, string number)
    {
        var visit = await scene.Tove.Visit(number, await scene.SomeVisit(number, SoundWalls));
        await scene.Pavel.CountersignVisit(number, new(visit.Id));
        return visit.Id;
    }

    /// <summary>Time passes with a look every so many days.</summary>
    public static async Task Looked(this Scene scene, string number, DateOnly until, int every = 30)
    {
        while (scene.Clock.Today < until)
        {
            scene.Clock.PassDays(Math.Min(every, until.DayNumber - scene.Clock.Today.DayNumber));
            await scene.Tove.Visit(number, await scene.SomeVisit(number));
        }
    }

    public static AskExtension Later(Scene scene, Guid survey, ChangeControl? change) =>
        new(SlipReason.PartsLate, "the spool is late", survey, new("job 4411", scene.Clock.Today.AddDays(100)), change);
}
