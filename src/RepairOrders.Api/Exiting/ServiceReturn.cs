using RepairOrders.Api.Assessing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Sizing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Exiting;

/// <summary>A line that was out of service goes back: the repair was assessed afresh and its end date has not passed.</summary>
internal sealed class ServiceReturn : SignedRecord<ReturnToService>, IMovesStage
{
    private ServiceReturn() { }

    public ServiceReturn(ReturnToService ask)
        : base(ask) { }

    public override string Kind => "return to service";

    public override string Summary => $"line back in service: {Asked.Checked}";

    public Stage After(Stage before, RepairOrder order) => before == Stage.LineOutOfService ? Stage.InService : before;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (Orders.Objection.NotNow(order, "A return to service", Stage.LineOutOfService) is { } early)
            return early;
        if (Authority.Objection(by, order, at) is { } lapsed)
            return lapsed;
        if (!by.IsCompetent(Competence.OperationsInCharge, order.Site.Today(at)))
            return new Objection(
                "return-capacity",
                "Operations in charge puts a line back into service.",
                "operations in charge"
            );
        var left = order.InRound<Exit>().Last(e => e.Asked.Kind == ExitKind.LineOutOfService);
        if (order.Last<Assessment>() is not { } assessment || left.IsAfter(assessment))
            return new Objection(
                "return-not-assessed",
                "The repair has not been assessed since the line went out of service. Assess it first.",
                "integrity engineer"
            );
        return EndDates.Of(order) is { } end && order.Site.Today(at) > end
            ? new Objection(
                "return-past-end",
                $"The end date {end:yyyy-MM-dd} has passed while the line was out. It takes an extension first.",
                "manager and an integrity engineer, by an extension"
            )
            : null;
    }
}
