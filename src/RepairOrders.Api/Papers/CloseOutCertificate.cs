using RepairOrders.Api.Closing;
using RepairOrders.Api.MakingPermanent;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Proving;
using RepairOrders.Api.Removing;
using RepairOrders.Contract;
using static RepairOrders.Api.Papers.JobSheet;

namespace RepairOrders.Api.Papers;

/// <summary>That the temporary repair is off, the line put right for good, and the records complete.</summary>
internal static class CloseOutCertificate
{
    public static byte[] Of(OrderFacts facts, PaperSize size)
    {
        var order = facts.Order;
        if (order.Stage != Stage.Closed)
            throw new ProcedureRefusal(
                new Objection(
                    "certificate-before-close",
                    $"The order is {Words.Of(order.Stage)}; the certificate is made once it is closed.",
                    "supervisor, by closing the order"
                )
            );
        using var paper = facts.Paper("Close-out certificate", size);
        paper.Press.Bookmark("Close-out certificate");
        TitleBlockOnPaper.Draw(paper, facts, "Close-out certificate");
        paper.Cells(
            11,
            ("Line", facts.Title.Line ?? "not in the line list", 1),
            ("Place", facts.Title.Place, 2.4),
            ("Fluid", facts.Title.Fluid, 1.4)
        );
        paper.Y += 3;
        Checked(paper, facts);
        Rounds(paper, facts);
        Signed(paper, facts);
        return paper.Bytes();
    }

    private static void Checked(Paper paper, OrderFacts facts)
    {
        var order = facts.Order;
        var (close, fix, removal) = (order.Last<CloseOut>(), order.Last<PermanentFix>(), order.Last<Removal>());
        var seen = order.Last<RemovalInspection>();
        paper.Heading("Check list");
        List<(string What, string Evidence, SignedRecord? By)> rows =
        [
            (
                "Repair removed, bare pipe photographed",
                removal?.Asked.Photo is { } photo ? $"photograph {photo.ToString()[..8]}" : "no photograph",
                removal
            ),
            ("Condition found under the repair", removal?.Asked.Condition ?? "", removal),
            ("Inspector's entry", seen?.Asked.Found ?? "not asked for in this class", seen),
            ("Cause confirmed", close is null ? "" : $"{Words.Of(close.Asked.Cause)}: {close.Asked.CauseFound}", close),
            (
                "Permanent fix",
                fix is null
                    ? ""
                    : $"{Words.Of(fix.Asked.Kind)}, {fix.Asked.Reference}, done {OrderFacts.Day(fix.Asked.DoneOn)}",
                fix
            ),
            ("New parts, certificates", fix?.Asked.PartCertificates ?? "none needed", fix),
            ("Welds", fix?.Asked.Welds ?? "none", fix),
            ("Tests", fix?.Asked.Tests ?? "none", fix),
            ("Drawings and line list restored", fix?.Asked.Drawings ?? "", fix),
            ("Change control closed", close?.Asked.ChangeControlClosed ?? "none ran", close),
            ("Stores balanced", close is null ? "no" : "yes", close),
            (
                "Tag back",
                close?.Asked.TagBack == true ? "yes" : $"no: {close?.Asked.TagLost ?? "none was fitted"}",
                close
            ),
            ("Lessons", close?.Asked.Lessons ?? "none asked for", close),
        ];
        paper.Table(
            [new("", 0.4), new("What", 2.4, Face: Face.Bold), new("Evidence", 4.4), new("Signed", 2.2)],
            rows.Select(r =>
                (IReadOnlyList<string>)
                    ["✓", r.What, r.Evidence, r.By is null ? "" : $"{r.By.By}, {facts.Moment(r.By.At)}"]
            ),
            Paper.Body,
            least: 7
        );
    }

    private static void Rounds(Paper paper, OrderFacts facts)
    {
        paper.Heading("The life of the repair");
        paper.Table(
            [new("Stage", 2), new("Round", 0.8), new("Began", 2)],
            Orders
                .Rounds.History(facts.Order)
                .Select(h => (IReadOnlyList<string>)[Words.Of(h.Stage), $"{h.Round}", facts.Moment(h.At)]),
            Paper.Small
        );
        if (facts.Order.Last<Acceptance>() is { } accepted)
            paper.Paragraph(
                Say($"Tag {accepted.Asked.Tag}; taken into service by {accepted.By}, {facts.Moment(accepted.At)}.")
            );
    }

    private static void Signed(Paper paper, OrderFacts facts)
    {
        var close = facts.Order.Last<CloseOut>();
        var engineer = facts.Order.Last<CloseOutCountersignature>();
        paper.Need(30);
        paper.Heading("Closed");
        paper.Cells(
            14,
            ("Closed by, supervisor", close is null ? "" : $"{close.By}, {facts.Moment(close.At)}", 1),
            (
                "Countersigned, engineer",
                engineer is null ? "not asked for in this class" : $"{engineer.By}, {facts.Moment(engineer.At)}",
                1
            ),
            ("Journal", $"{facts.Order.JournalLines} entries, last {facts.Order.JournalHash[..16]}", 1.2)
        );
    }
}
