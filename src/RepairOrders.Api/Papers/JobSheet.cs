using System.Globalization;
using RepairOrders.Api.Drawing;
using RepairOrders.Api.Figures;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Readying;
using RepairOrders.Contract;
using RepairOrders.Engineering.Risk;

namespace RepairOrders.Api.Papers;

/// <summary>
/// The job on one sheet of two sides: what, where, by which permit and design on the front, hold boxes, readings, clocks, test and
/// signatures on the back. If every device dies, it carries the whole job.
/// </summary>
internal static class JobSheet
{
    private const int CautionsInFront = 9;

    public static byte[] Of(OrderFacts facts, PaperSize size)
    {
        using var paper = facts.Paper("Job sheet", size);
        Front(paper, facts);
        paper.Next();
        JobSheetBack.Write(paper, facts);
        return paper.Bytes();
    }

    private static void Front(Paper paper, OrderFacts facts)
    {
        paper.Press.Bookmark("The job");
        TitleBlockOnPaper.Draw(paper, facts, "Job sheet");
        Standing(paper, facts);
        Where(paper, facts);
        Permit(paper, facts);
        // The drawing takes what bill and cautions leave.
        var cautions = Cautions(facts).Take(CautionsInFront).ToList();
        var bill = facts.Work?.Method.Materials ?? [];
        var below = 24 + 7 + bill.Count * 4.9 + 6 + CautionsHeight(paper, cautions);
        Drawn(paper, facts, below);
        Bill(paper, facts, bill);
        Behind(paper, facts);
        Cautioned(paper, "Before you begin", cautions);
    }

    public static IEnumerable<string> Cautions(OrderFacts facts) => facts.Work?.Method.Cautions ?? [];

    public static IEnumerable<string> LaterCautions(OrderFacts facts) => Cautions(facts).Skip(CautionsInFront);

    private static void Standing(Paper paper, OrderFacts facts)
    {
        var words =
            facts.Work is null ? "NO DESIGN: nothing may be fitted by this sheet."
            : !facts.Work.Approved ? "NOT APPROVED: for planning only. No work by this sheet."
            : facts.Work.Plan!.Emergency
                ? "EMERGENCY FIT on two consents. Assessment and approval are owed; see the end date."
            : null;
        if (words is null)
            return;
        paper.Press.Box(Paper.Left, paper.Y, paper.Width, 6, 0.6, 1);
        paper.Press.Text(Paper.Left + 2, paper.Y + 4.2, words, 3.3, Face.Bold, ink: 0);
        paper.Y += 7.5;
    }

    private static void Where(Paper paper, OrderFacts facts)
    {
        var request = facts.Order.Request.Asked;
        var line = facts.Order.Line;
        paper.Cells(
            11,
            ("Line", facts.Title.Line ?? "not in the line list", 1.1),
            ("Place", request.Place, 2.4),
            ("Area · section that can be isolated", line is null ? "–" : $"{line.Area} · {line.Section}", 1.5)
        );
        paper.Cells(
            11,
            ("Fluid", request.Fluid, 1.5),
            ("Hazards", Hazards(facts), 1.5),
            ("Operating", facts.Title.Duty, 1.1),
            ("Design", Design(facts), 1.1),
            ("HELD TO while live", Limits(facts), 1.7)
        );
        paper.Y += 1.5;
    }

    public static string Limits(OrderFacts facts)
    {
        if (facts.Work?.Limits is not { } limits)
            return "the line's own limits";
        string?[] parts = [limits.Pressure?.Entered, limits.Temperature?.Entered, limits.Words];
        return string.Join(" · ", parts.Where(p => !string.IsNullOrWhiteSpace(p)).Select(p => p!.Trim()));
    }

    private static string Design(OrderFacts facts) =>
        facts.Assessment?.Judgement.Facts is { } f
            ? Say($"{f.DesignPressureBar:0.##} bar · {f.DesignTemperatureC:0.#} °C")
        : facts.Order.Line is { } line ? Say($"{line.DesignPressureBar:0.##} bar · {line.DesignTemperatureC:0.#} °C")
        : "–";

    private static string Hazards(OrderFacts facts)
    {
        var (flammable, toxic) = facts.Assessment?.Judgement.Facts is { } f
            ? (f.Flammable, f.Toxic)
            : (facts.Order.Line?.Flammable ?? false, facts.Order.Line?.Toxic ?? false);
        List<string> hazards = [];
        if (flammable)
            hazards.Add("burns");
        if (toxic)
            hazards.Add("poisons");
        if (facts.Assessment?.Judgement.Facts.AboveAutoIgnition == true)
            hazards.Add("above auto-ignition");
        if (facts.Order.Request.Asked.Hazardous)
            hazards.Add("leak called hazardous");
        return hazards.Count > 0 ? string.Join(", ", hazards) : "none listed; under pressure";
    }

