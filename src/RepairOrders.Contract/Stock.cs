using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>What the maker states of a material that is mixed or cures. A value that is not stated stays empty; nothing is guessed.</summary>
/// <param name="LeastTemperature">Least steel temperature at application.</param>
/// <param name="GreatestTemperature">Greatest steel temperature at application.</param>
/// <param name="ForWetSurfaces">The maker states it for wet surfaces.</param>
/// <param name="PotLife">Pot life at <paramref name="PotLifeAt"/>.</param>
/// <param name="PotLifeAt">The temperature the pot life is stated at.</param>
/// <param name="OpenTime">Time at <paramref name="PotLifeAt"/> until plate or layers must be in place.</param>
/// <param name="MixRatio">Parts of this material by mass to one part of the hardener.</param>
/// <param name="MixTolerancePercent">How far the ratio may be off, percent of it.</param>
/// <param name="Hardener">Code of the item it is mixed with; nothing for a pack that holds both parts.</param>
/// <param name="SetForLoad">Time at <paramref name="CureAt"/> until it may be loaded and tested.</param>
/// <param name="FullHardness">Time at <paramref name="CureAt"/> until fully hard.</param>
/// <param name="CureAt">The temperature both cure times are stated at.</param>
/// <param name="LeastCure">Below this temperature it does not cure.</param>
/// <param name="CureTestedLeast">Lowest temperature the maker gives cure times for.</param>
/// <param name="CureTestedGreatest">Highest temperature the maker gives cure times for.</param>
/// <param name="Q10Below">Rate ratio for 10 K below <paramref name="CureAt"/>; nothing to take the safe default.</param>
/// <param name="Q10Above">Rate ratio for 10 K above <paramref name="CureAt"/>; nothing to take the safe default.</param>
/// <param name="LeastHardness">Least Shore D hardness when cured.</param>
public sealed record MaterialLimits(
    [property: Required, MeasuredIn("°C", Least = -60, Greatest = 300)] Measure LeastTemperature,
    [property: Required, MeasuredIn("°C", Least = -60, Greatest = 300)] Measure GreatestTemperature,
    bool ForWetSurfaces,
    [property: MeasuredIn("min", Least = 0.5, Greatest = 6000)] Measure? PotLife = null,
    [property: MeasuredIn("°C", Least = -60, Greatest = 300)] Measure? PotLifeAt = null,
    [property: MeasuredIn("min", Least = 0.5, Greatest = 6000)] Measure? OpenTime = null,
    [property: Range(0.01, 100)] double? MixRatio = null,
    [property: Range(0.1, 50)] double? MixTolerancePercent = null,
    [property: StringLength(40)] string? Hardener = null,
    [property: MeasuredIn("h", Least = 0.01, Greatest = 10000)] Measure? SetForLoad = null,
    [property: MeasuredIn("h", Least = 0.01, Greatest = 10000)] Measure? FullHardness = null,
    [property: MeasuredIn("°C", Least = -60, Greatest = 300)] Measure? CureAt = null,
    [property: MeasuredIn("°C", Least = -60, Greatest = 300)] Measure? LeastCure = null,
    [property: MeasuredIn("°C", Least = -60, Greatest = 300)] Measure? CureTestedLeast = null,
    [property: MeasuredIn("°C", Least = -60, Greatest = 300)] Measure? CureTestedGreatest = null,
    [property: Range(1.0, 10.0)] double? Q10Below = null,
    [property: Range(1.0, 10.0)] double? Q10Above = null,
    [property: Range(1, 100)] int? LeastHardness = null
);

/// <summary>Describes a stock item: adds it, or replaces what is said of it.</summary>
/// <param name="Site">The site's short name.</param>
/// <param name="Code">The stores' own number of the item; it never changes.</param>
/// <param name="Words">What it is, with its size, as the storekeeper reads it.</param>
/// <param name="Need">The kind of bill line it serves: <c>band</c>, <c>putty</c>, <c>plate</c> …</param>
/// <param name="Unit">The unit it is counted in: <c>pcs</c>, <c>mm</c>, <c>g</c>, <c>m2</c>.</param>
/// <param name="Expires">Every batch of it has an expiry date.</param>
/// <param name="NeedsCertificate">It is not issued without a certificate.</param>
/// <param name="Limits">What the maker states, for what is mixed or cures.</param>
public sealed record DescribeStockItem(
    [property: Required, StringLength(20)] string Site,
    [property: Required, StringLength(40, MinimumLength = 1)] string Code,
    [property: Required, StringLength(200, MinimumLength = 2)] string Words,
    [property: Required, StringLength(40, MinimumLength = 1)] string Need,
    [property: Required, StringLength(10, MinimumLength = 1)] string Unit,
    bool Expires,
    bool NeedsCertificate,
    MaterialLimits? Limits = null
);

