using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Revisiting;

/// <summary>An engineer's name under a visit: on classes A and B, and wherever walls were read.</summary>
internal sealed class VisitCountersignature : SignedRecord<CountersignVisit>
{
    private VisitCountersignature() { }

    public VisitCountersignature(CountersignVisit ask)
        : base(ask) { }

    public override string Kind => "visit-countersignature";

    public override string Summary => string.IsNullOrWhiteSpace(Asked.Remark) ? "countersigned" : Asked.Remark;

    /// <summary>Visits that wait for an engineer, oldest first.</summary>
    public static IEnumerable<Visit> Waiting(RepairOrder order) =>
        order.All<Visit>().Where(v => v.Asked.CountersignNeeded && !Has(order, v));

    public static bool Has(RepairOrder order, Visit visit) =>
        order.All<VisitCountersignature>().Any(c => c.Asked.Visit == visit.Id);

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        var waiting = Waiting(order).ToList();
        if (waiting.Count == 0)
            return new Objection(
                "nothing-to-countersign",
                "No visit waits for a countersignature.",
                "nobody; there is nothing to sign"
            )
            {
                IsOfStage = true,
            };
        return Authority.Objection(by, order, at) ?? (waiting.All(v => v.ById == by.Id) ? Own() : null);
    }

    public static Objection? Objection(RepairOrder order, CountersignVisit ask, Person by, DateTimeOffset at)
    {
        if (Objection(order, by, at) is { } no)
            return no;
        var visit = Waiting(order).FirstOrDefault(v => v.Id == ask.Visit);
        if (visit is null)
            return new Objection(
                "visit-waits-not",
                "That visit does not wait for a countersignature. Read the order again.",
                "integrity engineer"
            );
        return visit.ById == by.Id ? Own() : null;
    }

    private static Objection Own() =>
        new Objection(
            "own-visit",
            "You made this visit, so another engineer countersigns it.",
            "another integrity engineer"
        );
}
