using RepairOrders.Api.Drawing;
using RepairOrders.Contract;
using static RepairOrders.Api.Papers.JobSheet;

namespace RepairOrders.Api.Papers;

/// <summary>What to take, from which bin, what expires first on top; below the cut, the receipt that stays in the stores.</summary>
internal static class PickListPaper
{
    public static byte[] Of(OrderFacts facts, PickListView list, PaperSize size)
    {
        using var paper = facts.Paper("Pick list", size);
        paper.Press.Bookmark("Pick list");
        TitleBlockOnPaper.Draw(paper, facts, "Pick list");
        paper.Cells(
            10,
            ("Fit planned for", OrderFacts.Day(list.FitOn), 1),
            ("Nothing that expires before", OrderFacts.Day(list.LeastExpiry), 1.2),
            ("Method", list.Method, 2)
        );
        paper.Y += 2;
        Picks(paper, list);
        Short(paper, list);
        Out(paper, list);
        Receipt(paper, facts, list);
        return paper.Bytes();
    }

    private static void Picks(Paper paper, PickListView list)
    {
        paper.Heading("Take, bin by bin");
        var picks = list
            .Lines.SelectMany(l => l.Picks.Select(p => (Line: l, Pick: p)))
            .OrderBy(p => p.Pick.Bin, StringComparer.Ordinal)
            .ToList();
        if (picks.Count == 0)
        {
            paper.Paragraph("Nothing to take: all is issued, or nothing that may be issued lies in the bins.");
            return;
        }
        paper.Table(
            [
                new("", 0.5),
                new("Bin", 1, Face: Face.Bold),
                new("Quantity", 1.3, Align.Right, Face.Bold),
                new("What", 4.2),
                new("Batch", 1.5),
                new("Expires", 1.4),
                new("Certificate", 1.4),
                new("Line", 0.6, Align.Right),
            ],
            picks.Select(p =>
                (IReadOnlyList<string>)
                    [
                        "[  ]",
                        p.Pick.Bin,
                        Say($"{p.Pick.Quantity:0.###} {p.Pick.Unit}"),
                        p.Pick.Words,
                        p.Pick.Number,
                        (p.Pick.Tone == Tone.Watch ? "◆ " : "") + OrderFacts.Day(p.Pick.Expiry),
                        p.Pick.Certificate ?? "",
                        $"{p.Line.Line}",
                    ]
            ),
            Paper.Body,
            least: 7
        );
    }

    private static void Short(Paper paper, PickListView list)
    {
        var wanting = list.Lines.Where(l => l.Wanting > 0).ToList();
        if (wanting.Count == 0)
            return;
        paper.Heading("■ Short: not in the stores");
        paper.Table(
            [new("Line", 0.6, Align.Right), new("What", 6), new("Short by", 1.4, Align.Right, Face.Bold)],
            wanting.Select(l => (IReadOnlyList<string>)[$"{l.Line}", l.Words, Say($"{l.Wanting:0.###} {l.Unit}")]),
            Paper.Body
        );
    }

    private static void Out(Paper paper, PickListView list)
    {
        if (list.Out.Count == 0)
            return;
        paper.Heading("Already out on this order");
        paper.Table(
            [new("What", 5), new("Batch", 1.6), new("Quantity", 1.4, Align.Right, Face.Bold)],
            list.Out.Select(o => (IReadOnlyList<string>)[o.Words, o.Number, Say($"{o.Quantity:0.###} {o.Unit}")]),
            Paper.Body
        );
    }

    private static void Receipt(Paper paper, OrderFacts facts, PickListView list)
    {
        var picks = list.Lines.SelectMany(l => l.Picks).ToList();
        var height = 40 + (picks.Count + 1) / 2 * 4.0;
        paper.Need(height + 8);
        paper.Y = Math.Max(paper.Y + 4, paper.Bottom - height);
        for (var x = Paper.Left - 4; x < paper.Right + 4; x += 4)
            paper.Press.Line(x, paper.Y, x + 2, paper.Y, 0.3);
        paper.Press.Text(Paper.Left, paper.Y - 1, "tear off here; this part stays in the stores", 2.3, ink: 0.75);
        paper.Y += 3;
        paper.Heading($"Receipt for {facts.Title.Number}, revision {facts.Title.Revision}");
        if (picks.Count > 0)
            paper.Columns(
                [.. picks.Select(p => Say($"{p.Quantity:0.###} {p.Unit} {p.Words}, batch {p.Number}, {p.Bin}"))],
                2,
                Paper.Small,
                "☐"
            );
        paper.Cells(
            11,
            ("Lines taken", $"{list.Lines.Count(l => l.Picks.Count > 0)} of {list.Lines.Count}", 1),
            ("Departures from the list", "", 3),
            ("Hazard sheets handed over", "[  ]", 1.1)
        );
        paper.Cells(12, ("Issued by, storekeeper", "", 1), ("Received by", "", 1), ("Date and time", "", 0.8));
    }
}
