using RepairOrders.Contract;

namespace RepairOrders.Api.Tests;

/// <summary>The emergency list of a scene, and what is said on the telephone.</summary>
internal static class Emergency
{
    /// <summary>A banded patch for small water lines.</summary>
    public static ListEmergencyMethod Patch(string site) =>
        new(
            site,
            "Night patch, water",
            "banded-patch",
            Measure.Of(60, "mm"),
            Measure.Of(220, "mm"),
            Measure.Of(7, "bar"),
            Measure.Of(60, "°C"),
            ["cooling water, brackish", "fire water"],
            [
                new("band", "band 30 × 1.5 mm, stainless, 700 mm", 4, "pcs", "band"),
                new("putty", "putty stick for wet surfaces, 114 g", 2, "pcs", "putty"),
            ],
            [
                new(
                    "defect",
                    "The defect is as described",
                    HoldKind.Hold,
                    "technician",
                    [Evidence.Statement],
                    [],
                    "common practice, no source"
                ),
                new(
                    "surface",
                    "The surface is bare and keyed",
                    HoldKind.Hold,
                    "technician",
                    [Evidence.Statement, Evidence.Photo],
                    ["defect"],
                    "common practice, no source"
                ),
                new(
                    "torque",
                    "The screws are tightened in passes",
                    HoldKind.Hold,
                    "technician",
                    [Evidence.TorqueReadings],
                    ["surface"],
                    "common practice, no source"
                ),
            ],
            ["Stay out of the line of a leak and of band ends."],
            0.25,
            24,
            Measure.Of(20, "°C"),
            "calculation EM-1"
        );

    /// <summary>Signed by Ines and by Pavel.</summary>
    public static async Task<Guid> Listed(Scene scene, ListEmergencyMethod? entry = null)
    {
        var listed = await scene.Ines.ListEmergencyMethod(entry ?? Patch(scene.Site));
        await scene.Pavel.SignEmergencyMethod(listed.Id);
        return listed.Id;
    }

    public static RecordConsent Spoken(Guid method, Guid giver, ConsentCapacity place, DateTimeOffset at) =>
        new(
            method,
            giver,
            place,
            at,
            "Yes, put the night patch on and keep people away",
            CrackLike: false,
            CauseKnown: true,
            FailedBefore: false,
            AnOrder.FewPeople
        );

    /// <summary>A fit on the live line, by Tove alone.</summary>
    public static ReadyOrder Live(Scene scene) =>
        AnOrder.Readiness(scene) with
        {
            PermitKind = PermitKind.Cold,
            PermitUntil = scene.Clock.Now.AddHours(8),
            Isolation = null,
            LivePressure = Measure.Of(6, "bar"),
            Fitters = [scene.IdOf("tove")],
        };

    /// <summary>Tove signs every point of the entry, a quarter of an hour each.</summary>
    public static async Task Fit(Scene scene, string number)
    {
        foreach (var point in (await scene.Tove.Fitting(number)).Points.Select(p => p.Point))
        {
            if (point.Evidence.Contains(Evidence.Photo))
                await scene.Photograph(number, PhotoOf.HoldPoint, point.Code);
            await scene.Tove.ReleaseHoldPoint(
                number,
                point.Evidence.Contains(Evidence.TorqueReadings)
                    ? new(point.Code, Tightening: [new(1, 1, Measure.Of(12, "N m"))], Instrument: "TW-2")
                    : new(point.Code)
            );
            scene.Clock.Pass(TimeSpan.FromMinutes(15));
        }
    }

    /// <summary>Reads the pipe until it has set.</summary>
    public static async Task LetSet(Scene scene, string number)
    {
        for (var readings = 0; readings < 2; readings++)
        {
            await scene.Tove.RecordCure(number, new([new(null, Measure.Of(18, "°C"))], "ST-3"));
            scene.Clock.Pass(TimeSpan.FromMinutes(30));
        }
    }

    /// <summary>Bands and putty in the emergency locker.</summary>
    public static async Task<(Guid Band, Guid Putty)> Locker(Scene scene)
    {
        var day = scene.Clock.Today.AddDays(90);
        await Stores.Listed(scene, new(scene.Site, "E-BAND", "band kit", "band", "pcs", false, true), "L-1");
        await Stores.Listed(
            scene,
            new(scene.Site, "E-PUTTY", "putty sticks, wet", "putty", "pcs", true, false, Stores.WetPutty),
            "L-1"
        );
        var band = await scene.Signe.ReceiveBatch(new(scene.Site, "E-BAND", "B-1", null, "3.1 no. 8", "L-1", 10));
        var putty = await scene.Signe.ReceiveBatch(new(scene.Site, "E-PUTTY", "P-1", day, null, "L-1", 10));
        return (band.Id, putty.Id);
    }

    /// <summary>What the entry asks for, out of the locker, to Tove.</summary>
    public static IssueMaterial FromLocker(Scene scene, Guid band, Guid putty) =>
        new(scene.IdOf("tove"), [new(1, band, "L-1", 4), new(2, putty, "L-1", 2)], HazardSheetsGiven: true);

    /// <summary>Tests in service, Olaf witnesses, Tove goes back to look.</summary>
    public static async Task Prove(Scene scene, string number)
    {
        var tag = await scene.Photograph(number, PhotoOf.Tag);
        var proof = await scene.Tove.RecordProof(
            number,
            new(
                new(
                    TestKind.ServiceLeak,
                    Measure.Of(6, "bar"),
                    Measure.Of(10, "min"),
                    "cooling water",
                    null,
                    "PG-16",
                    Tight: true
                ),
                Measure.Of(20, "°C"),
                "T-9",
                tag.Id
            )
        );
        await scene.Olaf.WitnessProof(number, proof.Id, new("dry for ten minutes"));
        await scene.Tove.AcceptFirstLook(number, new());
    }

    /// <summary>Ines and Olaf confirm what was written down, each in a session of his own.</summary>
    public static async Task ConfirmBoth(Scene scene, string number)
    {
        foreach (var consent in (await scene.Mara.Order(number)).Records.Where(r => r.Kind == "consent"))
        {
            var giver = consent.Body.GetProperty("givenByName").GetString() == "Ines Duarte" ? scene.Ines : scene.Olaf;
            await giver.ConfirmConsent(number, new(consent.Id, Given: true));
        }
    }

    /// <summary>From both consents into service: readied, fitted from the locker, proved and accepted.</summary>
    public static async Task IntoService(Scene scene, string number)
    {
        var (band, putty) = await Locker(scene);
        await scene.Olaf.ReadyOrder(number, Live(scene));
        await Fit(scene, number);
        await scene.Olaf.IssueMaterial(number, FromLocker(scene, band, putty));
        await LetSet(scene, number);
        await Prove(scene, number);
        await scene.Olaf.AcceptRepair(number, new("night shift, control room", IsolationsRemoved: true));
    }
}
