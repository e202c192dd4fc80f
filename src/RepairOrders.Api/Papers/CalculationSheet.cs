using System.Globalization;
using RepairOrders.Api.Charts;
using RepairOrders.Api.Drawing;
using RepairOrders.Contract;
using static RepairOrders.Api.Papers.JobSheet;

namespace RepairOrders.Api.Papers;

/// <summary>The working of assessment and design, step by step, with every finding and its source: enough to check it by hand.</summary>
internal static class CalculationSheet
{
    private static readonly Column[] Steps =
    [
        new("Symbol", 1),
        new("What", 3),
        new("Formula, and with the numbers put in", 4.4),
        new("Value", 1.3, Align.Right, Face.Bold),
        new("Unit", 0.8),
        new("Source", 3),
    ];

    private static readonly Column[] Limits =
    [
        new("", 0.9, Align.Left, Face.Bold),
        new("Finding", 5.4),
        new("Value", 1.1, Align.Right),
        new("Limit", 1.1, Align.Right),
        new("Unit", 0.8),
        new("Source", 2.8),
    ];

    public static byte[] Of(OrderFacts facts, PaperSize size)
    {
        using var paper = facts.Paper("Calculation sheet", size);
        paper.Press.Bookmark("Calculation sheet");
        TitleBlockOnPaper.Draw(paper, facts, "Calculation sheet");
        paper.Paragraph(
            "Made by the service from the values entered. A result is a reason to plan, never a permit. Sources marked * are from memory, defaults or own rules: check them against the current edition before anyone relies on them.",
            Paper.Small
        );
        Given(paper, facts);
        foreach (var calculation in facts.Assessment?.Judgement.Calculations ?? [])
            Calculated(paper, calculation);
        Design(paper, facts);
        Ends(paper, facts);
        Charted(paper, OrderCharts.Of(facts.Order));
        return paper.Bytes();
    }

    private static void Given(Paper paper, OrderFacts facts)
    {
        if (facts.Assessment is not { } assessment)
        {
            paper.Paragraph("The pipe has not been assessed.");
            return;
        }
        var (f, d) = (assessment.Judgement.Facts, assessment.Ask.Defect);
        paper.Heading("What it was reckoned with");
        paper.Columns(
            [
                Say($"Pipe DN {f.Dn}, {f.OutsideDiameterMm:0.##} × {f.NominalWallMm:0.##} mm, {f.Grade}"),
                Say($"Allowable stress {f.AllowableStressMpa:0.##} MPa, joint quality {f.QualityFactor:0.##}"),
                Say(
                    $"{f.Fluid}, service category {f.Category.ToString().ToLowerInvariant()}, fluid group {f.FluidGroup}"
                ),
                Say(
                    $"Operating {f.OperatingPressureBar:0.##} bar, {f.OperatingTemperatureC:0.#} °C; design {f.DesignPressureBar:0.##} bar, {f.DesignTemperatureC:0.#} °C"
                ),
                Say(
                    $"Defect: {Orders.Words.Of(d.Kind)}, {(d.ThroughWall ? "through the wall" : "not through")}, {d.AxialLength.Entered} along, {d.CircumferentialLength.Entered} round, {d.ClockHours:0.#} o'clock"
                ),
                Say(
                    $"Side {Orders.Words.Of(d.Side)}; cause {Orders.Words.Of(d.Cause)}{(d.Growing ? "; growing" : "")}"
                ),
                .. assessment.Ask.Readings.Select(r =>
                    Say(
                        $"{(r.Where == ReadingPlace.AtDefect ? "At the defect" : "Beside")}, {r.Spot}: {r.Wall.Entered} on {r.On:yyyy-MM-dd}, gauge {r.Instrument}"
                    )
                ),
            ],
            2,
            Paper.Small
        );
        if (assessment.Ask.NotMeasuredWhy is { Length: > 0 } why)
            paper.Paragraph("Not measured: " + why, Paper.Small);
    }

    private static void Calculated(Paper paper, CalculationView calculation)
    {
        paper.Heading(calculation.Words, 24);
        Working(paper, calculation.Working);
        Findings(paper, calculation.Findings);
        if (calculation.Cautions.Count == 0)
            return;
        // A box stands whole on one page.
        paper.Need(paper.Height(calculation.Cautions, Paper.Small) + 8);
        Cautioned(paper, "Caution", calculation.Cautions, 1, Paper.Small);
    }

