using System.Globalization;
using RepairOrders.Contract;

namespace RepairOrders.Ui.Stock;

/// <summary>How quantities and batches are put into words, and the batches of a site in one list.</summary>
internal static class StockWords
{
    /// <summary>Days before the expiry from which it is said.</summary>
    public const int SoonDays = 30;

    private const int MostPages = 10;

    // Thousands apart by a narrow space: 250 000 mm of band is read at a glance.
    private static readonly NumberFormatInfo Figures = new() { NumberGroupSeparator = "\u202f" };

    public static string Quantity(decimal quantity, string unit) =>
        $"{quantity.ToString("#,0.###", Figures)}\u00a0{unit}";

    /// <summary>Batches of a site, first to expire first; the stores' own lists are short enough to read whole.</summary>
    public static async Task<IReadOnlyList<BatchView>> All(RepairOrdersClient client, string site)
    {
        var all = new List<BatchView>();
        string? after = null;
        for (var page = 0; page < MostPages; page++)
        {
            var batches = await client.Batches(site, after: after, limit: 200);
            all.AddRange(batches.Rows);
            after = batches.Next;
            if (after is null)
                break;
        }
        return all;
    }

    /// <summary>What may not be forgotten of a batch today, with its tone; nothing where all is well.</summary>
    public static (string Words, Tone Tone)? Mind(BatchView batch, DateOnly today) =>
        batch switch
        {
            { Standing: BatchStanding.Recalled } => ($"recalled: {batch.StandingWhy}", Tone.Stop),
            { Standing: BatchStanding.Quarantined } => ($"quarantined: {batch.StandingWhy}", Tone.Stop),
            { Expired: true } => ("expired", Tone.Stop),
            { Expiry: { } expiry } when expiry <= today.AddDays(SoonDays) => (
                $"expires {Parts.Show.DaysLeft(expiry.DayNumber - today.DayNumber)}",
                Tone.Watch
            ),
            _ => null,
        };
}
