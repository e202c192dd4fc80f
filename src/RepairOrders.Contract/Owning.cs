using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>Offers the order to a new owner. He owns it once he accepts.</summary>
/// <param name="To">The new owner.</param>
/// <param name="Why">Why.</param>
public sealed record OfferHandOver(Guid To, [property: Required, StringLength(1000, MinimumLength = 3)] string Why);

/// <summary>The body of an offer.</summary>
/// <param name="Ask">The offer.</param>
/// <param name="ToName">The new owner as printed.</param>
public sealed record SignedHandOver(OfferHandOver Ask, string ToName);

/// <summary>Accepts the order as its new owner.</summary>
/// <param name="HandOver">The offer.</param>
public sealed record AcceptHandOver(Guid HandOver);

public sealed partial class RepairOrdersClient
{
    /// <summary>Offers the order to a new owner.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">To whom and why.</param>
    /// <returns>The offer; its body is a <see cref="SignedHandOver"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> OfferHandOver(string number, OfferHandOver ask) =>
        Post<RecordView>($"orders/{number}/hand-overs", ask);

    /// <summary>Accepts the order.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The offer.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The new owner's record.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> AcceptHandOver(string number, AcceptHandOver ask, string version) =>
        Put<RecordView>($"orders/{number}/owner", ask, version);
}
