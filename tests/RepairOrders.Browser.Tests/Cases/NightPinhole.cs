using Microsoft.Playwright;
using RepairOrders.Contract;

namespace RepairOrders.Browser.Tests.Cases;

/// <summary>
/// A pinhole on a sweating DN 150 cooling-water line at night. Technician and shift supervisor are on site, the engineer is on the
/// telephone. It is fitted within three hours, and the papers are paid the next day.
/// </summary>
public sealed class NightPinhole(Service service)
{
    [Theory]
    [InlineData(true, 1440)]
    [InlineData(false, 390)]
    public async Task Fitted_within_three_hours_and_the_debt_paid_next_day(bool inOne, int width)
    {
        await using var mill = await CaseMill.Open(service, inOne, width);
        var entry = await Listed(await mill.Client("ines"), await mill.Client("pavel"));
        var raised = mill.Clock.Now;
        var tove = await mill.Person("tove");
        var number = await tove.Raises(
            new
            {
                line = "CW-150-3104",
                place = "Pump house 2, north wall, 4.2 m from valve V-22",
                fluid = "cooling water, brackish",
                seen = "pinhole weeping at 4 o'clock, the pipe sweats",
                foundHow = FoundHow.Round,
                leakState = LeakState.Weep,
                operatingPressure = "6",
                operatingTemperature = "64 °F",
                whyNotPermanent = "the line cools the turbine until the January stop",
            }
        );
        foreach (
            var (giver, capacity) in new[]
            {
                ("ines", ConsentCapacity.EngineerOnCall),
                ("olaf", ConsentCapacity.OperationsInCharge),
            }
        )
            await tove.Signs(
                number,
                "record-consent",
                new
                {
                    method = entry,
                    givenBy = await mill.IdOf(giver),
                    @as = capacity,
                    said = "Yes, put the night patch on and keep people away",
                    causeKnown = true,
                    consequences = AnOrder.FewPeople,
                }
            );

        var olaf = await mill.Person("olaf");
        await olaf.Signs(number, "ready-order", await Live(mill));
        mill.Clock.Pass(TimeSpan.FromMinutes(20));
        await tove.Fits(number);
        await olaf.Signs(
            number,
            "issue-material",
            new { receiver = await mill.IdOf("tove"), hazardSheetsGiven = true }
        );
        foreach (var _ in new[] { 1, 2 })
        {
            await tove.Signs(
                number,
                "record-cure",
                new { readings = new[] { new { pipe = "18" } }, instrument = "ST-0220" }
            );
            mill.Clock.Pass(TimeSpan.FromMinutes(30));
        }
        await tove.Signs(
            number,
            "record-proof",
            new
            {
                test = new
                {
                    kind = TestKind.ServiceLeak,
                    pressure = "6",
                    hold = "10",
                    medium = "cooling water",
                    gauge = "PG-1107",
                    tight = true,
                },
                pipeTemperature = "20",
                tag = "T-9",
                tagPhoto = Person.Picture,
            }
        );
        await olaf.Signs(number, "witness-proof", new { remark = "dry for ten minutes" });
        await tove.Signs(number, "accept-first-look", new { });
        await olaf.Signs(
            number,
            "accept-repair",
            new { operatorsTold = "night shift, control room", isolationsRemoved = true }
        );
        (mill.Clock.Now - raised).ShouldBeLessThan(TimeSpan.FromHours(3));
        await olaf.Sees(number, "In service", "Approval owed within");
        var night = (await mill.Order(number)).Title;

        // Next day: who was called at night confirms in his own session, the papers are made, two who gave no consent approve.
        mill.Clock.Pass(TimeSpan.FromHours(10));
        var ines = await mill.Person("ines");
        foreach (var giver in new[] { ines, olaf })
            await giver.Signs(number, "confirm-consent", new { given = true });
        await ines.Signs(number, "record-assessment", CaseSteps.Pinhole);
        await ines.Chooses(
            number,
            "banded-patch",
            "a pinhole with sound metal round it, water at 6 bar",
            "section-replacement",
            "the line cannot be taken off before the January stop"
        );
        await ines.Signs(
            number,
            "size-repair",
            new
            {
                values = new
                {
                    pressureBar = "6",
                    bandYieldMpa = "500",
                    nutFactorLow = "0.14",
                    nutFactorHigh = "0.18",
                    plateThicknessMm = "0.6",
                    designLifeDays = "180",
                },
                plannedFitOn = mill.Clock.Today.AddDays(1),
                owner = await mill.IdOf("mara"),
                permanentFix = new { reference = "job 4411", on = mill.Clock.Today.AddDays(60) },
            }
        );
        var mara = await mill.Person("mara");
        await mara.Signs(number, "approve-order", new { @as = ApprovalCapacity.Supervisor });
        await mara.Sees(number, "Approval owed within");
        await ines.Signs(number, "approve-order", new { @as = ApprovalCapacity.Engineer });

        var day = await mill.Order(number);
        day.Title.Stage.ShouldBe(Stage.InService);
        day.Debt.ShouldBeNull();
        day.Title.EndDate!.Value.ShouldBeGreaterThan(night.EndDate!.Value);
        await ines.Sees(number, "In service", $"{day.Title.EndDate:yyyy-MM-dd}");
        await Assertions.Expect(ines.Page.GetByText("Approval owed")).ToHaveCountAsync(0);
        (await (await mill.Client("rune")).Journal(number)).BrokenAt.ShouldBeNull();
    }

    private static async Task<object> Live(CaseMill mill) =>
        new
        {
            permit = "PTW 881",
            permitKind = PermitKind.Cold,
            livePressure = "6",
            gasTest = new
            {
                by = "Olaf Brekke",
                lowerExplosivePercent = "0",
                oxygenPercent = "20.9",
                withinPermit = true,
            },
            fitters = new[] { await mill.IdOf("tove") },
            talkSignedBy = new[] { await mill.IdOf("tove") },
        };

    /// <summary>One entry, signed by two engineers; its bands and putty lie in the locker.</summary>
    internal static async Task<Guid> Listed(RepairOrdersClient ines, RepairOrdersClient pavel)
    {
        HoldPointView Point(string code, string title, string? after, params Evidence[] evidence) =>
            new(
                code,
                title,
                HoldKind.Hold,
                "technician",
                evidence,
                after is null ? [] : [after],
                "common practice, no source"
            );
        var entry = await ines.ListEmergencyMethod(
            new(
                "mill",
                "Night patch, water",
                "banded-patch",
                Measure.Of(60, "mm"),
                Measure.Of(220, "mm"),
                Measure.Of(8, "bar"),
                Measure.Of(60, "°C"),
                ["cooling water, brackish", "fire water"],
                [
                    new("band", "stainless band 30 × 1.5 mm, four of 700 mm", 2800, "mm", "band"),
                    new("putty", "putty stick for wet surfaces, 114 g", 2, "pcs", "putty"),
                ],
                [
                    Point("defect", "The defect is as described", null, Evidence.Statement),
                    Point("surface", "The surface is bare and keyed", "defect", Evidence.Statement, Evidence.Photo),
                    Point("torque", "The screws are tightened in passes", "surface", Evidence.TorqueReadings),
                ],
                ["Stay out of the line of the leak and of band ends."],
                0.25,
                24,
                Measure.Of(20, "°C"),
                "calculation EM-1"
            )
        );
        await pavel.SignEmergencyMethod(entry.Id);
        return entry.Id;
    }
}
