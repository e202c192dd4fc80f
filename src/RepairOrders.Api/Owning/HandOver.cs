using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Owning;

/// <summary>The order offered to a new owner.</summary>
internal sealed class HandOver : SignedRecord<SignedHandOver>
{
    private HandOver() { }

    public HandOver(SignedHandOver body)
        : base(body) { }

    public override string Kind => "hand-over";

    public override string Summary => $"offered to {Asked.ToName}: {Asked.Ask.Why}";

    public override Tone Tone => Tone.Watch;

    /// <summary>Anybody who answers for the repair may offer it, so that one whose owner has left does not stay without.</summary>
    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (Orders.Objection.AtAnEnd(order) is { } ended)
            return ended;
        if (order.Columns.OwnerId is null)
            return new Objection(
                "no-owner-yet",
                "The order has no owner yet: the design names the first one.",
                "integrity engineer, by sizing the repair"
            )
            {
                IsOfStage = true,
            };
        if (Authority.Objection(by, order, at) is { } lapsed)
            return lapsed;
        return
            order.Columns.OwnerId == by.Id
            || by.Roles.Any(r => r is Role.Supervisor or Role.IntegrityEngineer or Role.Manager)
            ? null
            : new Objection(
                "not-yours-to-hand-over",
                $"The order is {order.Columns.Owner}'s. He hands it over, or a supervisor, engineer or manager does.",
                "the owner, a supervisor, an engineer or the manager"
            );
    }

    public static Objection? Objection(RepairOrder order, Person? to, Person by, DateTimeOffset at)
    {
        if (Objection(order, by, at) is { } no)
            return no;
        if (to is null || Ownership.Lost(to, order.Site.ShortName, at) is not null)
            return new Objection(
                "new-owner-cannot-sign",
                "The new owner must be somebody of this site who can sign a look: a supervisor, technician, engineer or manager with authority in date.",
                "whoever hands over, by naming another"
            );
        return to.Id == order.Columns.OwnerId
            ? new Objection(
                "owner-already",
                $"{to.FullName} is the owner already.",
                "whoever hands over, by naming another"
            )
            : null;
    }
}
