using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>What is drawn for one line of the bill.</summary>
/// <param name="Line">The line's place in the bill, from 1.</param>
/// <param name="Batch">The batch.</param>
/// <param name="Bin">The bin it is taken from.</param>
/// <param name="Quantity">How much, in the item's unit.</param>
public sealed record IssueLine(
    [property: Range(1, 200)] int Line,
    Guid Batch,
    [property: Required, StringLength(20, MinimumLength = 1)] string Bin,
    [property: Range(typeof(decimal), "0.001", "10000000", ParseLimitsInInvariantCulture = true)] decimal Quantity
);

/// <summary>Hands material out for an order. A bill may be issued in parts; the order is issued when every line is covered.</summary>
/// <param name="Receiver">Who takes it: a technician who may fit it.</param>
/// <param name="Lines">What is drawn; empty only where the bill has nothing to draw.</param>
/// <param name="HazardSheetsGiven">The hazard sheets of what needs one went with it.</param>
/// <param name="Remark">What the storekeeper wants on record.</param>
public sealed record IssueMaterial(
    Guid Receiver,
    [property: Required, MaxLength(200)] IReadOnlyList<IssueLine> Lines,
    bool HazardSheetsGiven,
    [property: StringLength(2000)] string? Remark = null
);

/// <summary>A line as it was issued.</summary>
/// <param name="Line">The line's place in the bill.</param>
/// <param name="Need">What the bill asks for.</param>
/// <param name="Item">The item's code.</param>
/// <param name="Words">What the item is.</param>
/// <param name="Batch">The batch.</param>
/// <param name="Number">Its number.</param>
/// <param name="Expiry">Last day it may be used.</param>
/// <param name="Certificate">Reference of its certificate.</param>
/// <param name="Bin">The bin it came from.</param>
/// <param name="Quantity">How much, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The item's unit.</param>
/// <param name="Covers">How much of the bill's line it covers, in the bill's unit.</param>
/// <param name="Substitutes">It stands in for what the bill names, as an engineer agreed.</param>
/// <param name="Bad">Emergency path, found after the fit: why it should not have been used.</param>
public sealed record IssuedLine(
    int Line,
    string Need,
    string Item,
    string Words,
    Guid Batch,
    string Number,
    DateOnly? Expiry,
    string? Certificate,
    string Bin,
    decimal Quantity,
    string Unit,
    double Covers,
    bool Substitutes,
    string? Bad
);

/// <summary>The body of a material issue.</summary>
/// <param name="Ask">What was asked.</param>
/// <param name="Receiver">The receiver's name.</param>
/// <param name="Plan">The design or emergency entry it was issued for.</param>
/// <param name="Lines">What was handed out.</param>
/// <param name="Complete">With it, every line of the bill is covered.</param>
/// <param name="Late">Emergency path: recorded more than four hours after the fit began.</param>
public sealed record SignedIssue(
    IssueMaterial Ask,
    string Receiver,
    Guid Plan,
    IReadOnlyList<IssuedLine> Lines,
    bool Complete,
    bool Late
);

/// <summary>Agrees that something else is issued than the bill names.</summary>
/// <param name="Line">The line's place in the bill.</param>
/// <param name="Item">Code of the item that may stand in.</param>
/// <param name="Why">Why it will do.</param>
public sealed record AgreeSubstitution(
    [property: Range(1, 200)] int Line,
    [property: Required, StringLength(40, MinimumLength = 1)] string Item,
    [property: Required, StringLength(1000, MinimumLength = 3)] string Why
);

/// <summary>What comes back of one batch.</summary>
/// <param name="Batch">The batch.</param>
/// <param name="Quantity">How much, in the item's unit.</param>
/// <param name="Bin">The bin it goes to; nothing when it is scrapped.</param>
/// <param name="Why">For scrap: why.</param>
public sealed record ReturnLine(
    Guid Batch,
    [property: Range(typeof(decimal), "0.001", "10000000", ParseLimitsInInvariantCulture = true)] decimal Quantity,
    [property: StringLength(20)] string? Bin,
    [property: StringLength(500)] string? Why = null
);

