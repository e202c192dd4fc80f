using RepairOrders.Api.Orders;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Standing;

/// <summary>All a flag is read from.</summary>
internal sealed record FlagMoment(
    OrderColumns Columns,
    Around Around,
    TimeZoneInfo Zone,
    DateTimeOffset At,
    LadderView? Ladder
)
{
    /// <summary>How long ago a moment was, in words.</summary>
    public string Ago(DateTimeOffset since) => TimeWords.Of(At - since);

    public string Clock(DateTimeOffset moment) => TimeWords.Moment(moment, Zone);

    /// <summary>Who stands on the ladder, as the end of a sentence; empty below its first step.</summary>
    public string Climb(LadderItem item) =>
        Ladder is { Step: >= LadderStep.Supervisor } ladder && ladder.Item == item
            ? $" Ladder step {ladder.Step - LadderStep.Due}: {ladder.Who} must answer by {Clock(ladder.AnswerBy!.Value)}{(ladder.Answered ? "; answered" : "")}."
            : "";
}

/// <summary>
/// One flag, told twice side by side: as a sentence from columns and clock, and as a range on the same columns in the store. A
/// test holds the two together.
/// </summary>
/// <param name="Code">The code on the wire.</param>
/// <param name="Tone">How pressing it is.</param>
/// <param name="Words">The sentence; nothing while the flag is down.</param>
/// <param name="Where">The orders whose flag is up.</param>
internal sealed record FlagRule(
    string Code,
    Tone Tone,
    Func<FlagMoment, string?> Words,
    Func<IQueryable<RepairOrder>, RepairStore, DateTimeOffset, IQueryable<RepairOrder>> Where
)
{
    public FlagView? Read(FlagMoment now) => Words(now) is { } words ? new FlagView(Code, words, Tone) : null;
}
