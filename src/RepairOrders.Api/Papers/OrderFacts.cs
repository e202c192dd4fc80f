using System.Globalization;
using RepairOrders.Api.Approving;
using RepairOrders.Api.Assessing;
using RepairOrders.Api.Drawing;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Papers;

/// <summary>What the papers of one order are made from: the sheet as everybody reads it, and the sheaf behind it.</summary>
/// <param name="Sheet">The order as it is read now.</param>
/// <param name="Order">The sheaf.</param>
/// <param name="Address">The order's page, for the code on the tag.</param>
internal sealed record OrderFacts(OrderSheet Sheet, RepairOrder Order, string Address)
{
    public TitleBlock Title => Sheet.Title;

    public WorkDesign? Work { get; } = WorkDesign.Of(Order);

    public SignedAssessment? Assessment { get; } = Order.Last<Assessment>()?.Asked;

    public Subject? Subject { get; init; } = Drawing.Subject.Of(Order);

    public static string Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "–";

    public string Moment(DateTimeOffset? at) =>
        at is { } when
            ? TimeZoneInfo
                .ConvertTime(when, TimeZoneInfo.FindSystemTimeZoneById(Order.Site.TimeZone))
                .ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)
            : "";

    /// <summary>The line under every paper.</summary>
    public string Foot =>
        $"{Title.Site} · {Title.Number} · round {Title.Round} · revision {Title.Revision} · printed {Moment(Sheet.ReadAt)} · local codes, the permit system and licensed engineers decide";

    public string Head =>
        $"{Title.Number} · {Title.Line ?? "unlisted line"} · class {Class} · ends {Day(Title.EndDate)}";

    public string Class => Title.SignedClass?.ToString() ?? "not yet";

    public Paper Paper(string name, PaperSize size, bool landscape = false) =>
        new(size, $"{name} {Title.Number}", $"{name} · {Head}", Foot, Title.Site, landscape);

    public IEnumerable<(string As, string By, string At)> Approvals =>
        Order.InRound<Approval>().Select(a => (Words.Of(a.Asked.As), a.By, Moment(a.At)));
}

/// <summary>What is fitted and what it may see: the design that awaits or carries signatures, or the emergency entry.</summary>
internal sealed record WorkDesign(
    MethodDesignView Method,
    SignedDesign? Signed,
    InterimLimits? Limits,
    WorkPlan? Plan,
    bool Approved
)
{
    public static WorkDesign? Of(RepairOrder order)
    {
        var plan = WorkPlan.Of(order);
        var signed = (order.PendingDesign ?? order.ApprovedDesign)?.Asked;
        return (signed?.Method ?? plan?.Design) is { } method
            ? new(
                method,
                signed,
                signed?.Ask.InterimLimits ?? plan?.Limits,
                WorkPlan.Of(order),
                plan is not null && order.PendingDesign is null
            )
            : null;
    }
}
