using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace RepairOrders.Api.Orders;

/// <summary>
/// One line of an order's history, chained to the one before by SHA-256. Written in the transaction of what it tells of; the
/// service's own store role may not change or remove it.
/// </summary>
internal sealed class JournalEntry
{
    public Guid OrderId { get; private init; }
    public int Line { get; private init; }
    public DateTimeOffset At { get; private init; }
    public Guid ById { get; private init; }
    public string By { get; private init; } = "";
    public string What { get; private init; } = "";
    public string? Why { get; private init; }
    public Guid? RecordId { get; private init; }

    /// <summary>What it was before, whole, as JSON text; nothing where nothing was replaced.</summary>
    public string? Old { get; private init; }

    /// <summary>What it is now, whole, as JSON text. Text, not jsonb, which would reorder keys and break the chain.</summary>
    public string New { get; private init; } = "";
    public string PreviousHash { get; private init; } = "";
    public string Hash { get; private init; } = "";

    public static JournalEntry Next(
        RepairOrder order,
        string what,
        string? why,
        Guid? record,
        string? old,
        string @new,
        string by,
        Guid byId,
        DateTimeOffset at
    )
    {
        var line = order.JournalLines + 1;
        return new JournalEntry
        {
            OrderId = order.Id,
            Line = line,
            At = at,
            By = by,
            ById = byId,
            What = what,
            Why = why,
            RecordId = record,
            Old = old,
            New = @new,
            PreviousHash = order.JournalHash,
            Hash = Chain(order.JournalHash, order.Id, line, at, byId, by, what, why, record, old, @new),
        };
    }

    public bool Follows(string previousHash) =>
        PreviousHash == previousHash
        && Hash == Chain(PreviousHash, OrderId, Line, At, ById, By, What, Why, RecordId, Old, New);

    // Each part is preceded by its length, so that no two different entries can read as the same text.
    internal static string Chain(string previous, params object?[] parts)
    {
        var text = new StringBuilder(previous);
        foreach (var part in parts)
        {
            var word = part switch
            {
                null => "",
                DateTimeOffset at => at.UtcTicks.ToString(CultureInfo.InvariantCulture),
                _ => Convert.ToString(part, CultureInfo.InvariantCulture)!,
            };
            text.Append('\n')
                .Append(part is null ? "-" : word.Length.ToString(CultureInfo.InvariantCulture))
                .Append(':')
                .Append(word);
        }
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }
}
