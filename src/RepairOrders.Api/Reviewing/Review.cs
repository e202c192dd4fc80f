using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Reviewing;

/// <summary>What the weekly review decided on the order.</summary>
internal sealed class Review : SignedRecord<ReviewOrder>
{
    private Review() { }

    public Review(ReviewOrder ask)
        : base(ask) { }

    public override string Kind => "review";

    public override string Summary =>
        $"{Words.Of(Asked.Decision)}: {Asked.Minutes}{(Asked.ActionBy is { } who ? $" ({who}, by {Asked.ActionOn:yyyy-MM-dd})" : "")}";

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Orders.Objection.AtAnEnd(order) ?? Authority.Objection(by, order, at);

    /// <summary>A date without somebody who keeps it, or the other way round, is what goes wrong most.</summary>
    public static Objection? Objection(RepairOrder order, ReviewOrder ask, Person by, DateTimeOffset at)
    {
        if (Objection(order, by, at) is { } no)
            return no;
        var named = !string.IsNullOrWhiteSpace(ask.ActionBy) && ask.ActionOn >= order.Site.Today(at);
        return ask.Decision != ReviewDecision.Act || named
            ? null
            : new Objection(
                "action-not-assigned",
                "Say who acts and by which day, today or later: an action without both is done by nobody.",
                "whoever enters the review"
            );
    }
}
