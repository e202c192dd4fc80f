using RepairOrders.Api.Approving;
using RepairOrders.Api.Consenting;
using RepairOrders.Api.Extending;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Revisiting;
using RepairOrders.Api.Shutdowns;
using RepairOrders.Api.Sizing;

namespace RepairOrders.Api.Standing;

/// <summary>The end of a repair's life.</summary>
/// <param name="On">The last day.</param>
/// <param name="At">The moment it is over.</param>
internal sealed record EndOfLife(DateOnly On, DateTimeOffset At);

/// <summary>
/// The end date in force. The first full approval sets it; a later one, a reading or a shutdown brought forward moves it in;
/// nothing but an extension moves it out. Until the first approval of an emergency it is the end of the debt clock.
/// </summary>
internal static class EndInForce
{
    public static EndOfLife? Of(RepairOrder order) => Turns(order) is [.., var last] ? last.Value : null;

    /// <summary>Every end date of the round, from when each held.</summary>
    public static IReadOnlyList<Since<EndOfLife>> Turns(RepairOrder order)
    {
        List<Since<EndOfLife>> turns = [.. Debt(order)];
        DateOnly? current = null;
        foreach (
            var record in order
                .Records.Where(r => r.Stands && r.Round == order.Round)
                .OrderBy(r => r.At)
                .ThenBy(r => r.Id)
        )
        {
            var next = After(current, record, order);
            if (next is { } on && next != current)
                turns.Add(new(record.At, new(on, order.Site.EndOf(on))));
            current = next;
        }
        return turns;
    }

    private static IEnumerable<Since<EndOfLife>> Debt(RepairOrder order)
    {
        if (Debts.DueAt(order) is { } due)
            yield return new(Rounds.InServiceSince(order)!.Value, new(order.Site.Today(due), due));
    }

    private static DateOnly? After(DateOnly? current, SignedRecord record, RepairOrder order) =>
        record switch
        {
            Approval approval when Signatures.CompletesAt(approval, order) => Earlier(current, Design(order, approval)),
            ExtensionDecision { Asked.EndDate: { } granted } => granted,
            Visit { Asked.EndDateIn: { } read } => Earlier(current, read),
            EndMovedIn moved => Earlier(current, moved.Asked.To),
            _ => current,
        };

    private static DateOnly? Design(RepairOrder order, Approval approval) =>
        order.InRound<Design>().LastOrDefault(d => d.Asked.Fingerprint == approval.Asked.Fingerprint)?.Asked.EndDate.On;

    private static DateOnly? Earlier(DateOnly? current, DateOnly? on) => on < current || current is null ? on : current;
}
