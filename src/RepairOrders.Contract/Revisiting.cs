using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>How bolts and edges look.</summary>
public enum EdgesState
{
    /// <summary>Sound.</summary>
    Sound,

    /// <summary>A bolt, nut or band is loose.</summary>
    Loose,

    /// <summary>An edge lifts or a seal creeps out.</summary>
    Lifting,

    /// <summary>Corroding.</summary>
    Corroding,
}

/// <summary>What follows from a visit.</summary>
public enum VisitResult
{
    /// <summary>Fit to stay.</summary>
    FitToStay,

    /// <summary>Fit to stay once an action is taken.</summary>
    StayWithAction,

    /// <summary>The papers no longer fit the pipe: assess again.</summary>
    ReAssess,

    /// <summary>It has failed.</summary>
    Failed,
}

/// <summary>Records a visit: a look, and a thickness visit where walls are read.</summary>
/// <param name="TagScan">What the code on the tag read: the order's number. Nothing where the tag was photographed.</param>
/// <param name="TagPhoto">Photograph of the tag.</param>
/// <param name="State">What comes out.</param>
/// <param name="Moved">The repair has moved on the pipe, or the pipe in it.</param>
/// <param name="Edges">How bolts and edges look.</param>
/// <param name="Photo">Photograph from the same viewpoint as before.</param>
/// <param name="Result">What follows.</param>
/// <param name="Action">What is to be done, where it stays with an action.</param>
/// <param name="Excursions">Excursions above the limits, hammer, fire or impact since the last visit; nothing for none.</param>
/// <param name="Readings">Walls read: either side, and under it where that can be done. The same spots in the same words as before.</param>
/// <param name="NotReadWhy">Why a wall could not be read where one was asked for.</param>
/// <param name="DoneAt">When it was done, where it is entered later from paper; nothing for now.</param>
/// <param name="Remark">What the next one should know.</param>
public sealed record RecordVisit(
    [property: StringLength(200)] string? TagScan,
    Guid? TagPhoto,
    LeakState State,
    bool Moved,
    EdgesState Edges,
    Guid? Photo,
    VisitResult Result,
    [property: StringLength(1000)] string? Action = null,
    [property: StringLength(1000)] string? Excursions = null,
    [property: MaxLength(400)] IReadOnlyList<ThicknessReading>? Readings = null,
    [property: StringLength(1000)] string? NotReadWhy = null,
    DateTimeOffset? DoneAt = null,
    [property: StringLength(2000)] string? Remark = null
);

/// <summary>A wall read at a visit against what was forecast for that day.</summary>
/// <param name="Spot">The spot.</param>
/// <param name="WallMm">The wall read.</param>
/// <param name="ForecastMm">The wall forecast for that day; nothing where no forecast could be made.</param>
/// <param name="Below">It is below the forecast by more than a reading can be off.</param>
public sealed record ForecastRead(string Spot, double WallMm, double? ForecastMm, bool Below);

/// <summary>The body of a visit: what was recorded and what the service made of it.</summary>
/// <param name="Ask">What was recorded.</param>
/// <param name="DoneAt">When it was done.</param>
/// <param name="CountersignNeeded">An engineer has to countersign: class A or B, or walls were read.</param>
/// <param name="Walls">Each wall read against its forecast.</param>
/// <param name="RateMmPerYear">The rate reckoned with from this visit on.</param>
/// <param name="RemainingLifeDays">Days until the wall is down to the least the repair relies on, from this visit.</param>
/// <param name="EndDateIn">The end date this visit moves in to; nothing where it stands.</param>
/// <param name="EndDateBefore">The end date before.</param>
public sealed record SignedVisit(
    RecordVisit Ask,
    DateTimeOffset DoneAt,
    bool CountersignNeeded,
    IReadOnlyList<ForecastRead> Walls,
    double? RateMmPerYear,
    double? RemainingLifeDays,
    DateOnly? EndDateIn,
    DateOnly? EndDateBefore
);

/// <summary>An engineer countersigns a visit.</summary>
/// <param name="Visit">The visit.</param>
/// <param name="Remark">What he makes of it.</param>
public sealed record CountersignVisit(Guid Visit, [property: StringLength(2000)] string? Remark = null);

public sealed partial class RepairOrdersClient
{
    /// <summary>Records a visit. With the result <c>failed</c> the order leaves service at once.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The visit.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The visit; its body is a <see cref="SignedVisit"/>.</returns>
    /// <exception cref="Refused">400 with fields, 409 with the objection.</exception>
    public Task<RecordView> Visit(string number, RecordVisit ask, string? key = null) =>
        Post<RecordView>($"orders/{number}/visits", ask, key);

    /// <summary>Countersigns a visit.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The visit and a remark.</param>
    /// <returns>The countersignature.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> CountersignVisit(string number, CountersignVisit ask) =>
        Post<RecordView>($"orders/{number}/visit-countersignatures", ask);
}
