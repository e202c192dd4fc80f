using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Journey;

/// <summary>
/// One class C order from the leak to the closed order, through the product's own client, every step signed. After each step the
/// stage rebuilt from the records is the one in the store, and so are all the columns.
/// </summary>
public sealed class Journey(Workshop workshop)
{
    [Fact]
    public async Task A_class_C_order_goes_from_request_to_close_out()
    {
        var scene = await workshop.Scene();
        var number = (await scene.Tove.Request(Cast.Weep(scene.Site))).Title.Number;
        await Stands(Stage.Requested);
        await scene.Photograph(number, PhotoOf.Request);

        await scene.Ines.Assess(number, AnOrder.Judged(scene), await Version());
        (await Stands(Stage.Assessed)).Title.SignedClass.ShouldBe(RiskClass.C);
        await scene.Ines.Choose(number, AnOrder.BandedPatch, await Version());
        await Stands(Stage.Chosen);
        await scene.Ines.Size(number, AnOrder.Sizing(scene), await Version());
        var print = (await Stands(Stage.Sized)).Fingerprint!;
        await scene.Mara.Approve(number, new(print, ApprovalCapacity.Supervisor));
        await Stands(Stage.Sized);
        await scene.Ines.Approve(number, new(print, ApprovalCapacity.Engineer));
        await Stands(Stage.Approved);

        await scene.Issue(number);
        await Stands(Stage.Issued);
        await scene.Readied(number);
        await Stands(Stage.Ready);
        var points = (await scene.Tove.Fitting(number)).Points;
        foreach (var point in points)
        {
            await scene.Release(number, point.Point);
            await Stands(point == points[^1] ? Stage.Fitted : Stage.Fitting);
        }
        await scene.Proved(number);
        await scene.Account(number);
        await scene.Mara.AcceptFirstLook(number, new());
        await Stands(Stage.Fitted);
        await scene.Olaf.AcceptRepair(number, new("day shift, by the board", IsolationsRemoved: true));
        await Stands(Stage.InService);

        scene.Clock.PassDays(7);
        var photo = await scene.Photograph(number, PhotoOf.Visit);
        await scene.Tove.Visit(
            number,
            new(number, null, LeakState.Dry, Moved: false, EdgesState.Sound, photo.Id, VisitResult.FitToStay)
        );
        await Stands(Stage.InService);

        scene.Clock.PassDays(20);
        await scene.Ines.OrderRemoval(number, AnOrder.Off(scene), await Version());
        await scene.Readied(number, ReadinessFor.Removal);
        await Stands(Stage.InService);
        await scene.Tove.RecordRemoval(number, await scene.BarePipe(number), await Version());
        await Stands(Stage.Removed);
        await scene.Vera.InspectRemoval(number, AnOrder.Inspection, await Version());
        await Stands(Stage.Removed);
        await scene.Mara.RecordPermanentFix(number, AnOrder.Spool(scene), await Version());
        await Stands(Stage.Fixed);
        await scene.Olaf.CloseOrder(number, AnOrder.CloseOut, await Version());
        var closed = await Stands(Stage.Closed);

        closed.Flags.ShouldBeEmpty();
        closed.Records.ShouldAllBe(r => r.By.Length > 0 && r.At <= scene.Clock.Now);
        Procedure.Except(closed.Records.Select(r => r.Kind)).ShouldBeEmpty();
        var journal = await scene.Rune.Journal(number);
        journal.BrokenAt.ShouldBeNull();
        journal.Lines.Count.ShouldBeGreaterThanOrEqualTo(closed.Records.Count);

        Task<string> Version() => scene.Version(number);

        async Task<OrderSheet> Stands(Stage stage)
        {
            var sheet = await scene.Mara.Order(number);
            sheet.Title.Stage.ShouldBe(stage);
            await workshop.InStore(async store =>
            {
                var order = await store
                    .Orders.AsNoTracking()
                    .Include(o => o.Site)
                    .Include(o => o.Line)
                    .Include(o => o.Records)
                    .AsSplitQuery()
                    .SingleAsync(o => o.Number == number);
                order.Columns.Stage.ShouldBe(stage);
                Stages.Of(order).ShouldBe(stage);
                JsonSerializer
                    .Serialize(OrderColumns.From(order))
                    .ShouldBe(JsonSerializer.Serialize(order.Columns), $"columns at {stage}");
            });
            return sheet;
        }
    }

    private static readonly string[] Procedure =
    [
        "request",
        "photo",
        "assessment",
        "choice",
        "design",
        "approval",
        "material-issue",
        "readiness",
        "hold-point-release",
        "climate-reading",
        "mix",
        "mix-use",
        "cure-reading",
        "proof",
        "proof-witness",
        "material-use",
        "first-look-acceptance",
        "acceptance",
        "visit",
        "removal-order",
        "removal",
        "removal-inspection",
        "permanent-fix",
        "close-out",
    ];
}