/// <summary>Takes material back from an order.</summary>
/// <param name="Lines">What comes back.</param>
/// <param name="Remark">What the storekeeper wants on record.</param>
public sealed record ReturnMaterial(
    [property: Required, MinLength(1), MaxLength(200)] IReadOnlyList<ReturnLine> Lines,
    [property: StringLength(2000)] string? Remark = null
);

/// <summary>What became of one batch at the pipe.</summary>
/// <param name="Batch">The batch.</param>
/// <param name="Used">How much is in the repair, in the item's unit.</param>
/// <param name="Scrapped">How much was thrown away there.</param>
public sealed record UseLine(
    Guid Batch,
    [property: Range(typeof(decimal), "0", "10000000", ParseLimitsInInvariantCulture = true)] decimal Used,
    [property: Range(typeof(decimal), "0", "10000000", ParseLimitsInInvariantCulture = true)] decimal Scrapped
);

/// <summary>Accounts for issued material: used or scrapped at the pipe. What is neither goes back to the stores.</summary>
/// <param name="Lines">What became of it.</param>
/// <param name="Remark">What the technician wants on record.</param>
public sealed record AccountForMaterial(
    [property: Required, MinLength(1), MaxLength(200)] IReadOnlyList<UseLine> Lines,
    [property: StringLength(2000)] string? Remark = null
);

/// <summary>Material that changed hands after the issue.</summary>
/// <param name="Item">The item's code.</param>
/// <param name="Words">What the item is.</param>
/// <param name="Batch">The batch.</param>
/// <param name="Number">Its number.</param>
/// <param name="Quantity">How much, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The item's unit.</param>
/// <param name="To">The bin, <c>used</c> or <c>scrapped</c>.</param>
/// <param name="Line">For a return: the line of the bill it was issued for.</param>
/// <param name="Uncovers">For a return: how much of that line is open again, in the bill's unit.</param>
public sealed record MovedLine(
    string Item,
    string Words,
    Guid Batch,
    string Number,
    decimal Quantity,
    string Unit,
    string To,
    int? Line = null,
    double Uncovers = 0
);

/// <summary>The body of a return.</summary>
/// <param name="Ask">What was asked.</param>
/// <param name="Plan">The design or emergency entry the material was issued for.</param>
/// <param name="Lines">What came back.</param>
/// <param name="Complete">Every line of the bill is still covered.</param>
public sealed record SignedReturn(ReturnMaterial Ask, Guid? Plan, IReadOnlyList<MovedLine> Lines, bool Complete);

/// <summary>The body of an account of material.</summary>
/// <param name="Ask">What was asked.</param>
/// <param name="Lines">What became of it.</param>
public sealed record SignedUse(AccountForMaterial Ask, IReadOnlyList<MovedLine> Lines);

/// <summary>One batch to take from one bin.</summary>
/// <param name="Bin">The bin.</param>
/// <param name="Batch">The batch.</param>
/// <param name="Number">Its number.</param>
/// <param name="Item">The item's code.</param>
/// <param name="Words">What the item is.</param>
/// <param name="Expiry">Last day it may be used.</param>
/// <param name="Certificate">Reference of its certificate.</param>
/// <param name="Quantity">How much to take, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The item's unit.</param>
/// <param name="Tone">Watch where it expires within thirty days.</param>
public sealed record PickView(
    string Bin,
    Guid Batch,
    string Number,
    string Item,
    string Words,
    DateOnly? Expiry,
    string? Certificate,
    decimal Quantity,
    string Unit,
    Tone Tone
);

/// <summary>One line of the bill on the pick list.</summary>
/// <param name="Line">Its place in the bill.</param>
/// <param name="Code">The kind of thing.</param>
/// <param name="Words">What it is, with its size.</param>
/// <param name="Quantity">How much the design needs, waste included.</param>
/// <param name="Unit">The unit of the bill.</param>
/// <param name="Covered">How much of it is issued.</param>
/// <param name="Picks">What to take where, first to expire first.</param>
/// <param name="Wanting">How much of it the stores do not have, in the bill's unit.</param>
public sealed record PickLineView(
    int Line,
    string Code,
    string Words,
    double Quantity,
    string Unit,
    double Covered,
    IReadOnlyList<PickView> Picks,
    double Wanting
);

