using RepairOrders.Api.Drawing;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Papers;

/// <summary>The register as it reads now, on paper laid crosswise.</summary>
internal static class RegisterExtract
{
    /// <summary>More rows than anybody reads on paper; the CSV has them all.</summary>
    public const int MostRows = 2000;

    private static readonly Column[] Columns =
    [
        new("Order", 1.1, Face: Face.Bold),
        new("Class", 0.6, Align.Middle, Face.Bold),
        new("Line", 1.4),
        new("Place", 2.7),
        new("Fluid", 1.4),
        new("Method", 1.3),
        new("Stage", 1),
        new("Since", 1.1, Face: Face.Figures),
        new("End date", 1.1, Face: Face.Figures),
        new("Days left", 0.6, Align.Right, Face.Figures),
        new("Next look", 1.1, Face: Face.Figures),
        new("Next thick.", 1.1, Face: Face.Figures),
        new("Ext.", 0.45, Align.Right),
        new("Permanent fix", 1.2),
        new("Owner", 1.2),
        new("Flags", 2),
    ];

    public static byte[] Of(IReadOnlyList<RegisterRow> rows, string heading, string readAt, PaperSize size)
    {
        using var paper = new Paper(
            size,
            "Register of temporary repairs",
            $"Register of temporary repairs · {heading}",
            $"RepairOrders · as it read on {readAt} · dates are the sites' own days",
            "RepairOrders",
            landscape: true
        );
        paper.Press.Bookmark("Register");
        paper.Press.Text(Paper.Left, paper.Y + 5, "Register of temporary repairs", 5, Face.Bold);
        paper.Press.Text(paper.Right, paper.Y + 5, $"{rows.Count} orders · {heading}", Paper.Body, align: Align.Right);
        paper.Y += 9;
        if (rows.Count == 0)
            paper.Paragraph("No order answers to this.");
        else
            paper.Table(Columns, rows.Select(Row), 2.2);
        if (rows.Count == MostRows)
            paper.Paragraph($"Cut off after {MostRows} rows. The CSV export has them all.", Paper.Body, Face.Bold);
        return paper.Bytes();
    }

    private static IReadOnlyList<string> Row(RegisterRow r) =>
        [
            r.Number,
            r.Class is null ? "–"
            : r.ClassToday is { } today && today != r.Class ? $"{r.Class} → {today}"
            : $"{r.Class}",
            r.Line ?? "–",
            r.Place,
            r.Fluid,
            r.Method ?? "–",
            Words.Of(r.Stage),
            OrderFacts.Day(r.InServiceSince),
            OrderFacts.Day(r.EndDate),
            r.DaysLeft?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "–",
            OrderFacts.Day(r.NextLook),
            OrderFacts.Day(r.NextThickness),
            $"{r.Extensions}",
            r.PermanentFix ?? "–",
            r.Owner ?? "–",
            string.Join(
                "; ",
                r.Flags.Select(f =>
                    (
                        f.Tone == Tone.Stop ? "■ "
                        : f.Tone == Tone.Watch ? "◆ "
                        : ""
                    ) + f.Words
                )
            ),
        ];
}
