using RepairOrders.Api.Orders;

namespace RepairOrders.Api.Standing;

/// <summary>The words an order is found by.</summary>
internal static class SearchWords
{
    private const int Most = 4000;

    public static string Of(RepairOrder order)
    {
        var request = order.Request.Asked;
        string?[] words =
        [
            order.Number,
            order.Line?.Number,
            order.Line?.Area,
            request.Place,
            request.Fluid,
            Summary.Method(order),
            (order.ApprovedDesign ?? order.PendingDesign)?.Asked.OwnerName,
            (order.ApprovedDesign ?? order.PendingDesign)?.Asked.Ask.PermanentFix?.Reference,
            .. order.Records.Select(r => r.By).Distinct().Order(StringComparer.Ordinal),
        ];
        var text = string.Join(' ', words.Where(w => !string.IsNullOrWhiteSpace(w))).ToLowerInvariant();
        return text.Length <= Most ? text : text[..Most];
    }
}
