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

    /// <summary>An outside signer signs what his letter of authority names.</summary>
    public static Objection? Scope(Person by, string place, string? also = null) =>
        by.OutsideScope is not { } scope || Names(scope, place) || (also is not null && Names(scope, also))
            ? null
            : new Objection(
                "outside-scope",
                $"Your authority reads \"{scope}\"; that does not cover signing as {place}.",
                "administrator, who keeps the letters of authority"
            );

    private static bool Names(string scope, string word) => scope.Contains(word, StringComparison.OrdinalIgnoreCase);
}
