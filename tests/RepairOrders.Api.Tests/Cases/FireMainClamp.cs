using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Cases;

/// <summary>
/// A clamp on the fire main weeps after three weeks in service. It has failed: contained, with what stands in for the fire main,
/// then a second round. The same clamp again takes a second engineer, and no later end date than the first cap allowed.
/// </summary>
public sealed class FireMainClamp(Workshop workshop)
{
    private static readonly ChooseMethod Clamp = new(
        "bolted-clamp",
        [new("banded-patch", "the main pulses when the pumps start")],
        "a pinhole on a straight run, room for two halves"
    );

    [Fact]
    public async Task A_weep_is_a_failure_and_buys_no_time()
    {
        var scene = await workshop.Scene();
        var number = await Clamped(scene);
        var first = await scene.Mara.Order(number);
        var cap = scene.Clock.Today.AddDays(CapDays(first.Title.SignedClass!.Value));
        scene.Clock.PassDays(21);

        var photo = await scene.Photograph(number, PhotoOf.Visit);
        RecordVisit Seen(VisitResult result) =>
            new(number, null, LeakState.Weep, Moved: false, EdgesState.Lifting, photo.Id, result, Action: "nip up");
        await Refuses("weep-is-failure", () => scene.Tove.Visit(number, Seen(VisitResult.StayWithAction)));
        await scene.Tove.Visit(number, Seen(VisitResult.Failed));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Failed);

        var contained = new MakeSafe(
            SafeBy.Containment,
            null,
            "tray and drain hose, pressure cut to 4 bar",
            AreaBarred: true,
            "fire watch, every hour",
            null,
            FailureMode.Seal
        );
        await Refuses("no-stand-in", () => scene.Olaf.MakeSafe(number, contained));
        await Refuses(
            "operations-in-charge-needed",
            () => scene.Mara.MakeSafe(number, contained with { StandIn = "mobile pump" })
        );
        await scene.Olaf.MakeSafe(number, contained with { StandIn = "mobile pump at hydrant 4, fire watch" });
        var safe = await scene.Mara.Order(number);
        safe.Title.Stage.ShouldBe(Stage.MadeSafe);
        safe.Flags.ShouldContain(f => f.Code == Flags.Leaking);

        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        (await scene.Mara.Order(number)).Title.Round.ShouldBe(2);
        await Refuses(
            "same-method-again",
            async () => await scene.Ines.Choose(number, Clamp, await scene.Version(number))
        );
        await scene.Pavel.Deviate(
            number,
            new(
                "bolted-clamp",
                "the seal was nicked at the fit; a new seal of the harder grade, fitted on a ground pipe"
            )
        );
        await scene.Ines.Choose(number, Clamp, await scene.Version(number));
        await scene.Ines.Size(number, Sizing(scene), await scene.Version(number));
        var again = await scene.Design(number);
        again.EndDate.On.ShouldBeLessThanOrEqualTo(cap);
        again.EndDate.Terms.ShouldContain(t => t.Code == "class-cap" && t.On == cap);
    }

    private static async Task<string> Clamped(Scene scene)
    {
        var number = await AnOrder.ApprovedWith(
            scene,
            method: Clamp,
            sizing: Sizing(scene),
            request: Cast.Weep(scene.Site) with
            {
                Line = "FM-200-0012",
                Place = "Yard, east leg, 12 m from hydrant 3",
                Fluid = "fire water",
                OperatingPressure = Measure.Of(9, "bar"),
                OperatingTemperature = Measure.Of(12, "°C"),
            }
        );
        await scene.Issue(number);
        await scene.Readied(number);
        await scene.Fit(number);
        await scene.IntoService(number);
        return number;
    }

    private static SizeRepair Sizing(Scene scene) =>
        AnOrder.Sizing(scene) with
        {
            Values = new Dictionary<string, InputValue>(),
            InterimLimits = new(Measure.Of(9, "bar"), null, null),
            ChangeControl = new("MOC-3", scene.Clock.Today.AddDays(700)),
        };

    private static int CapDays(RiskClass riskClass) =>
        riskClass switch
        {
            RiskClass.A => 90,
            RiskClass.B => 180,
            RiskClass.C => 365,
            _ => 730,
        };
}