    private static void Permit(Paper paper, OrderFacts facts)
    {
        var ready = Readiness.Current(facts.Order, ReadinessFor.Fit)?.Asked;
        var ask = ready?.Ask;
        var gas = ask?.GasTest;
        paper.Cells(
            10.5,
            ("Permit no.", ask?.Permit ?? "", 1),
            ("Valid to", facts.Moment(ask?.PermitUntil), 1.2),
            (
                "Isolation cert. / LIVE consent",
                ready is null ? ""
                : ready.Live ? "LIVE, by consents"
                : ask!.Isolation!.Certificate,
                1.4
            ),
            ("Proved dead at the pipe by", ask?.Isolation?.ProvedDeadBy ?? "", 1.4),
            (
                "Gas: LEL / O2 / H2S",
                gas is null
                    ? ""
                    : Say(
                        $"{gas.LowerExplosivePercent:0.#} % / {gas.OxygenPercent:0.#} % / {gas.HydrogenSulphidePpm?.ToString("0.#", CultureInfo.InvariantCulture) ?? "–"}"
                    ),
                1.3
            ),
            ("Fitters", ready is null ? "" : string.Join(", ", ready.Fitters.Select(p => p.Name)), 1.7)
        );
        paper.Y += 2;
    }

    private static void Drawn(Paper paper, OrderFacts facts, double below)
    {
        if (facts.Subject is not { } subject)
        {
            paper.Paragraph(
                "Nothing is known to draw by: the line is not in the line list and the pipe is not assessed."
            );
            return;
        }
        var picture = OrderPicture.Of(subject);
        var width = Math.Min(paper.Width, (paper.Room - below) * picture.Width / picture.Height);
        width = Math.Max(width, 0.6 * paper.Width);
        var height = width * picture.Height / picture.Width;
        paper.Need(height);
        paper.Press.Picture(picture, Paper.Left + (paper.Width - width) / 2, paper.Y, width);
        paper.Y += height + 1.5;
    }

    private static void Bill(Paper paper, OrderFacts facts, IReadOnlyList<MaterialNeedView> bill)
    {
        var recorded = new Recorded(facts);
        if (bill.Count == 0)
            return;
        paper.Table(
            [new("Material", 6), new("Needed", 1.2, Align.Right, Face.Bold), new("Batch", 1.8), new("On the job", 1)],
            bill.Select(
                (m, i) =>
                    (IReadOnlyList<string>)
                        [m.Words, Say($"{m.Quantity:0.###} {m.Unit}"), recorded.Batches(i + 1), "[  ]"]
            ),
            Paper.Body
        );
    }

    // Who stands behind it, who goes back, what ends it, whom to call.
    private static void Behind(Paper paper, OrderFacts facts)
    {
        var fix = facts.Work?.Signed?.Ask.PermanentFix;
        var approvals = facts.Approvals.Select(a => ($"Approved as {a.As}, {a.At}", a.By, 1.3)).ToList();
        paper.Cells(
            10,
            [
                .. approvals.Count > 0 ? approvals : [("Approved by", "", 2)],
                ("Change control", facts.Work?.Signed?.Ask.ChangeControl?.Reference ?? "–", 1.0),
                ("Calculation", facts.Work?.Method.CalculationReference ?? "calculation sheet", 1.2),
            ]
        );
        paper.Cells(
            10,
            ("First look", facts.Sheet.NextLook is { } look ? OrderFacts.Day(look) : FirstLook(facts), 1.3),
            ("Goes back to look; call about this repair", facts.Title.Owner ?? "", 1.5),
            ("Telephone", "", 0.9),
            ("Permanent fix", fix is null ? "none yet" : $"{fix.Reference}, {OrderFacts.Day(fix.On)}", 1.5)
        );
        paper.Y += 2;
    }

    private static string FirstLook(OrderFacts facts) =>
        facts.Title.SignedClass is { } signed
            ? Say($"{DecidedUnder.Figures(facts.Order).Of(signed).FirstLook.TotalHours:0} h after the start")
            : "";

    private static double CautionsHeight(Paper paper, List<string> cautions)
    {
        var lines = cautions.Sum(c => paper.Press.Wrap(c, Paper.Body, (paper.Width - 4) / 2 - 3.4).Count);
        return 8 + (lines / 2.0 + 2) * Paper.Body * 1.3;
    }

    public static void Cautioned(
        Paper paper,
        string heading,
        IReadOnlyList<string> cautions,
        int columns = 2,
        double size = Paper.Body
    )
    {
        if (cautions.Count == 0)
            return;
        var top = paper.Y;
        paper.Press.Text(Paper.Left + 2, top + 4, "▲ " + heading, 3.3, Face.Bold);
        paper.Y = top + 5.4;
        paper.Columns(cautions, columns, size, "!");
        paper.Press.Box(Paper.Left - 1.5, top, paper.Width + 3, paper.Y - top, 0.6);
        paper.Y += 2;
    }

    public static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