    private static void Design(Paper paper, OrderFacts facts)
    {
        if (facts.Work is not { } work)
            return;
        paper.Heading($"Design: {work.Method.Name}", 24);
        if (work.Method.Entered)
            paper.Paragraph(
                $"Entered by an engineer, not reckoned here: calculation {work.Method.CalculationReference}.",
                Paper.Small
            );
        Working(paper, work.Method.Working);
        paper.Heading("Sizes", 18);
        paper.Table(
            [new("What", 5), new("Value", 1.4, Align.Right, Face.Bold), new("Unit", 1)],
            work.Method.Dimensions.Select(d => (IReadOnlyList<string>)[d.Words, Value(d.Value), d.Unit])
        );
        Findings(paper, [.. work.Method.Findings, .. work.Signed?.Findings ?? []]);
    }

    private static void Working(Paper paper, IReadOnlyList<WorkingStepView> steps)
    {
        if (steps.Count == 0)
            return;
        paper.Table(
            Steps,
            steps.Select(s =>
                (IReadOnlyList<string>)
                    [
                        s.Symbol,
                        s.Words,
                        s.Formula.Length == 0 ? "given" : s.Formula + "\n= " + s.Substituted,
                        Value(s.Value),
                        s.Unit == "-" ? "" : s.Unit,
                        Source(s.Clause),
                    ]
            )
        );
    }

    private static void Findings(Paper paper, IReadOnlyList<FindingView> findings)
    {
        if (findings.Count == 0)
            return;
        paper.Table(
            Limits,
            findings.Select(f =>
                (IReadOnlyList<string>)
                    [
                        f.Severity switch
                        {
                            FindingSeverity.Pass => "● holds",
                            FindingSeverity.Watch => "◆ watch",
                            _ => "■ FAILS",
                        },
                        f.Words,
                        f.Value is { } value ? Value(value) : "",
                        f.Limit is { } limit ? Value(limit) : "",
                        f.Unit is null or "-" ? "" : f.Unit,
                        Source(f.Source),
                    ]
            )
        );
    }

    private static void Ends(Paper paper, OrderFacts facts)
    {
        if (facts.Work?.Signed is not { } signed)
            return;
        paper.Heading("Class and end date", 24);
        paper.Paragraph(
            Say(
                $"Class {signed.Risk.Class}: consequence {signed.Risk.Consequence}, likelihood {signed.Risk.Likelihood}."
            ),
            Paper.Body,
            Face.Bold
        );
        paper.Columns(signed.Risk.Reasons, 1, Paper.Small);
        paper.Table(
            [new("What ends it", 4), new("Day", 1.4, Align.Right, Face.Figures), new("", 2)],
            signed.EndDate.Terms.Select(t =>
                (IReadOnlyList<string>)
                    [t.Words, OrderFacts.Day(t.On), t.Code == signed.EndDate.Governing.Code ? "governs" : ""]
            )
        );
        paper.Paragraph("Fingerprint of the design: " + signed.Fingerprint, 2.2, Face.Figures);
    }

    // Two beside each other; a wide grid takes the width.
    private static void Charted(Paper paper, IReadOnlyList<Chart> charts)
    {
        var heading = "Charts";
        foreach (var row in InRows(charts))
        {
            var wide = row[0].Picture.Width > Graph.Width;
            var width = wide ? Math.Min(paper.Width, row[0].Picture.Width) : (paper.Width - Between) / 2;
            var high = row.Max(c => c.Picture.Height * width / c.Picture.Width);
            paper.Need(high + (heading.Length > 0 ? 8 : 2));
            if (heading.Length > 0)
                paper.Heading(heading);
            heading = "";
            for (var i = 0; i < row.Count; i++)
                paper.Press.Picture(row[i].Picture, Paper.Left + i * (width + Between), paper.Y, width);
            paper.Y += high + 4;
        }
    }

    private static IEnumerable<IReadOnlyList<Chart>> InRows(IReadOnlyList<Chart> charts) =>
        charts
            .Where(c => c.Picture.Width > Graph.Width)
            .Select(c => (IReadOnlyList<Chart>)[c])
            .Concat(charts.Where(c => c.Picture.Width <= Graph.Width).Chunk(2));

    private const double Between = 8;

    private static string Source(string clause) =>
        clause.Contains("from memory", StringComparison.Ordinal)
        || clause.Contains("default", StringComparison.OrdinalIgnoreCase)
        || clause.Contains("own rule", StringComparison.Ordinal)
            ? clause + " *"
            : clause;

    /// <summary>Five figures: more than any reading carries, enough to check by hand.</summary>
    private static string Value(double value) =>
        Math.Abs(value) is >= 1e5 and < 1e7
            ? (Math.Round(value / 100) * 100).ToString("0", CultureInfo.InvariantCulture)
            : value.ToString(
                Math.Abs(value) is >= 1e7 or < 1e-4 and > 0 ? "0.####E0" : "G5",
                CultureInfo.InvariantCulture
            );
}
