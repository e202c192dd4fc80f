using System.Globalization;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.OrderSheets;

/// <summary>The order as one person sees it at one moment: the same rules that refuse a call stand here as objections.</summary>
internal static class OrderSheetQuery
{
    public static OrderSheet Sheet(RepairOrder order, Person by, DateTimeOffset at, IReadOnlyList<string> related)
    {
        var actions = NextActions.For(order, by, at);
        return new OrderSheet(
            Title(order, at),
            order.Version.ToString(CultureInfo.InvariantCulture),
            [],
            Figures.Of(order),
            Classes.Risk(order)?.Reasons ?? [],
            null,
            null,
            actions.FirstOrDefault(a => a.Objection is null),
            actions,
            [.. order.Records.OrderBy(r => r.At).ThenBy(r => r.Id).Select(r => r.View())],
            related,
            (order.PendingDesign ?? order.ApprovedDesign)?.Asked.Fingerprint,
            at
        );
    }

    private static TitleBlock Title(RepairOrder order, DateTimeOffset at)
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
            null,
            order.Columns.EndDate,
            order.Columns.EndDate is { } end ? end.DayNumber - order.Site.Today(at).DayNumber : null,
            order.Columns.Owner,
            order.Stage,
            order.Round,
            order.JournalLines
        );
    }
}
