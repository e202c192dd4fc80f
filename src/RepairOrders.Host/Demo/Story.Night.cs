using RepairOrders.Contract;

namespace RepairOrders.Host.Demo;

// The emergency path: two spoken consents, the locker, the debt.
internal sealed partial class Story
{
    private static readonly LeakConsequences FewPeople = new(PeopleNearby.Rarely, true, Measure.Of(500, "kg"), false);

    /// <summary>The mill's one entry of the emergency list, signed by two engineers.</summary>
    public static async Task ListNightPatch(Crew crew)
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
        var listed = await (await crew.As("ines")).ListEmergencyMethod(
            new(
                Mill.Site,
                "Night patch, water",
                Methods.Patch,
                Measure.Of(60, "mm"),
                Measure.Of(220, "mm"),
                Measure.Of(8, "bar"),
                Measure.Of(60, "°C"),
                ["cooling water, brackish", "fire water", "paper stock 4 %"],
                [
                    new("band", "stainless band 30 × 1.5 mm, four of 700 mm", 2800, "mm", "band"),
                    new("putty", "putty stick for wet surfaces, 114 g", 2, "pcs", "putty"),
                ],
                [
                    Point("defect", "The defect is as described", null, Evidence.Statement),
                    Point("surface", "The surface is bare and keyed", "defect", Evidence.Statement, Evidence.Photo),
                    Point("torque", "The screws are tightened in passes", "surface", Evidence.TorqueReadings),
                ],
                ["Stay out of the line of the leak and of band ends.", "Never tighten over a crack."],
                0.25,
                24,
                Measure.Of(20, "°C"),
                "calculation EM-1"
            )
        );
        await (await crew.As("pavel")).SignEmergencyMethod(listed.Id);
    }

    /// <summary>Consents by telephone, fitted live out of the locker, tested in service, accepted; within the night.</summary>
    public Story NightPatch() => Consents().NightFit();

    /// <summary>The engineer on call and the shift supervisor consent; the technician writes it down.</summary>
    public Story Consents() =>
        Then(async () =>
        {
            var by = await As(requester);
            var entry = (await by.EmergencyMethods(Mill.Site)).Single();
            await Minutes(10);
            foreach (
                var (who, capacity) in new[]
                {
                    ("ines", ConsentCapacity.EngineerOnCall),
                    ("olaf", ConsentCapacity.OperationsInCharge),
                }
            )
                await by.Consent(
                    Number,
                    new(
                        entry.Id,
                        await crew.IdOf(who),
                        capacity,
                        walk.GetUtcNow(),
                        "Yes, put the night patch on and keep people away",
                        CrackLike: false,
                        CauseKnown: true,
                        FailedBefore: false,
                        FewPeople
                    )
                );
        });

    /// <summary>Those who consented confirm it in their own sessions.</summary>
    public Story Confirm() =>
        Then(async () =>
        {
            foreach (var consent in (await Sheet()).Records.Where(r => r.Kind == "consent").ToList())
            {
                await Minutes(20);
                var by = Body<SignedConsent>(consent).Ask.As == ConsentCapacity.EngineerOnCall ? "ines" : "olaf";
                await (await As(by)).ConfirmConsent(Number, new(consent.Id, Given: true));
            }
        });

    private Story NightFit() =>
        Then(async () =>
        {
            var fitter = Fitters[0];
            await Minutes(15);
            await (await As("olaf")).ReadyOrder(
                Number,
                await Readiness(ReadinessFor.Fit, 8) with
                {
                    Isolation = null,
                    LivePressure = pipe.OperatingPressure,
                }
            );
            var client = await As(fitter);
            foreach (var point in (await client.Fitting(Number)).Points.Select(p => p.Point))
            {
                await Minutes(15);
                if (point.Evidence.Contains(Evidence.Photo))
                    await Photograph(fitter, PhotoOf.HoldPoint, point.Code, false, point.Code);
                await client.ReleaseHoldPoint(
                    Number,
                    point.Evidence.Contains(Evidence.TorqueReadings)
                        ? new(point.Code, Tightening: [new(1, 1, Measure.Of(12, "N m"))], Instrument: "TW-0031")
                        : new(point.Code)
                );
            }
            await FromLocker(fitter);
            await LetSet(fitter);
            var proof = await client.RecordProof(
                Number,
                new(
                    Tested() with
                    {
                        Kind = TestKind.ServiceLeak,
                        Medium = pipe.Fluid,
                    },
                    Celsius(18),
                    $"T-{Number[(Mill.Site.Length + 1)..]}",
                    await Tag(fitter)
                )
            );
            await (await As("greta")).WitnessProof(Number, proof.Id, new("dry for a quarter of an hour"));
            await Account(fitter);
            await client.AcceptFirstLook(Number, new());
            await (await As("olaf")).AcceptRepair(Number, new("night shift, control room", IsolationsRemoved: true));
        });

    // At night the shift supervisor opens the locker; what lies there changes with the deliveries.
    private async Task FromLocker(string receiver)
    {
        var putty = MillStock
            .Deliveries.Where(d => d is { Bin: "N1", Item: "PUTTY-W" } && d.Day < walk.Day && d.Expires > walk.Day)
            .MinBy(d => d.Expires);
        async Task<IssueLine> Line(int line, string number, decimal quantity) =>
            new(line, (await (await As("signe")).Batches(Mill.Site, number)).Rows.Single().Id, "N1", quantity);
        await (await As("olaf")).IssueMaterial(
            Number,
            new(
                await crew.IdOf(receiver),
                [await Line(1, "B-1108", 2800), await Line(2, putty.Number, 2)],
                HazardSheetsGiven: true
            )
        );
    }
}
