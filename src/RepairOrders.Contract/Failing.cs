using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>How a repair failed.</summary>
public enum FailureMode
{
    /// <summary>Not known yet; it has to be before the order is closed.</summary>
    NotYetKnown,

    /// <summary>Seal or putty let go.</summary>
    Seal,

    /// <summary>Bond or laminate let go.</summary>
    Bond,

    /// <summary>Bolt, band or fastener let go.</summary>
    Fastening,

    /// <summary>It moved on the pipe.</summary>
    Movement,

    /// <summary>The pipe went on thinning under or beside it.</summary>
    PipeBeneath,

    /// <summary>A new leak beside it.</summary>
    NewLeak,

    /// <summary>Pressure or temperature above the limits.</summary>
    Excursion,

    /// <summary>It was not fitted as designed.</summary>
    Fitting,

    /// <summary>The material was at fault.</summary>
    Material,
}

/// <summary>Reports a failure. It is never refused.</summary>
/// <param name="State">What comes out.</param>
/// <param name="Seen">What was seen.</param>
/// <param name="DoneAtOnce">What was done at once.</param>
/// <param name="Released">How much got out, as far as it is known.</param>
/// <param name="Photo">Photograph.</param>
public sealed record ReportFailure(
    LeakState State,
    [property: Required, StringLength(2000, MinimumLength = 3)] string Seen,
    [property: StringLength(2000)] string? DoneAtOnce = null,
    [property: StringLength(200)] string? Released = null,
    Guid? Photo = null
);

/// <summary>How a failed repair was made safe.</summary>
public enum SafeBy
{
    /// <summary>The line is isolated.</summary>
    Isolation,

    /// <summary>The leak is contained under named controls, with a watch.</summary>
    Containment,
}

/// <summary>Makes a failed repair safe.</summary>
/// <param name="By">Isolated, or contained.</param>
/// <param name="IsolationCertificate">The certificate, where it is isolated.</param>
/// <param name="Controls">The named controls, where it is contained: tray, screen, pressure cut, drain.</param>
/// <param name="AreaBarred">The area is barred.</param>
/// <param name="WatchBy">Who watches it, and how often.</param>
/// <param name="StandIn">On a safety-critical line, what stands in for its duty meanwhile.</param>
/// <param name="Mode">How it failed, as far as it is known.</param>
/// <param name="Remark">What the next shift should know.</param>
public sealed record MakeSafe(
    SafeBy By,
    [property: StringLength(100)] string? IsolationCertificate,
    [property: StringLength(1000)] string? Controls,
    bool AreaBarred,
    [property: StringLength(300)] string? WatchBy,
    [property: StringLength(1000)] string? StandIn,
    FailureMode Mode,
    [property: StringLength(2000)] string? Remark = null
);

/// <summary>The body of a made-safe.</summary>
/// <param name="Ask">What was done.</param>
/// <param name="ManagerNeeded">Contained on class A: it is safe once the manager agrees.</param>
public sealed record SignedMadeSafe(MakeSafe Ask, bool ManagerNeeded);

/// <summary>The manager agrees to containment on class A.</summary>
/// <param name="MadeSafe">The containment.</param>
/// <param name="Why">Why it may stay contained and for how long.</param>
public sealed record AgreeContainment(
    Guid MadeSafe,
    [property: Required, StringLength(2000, MinimumLength = 3)] string Why
);

/// <summary>States how a repair failed, once it is known.</summary>
/// <param name="Failure">The failure.</param>
/// <param name="Mode">How it failed.</param>
/// <param name="Words">What was found.</param>
public sealed record StateFailureMode(
    Guid Failure,
    FailureMode Mode,
    [property: Required, StringLength(2000, MinimumLength = 3)] string Words
);

public sealed partial class RepairOrdersClient
{
    /// <summary>Reports a failure.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">What was seen.</param>
    /// <param name="key">The idempotency key; a new one where none is given.</param>
    /// <returns>The failure.</returns>
    /// <exception cref="Refused">400 with fields; never 409.</exception>
    public Task<RecordView> ReportFailure(string number, ReportFailure ask, string? key = null) =>
        Post<RecordView>($"orders/{number}/failures", ask, key);

    /// <summary>Makes a failed repair safe.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">How.</param>
    /// <returns>The made-safe; its body is a <see cref="SignedMadeSafe"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> MakeSafe(string number, MakeSafe ask) =>
        Post<RecordView>($"orders/{number}/made-safe", ask);

    /// <summary>Agrees to containment on class A, as manager.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The containment and the reason.</param>
    /// <returns>The agreement.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> AgreeContainment(string number, AgreeContainment ask) =>
        Post<RecordView>($"orders/{number}/containment-agreements", ask);

    /// <summary>States how a repair failed.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The failure and its mode.</param>
    /// <returns>The statement.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> StateFailureMode(string number, StateFailureMode ask) =>
        Post<RecordView>($"orders/{number}/failure-modes", ask);
}
