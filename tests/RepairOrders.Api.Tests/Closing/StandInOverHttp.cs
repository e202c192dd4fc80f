using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Closing;

/// <summary>Few people: who closes where one supervisor is all there is.</summary>
public sealed class StandInOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_manager_closes_only_for_an_only_supervisor()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var version = await scene.Version(number);
        await scene.Ines.OrderRemoval(number, new("new spool", scene.Clock.Today.AddDays(2), "new spool"), version);
        var removed = new RecordRemoval(null, "pinhole, clean round it", TagBack: true);
        await scene.Tove.RecordRemoval(number, removed, await scene.Version(number)).ShouldBeRefused("not-ready");
        await scene.Readied(number, ReadinessFor.Removal);
        var photo = await scene.Photograph(number, PhotoOf.Removal);
        await scene.Tove.RecordRemoval(number, removed with { Photo = photo.Id }, await scene.Version(number));
        var found = new InspectRemoval("pinhole, clean round it", DefectCause.InternalCorrosion);
        await scene.Vera.InspectRemoval(number, found, await scene.Version(number));
        var fix = new RecordPermanentFix(
            PermanentFixKind.Replacement,
            "job 4411",
            scene.Clock.Today,
            "3.1 no. 77",
            "two butt welds, radiographed",
            "6 bar, tight",
            "sheet 4 redrawn"
        );
        await scene.Mara.RecordPermanentFix(number, fix, await scene.Version(number));
        var close = new CloseOrder(DefectCause.InternalCorrosion, "pitting under deposits", null, TagBack: true);
        await scene.Henrik.CloseOrder(number, close, await scene.Version(number)).ShouldBeRefused("close-capacity");
        await scene.Mara.CloseOrder(number, close, await scene.Version(number));
    }
}
