using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Register;

/// <summary>What the register is asked for, as ranges and words in the store.</summary>
internal static class RegisterFilters
{
    private const int MostWords = 8;

    /// <summary>The orders this person may see that the filter lets through.</summary>
    public static IQueryable<RepairOrder> Asked(
        this IQueryable<RepairOrder> orders,
        RepairStore store,
        RegisterFilter filter,
        Person by,
        DateTimeOffset at
    )
    {
        var sites = store
            .Sites.Where(s => by.Sites.Contains(s.ShortName) && (filter.Site == null || s.ShortName == filter.Site))
            .Select(s => s.Id);
        orders = orders.Where(o => sites.Contains(o.SiteId));
        if (filter.Live)
            orders = orders.Where(o => o.Columns.Open);
        if (filter.Stages is { Count: > 0 } stages)
            orders = orders.Where(o => stages.Contains(o.Columns.Stage));
        if (filter.Class is { } riskClass)
            orders = orders.Where(o => o.Columns.SignedClass == riskClass);
        if (filter.Flag is { } flag)
            orders = Flag(flag).Where(orders, store, at);
        return Searched(orders, filter.Search);
    }

    private static FlagRule Flag(string code) =>
        FlagRules.Find(code)
        ?? throw new MalformedAsk("flag", $"flag is \"{code}\"; allowed is one of {string.Join(", ", Flags.All)}.");

    // Every word must be found; the words of an order stand in one column with an index of its three-letter parts.
    private static IQueryable<RepairOrder> Searched(IQueryable<RepairOrder> orders, string? search)
    {
        var words = (search ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        foreach (var word in words.Take(MostWords))
        {
            var part = $"%{Literally(word.ToLowerInvariant())}%";
            orders = orders.Where(o => EF.Functions.Like(o.Columns.Words, part, "\\"));
        }
        return orders;
    }

    private static string Literally(string word) =>
        word.Replace(@"\", @"\\", StringComparison.Ordinal)
            .Replace("%", @"\%", StringComparison.Ordinal)
            .Replace("_", @"\_", StringComparison.Ordinal);
}
