using System.Text.Json;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Cases;

/// <summary>
/// A thinned heating-oil line of class B under a laminate wrap. The shutdown that is to replace it lies five months off and slips
/// by four: two extensions, each only on a fresh survey, and a third is refused.
/// </summary>
public sealed class SlippedShutdown(Workshop workshop)
{
    [Fact]
    public async Task Two_extensions_on_fresh_surveys_and_a_third_is_refused()
    {
        var scene = await workshop.Scene();
        var started = scene.Clock.Today;
        var stop = await scene.Mara.AddShutdown(new(scene.Site, "summer stop", null, started.AddDays(150)));
        var number = await Wrapped(scene);
        var order = await scene.Mara.Order(number);
        order.Title.SignedClass.ShouldBe(RiskClass.B);
        order.Title.EndDate.ShouldBe(started.AddDays(150), "the shutdown ends it before the cap of 180 days");

        await Look(scene, number, until: started.AddDays(100));
        var move = await scene.Mara.MoveShutdown(
            stop.Id,
            new(started.AddDays(270), "the turbine rotor is late"),
            stop.Version
        );
        move.Leaning.ShouldContain(l => l.Number == number && l.LosesOut);
        (await scene.Mara.Order(number)).Title.EndDate.ShouldBe(
            started.AddDays(150),
            "a slipped shutdown moves nothing out"
        );

        // Without a survey, on one too old, and on one nobody countersigned it is refused.
        await Refuses("survey-missing", () => Ask(scene, number, Guid.CreateVersion7(), 180));
        var old = await Survey(scene, number);
        await Look(scene, number, until: started.AddDays(134));
        await Refuses("survey-too-old", () => Ask(scene, number, old, 180));

        await Extend(scene, number, started.AddDays(240));
        await Look(scene, number, until: started.AddDays(225));
        await Extend(scene, number, started.AddDays(270));

        await Look(scene, number, until: started.AddDays(258));
        var survey = await Survey(scene, number);
        // The sheet says so before anything is written, by the rule that refuses it.
        var offered = (await scene.Mara.Order(number)).Actions.Single(a => a.Action == "ask-extension").Objection;
        offered.ShouldNotBeNull().Code.ShouldBe("extensions-used-up");
        offered.Clears.ShouldBe("nobody; order the removal");
        await Refuses("extensions-used-up", () => Ask(scene, number, survey, 360));
        scene.Clock.PassDays(20);
        (await scene.Mara.Order(number)).Flags.ShouldContain(f => f.Code == Flags.PastLife);
        (await scene.Rune.Journal(number)).BrokenAt.ShouldBeNull();
    }

    private static async Task<string> Wrapped(Scene scene)
    {
        var judged = new RecordAssessment(
            [
                new(ReadingPlace.AtDefect, "centre", Measure.Of(3.4, "mm"), scene.Clock.Today, "UT-7"),
                new(ReadingPlace.Beside, "upstream", Measure.Of(5.8, "mm"), scene.Clock.Today, "UT-7"),
                new(ReadingPlace.Beside, "downstream", Measure.Of(5.7, "mm"), scene.Clock.Today, "UT-7"),
            ],
            null,
            new(
                DefectKind.GeneralThinning,
                DefectSide.External,
                DefectCause.ExternalCorrosion,
                ThroughWall: false,
                Measure.Of(60, "mm"),
                Measure.Of(40, "mm"),
                Measure.Of(2.6, "mm"),
                ClockHours: 6,
                Growing: true
            ),
            new(PeopleNearby.MannedArea, IsolableWithinTenMinutes: true, Measure.Of(800, "kg"), DrainsToWater: false),
            QualityFactor: 1
        );
        var number = await AnOrder.ApprovedWith(
            scene,
            judged,
            new(
                "laminate-wrap",
                [new("welded-patch", "no hot work on a heating-oil line in service")],
                "thinned from outside, no leak, sound ends"
            ),
            new(
                new Dictionary<string, InputValue>
                {
                    ["softeningC"] = 110,
                    ["designLifeYears"] = 2,
                    ["lapShearMpa"] = 5,
                    ["growthMmPerYear"] = 0.1,
                },
                null,
                scene.Clock.Today.AddDays(1),
                scene.IdOf("mara"),
                new("job 5120", scene.Clock.Today.AddDays(150)),
                new("MOC-3", scene.Clock.Today.AddDays(170))
            ),
            request: new(
                scene.Site,
                "HO-100-0450",
                "Boiler house, pipe bridge, support 7",
                "heating oil",
                "thinned under the old support shoe",
                FoundHow.Round,
                LeakState.Dry,
                false,
                Measure.Of(7, "bar"),
                Measure.Of(45, "°C"),
                "support lifted and packed",
                "the boilers need the line until the summer stop",
                null
            )
        );
        await scene.Issue(number);
        await scene.Readied(number);
        await scene.Fit(number);
        await scene.IntoService(number);
        return number;
    }

    /// <summary>A look every week, countersigned: class B.</summary>
    private static async Task Look(Scene scene, string number, DateOnly until)
    {
        while (scene.Clock.Today < until)
        {
            scene.Clock.PassDays(Math.Min(7, until.DayNumber - scene.Clock.Today.DayNumber));
            await Visit(scene, number);
        }
    }

    private static Task<Guid> Survey(Scene scene, string number) =>
        Visit(scene, number, ("upstream", 5.8), ("downstream", 5.7));

    private static async Task<Guid> Visit(Scene scene, string number, params (string Spot, double Mm)[] walls)
    {
        var visit = await scene.Tove.Visit(number, await scene.SomeVisit(number, walls));
        await scene.Pavel.CountersignVisit(number, new(visit.Id));
        return visit.Id;
    }

    private static async Task Extend(Scene scene, string number, DateOnly expected)
    {
        var asked = await Ask(scene, number, await Survey(scene, number), 300);
        var reckoned = asked.Body.Deserialize<SignedExtension>(RepairOrdersClient.Json)!;
        reckoned.Needed.ShouldBe([ExtensionCapacity.Manager, ExtensionCapacity.Engineer]);
        await scene.Henrik.DecideExtension(number, new(asked.Id, Grant: true));
        (await scene.Mara.Order(number)).Title.EndDate.ShouldBe(reckoned.From, "one signature of two moves nothing");
        await scene.Ines.DecideExtension(number, new(asked.Id, Grant: true));
        (await scene.Mara.Order(number)).Title.EndDate.ShouldBe(expected);
    }

    private static Task<RecordView> Ask(Scene scene, string number, Guid survey, int days) =>
        scene.Mara.AskExtension(
            number,
            new(
                SlipReason.ShutdownPutOff,
                "the summer stop was put off by four months",
                survey,
                new("job 5120", scene.Clock.Today.AddDays(120)),
                new("MOC-3", scene.Clock.Today.AddDays(days))
            )
        );
}