/// <summary>A stock item.</summary>
/// <param name="Id">The item.</param>
/// <param name="Version">The version to send as <c>If-Match</c>.</param>
/// <param name="InBins">How much is in bins and may be issued today.</param>
/// <param name="Said">What is said of it.</param>
public sealed record StockItemView(Guid Id, string Version, decimal InBins, DescribeStockItem Said);

/// <summary>A page of items.</summary>
/// <param name="Rows">The items, by code.</param>
/// <param name="Next">The key to ask for what follows; nothing at the end.</param>
public sealed record StockItemsView(IReadOnlyList<StockItemView> Rows, string? Next);

/// <summary>Whether a batch may be used.</summary>
public enum BatchStanding
{
    /// <summary>It may be issued until it expires.</summary>
    Good,

    /// <summary>Set apart until somebody has judged it.</summary>
    Quarantined,

    /// <summary>Called back by its maker or by the site.</summary>
    Recalled,
}

/// <summary>Takes a batch into a bin; a second receipt of the same batch adds to it.</summary>
/// <param name="Site">The site's short name.</param>
/// <param name="Item">The item's code.</param>
/// <param name="Number">Batch, lot or heat number as it is printed on the pack.</param>
/// <param name="Expiry">Last day it may be used.</param>
/// <param name="Certificate">Reference of the certificate.</param>
/// <param name="Bin">The bin it is put in.</param>
/// <param name="Quantity">How much, in the item's unit.</param>
public sealed record ReceiveBatch(
    [property: Required, StringLength(20)] string Site,
    [property: Required, StringLength(40)] string Item,
    [property: Required, StringLength(60, MinimumLength = 1)] string Number,
    DateOnly? Expiry,
    [property: StringLength(100)] string? Certificate,
    [property: Required, StringLength(20, MinimumLength = 1)] string Bin,
    [property: Range(typeof(decimal), "0.001", "10000000", ParseLimitsInInvariantCulture = true)] decimal Quantity
);

/// <summary>Sets apart, calls back or frees a batch. The list of these only grows; the last one holds.</summary>
/// <param name="Standing">How it stands from now on.</param>
/// <param name="Why">Why: what was seen, or the notice's reference.</param>
public sealed record JudgeBatch(
    BatchStanding Standing,
    [property: Required, StringLength(500, MinimumLength = 3)] string Why
);

/// <summary>What a storekeeper does with material in a bin.</summary>
public enum StockMoveKind
{
    /// <summary>From one bin to another.</summary>
    Shift,

    /// <summary>Thrown away.</summary>
    Scrap,
}

/// <summary>Moves material inside the stores. Moves are never changed; a wrong one is put right by another.</summary>
/// <param name="Batch">The batch.</param>
/// <param name="Kind">What is done.</param>
/// <param name="Bin">The bin it is taken from.</param>
/// <param name="To">For a shift, the bin it is put in.</param>
/// <param name="Quantity">How much, in the item's unit.</param>
/// <param name="Why">Why.</param>
public sealed record MoveStock(
    Guid Batch,
    StockMoveKind Kind,
    [property: Required, StringLength(20, MinimumLength = 1)] string Bin,
    [property: StringLength(20)] string? To,
    [property: Range(typeof(decimal), "0.001", "10000000", ParseLimitsInInvariantCulture = true)] decimal Quantity,
    [property: Required, StringLength(500, MinimumLength = 3)] string Why
);

/// <summary>How much of a batch lies in one bin.</summary>
/// <param name="Bin">The bin.</param>
/// <param name="Quantity">How much.</param>
public sealed record BinHolding(string Bin, decimal Quantity);

/// <summary>An order that holds some of a batch.</summary>
/// <param name="Order">The order's number.</param>
/// <param name="Place">Where the repair is.</param>
/// <param name="Stage">Where the order stands.</param>
/// <param name="Live">The repair may be on the pipe now.</param>
/// <param name="Out">Issued and not yet accounted for.</param>
/// <param name="Used">Used in the repair.</param>
public sealed record OrderHolding(string Order, string Place, Stage Stage, bool Live, decimal Out, decimal Used);

