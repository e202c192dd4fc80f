using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Sites;
using RepairOrders.Contract;

namespace RepairOrders.Api.Figures;

/// <summary>Figures somebody proposed for a site; in force once a second person has signed them.</summary>
internal sealed record FiguresVersion(
    int Version,
    SiteFigures Figures,
    string Why,
    Guid ProposedById,
    ListSignature Proposed,
    ListSignature? Confirmed = null
)
{
    public static Objection? ProposeObjection(Site site) =>
        site.FiguresAwaiting is { } waiting
            ? new Objection(
                "figures-await-second",
                $"Version {waiting.Version}, proposed by {waiting.Proposed.By}, waits for its second signature. Sign it or have it taken back first.",
                "a second integrity engineer or the manager"
            )
            : null;

    public static Objection? ConfirmObjection(Site site, int version, Person by) =>
        Awaiting(site, version, out var waiting)
        ?? (
            waiting!.ProposedById == by.Id
                ? new Objection(
                    "figures-own-proposal",
                    "You proposed these figures. Four eyes are two persons.",
                    "another integrity engineer, or the manager"
                )
                : null
        );

    /// <summary>Only what waits can be signed or taken back.</summary>
    public static Objection? Awaiting(Site site, int version, out FiguresVersion? waiting)
    {
        waiting = site.FiguresAwaiting;
        return waiting?.Version == version
            ? null
            : new Objection(
                "figures-not-waiting",
                $"Version {version} does not wait for a signature. Propose new figures instead; what is in force is never changed.",
                "an integrity engineer or the manager, by proposing figures"
            );
    }
}
