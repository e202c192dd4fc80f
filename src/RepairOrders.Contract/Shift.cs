namespace RepairOrders.Contract;

/// <summary>What one shift hands to the next: the fits under way and what operations hold live lines to.</summary>
/// <param name="Fits">Jobs between issue and proof, those that may not go on first.</param>
/// <param name="Limits">Interim limits in force, the first to end first; none where they were not asked for.</param>
/// <param name="Cut">There is more than was looked at.</param>
/// <param name="ReadAt">When this was read.</param>
public sealed record ShiftView(
    IReadOnlyList<FitUnderWay> Fits,
    IReadOnlyList<LimitInForce> Limits,
    bool Cut,
    DateTimeOffset ReadAt
);

/// <summary>A fit under way, and whether it may go on.</summary>
/// <param name="Number">The order's number.</param>
/// <param name="Line">The line's number.</param>
/// <param name="Place">Where on the line.</param>
/// <param name="Method">The method's name.</param>
/// <param name="Class">The class it is fitted under.</param>
/// <param name="Stage">Where it stands.</param>
/// <param name="Released">Hold points signed.</param>
/// <param name="Points">Hold points in all.</param>
/// <param name="NextPoint">What the next hold point is; nothing when all are signed.</param>
/// <param name="Tone">Go, no-go, or to be read first.</param>
/// <param name="Gate">The same as a sentence, with its figures.</param>
public sealed record FitUnderWay(
    string Number,
    string? Line,
    string Place,
    string Method,
    RiskClass Class,
    Stage Stage,
    int Released,
    int Points,
    string? NextPoint,
    Tone Tone,
    string Gate
);

/// <summary>What a line is held to while a repair is live on it.</summary>
/// <param name="Number">The order's number.</param>
/// <param name="Line">The line's number.</param>
/// <param name="Place">Where on the line.</param>
/// <param name="Limits">The limits, as the approved design states them.</param>
/// <param name="EndDate">The end date in force.</param>
public sealed record LimitInForce(string Number, string? Line, string Place, InterimLimits Limits, DateOnly? EndDate);

public sealed partial class RepairOrdersClient
{
    /// <summary>What one shift hands to the next, at the sites the caller may see.</summary>
    /// <param name="limits">With the interim limits, not the fits alone.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>Fits and limits.</returns>
    public Task<ShiftView> Shift(bool limits = true, CancellationToken stop = default) =>
        Get<ShiftView>(limits ? "orders/shift" : "orders/shift?limits=false", stop);
}