/// <summary>Where a batch is: what came in is in bins, out on orders, used or scrapped, to the last gram.</summary>
/// <param name="Received">All that came in.</param>
/// <param name="InBins">In bins now.</param>
/// <param name="OutOnOrders">Out on orders, not yet accounted for.</param>
/// <param name="Used">Used in repairs.</param>
/// <param name="Scrapped">Scrapped or missing at a count.</param>
public sealed record BatchBalance(
    decimal Received,
    decimal InBins,
    decimal OutOnOrders,
    decimal Used,
    decimal Scrapped
);

/// <summary>A batch.</summary>
/// <param name="Id">The batch.</param>
/// <param name="Site">The site's short name.</param>
/// <param name="Item">The item's code.</param>
/// <param name="Words">What the item is.</param>
/// <param name="Unit">The unit of all its quantities.</param>
/// <param name="Number">Batch, lot or heat number.</param>
/// <param name="Expiry">Last day it may be used.</param>
/// <param name="Certificate">Reference of the certificate.</param>
/// <param name="Standing">Whether it may be used.</param>
/// <param name="StandingWhy">Why it is set apart or called back.</param>
/// <param name="Expired">Its last day is past.</param>
/// <param name="Balance">Where it is, in sums.</param>
public sealed record BatchView(
    Guid Id,
    string Site,
    string Item,
    string Words,
    string Unit,
    string Number,
    DateOnly? Expiry,
    string? Certificate,
    BatchStanding Standing,
    string? StandingWhy,
    bool Expired,
    BatchBalance Balance
);

/// <summary>A page of batches.</summary>
/// <param name="Rows">The batches, first to expire first.</param>
/// <param name="Next">The key to ask for what follows; nothing at the end.</param>
public sealed record BatchesView(IReadOnlyList<BatchView> Rows, string? Next);

/// <summary>One judgement of a batch.</summary>
/// <param name="At">When.</param>
/// <param name="By">Who.</param>
/// <param name="Standing">How it stood from then on.</param>
/// <param name="Why">Why.</param>
public sealed record BatchJudgementView(DateTimeOffset At, string By, BatchStanding Standing, string Why);

/// <summary>Where one batch is, bin by bin and order by order: the answer to a recall.</summary>
/// <param name="Batch">The batch.</param>
/// <param name="Bins">The bins that hold it.</param>
/// <param name="Orders">The orders that hold it, live ones first.</param>
/// <param name="Judgements">Every judgement, oldest first.</param>
public sealed record WhereaboutsView(
    BatchView Batch,
    IReadOnlyList<BinHolding> Bins,
    IReadOnlyList<OrderHolding> Orders,
    IReadOnlyList<BatchJudgementView> Judgements
);

/// <summary>One move, as it was made.</summary>
/// <param name="At">When.</param>
/// <param name="By">Who.</param>
/// <param name="Quantity">How much.</param>
/// <param name="From">Where it came from: a bin, an order, or <c>outside</c>.</param>
/// <param name="To">Where it went: a bin, an order, <c>used</c> or <c>scrapped</c>.</param>
/// <param name="Why">Why.</param>
public sealed record StockMoveView(DateTimeOffset At, string By, decimal Quantity, string From, string To, string Why);

/// <summary>The least a bin should hold of an item.</summary>
/// <param name="Item">The item's code.</param>
/// <param name="Least">The least, in the item's unit.</param>
public sealed record KitLine(
    [property: Required, StringLength(40)] string Item,
    [property: Range(typeof(decimal), "0.001", "10000000", ParseLimitsInInvariantCulture = true)] decimal Least
);

/// <summary>Describes a bin: adds it, or replaces what is said of it.</summary>
/// <param name="Site">The site's short name.</param>
/// <param name="Code">The bin's name as it is painted on it.</param>
/// <param name="Words">Where it is.</param>
/// <param name="Locker">An emergency locker: a supervisor may issue from it when no storekeeper is on site.</param>
/// <param name="Kit">The least it should hold; empty for a bin that is no kit.</param>
public sealed record DescribeBin(
    [property: Required, StringLength(20)] string Site,
    [property: Required, StringLength(20, MinimumLength = 1)] string Code,
    [property: Required, StringLength(200, MinimumLength = 2)] string Words,
    bool Locker,
    [property: MaxLength(100)] IReadOnlyList<KitLine>? Kit = null
);

/// <summary>An item of a kit that is short.</summary>
/// <param name="Item">The item's code.</param>
/// <param name="Words">What it is.</param>
/// <param name="Least">The least there should be.</param>
/// <param name="InBin">What may be used of what is there.</param>
/// <param name="Unit">The unit of both.</param>
public sealed record KitShort(string Item, string Words, decimal Least, decimal InBin, string Unit);

