using System.Globalization;
using RepairOrders.Api.Consenting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Standing;
using RepairOrders.Contract;

namespace RepairOrders.Api.OrderSheets;

/// <summary>The order as one person sees it at one moment: the same rules that refuse a call stand here as objections.</summary>
internal static class OrderSheetQuery
{
    public static OrderSheet Sheet(
        RepairOrder order,
        Person by,
        DateTimeOffset at,
        IReadOnlyList<string> related,
        Around around
    )
    {
        var today = OrderToday.Of(order.Columns, around, order.Site.Zone(), at);
        var actions = NextActions.For(order, by, at);
        return new OrderSheet(
            Title(order, today),
            order.Version.ToString(CultureInfo.InvariantCulture),
            today.Flags,
            Figures.Of(order),
            ClassHistory.Rank(order, at)?.Reasons ?? [],
            today.NextLook,
            today.NextThickness,
            NextAction.Of(order, order.Columns, actions, at),
            actions,
            [.. order.Records.OrderBy(r => r.At).ThenBy(r => r.Id).Select(r => r.View())],
            related,
            (order.PendingDesign ?? order.ApprovedDesign)?.Asked.Fingerprint,
            at,
            today.Ladder,
            Debts.Of(order, at)
        );
    }

    private static TitleBlock Title(RepairOrder order, OrderToday today)
    {
        var request = order.Request.Asked;
        return new TitleBlock(
            order.Number,
            order.Site.Name,
            order.Line?.Number,
            request.Place,
            request.Fluid,
            $"{request.OperatingPressure.Entered} · {request.OperatingTemperature.Entered}",
            order.Columns.Method,
            order.Columns.SignedClass,
            today.Class,
            order.Columns.EndDate,
            today.DaysLeft,
            order.Columns.Owner,
            order.Stage,
            order.Round,
            order.JournalLines
        );
    }
}
