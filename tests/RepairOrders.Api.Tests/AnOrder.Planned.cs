using RepairOrders.Contract;

namespace RepairOrders.Api.Tests;

/// <summary>From the request to the last signature, on the sweating cooling-water line: class C, a banded patch.</summary>
internal static partial class AnOrder
{
    public static readonly DefectMeasured Pinhole = new(
        DefectKind.Pinhole,
        DefectSide.Internal,
        DefectCause.InternalCorrosion,
        ThroughWall: true,
        Measure.Of(15, "mm"),
        Measure.Of(15, "mm"),
        Measure.Of(4, "mm"),
        ClockHours: 4,
        Growing: false
    );

    public static readonly LeakConsequences FewPeople = new(
        PeopleNearby.Rarely,
        IsolableWithinTenMinutes: true,
        Measure.Of(500, "kg"),
        DrainsToWater: false
    );

    /// <summary>The pinhole, sound metal beside it.</summary>
    public static RecordAssessment Judged(Scene scene) =>
        new(
            [
                new(ReadingPlace.Beside, "3 o'clock", Measure.Of(6.4, "mm"), scene.Clock.Today, "UT-7"),
                new(ReadingPlace.Beside, "5 o'clock", Measure.Of(6.6, "mm"), scene.Clock.Today, "UT-7"),
            ],
            null,
            Pinhole,
            FewPeople,
            QualityFactor: 1
        );

    public static readonly ChooseMethod BandedPatch = new(
        "banded-patch",
        [new("section-replacement", "the line cannot be taken off before the January stop")],
        "a pinhole with sound metal round it, water at 6 bar"
    );

    /// <summary>Certified bands, greased screws, a plate stiff enough between the bands.</summary>
    public static readonly IReadOnlyDictionary<string, InputValue> PatchValues = new Dictionary<string, InputValue>
    {
        ["pressureBar"] = 6,
        ["bandYieldMpa"] = 500,
        ["nutFactorLow"] = 0.14,
        ["nutFactorHigh"] = 0.18,
        ["plateThicknessMm"] = 0.6,
        ["designLifeDays"] = 180,
    };

    /// <summary>A banded patch of certified bands and greased screws, the line held to the operating pressure.</summary>
    public static SizeRepair Sizing(Scene scene) =>
        new(
            PatchValues,
            null,
            scene.Clock.Today.AddDays(1),
            scene.IdOf("mara"),
            new("job 4411", scene.Clock.Today.AddDays(60)),
            InterimLimits: new(Measure.Of(6, "bar"), null, null)
        );

    public static async Task<string> Requested(Scene scene, RequestRepair? ask = null) =>
        (await scene.Tove.Request(ask ?? Cast.Weep(scene.Site))).Title.Number;

    public static async Task<string> Assessed(Scene scene, RequestRepair? ask = null, RecordAssessment? judged = null)
    {
        var number = await Requested(scene, ask);
        await scene.Ines.Assess(number, judged ?? Judged(scene), await scene.Version(number));
        return number;
    }

    public static async Task<string> Chosen(Scene scene)
    {
        var number = await Assessed(scene);
        await scene.Ines.Choose(number, BandedPatch, await scene.Version(number));
        return number;
    }

    public static async Task<string> Sized(Scene scene, SizeRepair? sizing = null)
    {
        var number = await Chosen(scene);
        await scene.Ines.Size(number, sizing ?? Sizing(scene), await scene.Version(number));
        return number;
    }

    /// <summary>Class C: Mara as supervisor, Ines as engineer. Owner Mara, fit planned for tomorrow.</summary>
    public static async Task<string> Approved(Scene scene, SizeRepair? sizing = null)
    {
        var number = await Sized(scene, sizing);
        var print = await scene.Fingerprint(number);
        await scene.Mara.Approve(number, new(print, ApprovalCapacity.Supervisor));
        await scene.Ines.Approve(number, new(print, ApprovalCapacity.Engineer));
        return number;
    }

    /// <summary>The version to send as If-Match.</summary>
    public static async Task<string> Version(this Scene scene, string number) =>
        (await scene.Mara.Order(number)).Version;

    /// <summary>The fingerprint that was on the screen.</summary>
    public static async Task<string> Fingerprint(this Scene scene, string number) =>
        (await scene.Mara.Order(number)).Fingerprint!;
}
