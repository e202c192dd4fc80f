namespace RepairOrders.Api.Orders;

/// <summary>Verifies an order's history: every entry follows the one before and none is missing.</summary>
internal static class JournalChain
{
    /// <summary>The line of the first entry that does not verify; nothing when all do.</summary>
    public static int? BrokenAt(RepairOrder order, IReadOnlyList<JournalEntry> entries)
    {
        var previous = "";
        for (var i = 0; i < entries.Count; i++)
        {
            if (entries[i].Line != i + 1 || !entries[i].Follows(previous))
                return i + 1;
            previous = entries[i].Hash;
        }
        return entries.Count != order.JournalLines || previous != order.JournalHash ? entries.Count + 1 : null;
    }
}
