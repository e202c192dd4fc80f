using QRCoder;
using RepairOrders.Api.Drawing;
using static RepairOrders.Api.Papers.JobSheet;

namespace RepairOrders.Api.Papers;

/// <summary>
/// The tag that hangs on the repair: a label of 148 × 105 mm with its code, cut out along the line; two of them, one to spare.
/// For weatherproof stock: black only, nothing smaller than can be read at arm's length.
/// </summary>
internal static class Tag
{
    private const double Wide = 148;
    private const double High = 105;

    public static byte[] Of(OrderFacts facts, PaperSize size)
    {
        using var paper = facts.Paper("Tag", size);
        paper.Press.Bookmark("Tag");
        var left = (size.Width - Wide) / 2;
        var gap = (paper.PageHeight - 12 - 2 * High) / 3;
        Label(paper.Press, facts, left, gap);
        Label(paper.Press, facts, left, 2 * gap + High);
        return paper.Bytes();
    }

    private static void Label(Press press, OrderFacts facts, double x, double y)
    {
        var title = facts.Title;
        press.Box(x, y, Wide, High, 0.15, ink: 0.5);
        press.Box(x + 3, y + 3, Wide - 6, High - 6, 0.9);
        press.Box(x + 3, y + 3, Wide - 6, 13, 0, 1);
        press.Text(x + 8, y + 12.2, "TEMPORARY REPAIR", 8, Face.Bold, ink: 0);
        press.Text(x + Wide - 8, y + 12.2, $"CLASS {facts.Class}", 8, Face.Bold, Align.Right, 0);
        press.Text(x + 8, y + 27, title.Number, 9.5, Face.Bold);
        Fit(press, x + 8, y + 35, $"{title.Line ?? "unlisted line"} · {title.Fluid}", 4.6, 84);
        Fit(press, x + 8, y + 41, title.Place, 3.6, 84);
        press.Text(x + 8, y + 49.5, "Not in service after", 3.6);
        press.Text(x + 8, y + 64, OrderFacts.Day(title.EndDate), 14.5, Face.Bold);
        Fit(press, x + 8, y + 69, title.Method ?? "no method", 3.4, 84);
        Fit(press, x + 8, y + 73.4, $"Held to {Limits(facts)}", 3.4, 84);
        Code(press, facts.Address, x + Wide - 53, y + 20, 45);
        press.Text(x + Wide - 30.5, y + 69, "scan: the order", 3.2, align: Align.Middle);
        press.Line(x + 3, y + 75, x + Wide - 3, y + 75, 0.5);
        press.Text(
            x + 8,
            y + 82,
            "Do not touch, tighten, paint or lag. Any wetness: leave, report at once.",
            3.5,
            Face.Bold
        );
        press.Text(x + 8, y + 89.5, "Call:", 3.8);
        Fit(
            press,
            x + 19,
            y + 89.5,
            $"{title.Owner ?? "____________"}, or the shift supervisor, {title.Site}",
            3.8,
            118
        );
        press.Text(x + 8, y + 97.5, "Telephone ______________________", 3.8);
        press.Text(x + Wide - 8, y + 97.5, "Tag no. ______________", 3.8, align: Align.Right);
    }

    private static void Fit(Press press, double x, double y, string text, double size, double width)
    {
        var lines = press.Wrap(text, size, width);
        press.Text(x, y, lines.Count == 1 ? text : lines[0] + " …", size);
    }

    private static void Code(Press press, string address, double x, double y, double side)
    {
        using var made = QRCodeGenerator.GenerateQrCode(address, QRCodeGenerator.ECCLevel.Q);
        press.Modules(x, y, side, made.ModuleMatrix);
    }
}
