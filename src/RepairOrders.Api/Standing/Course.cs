using RepairOrders.Api.Figures;
using RepairOrders.Engineering.Life;
using RepairOrders.Engineering.Risk;

namespace RepairOrders.Api.Standing;

/// <summary>A value and from when it held.</summary>
internal sealed record Since<T>(DateTimeOffset From, T Value);

/// <summary>A visit as the course needs it.</summary>
/// <param name="At">When it was made.</param>
/// <param name="Dry">Nothing came out.</param>
/// <param name="Thickness">Walls were read.</param>
internal sealed record Look(DateTimeOffset At, bool Dry, bool Thickness);

/// <summary>What the course of a repair, or of a bare defect on a live line, is reckoned from: facts of the records, no clock.</summary>
/// <param name="Start">From when looks are counted.</param>
/// <param name="Signed">The classes signed, without age, from when each held; the first from before the start.</param>
/// <param name="Looks">Visits made.</param>
/// <param name="InService">Life of the repair; nothing for a bare or contained defect, which has looks but no life.</param>
/// <param name="Figures">The figures the order was decided under.</param>
/// <param name="RestsFrom">From when looks rest: failed, or the line out of service. Nothing while they run.</param>
internal sealed record CourseFacts(
    DateTimeOffset Start,
    IReadOnlyList<Since<RiskRank>> Signed,
    IReadOnlyList<Look> Looks,
    LifeFacts? InService,
    Contract.SiteFigures Figures,
    DateTimeOffset? RestsFrom = null
);

/// <summary>The life of a repair in service.</summary>
/// <param name="From">In-service start of the round.</param>
/// <param name="Ends">The moments at which its life ends, from when each held.</param>
/// <param name="RemainingLifeDays">Life of the wall as it was last reckoned; nothing where it is not known.</param>
internal sealed record LifeFacts(
    DateTimeOffset From,
    IReadOnlyList<Since<DateTimeOffset>> Ends,
    double? RemainingLifeDays
);

/// <summary>
/// How a repair runs on from its records if nobody signs anything more: every moment at which its class or a due date turns. The
/// register keeps these moments as dates, so that a flag is a range on a date and no job has to set it.
/// </summary>
/// <param name="Turns">The class today from each moment on.</param>
/// <param name="LookDueAt">When the next look is due.</param>
/// <param name="LookOverdueAt">When its grace is over.</param>
/// <param name="ThicknessPlannedAt">When the next thickness visit is due if the looks are made; nothing without a repair in service.</param>
/// <param name="ThicknessDueAt">When it is due if nobody goes at all: missed looks raise the class and ask for it sooner.</param>
/// <param name="SecondMisses">When a second look in a row was missed, or will be.</param>
internal sealed record Course(
    IReadOnlyList<Since<RiskRank>> Turns,
    DateTimeOffset LookDueAt,
    DateTimeOffset LookOverdueAt,
    DateTimeOffset? ThicknessPlannedAt,
    DateTimeOffset? ThicknessDueAt,
    IReadOnlyList<DateTimeOffset> SecondMisses
)
{
    /// <summary>The store's own precision, and the step past a limit that is itself still inside.</summary>
    public static readonly TimeSpan Tick = TimeSpan.FromMicroseconds(1);

    /// <summary>The class as it reads at a moment, with its reasons.</summary>
    public RiskRank At(DateTimeOffset at) => (Turns.LastOrDefault(t => t.From <= at) ?? Turns[0]).Value;

    /// <summary>From when the class is this one or worse; nothing where it never is.</summary>
    public DateTimeOffset? From(RiskClass worse, DateTimeOffset written) =>
        At(written).Class >= worse
            ? written
            : Turns.Where(t => t.From > written && t.Value.Class >= worse).Min(t => (DateTimeOffset?)t.From);

    public static Course Of(CourseFacts facts) => new CourseWalk(facts).Run();
}