/// <summary>A bin.</summary>
/// <param name="Id">The bin.</param>
/// <param name="Version">The version to send as <c>If-Match</c>.</param>
/// <param name="Said">What is said of it.</param>
/// <param name="CountedAt">When it was last counted.</param>
/// <param name="CountDue">For a locker somebody issued from since: the working day it is to be counted on.</param>
/// <param name="CountOverdue">That day is past.</param>
/// <param name="Wanting">Kit lines that are short of their least.</param>
public sealed record BinView(
    Guid Id,
    string Version,
    DescribeBin Said,
    DateTimeOffset? CountedAt,
    DateOnly? CountDue,
    bool CountOverdue,
    IReadOnlyList<KitShort> Wanting
);

/// <summary>What was found of one batch at a count.</summary>
/// <param name="Batch">The batch.</param>
/// <param name="Found">How much lies there.</param>
public sealed record CountLine(
    Guid Batch,
    [property: Range(typeof(decimal), "0", "10000000", ParseLimitsInInvariantCulture = true)] decimal Found
);

/// <summary>Counts a bin. What is missing is scrapped, what is found over is received, each with this count as its reason.</summary>
/// <param name="Site">The site's short name.</param>
/// <param name="Bin">The bin.</param>
/// <param name="Lines">Every batch that was found; a batch the books have and the count has not is missing.</param>
/// <param name="Remark">What else was seen.</param>
public sealed record CountBin(
    [property: Required, StringLength(20)] string Site,
    [property: Required, StringLength(20, MinimumLength = 1)] string Bin,
    [property: Required, MaxLength(500)] IReadOnlyList<CountLine> Lines,
    [property: StringLength(500)] string? Remark = null
);

/// <summary>One difference between count and books.</summary>
/// <param name="Batch">The batch's number.</param>
/// <param name="Item">The item's code.</param>
/// <param name="Booked">What the books had.</param>
/// <param name="Found">What was found.</param>
public sealed record CountDifference(string Batch, string Item, decimal Booked, decimal Found);

/// <summary>A count.</summary>
/// <param name="Id">The count.</param>
/// <param name="Bin">The bin.</param>
/// <param name="At">When.</param>
/// <param name="By">Who.</param>
/// <param name="Differences">Where count and books differed; empty when they agreed.</param>
public sealed record CountView(
    Guid Id,
    string Bin,
    DateTimeOffset At,
    string By,
    IReadOnlyList<CountDifference> Differences
);

public sealed partial class RepairOrdersClient
{
    /// <summary>Adds a stock item.</summary>
    /// <param name="ask">What is said of it.</param>
    /// <returns>The item.</returns>
    /// <exception cref="Refused">400 with fields, 409 when the code is taken.</exception>
    public Task<StockItemView> AddStockItem(DescribeStockItem ask) => Post<StockItemView>("stock/items", ask);

    /// <summary>The changes of an item, oldest first.</summary>
    /// <param name="id">Which one.</param>
    /// <param name="stop">Ends the reading.</param>
    /// <returns>Who changed what, when.</returns>
    /// <exception cref="Refused">404 when there is none that one may see.</exception>
    public Task<IReadOnlyList<ChangeView>> StockItemChanges(Guid id, CancellationToken stop = default) =>
        Get<IReadOnlyList<ChangeView>>($"stock/items/{id}/changes", stop);

    /// <summary>Replaces what is said of an item.</summary>
    /// <param name="item">The item.</param>
    /// <param name="ask">What is said of it from now on.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The item.</returns>
    /// <exception cref="Refused">400 with fields, 409, 412 when it changed since.</exception>
    public Task<StockItemView> ChangeStockItem(Guid item, DescribeStockItem ask, string version) =>
        Put<StockItemView>($"stock/items/{item}", ask, version);

    /// <summary>A page of items.</summary>
    /// <param name="site">The site's short name.</param>
    /// <param name="search">A part of code or words.</param>
    /// <param name="after">The key of the page before.</param>
    /// <param name="limit">Rows wanted, at most 200.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The page.</returns>
    public Task<StockItemsView> StockItems(
        string site,
        string? search = null,
        string? after = null,
        int limit = 50,
        CancellationToken stop = default
    ) => Get<StockItemsView>($"stock/items?site={Escaped(site)}&limit={limit}{Searched(search)}{After(after)}", stop);

