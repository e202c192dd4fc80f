using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>Closes the order against its check list. Stores are not ticked: the books must balance.</summary>
/// <param name="Cause">The cause, confirmed.</param>
/// <param name="CauseFound">How it was confirmed.</param>
/// <param name="ChangeControlClosed">The change control is closed: the reference of its close-out.</param>
/// <param name="TagBack">The tag is back.</param>
/// <param name="Lessons">What was learnt; asked for on classes A and B and where a repair failed.</param>
/// <param name="Remark">What the next reader should know.</param>
/// <param name="TagLost">Where a tag cannot be found: where it was looked for, and who was told to hand it in.</param>
public sealed record CloseOrder(
    DefectCause Cause,
    [property: Required, StringLength(2000, MinimumLength = 3)] string CauseFound,
    [property: StringLength(200)] string? ChangeControlClosed,
    bool TagBack,
    [property: StringLength(4000)] string? Lessons = null,
    [property: StringLength(2000)] string? Remark = null,
    [property: StringLength(1000, MinimumLength = 10)] string? TagLost = null
);

/// <summary>An engineer countersigns the close-out of a class A or B order.</summary>
/// <param name="CloseOut">The close-out.</param>
/// <param name="Remark">What he adds.</param>
public sealed record CountersignCloseOut(Guid CloseOut, [property: StringLength(2000)] string? Remark = null);

public sealed partial class RepairOrdersClient
{
    /// <summary>Closes the order; on classes A and B it is closed once an engineer countersigns.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The check list.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>The close-out.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> CloseOrder(string number, CloseOrder ask, string version) =>
        Put<RecordView>($"orders/{number}/close-out", ask, version);

    /// <summary>Countersigns the close-out.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The close-out.</param>
    /// <returns>The countersignature.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> CountersignCloseOut(string number, CountersignCloseOut ask) =>
        Post<RecordView>($"orders/{number}/close-out-countersignatures", ask);

    /// <summary>Reopens a closed order: the close-out is set aside and stays readable.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="why">The reason.</param>
    /// <param name="version">The version seen.</param>
    /// <returns>When it is set aside.</returns>
    /// <exception cref="Refused">409 with the objection, 412 when the order changed since.</exception>
    public Task ReopenOrder(string number, string why, string version) =>
        Delete<Nothing>($"orders/{number}/close-out", why, version);
}
