using System.Text.Json;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests.Cases;

/// <summary>
/// A clamp on the fire main weeps after three weeks in service. It has failed: contained, with what stands in for the fire main,
/// then a second round. The same clamp again takes a second engineer, and no later end date than the first cap allowed.
/// </summary>
public sealed class FireMainClamp(Service service)
{
    private static readonly (string, string, string, string) Clamp = (
        "bolted-clamp",
        "a pinhole on a straight run, room for two halves",
        "banded-patch",
        "the main pulses when the pumps start"
    );

    [Theory]
    [InlineData(true, 1440)]
    [InlineData(false, 390)]
    public async Task A_weep_is_a_failure_and_buys_no_time(bool inOne, int width)
    {
        await using var mill = await CaseMill.Open(service, inOne, width);
        var tove = await mill.Person("tove");
        var number = await tove.Raises(
            new
            {
                line = "FM-200-0012",
                place = "Yard, east leg, 12 m from hydrant 3",
                fluid = "fire water",
                seen = "pinhole weeping at 4 o'clock",
                foundHow = FoundHow.Round,
                leakState = LeakState.Weep,
                operatingPressure = "9",
                operatingTemperature = "12",
                immediateMeasures = "drip tray, area roped off",
                whyNotPermanent = "the main stands by for the whole mill until the January stop",
            }
        );
        await mill.Planned(number, CaseSteps.Pinhole, Clamp, await Sizing(mill));
        await mill.IntoService(number, "9");
        var first = (await mill.Order(number)).Title;
        var cap = mill.Clock.Today.AddDays(CapDays(first.SignedClass!.Value));
        mill.Clock.Pass(TimeSpan.FromDays(21));

        var weep = new
        {
            tagScan = number,
            state = LeakState.Weep,
            edges = EdgesState.Lifting,
            photo = Person.Picture,
            result = VisitResult.StayWithAction,
            action = "nip up",
        };
        (await tove.IsRefused(number, "record-visit", weep)).ShouldContain("weep", Case.Insensitive);
        // What he typed stands there still; he says what it is.
        await tove.Corrects(number, new { result = VisitResult.Failed });

        var olaf = await mill.Person("olaf");
        var contained = new
        {
            by = SafeBy.Containment,
            controls = "tray and drain hose, pressure cut to 4 bar",
            areaBarred = true,
            watchBy = "fire watch, every hour",
            mode = FailureMode.Seal,
        };
        (await olaf.IsRefused(number, "make-safe", contained)).ShouldContain("stand", Case.Insensitive);
        var mara = await mill.Person("mara");
        (await mara.MayNot(number, "make-safe")).ShouldContain("operations", Case.Insensitive);
        await olaf.Signs(
            number,
            "make-safe",
            new
            {
                contained.by,
                contained.controls,
                contained.areaBarred,
                contained.watchBy,
                standIn = "mobile pump at hydrant 4, fire watch",
                contained.mode,
            }
        );
        await olaf.Sees(number, "Made safe", "Leaking for");

        var ines = await mill.Person("ines");
        await ines.Signs(number, "record-assessment", CaseSteps.Pinhole);
        await ines.Sees(number, "round 2");
        (await ines.MayNotChoose(number, "bolted-clamp")).ShouldContain("second engineer", Case.Insensitive);
        var pavel = await mill.Person("pavel");
        await pavel.Signs(
            number,
            "sign-deviation",
            new
            {
                method = "bolted-clamp",
                basis = "the seal was nicked at the fit; a new seal of the harder grade, fitted on a ground pipe",
            }
        );
        var (method, reason, instead, whyNot) = Clamp;
        await ines.Chooses(number, method, reason, instead, whyNot);
        await ines.Signs(number, "size-repair", await Sizing(mill));
        var again = (await mill.Order(number))
            .Records.Last(r => r.Kind == "design" && r.SetAsideAt is null)
            .Body.Deserialize<SignedDesign>(RepairOrdersClient.Json)!;
        again.EndDate.On.ShouldBeLessThanOrEqualTo(cap);
        again.EndDate.Terms.ShouldContain(t => t.Code == "class-cap" && t.On == cap);
        await ines.Sees(number, $"{again.EndDate.On:yyyy-MM-dd}");
    }

    private static async Task<object> Sizing(CaseMill mill) =>
        new
        {
            plannedFitOn = mill.Clock.Today.AddDays(1),
            owner = await mill.IdOf("mara"),
            permanentFix = new { reference = "job 4411", on = mill.Clock.Today.AddDays(60) },
            changeControl = new { reference = "MOC-3", endsOn = mill.Clock.Today.AddDays(700) },
            interimLimits = new { pressure = "9" },
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
