using System.Text.Json;

namespace RepairOrders.Contract;

/// <summary>Where an order stands. It follows from the signed records.</summary>
public enum Stage
{
    /// <summary>Asked for, not assessed.</summary>
    Requested,

    /// <summary>The pipe has been judged.</summary>
    Assessed,

    /// <summary>A method is chosen.</summary>
    Chosen,

    /// <summary>Sized; awaits approval.</summary>
    Sized,

    /// <summary>All signatures of its class are there.</summary>
    Approved,

    /// <summary>Emergency path: both consents are recorded.</summary>
    Consented,

    /// <summary>Material is drawn.</summary>
    Issued,

    /// <summary>Permit, isolation, gas test and talk are signed.</summary>
    Ready,

    /// <summary>Work has begun.</summary>
    Fitting,

    /// <summary>The last hold point is signed.</summary>
    Fitted,

    /// <summary>Proved and accepted.</summary>
    InService,

    /// <summary>It leaks or the test failed.</summary>
    Failed,

    /// <summary>Isolated or contained.</summary>
    MadeSafe,

    /// <summary>The repair is off the pipe.</summary>
    Removed,

    /// <summary>The permanent fix is made.</summary>
    Fixed,

    /// <summary>Records complete.</summary>
    Closed,

    /// <summary>Back to the requester for what is missing.</summary>
    Returned,

    /// <summary>Not suitable for a temporary repair.</summary>
    Refused,

    /// <summary>Withdrawn with nothing on the pipe.</summary>
    Withdrawn,

    /// <summary>A newer order stands on the same spot.</summary>
    Superseded,

    /// <summary>The line is isolated; looks rest, the end date stands.</summary>
    LineOutOfService,
}

/// <summary>How pressing a thing is. Never shown by colour alone.</summary>
public enum Tone
{
    /// <summary>All is well.</summary>
    Go,

    /// <summary>Somebody should look.</summary>
    Watch,

    /// <summary>Work or time has stopped.</summary>
    Stop,
}

/// <summary>Risk classes, A the gravest.</summary>
public enum RiskClass
{
    /// <summary>Gravest.</summary>
    A,

    /// <summary>Grave.</summary>
    B,

    /// <summary>Moderate.</summary>
    C,

    /// <summary>Least.</summary>
    D,
}

/// <summary>A thing that is so at the moment of reading; no job sets it and nobody clears it by hand.</summary>
/// <param name="Code">Lower-case words joined by hyphens: <c>past-life</c>.</param>
/// <param name="Words">The sentence, with the days or hours in it.</param>
/// <param name="Tone">How pressing it is.</param>
public sealed record FlagView(string Code, string Words, Tone Tone);

/// <summary>Something the caller might do to the order now.</summary>
/// <param name="Step">The step's folder word, lower case: <c>approving</c>.</param>
/// <param name="Action">The ask in kebab case, one for each ask: <c>approve-order</c>.</param>
/// <param name="Words">The button: an imperative sentence.</param>
/// <param name="Objection">Why not, for this caller now; nothing when he may.</param>
public sealed record ActionView(string Step, string Action, string Words, ObjectionView? Objection);

/// <summary>One signed record of the sheaf.</summary>
/// <param name="Id">The record.</param>
/// <param name="Kind">The record's noun: <c>approval</c>.</param>
/// <param name="Round">The round it belongs to.</param>
/// <param name="By">Who signed, as printed.</param>
/// <param name="At">When.</param>
/// <param name="Summary">One line of what it says.</param>
/// <param name="Tone">Whether it is good news.</param>
/// <param name="Body">All that was signed.</param>
/// <param name="SetAsideAt">When it was set aside; nothing while it stands.</param>
/// <param name="SetAsideBy">Who set it aside.</param>
/// <param name="SetAsideWhy">Why.</param>
public sealed record RecordView(
    Guid Id,
    string Kind,
    int Round,
    string By,
    DateTimeOffset At,
    string Summary,
    Tone Tone,
    JsonElement Body,
    DateTimeOffset? SetAsideAt,
    string? SetAsideBy,
    string? SetAsideWhy
);

