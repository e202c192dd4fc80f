using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Papers;

/// <summary>An order's sheet, drawing and job sheet over HTTP, once warm.</summary>
[Collection(nameof(Alone))]
public sealed class PaperSpeed(Workshop workshop, ITestOutputHelper output)
{
    // The goals are 400 ms for the order page with its drawing and 150 ms for the job sheet, on a quiet machine. This one is shared.
    private const int Shared = 4;

    [Fact]
    public async Task Order_drawing_and_job_sheet_are_quick_once_warm()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        var page = await Alone.Median(async () =>
        {
            await scene.Tove.Order(number);
            await scene.Tove.Drawing(number);
        });
        var sheet = await Alone.Median(() => scene.Tove.Paper(number, "job-sheet"));
        output.WriteLine($"order and drawing {page:0.0} ms, job sheet {sheet:0.0} ms");
        page.ShouldBeLessThan(400 * Shared);
        sheet.ShouldBeLessThan(150 * Shared);
    }
}
