using RepairOrders.Contract;

namespace RepairOrders.Api.Tests;

/// <summary>
/// From service to the closed order: Ines orders the removal, Olaf readies it, Tove and Anton take the repair off, Vera inspects,
/// Mara enters the fix, Olaf closes. Every step also goes on from an order that stands before it.
/// </summary>
internal static partial class AnOrder
{
    public static async Task<string> RemovalOrdered(Scene scene)
    {
        var number = await InService(scene);
        await scene.OrderOff(number);
        return number;
    }

    /// <summary>Off the pipe; nobody has inspected it yet.</summary>
    public static async Task<string> Removed(Scene scene)
    {
        var number = await InService(scene);
        await scene.TakeOff(number);
        return number;
    }

    public static async Task<string> Fixed(Scene scene)
    {
        var number = await InService(scene);
        await scene.PutRight(number);
        return number;
    }

    public static async Task<string> Closed(Scene scene)
    {
        var number = await Fixed(scene);
        await scene.Olaf.CloseOrder(number, CloseOut, await scene.Version(number));
        return number;
    }

    /// <summary>In service, Mara's, handed over to Tove who has accepted.</summary>
    public static async Task<string> HandedOver(Scene scene)
    {
        var number = await InService(scene);
        var offer = await scene.Mara.OfferHandOver(number, new(scene.IdOf("tove"), "I change to the night shift"));
        await scene.Tove.AcceptHandOver(number, new(offer.Id), await scene.Version(number));
        return number;
    }

    /// <summary>In service on class A or whatever these consequences give.</summary>
    public static async Task<string> InServiceWith(Scene scene, RecordAssessment judged)
    {
        var number = await ApprovedWith(scene, judged);
        await scene.Issue(number);
        await scene.Readied(number);
        await scene.Fit(number);
        await scene.IntoService(number);
        return number;
    }

    public static OrderRemoval Off(Scene scene, int days = 5) =>
        new("the new spool is here", scene.Clock.Today.AddDays(days), "new spool, welded in");

    public static async Task<RecordView> OrderOff(this Scene scene, string number) =>
        await scene.Ines.OrderRemoval(number, Off(scene), await scene.Version(number));

    public static async Task<RecordRemoval> BarePipe(this Scene scene, string number) =>
        new((await scene.Photograph(number, PhotoOf.Removal)).Id, "one pinhole, clean metal round it", TagBack: true);

    public static async Task TakeOff(this Scene scene, string number)
    {
        await scene.OrderOff(number);
        await scene.Readied(number, ReadinessFor.Removal);
        var bare = await scene.BarePipe(number);
        await scene.Tove.RecordRemoval(number, bare, await scene.Version(number));
    }

    public static readonly InspectRemoval Inspection = new(
        "one pinhole, pitting under a deposit",
        DefectCause.InternalCorrosion
    );

    public static RecordPermanentFix Spool(Scene scene) =>
        new(
            PermanentFixKind.Replacement,
            "job 4411",
            scene.Clock.Today,
            "3.1 no. 88213, pipe",
            "two butt welds, radiographed, no finding",
            "water, 9 bar for 30 min, tight",
            "isometric 3104 revision C"
        );

    /// <summary>Taken off, inspected, replaced.</summary>
    public static async Task PutRight(this Scene scene, string number)
    {
        await scene.TakeOff(number);
        await scene.Vera.InspectRemoval(number, Inspection, await scene.Version(number));
        await scene.Mara.RecordPermanentFix(number, Spool(scene), await scene.Version(number));
    }

    public static readonly CloseOrder CloseOut = new(
        DefectCause.InternalCorrosion,
        "the pieces were cut open: pitting under deposits",
        null,
        TagBack: true
    );
}