/// <summary>The title block: the same on every page and paper.</summary>
/// <param name="Number">The order's number: <c>mill-17</c>.</param>
/// <param name="Site">The site's name.</param>
/// <param name="Line">The line's number.</param>
/// <param name="Place">Where on the line.</param>
/// <param name="Fluid">What flows.</param>
/// <param name="Duty">Operating pressure and temperature as entered.</param>
/// <param name="Method">The chosen method's name.</param>
/// <param name="SignedClass">The class decided on.</param>
/// <param name="ClassToday">The class as it reads now.</param>
/// <param name="EndDate">Last day the repair may be in service without a fresh decision.</param>
/// <param name="DaysLeft">Days to the end date, negative past it.</param>
/// <param name="Owner">Who goes back to look.</param>
/// <param name="Stage">Where it stands.</param>
/// <param name="Round">The round at work.</param>
/// <param name="Revision">Count of journal entries.</param>
public sealed record TitleBlock(
    string Number,
    string Site,
    string? Line,
    string Place,
    string Fluid,
    string Duty,
    string? Method,
    RiskClass? SignedClass,
    RiskClass? ClassToday,
    DateOnly? EndDate,
    int? DaysLeft,
    string? Owner,
    Stage Stage,
    int Round,
    int Revision
);

/// <summary>A figure of the order that everybody asks for.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Value">The value with its unit.</param>
/// <param name="Remark">What governs it, or how it was found.</param>
public sealed record KeyFigure(string Label, string Value, string Remark);

/// <summary>The order as the caller sees it now.</summary>
/// <param name="Title">The title block.</param>
/// <param name="Version">The version to send as <c>If-Match</c>.</param>
/// <param name="Flags">What is so now, gravest first: this is what holds it back.</param>
/// <param name="Figures">Figures everybody asks for.</param>
/// <param name="ClassReasons">Why the class today is what it is.</param>
/// <param name="NextLook">When the next look is due.</param>
/// <param name="NextThickness">When the next thickness visit is due.</param>
/// <param name="Next">The one next action for this caller; nothing when he has none.</param>
/// <param name="Actions">All he might do, with the objection where he may not.</param>
/// <param name="Records">The sheaf, oldest first, set-aside ones included.</param>
/// <param name="Related">Other orders on the line.</param>
/// <param name="Fingerprint">The fingerprint of the design that awaits or carries signatures.</param>
/// <param name="ReadAt">When this was read: all days count from it.</param>
/// <param name="Ladder">Where it stands on the ladder; nothing below its first step.</param>
/// <param name="Debt">The papers an emergency repair owes and by when; nothing where none are owed.</param>
public sealed record OrderSheet(
    TitleBlock Title,
    string Version,
    IReadOnlyList<FlagView> Flags,
    IReadOnlyList<KeyFigure> Figures,
    IReadOnlyList<string> ClassReasons,
    DateOnly? NextLook,
    DateOnly? NextThickness,
    ActionView? Next,
    IReadOnlyList<ActionView> Actions,
    IReadOnlyList<RecordView> Records,
    IReadOnlyList<string> Related,
    string? Fingerprint,
    DateTimeOffset ReadAt,
    LadderView? Ladder = null,
    DebtView? Debt = null
);

/// <summary>One line of the order's history.</summary>
/// <param name="Line">Its number, from 1.</param>
/// <param name="At">When.</param>
/// <param name="By">Who.</param>
/// <param name="What">What was done.</param>
/// <param name="Why">The reason, where one was asked.</param>
/// <param name="Hash">SHA-256 of this entry chained to the one before, hex.</param>
public sealed record JournalLine(int Line, DateTimeOffset At, string By, string What, string? Why, string Hash);

/// <summary>The journal and whether its chain verifies.</summary>
/// <param name="Lines">The entries, oldest first.</param>
/// <param name="BrokenAt">The first entry that does not verify; nothing when all do.</param>
public sealed record JournalView(IReadOnlyList<JournalLine> Lines, int? BrokenAt);

/// <summary>The version of an order: another one with each signature.</summary>
/// <param name="Version">As the sheet gives it.</param>
public sealed record OrderVersion(string Version);

public sealed partial class RepairOrdersClient
{
    /// <summary>The order as the caller sees it now.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The sheet.</returns>
    /// <exception cref="Refused">404 when there is none that the caller may see.</exception>
    public Task<OrderSheet> Order(string number, CancellationToken stop = default) =>
        Get<OrderSheet>($"orders/{number}", stop);

    /// <summary>The order's version alone, for a page that is open and wants to know whether anything was signed since.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The version.</returns>
    /// <exception cref="Refused">404 when there is none that the caller may see.</exception>
    public Task<OrderVersion> OrderVersion(string number, CancellationToken stop = default) =>
        Get<OrderVersion>($"orders/{number}/version", stop);

    /// <summary>The order's history, its chain verified.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="stop">Cancels the read.</param>
    /// <returns>The journal.</returns>
    public Task<JournalView> Journal(string number, CancellationToken stop = default) =>
        Get<JournalView>($"orders/{number}/journal", stop);
}
