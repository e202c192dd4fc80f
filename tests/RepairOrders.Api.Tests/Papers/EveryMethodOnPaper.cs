using RepairOrders.Api.Approving;
using RepairOrders.Api.Drawing;
using RepairOrders.Api.OrderSheets;
using RepairOrders.Api.Papers;
using RepairOrders.Api.Sizing;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Tests.Drawing;
using RepairOrders.Contract;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace RepairOrders.Api.Tests.Papers;

/// <summary>The job sheet of every method on small and wide pipes: two sides, nothing lost, nothing over the edge.</summary>
public sealed class EveryMethodOnPaper
{
    public static TheoryData<int, string, string> All
    {
        get
        {
            var data = new TheoryData<int, string, string>();
            foreach (var row in Subjects.All)
            foreach (var size in PaperSize.All)
                data.Add(row.Data.Item1, row.Data.Item2, size.Code);
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void The_job_sheet_has_two_sides_and_all_its_blocks(int dn, string method, string size)
    {
        var bytes = JobSheet.Of(Facts(dn, method), PaperSize.All.First(s => s.Code == size));
        Pages.Show(bytes, $"job-{method}-{dn}-{size}");
        using var pdf = PdfDocument.Open(bytes);
        pdf.NumberOfPages.ShouldBe(2);
        foreach (var page in pdf.GetPages())
            Outside(page).ShouldBeEmpty();
        var front = Words(pdf.GetPage(1));
        foreach (
            var block in new[] { "Line", "Fluid", "HELD TO", "Permit no.", "Section at the defect", "Before you begin" }
        )
            front.ShouldContain(block);
        var back = Words(pdf.GetPage(2));
        foreach (
            var block in new[] { "Hold points", "Readings", "Test and tag", "Signatures", "Anything not as written" }
        )
            back.ShouldContain(block);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void The_calculation_sheet_carries_every_line_of_the_working(int dn, string method, string size)
    {
        var facts = Facts(dn, method);
        var bytes = CalculationSheet.Of(facts, PaperSize.All.First(s => s.Code == size));
        Pages.Show(bytes, $"calc-{method}-{dn}-{size}");
        using var pdf = PdfDocument.Open(bytes);
        var letters = string.Concat(pdf.GetPages().Select(p => p.Text)).Replace(" ", "", StringComparison.Ordinal);
        foreach (var step in facts.Work!.Method.Working)
            letters.ShouldContain(step.Words.Split(' ')[0]);
        foreach (var page in pdf.GetPages())
            Outside(page).ShouldBeEmpty();
    }

    private static string Words(Page page) => string.Join(' ', page.GetWords().Select(w => w.Text));

    // Printers keep a margin of their own: nothing may stand in it.
    private static IEnumerable<string> Outside(Page page) =>
        page
            .Letters.Where(l =>
                l.Value.Trim().Length > 0
                && (
                    l.BoundingBox.Left < 14
                    || l.BoundingBox.Right > page.Width - 14
                    || l.BoundingBox.Bottom < 10
                    || l.BoundingBox.Top > page.Height - 14
                )
            )
            .Select(l => l.Value);

    private static RecordAssessment Judged(Sheaf sheaf, Subject drawn)
    {
        List<ThicknessReading> read =
        [
            new(ReadingPlace.Beside, "3 o'clock", Measure.Of(drawn.Sound!.Value, "mm"), sheaf.Today, "UT-7"),
        ];
        if (drawn.Thinnest > 0)
            read.Add(new(ReadingPlace.AtDefect, "middle", Measure.Of(drawn.Thinnest.Value, "mm"), sheaf.Today, "UT-7"));
        // The table of structural minima ends below DN 1200.
        return sheaf.Judged with { Readings = read, Defect = drawn.Defect!, StructuralMinimum = Measure.Of(2, "mm") };
    }

    internal static OrderFacts Facts(int dn, string method)
    {
        var drawn = Subjects.Of(dn, method);
        var sheaf = new Sheaf();
        var line = sheaf.Order.Line!;
        (line.Dn, line.OutsideDiameterMm, line.NominalWallMm) = (dn, drawn.Outside, drawn.Nominal);
        sheaf.Assessed(Judged(sheaf, drawn)).Chosen();
        var design = Designing.Of(sheaf.Order, sheaf.Measures, sheaf["mara"], null);
        sheaf.Order.SignAgain(
            new Design(Fingerprints.Sealed(design with { Method = drawn.Design! })),
            sheaf["ines"],
            sheaf.Now
        );
        sheaf.Order.Sign(new Approval(new(sheaf.Print, ApprovalCapacity.Engineer)), sheaf["ines"], sheaf.Now);
        sheaf.Order.Sign(new Approval(new(sheaf.Print, ApprovalCapacity.Supervisor)), sheaf["mara"], sheaf.Now);
        var sheet = OrderSheetQuery.Sheet(sheaf.Order, sheaf["mara"], sheaf.Now, [], Around.Nothing);
        return new(sheet, sheaf.Order, "https://repairs.example/orders/mill-17") { Subject = drawn };
    }
}
