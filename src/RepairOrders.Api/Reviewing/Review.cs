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
        !order.Columns.Open
            ? new Objection(
                "at-an-end",
                "The order is at an end; there is nothing to review.",
                "nobody; it is at an end"
            )
            {
                IsOfStage = true,
            }
            : Authority.Objection(by, order, at);
}
