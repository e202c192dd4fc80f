namespace RepairOrders.Engineering.Strength;

/// <summary>How an answer stands beside the others.</summary>
public enum AnswerStanding
{
    /// <summary>The lowest of those that count.</summary>
    Governs,

    /// <summary>Counts, and is not the lowest.</summary>
    Counts,

    /// <summary>Shown to compare with; another answer is the better one.</summary>
    SecondOpinion,

    /// <summary>Shown, but must not be relied on here.</summary>
    SetAside,

    /// <summary>The method does not apply.</summary>
    Refused,
}

/// <summary>Which of several answers may be relied on. One page, used for a single case and for a survey alike.</summary>
internal static class StrengthRules
{
    /// <summary>Level 1 takes a shape for granted that a profile has measured.</summary>
    public static AnswerStanding Original(bool profiled) =>
        profiled ? AnswerStanding.SecondOpinion : AnswerStanding.Counts;

    /// <summary>0.85 dL over-predicts a long flat patch.</summary>
    public static AnswerStanding Modified(bool profiled, bool longAndFlat) =>
        longAndFlat ? AnswerStanding.SetAside
        : profiled ? AnswerStanding.SecondOpinion
        : AnswerStanding.Counts;

    /// <summary>The corroded-pipe method is a second opinion, except for a long loss or where nothing else applies.</summary>
    public static AnswerStanding CorrodedPipe(double z, bool alone) =>
        z > 20 || alone ? AnswerStanding.Counts : AnswerStanding.SecondOpinion;

    /// <summary>
    /// In plant piping the pipeline methods do not stand in for the method that refused; else a deeper loss, which that method
    /// refuses, would be credited with more than a shallower one.
    /// </summary>
    public static bool Credits(bool tooDeep, bool plant, bool plantMethodApplies) =>
        !tooDeep && (!plant || plantMethodApplies);
}
