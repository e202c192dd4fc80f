using RepairOrders.Api.Orders;

namespace RepairOrders.Api.People;

/// <summary>Whether a signature of this person counts today: an outside signer's authority ends on a date.</summary>
internal static class Authority
{
    public static Objection? Objection(Person by, RepairOrder order, DateTimeOffset at) =>
        by.HasAuthority(order.Site.Today(at))
            ? null
            : new Objection(
                "authority-lapsed",
                $"The authority of {by.FullName} to sign ended on {by.AuthorityUntil:yyyy-MM-dd}. Have it renewed, or ask somebody else to sign.",
                "administrator, who keeps people and their dates"
            );
}
