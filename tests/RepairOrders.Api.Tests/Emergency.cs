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
}
