namespace RepairOrders.Contract;

/// <summary>Codes of all flags. A flag is read from dates and the clock; nobody sets it and nobody clears it by hand.</summary>
public static class Flags
{
    /// <summary>It leaks now: failed, or a leak that nothing covers yet.</summary>
    public const string Leaking = "leaking";

    /// <summary>In service after the end date.</summary>
    public const string PastLife = "past-life";

    /// <summary>Due and past its grace.</summary>
    public const string LookOverdue = "look-overdue";

    /// <summary>A look has fallen due.</summary>
    public const string LookDue = "look-due";

    /// <summary>A look has fallen due and its grace runs.</summary>
    public const string InGrace = "in-grace";

    /// <summary>A thickness visit has fallen due.</summary>
    public const string ThicknessDue = "thickness-due";

    /// <summary>Fitted on two consents; assessment, design and approvals are owed.</summary>
    public const string ApprovalOwed = "approval-owed";

    /// <summary>The papers no longer fit the pipe: assess again.</summary>
    public const string ReassessmentOwed = "re-assessment-owed";

    /// <summary>The repair has to come off.</summary>
    public const string RemovalOwed = "removal-owed";

    /// <summary>Somebody stopped the job.</summary>
    public const string Stopped = "stopped";

    /// <summary>The permit's window has ended with the work unfinished.</summary>
    public const string PermitOver = "permit-over";

    /// <summary>Fitted, full hardness not reached.</summary>
    public const string Curing = "curing";

    /// <summary>The owner can no longer sign.</summary>
    public const string NoOwner = "no-owner";

    /// <summary>An earlier leak on the line within 24 months.</summary>
    public const string RepeatLeak = "repeat-leak";

    /// <summary>A recalled batch is in it.</summary>
    public const string RecallHit = "recall-hit";

    /// <summary>Several live repairs on one section.</summary>
    public const string CarriedRisk = "carried-risk";

    /// <summary>All codes, gravest first: the order flags are shown in.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        Leaking,
        PastLife,
        RemovalOwed,
        LookOverdue,
        ApprovalOwed,
        RecallHit,
        Stopped,
        PermitOver,
        NoOwner,
        ReassessmentOwed,
        InGrace,
        LookDue,
        ThicknessDue,
        Curing,
        RepeatLeak,
        CarriedRisk,
    ];
}

/// <summary>A step of the ladder that a late look, or a repair past its end date, climbs. There is no snooze.</summary>
public enum LadderStep
{
    /// <summary>It falls due before long.</summary>
    HeadsUp,

    /// <summary>It has fallen due.</summary>
    Due,

    /// <summary>A supervisor must answer.</summary>
    Supervisor,

    /// <summary>An integrity engineer must answer.</summary>
    Engineer,

    /// <summary>The manager must answer.</summary>
    Manager,

    /// <summary>The head of the site must answer; operations are asked for a pressure cut or isolation.</summary>
    SiteHead,
}

/// <summary>What climbs the ladder.</summary>
public enum LadderItem
{
    /// <summary>A look.</summary>
    Look,

    /// <summary>The end date.</summary>
    EndDate,
}

/// <summary>Where an order stands on the ladder.</summary>
/// <param name="Item">What climbs.</param>
/// <param name="DueAt">When it fell due, or will.</param>
/// <param name="Step">The step reached.</param>
/// <param name="Since">When it was reached.</param>
/// <param name="Who">Who should answer, in words.</param>
/// <param name="AnswerBy">Until when, before it climbs for want of an answer; nothing on a step that asks for none.</param>
/// <param name="Answered">This step was answered.</param>
/// <param name="NextAt">When the next step is reached; nothing at the top.</param>
public sealed record LadderView(
    LadderItem Item,
    DateTimeOffset DueAt,
    LadderStep Step,
    DateTimeOffset Since,
    string Who,
    DateTimeOffset? AnswerBy,
    bool Answered,
    DateTimeOffset? NextAt
);