    /// <summary>Takes a batch into a bin.</summary>
    /// <param name="ask">Batch, bin and quantity.</param>
    /// <returns>The batch.</returns>
    /// <exception cref="Refused">400 with fields, 409 with the objection.</exception>
    public Task<BatchView> ReceiveBatch(ReceiveBatch ask) => Post<BatchView>("stock/batches", ask);

    /// <summary>A page of batches, first to expire first.</summary>
    /// <param name="site">The site's short name.</param>
    /// <param name="number">A part of the batch number.</param>
    /// <param name="item">An item's code.</param>
    /// <param name="standing">How it stands.</param>
    /// <param name="after">The key of the page before.</param>
    /// <param name="limit">Rows wanted, at most 200.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The page.</returns>
    public Task<BatchesView> Batches(
        string site,
        string? number = null,
        string? item = null,
        BatchStanding? standing = null,
        string? after = null,
        int limit = 50,
        CancellationToken stop = default
    ) =>
        Get<BatchesView>(
            $"stock/batches?site={Escaped(site)}&limit={limit}"
                + (number is null ? "" : $"&number={Escaped(number)}")
                + (item is null ? "" : $"&item={Escaped(item)}")
                + (standing is null ? "" : $"&standing={Word(standing.Value)}")
                + After(after),
            stop
        );

    /// <summary>Where a batch is, bin by bin and order by order.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>Its whereabouts.</returns>
    public Task<WhereaboutsView> Whereabouts(Guid batch, CancellationToken stop = default) =>
        Get<WhereaboutsView>($"stock/batches/{batch}/whereabouts", stop);

    /// <summary>Every move of a batch, oldest first.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The moves.</returns>
    public Task<IReadOnlyList<StockMoveView>> StockMoves(Guid batch, CancellationToken stop = default) =>
        Get<IReadOnlyList<StockMoveView>>($"stock/batches/{batch}/moves", stop);

    /// <summary>Sets apart, calls back or frees a batch.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="ask">Standing and reason.</param>
    /// <returns>Where it is, so that what follows can be done at once.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<WhereaboutsView> JudgeBatch(Guid batch, JudgeBatch ask) =>
        Post<WhereaboutsView>($"stock/batches/{batch}/judgements", ask);

    /// <summary>Moves material inside the stores.</summary>
    /// <param name="ask">Batch, bins and quantity.</param>
    /// <returns>The batch with its new balance.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<BatchView> MoveStock(MoveStock ask) => Post<BatchView>("stock/moves", ask);

    /// <summary>Adds a bin.</summary>
    /// <param name="ask">What is said of it.</param>
    /// <returns>The bin.</returns>
    /// <exception cref="Refused">400 with fields, 409 when the code is taken.</exception>
    public Task<BinView> AddBin(DescribeBin ask) => Post<BinView>("stock/bins", ask);

    /// <summary>The changes of a bin, oldest first.</summary>
    /// <param name="id">Which one.</param>
    /// <param name="stop">Ends the reading.</param>
    /// <returns>Who changed what, when.</returns>
    /// <exception cref="Refused">404 when there is none that one may see.</exception>
    public Task<IReadOnlyList<ChangeView>> BinChanges(Guid id, CancellationToken stop = default) =>
        Get<IReadOnlyList<ChangeView>>($"stock/bins/{id}/changes", stop);

    /// <summary>Replaces what is said of a bin.</summary>
    /// <param name="bin">The bin.</param>
    /// <param name="ask">What is said of it from now on.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The bin.</returns>
    /// <exception cref="Refused">400 with fields, 409, 412 when it changed since.</exception>
    public Task<BinView> ChangeBin(Guid bin, DescribeBin ask, string version) =>
        Put<BinView>($"stock/bins/{bin}", ask, version);

    /// <summary>All bins of a site, with counts due and kits that are short.</summary>
    /// <param name="site">The site's short name.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The bins, by code.</returns>
    public Task<IReadOnlyList<BinView>> Bins(string site, CancellationToken stop = default) =>
        Get<IReadOnlyList<BinView>>($"stock/bins?site={Escaped(site)}", stop);

    /// <summary>Counts a bin.</summary>
    /// <param name="ask">What was found.</param>
    /// <returns>The count with its differences.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<CountView> CountBin(CountBin ask) => Post<CountView>("stock/counts", ask);

    private static string Escaped(string text) => Uri.EscapeDataString(text);

    private static string Searched(string? search) =>
        string.IsNullOrWhiteSpace(search) ? "" : $"&search={Escaped(search)}";
}
