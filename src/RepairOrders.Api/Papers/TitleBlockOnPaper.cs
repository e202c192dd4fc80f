using RepairOrders.Api.Drawing;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Papers;

/// <summary>The title block: the same on every paper of an order.</summary>
internal static class TitleBlockOnPaper
{
    public static void Draw(Paper paper, OrderFacts facts, string name)
    {
        var (press, title, y) = (paper.Press, facts.Title, paper.Y);
        const double height = 25;
        var (classLeft, endLeft) = (paper.Right - 74, paper.Right - 52);
        press.Box(Paper.Left, y, paper.Width, height, 0.5);
        press.Line(classLeft, y, classLeft, y + height, 0.3);
        press.Line(endLeft, y, endLeft, y + height, 0.3);
        press.Text(Paper.Left + 2, y + 5, name, 4.2, Face.Bold);
        press.Text(Paper.Left + 2, y + 13.6, title.Number, 7.6, Face.Bold);
        press.Text(Paper.Left + 2, y + 18.4, $"{title.Site} · {Words.Of(title.Stage)}", Paper.Body);
        press.Text(
            Paper.Left + 2,
            y + 22.6,
            $"{title.Method ?? "no method chosen"} · owner {title.Owner ?? "nobody yet"}",
            Paper.Body
        );
        Class(press, title, classLeft + 11, y);
        press.Text(endLeft + 2, y + 4, "In service to, last day", 2.3, ink: 0.75);
        press.Text(endLeft + 2, y + 13.4, OrderFacts.Day(title.EndDate), 7.4, Face.Bold);
        press.Text(endLeft + 2, y + 18.4, Left(title), Paper.Body);
        press.Text(endLeft + 2, y + 22.6, $"round {title.Round} · revision {title.Revision}", Paper.Body);
        paper.Y = y + height + 2;
    }

    private static void Class(Press press, TitleBlock title, double middle, double y)
    {
        press.Text(middle, y + 4, "Class", 2.3, align: Align.Middle, ink: 0.75);
        press.Box(middle - 5.6, y + 5.4, 11.2, 11.2, 0.6);
        press.Box(middle - 6.4, y + 4.6 + 0.0, 12.8, 12.8, 0.2);
        press.Text(middle, y + 14, title.SignedClass?.ToString() ?? "–", 8, Face.Bold, Align.Middle);
        press.Text(
            middle,
            y + 22.6,
            title.ClassToday is { } today && today != title.SignedClass ? $"today {today}" : "signed",
            Paper.Body,
            align: Align.Middle
        );
    }

    private static string Left(TitleBlock title) =>
        title.DaysLeft switch
        {
            null => title.EndDate is null ? "no end date yet" : Words.Of(title.Stage),
            < 0 and var days => $"PAST ITS LIFE by {-days} d",
            0 => "ends today",
            var days => $"in {days} days",
        };
}
