using RepairOrders.Api.Lines;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Requesting;

/// <summary>What was seen and asked for.</summary>
internal sealed class Request : SignedRecord<RequestRepair>, IMovesStage
{
    private Request() { }

    public Request(RequestRepair ask)
        : base(ask) { }

    public override string Kind => "request";

    public override string Summary =>
        $"{Words.Of(Asked.LeakState)}, {Asked.OperatingPressure.Entered}, {Asked.OperatingTemperature.Entered}: {Asked.Seen}";

    public Stage After(Stage before, RepairOrder order) => Stage.Requested;

    /// <summary>Whether a returned request can be sent again by this person.</summary>
    public static Objection? AgainObjection(RepairOrder order, Person by, DateTimeOffset at) =>
        Orders.Objection.NotNow(order, "A request sent again", Stage.Returned)
        ?? Authority.Objection(by, order, at)
        ?? (
            by.Is(Role.Supervisor) || order.Records.OfType<Request>().Any(r => r.ById == by.Id)
                ? null
                : new Objection(
                    "not-your-request",
                    $"This request was raised by {order.Request.By}. He sends it again, or a supervisor does.",
                    "the requester, or a supervisor"
                )
        );

    public static Objection? Objection(RequestRepair ask, Line? line)
    {
        if (ask.Line is not null && line is null)
            return new Objection(
                "line-not-listed",
                $"Line {ask.Line} is not in the line list. Leave the line empty and describe the place, or have the line listed.",
                "administrator, who keeps the line list"
            );
        if (ask.LeakState > LeakState.Stain && ask.Hazardous && string.IsNullOrWhiteSpace(ask.ImmediateMeasures))
            return new Objection(
                "hazard-without-measure",
                "The leak is hazardous and no immediate measure is on record. Make the place safe first: keep people away, cut the pressure, isolate; then write down what was done.",
                "the requester, once the place is safe"
            );
        return null;
    }
}
