using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Consenting;

/// <summary>One more period, of the same length, for the papers of an emergency repair.</summary>
internal sealed class DebtPeriod : SignedRecord<GrantPeriod>
{
    private DebtPeriod() { }

    public DebtPeriod(GrantPeriod ask)
        : base(ask) { }

    public override string Kind => "debt period";

    public override string Summary => $"one more period granted: {Asked.Why}";

    public override Tone Tone => Tone.Watch;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (Authority.Objection(by, order, at) is { } lapsed)
            return lapsed;
        if (Debts.Of(order, at) is not { } debt)
            return new Objection("nothing-owed", "No papers are owed on this order.", "nobody") { IsOfStage = true };
        return debt.Granted
            ? new Objection(
                "period-granted-already",
                "One more period has been granted; there is no second. Pay what is owed, or take the repair off.",
                "integrity engineer and approvers, by paying what is owed"
            )
            : null;
    }
}
