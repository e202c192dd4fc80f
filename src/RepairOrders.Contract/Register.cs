namespace RepairOrders.Contract;

/// <summary>What the register is asked for. All parts narrow the list.</summary>
/// <param name="Search">Plain words: order number, line, fluid, place, batch or person.</param>
/// <param name="Site">A site's short name.</param>
/// <param name="Stages">Stages wanted.</param>
/// <param name="Class">The signed class.</param>
/// <param name="Flag">A flag that must be up: <c>past-life</c>, <c>look-overdue</c>, <c>approval-owed</c> …</param>
/// <param name="Sort">Order of the list.</param>
/// <param name="Live">Only orders that are not at an end.</param>
public sealed record RegisterFilter(
    string? Search = null,
    string? Site = null,
    IReadOnlyList<Stage>? Stages = null,
    RiskClass? Class = null,
    string? Flag = null,
    RegisterSort Sort = RegisterSort.Newest,
    bool Live = false
);

/// <summary>Order of the register.</summary>
public enum RegisterSort
{
    /// <summary>Newest first.</summary>
    Newest,

    /// <summary>Earliest end date first.</summary>
    EndDate,

    /// <summary>Earliest look due first.</summary>
    NextLook,
}

/// <summary>One row of the register.</summary>
/// <param name="Number">The order's number.</param>
/// <param name="Class">The signed class.</param>
/// <param name="ClassToday">The class as it reads now.</param>
/// <param name="Line">The line's number.</param>
/// <param name="Place">Where on the line.</param>
/// <param name="Fluid">What flows.</param>
/// <param name="Method">The chosen method's name.</param>
/// <param name="Stage">Where it stands.</param>
/// <param name="InServiceSince">First in-service start.</param>
/// <param name="AgeDays">Days in service.</param>
/// <param name="EndDate">The end date.</param>
/// <param name="DaysLeft">Days to the end date, negative past it.</param>
/// <param name="LastLook">The last look done.</param>
/// <param name="NextLook">When the next look is due.</param>
/// <param name="NextThickness">When the next thickness visit is due.</param>
/// <param name="Extensions">Extensions granted.</param>
/// <param name="PermanentFix">Reference of the permanent fix.</param>
/// <param name="Owner">Who goes back to look.</param>
/// <param name="Flags">What is so now, gravest first.</param>
/// <param name="Area">The area of the site the line stands in; nothing for an unlisted line.</param>
public sealed record RegisterRow(
    string Number,
    RiskClass? Class,
    RiskClass? ClassToday,
    string? Line,
    string Place,
    string Fluid,
    string? Method,
    Stage Stage,
    DateOnly? InServiceSince,
    int? AgeDays,
    DateOnly? EndDate,
    int? DaysLeft,
    DateOnly? LastLook,
    DateOnly? NextLook,
    DateOnly? NextThickness,
    int Extensions,
    string? PermanentFix,
    string? Owner,
    IReadOnlyList<FlagView> Flags,
    string? Area = null
);

/// <summary>A page of the register.</summary>
/// <param name="Rows">The rows.</param>
/// <param name="Next">The key to ask for what follows; nothing at the end.</param>
/// <param name="Count">How many there are in all, where it was asked for.</param>
public sealed record RegisterView(IReadOnlyList<RegisterRow> Rows, string? Next, int? Count);

public sealed partial class RepairOrdersClient
{
    /// <summary>A page of the register.</summary>
    /// <param name="filter">What is wanted.</param>
    /// <param name="after">The key of the page before; nothing for the first.</param>
    /// <param name="limit">Rows wanted, at most 200.</param>
    /// <param name="count">Whether to count.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The page.</returns>
    public Task<RegisterView> Register(
        RegisterFilter filter,
        string? after = null,
        int limit = 50,
        bool count = false,
        CancellationToken stop = default
    ) =>
        Get<RegisterView>(
            $"orders?{Query(filter)}&limit={limit}&count={(count ? "true" : "false")}{After(after)}",
            stop
        );

    /// <summary>The register as CSV for a spreadsheet, streamed.</summary>
    /// <param name="filter">What is wanted.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The answer's stream; the caller disposes it.</returns>
    public async Task<Stream> RegisterCsv(RegisterFilter filter, CancellationToken stop = default)
    {
        var response = await Send(HttpMethod.Get, $"orders.csv?{Query(filter)}", null, null, null, stop)
            .ConfigureAwait(false);
        return await response.Content.ReadAsStreamAsync(stop).ConfigureAwait(false);
    }

    private static string After(string? after) => after is null ? "" : $"&after={Uri.EscapeDataString(after)}";

    private static string Query(RegisterFilter filter)
    {
        ArgumentNullException.ThrowIfNull(filter);
        var parts = new List<string> { $"sort={Word(filter.Sort)}", $"live={(filter.Live ? "true" : "false")}" };
        if (!string.IsNullOrWhiteSpace(filter.Search))
            parts.Add($"search={Uri.EscapeDataString(filter.Search)}");
        if (filter.Site is not null)
            parts.Add($"site={Uri.EscapeDataString(filter.Site)}");
        if (filter.Class is not null)
            parts.Add($"class={filter.Class}");
        if (filter.Flag is not null)
            parts.Add($"flag={Uri.EscapeDataString(filter.Flag)}");
        foreach (var stage in filter.Stages ?? [])
            parts.Add($"stage={Word(stage)}");
        return string.Join('&', parts);
    }

    private static string Word<T>(T choice)
        where T : struct, Enum => System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(choice.ToString());
}
