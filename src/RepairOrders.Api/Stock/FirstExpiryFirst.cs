using RepairOrders.Contract;

namespace RepairOrders.Api.Stock;

/// <summary>What of a batch lies in one bin.</summary>
internal sealed record InBin(Batch Batch, string Bin, decimal Quantity);

/// <summary>Which batches to take: what expires first goes first, what does not expire goes last.</summary>
internal static class FirstExpiryFirst
{
    /// <summary>A batch must last two days past the fit, in case the fit slips.</summary>
    public const int DaysPastFit = 2;

    public static DateOnly LeastExpiry(DateOnly today, DateOnly? fit) =>
        (fit is { } day && day > today ? day : today).AddDays(DaysPastFit);

    public static bool Usable(Batch batch, DateOnly leastExpiry) =>
        batch.Standing == BatchStanding.Good && (batch.Expiry is null || batch.Expiry >= leastExpiry);

    /// <summary>Picks that cover the quantity, or as much of it as there is.</summary>
    public static IReadOnlyList<InBin> Picks(IEnumerable<InBin> stock, decimal quantity, DateOnly leastExpiry)
    {
        var picks = new List<InBin>();
        var offered = stock
            .Where(s => s.Quantity > 0 && Usable(s.Batch, leastExpiry))
            .OrderBy(s => s.Batch.Expiry ?? DateOnly.MaxValue)
            .ThenBy(s => s.Batch.Number, StringComparer.Ordinal)
            .ThenBy(s => s.Bin, StringComparer.Ordinal);
        foreach (var lot in offered)
        {
            if (quantity <= 0)
                break;
            var take = Math.Min(quantity, lot.Quantity);
            picks.Add(lot with { Quantity = take });
            quantity -= take;
        }
        return picks;
    }
}
