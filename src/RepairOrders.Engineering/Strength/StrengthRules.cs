namespace RepairOrders.Engineering.Strength;

/// <summary>How an answer stands beside the others.</summary>
public enum Standing
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
    public static Standing Original(bool profiled) => profiled ? Standing.SecondOpinion : Standing.Counts;

    /// <summary>0.85 dL over-predicts a long flat patch.</summary>
    public static Standing Modified(bool profiled, bool longAndFlat) =>
        longAndFlat ? Standing.SetAside
        : profiled ? Standing.SecondOpinion
        : Standing.Counts;

    /// <summary>The corroded-pipe method is a second opinion, except for a long loss or where nothing else applies.</summary>
    public static Standing CorrodedPipe(double z, bool alone) =>
        z > 20 || alone ? Standing.Counts : Standing.SecondOpinion;

    /// <summary>
    /// In plant piping the pipeline methods do not stand in for the method that refused; else a deeper loss, which that method
    /// refuses, would be credited with more than a shallower one.
    /// </summary>
    public static bool Credits(bool tooDeep, bool plant, bool plantMethodApplies) =>
        !tooDeep && (!plant || plantMethodApplies);
}