/// <summary>What of one batch is out on an order.</summary>
/// <param name="Batch">The batch.</param>
/// <param name="Number">Its number.</param>
/// <param name="Item">The item's code.</param>
/// <param name="Words">What the item is.</param>
/// <param name="Quantity">How much, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The item's unit.</param>
public sealed record OutView(Guid Batch, string Number, string Item, string Words, decimal Quantity, string Unit);

/// <summary>The pick list of an order.</summary>
/// <param name="Order">The order's number.</param>
/// <param name="Method">The method's name.</param>
/// <param name="FitOn">The planned day of the fit.</param>
/// <param name="LeastExpiry">A batch must last until this day.</param>
/// <param name="Lines">The lines of the bill.</param>
/// <param name="Out">What is out on the order and not accounted for.</param>
public sealed record PickListView(
    string Order,
    string Method,
    DateOnly? FitOn,
    DateOnly LeastExpiry,
    IReadOnlyList<PickLineView> Lines,
    IReadOnlyList<OutView> Out
);

/// <summary>Today's cutting: the bands of all orders that wait for their material, item by item.</summary>
/// <param name="Items">One plan for each item to cut.</param>
/// <param name="ByHand">Orders whose bill does not say how many pieces their band is: they are cut by what it says in words.</param>
/// <param name="ReadAt">When this was read.</param>
public sealed record CutListView(IReadOnlyList<ItemToCut> Items, IReadOnlyList<string> ByHand, DateTimeOffset ReadAt);

/// <summary>A piece of band wanted.</summary>
/// <param name="Order">The order it is for.</param>
/// <param name="Code">Its name in the plan.</param>
/// <param name="LengthMm">Its cut length.</param>
public sealed record BandOfOrder(string Order, string Code, double LengthMm);

/// <summary>One item to cut.</summary>
/// <param name="Item">The item's code.</param>
/// <param name="Words">What it is.</param>
/// <param name="Bands">The pieces wanted.</param>
/// <param name="Plan">What is cut from what, and how near the best it is.</param>
public sealed record ItemToCut(
    string Item,
    string Words,
    IReadOnlyList<BandOfOrder> Bands,
    CalculationAnswer<CutPlanResult> Plan
);

public sealed partial class RepairOrdersClient
{
    /// <summary>How to cut the bands of the orders that wait for their material.</summary>
    /// <param name="site">The site's short name.</param>
    /// <param name="coilMm">Length of a whole coil; a batch with more is that many coils and a remnant. Nothing: each batch in a bin
    /// is one length.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The plans, item by item.</returns>
    /// <exception cref="Refused">400 for a coil that is none, 404 for a site that is not the caller's.</exception>
    public Task<CutListView> CutList(string site, double? coilMm = null, CancellationToken stop = default) =>
        Get<CutListView>(
            $"stock/cut-list?site={Uri.EscapeDataString(site)}{(coilMm is { } coil ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"&coilMm={coil}") : "")}",
            stop
        );

    /// <summary>What to take for an order, bin by bin, first to expire first.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The pick list.</returns>
    /// <exception cref="Refused">409 before there is a bill.</exception>
    public Task<PickListView> PickList(string number, CancellationToken stop = default) =>
        Get<PickListView>($"orders/{number}/pick-list", stop);

    /// <summary>Hands material out for an order.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Lines and receiver.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The issue; its body is a <see cref="SignedIssue"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> IssueMaterial(string number, IssueMaterial ask, string? key = null) =>
        Post<RecordView>($"orders/{number}/material-issues", ask, key);

    /// <summary>Agrees that something else is issued than the bill names.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Line, item and reason.</param>
    /// <returns>The agreement.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> AgreeSubstitution(string number, AgreeSubstitution ask) =>
        Post<RecordView>($"orders/{number}/substitutions", ask);

    /// <summary>Takes material back from an order.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">What comes back.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The return; its body is a <see cref="SignedReturn"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> ReturnMaterial(string number, ReturnMaterial ask, string? key = null) =>
        Post<RecordView>($"orders/{number}/material-returns", ask, key);

    /// <summary>Accounts for issued material.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">What became of it.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The account; its body is a <see cref="SignedUse"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> AccountForMaterial(string number, AccountForMaterial ask, string? key = null) =>
        Post<RecordView>($"orders/{number}/material-uses", ask, key);
}
