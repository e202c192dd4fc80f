using System.ComponentModel.DataAnnotations;

namespace RepairOrders.Contract;

/// <summary>Why a permanent fix slipped.</summary>
public enum SlipReason
{
    /// <summary>The shutdown was put off.</summary>
    ShutdownPutOff,

    /// <summary>The scope was frozen before the repair was fitted.</summary>
    MissedTheScope,

    /// <summary>Material or parts are late.</summary>
    PartsLate,

    /// <summary>Nobody is free to do it.</summary>
    NoCrew,

    /// <summary>The design of the fix is late.</summary>
    DesignLate,

    /// <summary>Something else, in words.</summary>
    Other,
}

/// <summary>Asks for a later end date.</summary>
/// <param name="Reason">Why the fix slipped.</param>
/// <param name="Why">The same in words.</param>
/// <param name="Survey">The thickness visit it rests on.</param>
/// <param name="PermanentFix">The permanent fix with its new date.</param>
/// <param name="ChangeControl">The change control, moved too where there is one.</param>
public sealed record AskExtension(
    SlipReason Reason,
    [property: Required, StringLength(2000, MinimumLength = 3)] string Why,
    Guid Survey,
    [property: Required] PermanentFixPlan PermanentFix,
    ChangeControl? ChangeControl = null
);

/// <summary>An earlier extension, in view of whoever decides the next.</summary>
/// <param name="From">The end date before.</param>
/// <param name="To">The end date after.</param>
/// <param name="Why">Why it was asked.</param>
/// <param name="DecidedBy">Who decided.</param>
public sealed record EarlierExtension(DateOnly From, DateOnly To, string Why, IReadOnlyList<string> DecidedBy);

/// <summary>The body of an extension: what was asked and what the service reckoned.</summary>
/// <param name="Ask">What was asked.</param>
/// <param name="Late">Asked later than the procedure wants: 30 days ahead, on class A 7.</param>
/// <param name="AfterEnd">Asked after the end date.</param>
/// <param name="Risk">The class run again on the survey, without age.</param>
/// <param name="From">The end date as it stands.</param>
/// <param name="EndDate">The new end date with its terms.</param>
/// <param name="Number">The how-manieth it would be.</param>
/// <param name="Earlier">All earlier ones.</param>
/// <param name="Needed">Who must decide.</param>
public sealed record SignedExtension(
    AskExtension Ask,
    bool Late,
    bool AfterEnd,
    RiskView Risk,
    DateOnly From,
    EndDateView EndDate,
    int Number,
    IReadOnlyList<EarlierExtension> Earlier,
    IReadOnlyList<ExtensionCapacity> Needed
);

/// <summary>In which capacity an extension is decided.</summary>
public enum ExtensionCapacity
{
    /// <summary>As integrity engineer.</summary>
    Engineer,

    /// <summary>As second engineer: one who neither assessed nor sized.</summary>
    SecondEngineer,

    /// <summary>As manager.</summary>
    Manager,

    /// <summary>As manager or second engineer: either will do.</summary>
    ManagerOrSecondEngineer,
}

/// <summary>Decides on an extension. It holds once everybody its class asks for has granted it; one refusal ends it.</summary>
/// <param name="Extension">The extension asked for.</param>
/// <param name="Grant">Granted, or refused.</param>
/// <param name="Why">The reason; a refusal needs one.</param>
public sealed record DecideExtension(Guid Extension, bool Grant, [property: StringLength(2000)] string? Why = null);

/// <summary>The body of a decision.</summary>
/// <param name="Ask">What was decided.</param>
/// <param name="As">In which capacity.</param>
/// <param name="EndDate">The new end date, where this decision completes the set.</param>
/// <param name="AfterEnd">Decided after the end date.</param>
public sealed record SignedDecision(DecideExtension Ask, ExtensionCapacity As, DateOnly? EndDate, bool AfterEnd);

public sealed partial class RepairOrdersClient
{
    /// <summary>Asks for a later end date.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">Why, the survey and the new dates.</param>
    /// <returns>The extension; its body is a <see cref="SignedExtension"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> AskExtension(string number, AskExtension ask) =>
        Post<RecordView>($"orders/{number}/extensions", ask);

    /// <summary>Decides on an extension.</summary>
    /// <param name="number">The order's number.</param>
    /// <param name="ask">The decision.</param>
    /// <returns>The decision; its body is a <see cref="SignedDecision"/>.</returns>
    /// <exception cref="Refused">409 with the objection.</exception>
    public Task<RecordView> DecideExtension(string number, DecideExtension ask) =>
        Post<RecordView>($"orders/{number}/extension-decisions", ask);
}
