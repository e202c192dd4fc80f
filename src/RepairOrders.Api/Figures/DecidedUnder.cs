using RepairOrders.Api.Consenting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Sizing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Figures;

/// <summary>Which version of its site's figures an order stands under: that of its design, or of its consents at night.</summary>
internal static class DecidedUnder
{
    /// <summary>Those the order was decided under; before anything is decided, those in force.</summary>
    public static SiteFigures Figures(RepairOrder order) =>
        Version(order) is { } version ? order.Site.FiguresOf(version) : order.Site.FiguresInForce;

    private static int? Version(RepairOrder order) =>
        (order.ApprovedDesign ?? order.All<Design>().LastOrDefault())?.Asked.FiguresVersion
        ?? order.All<Consent>().LastOrDefault()?.Asked.FiguresVersion;
}
