using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Standing;

/// <summary>What an order is at one moment: read from its columns, the clock, and the world round it. Nothing of this is stored.</summary>
internal sealed record OrderToday(
    RiskClass? Class,
    int? DaysLeft,
    DateOnly? NextLook,
    DateOnly? NextThickness,
    LadderView? Ladder,
    IReadOnlyList<FlagView> Flags
)
{
    public static OrderToday Of(OrderColumns columns, Around around, TimeZoneInfo zone, DateTimeOffset at)
    {
        var ladder = LadderOf(columns, at);
        var now = new FlagMoment(columns, around, zone, at, ladder);
        return new(
            ClassOf(columns, at),
            DaysLeftOf(columns, zone, at),
            Day(columns.LookDueAt, zone),
            Day(columns.ThicknessDueAt <= at ? columns.ThicknessDueAt : columns.ThicknessPlannedAt, zone),
            ladder,
            [.. FlagRules.All.Select(rule => rule.Read(now)).OfType<FlagView>()]
        );
    }

    public static RiskClass? ClassOf(OrderColumns c, DateTimeOffset at) =>
        c.ClassAFrom <= at ? RiskClass.A
        : c.ClassBFrom <= at ? RiskClass.B
        : c.ClassCFrom <= at ? RiskClass.C
        : c.ClassDFrom <= at ? RiskClass.D
        : c.SignedClass;

    /// <summary>Days to the end date; nothing once the repair no longer runs towards it.</summary>
    public static int? DaysLeftOf(OrderColumns c, TimeZoneInfo zone, DateTimeOffset at) =>
        c.Open && c.EndDate is { } end && c.Stage is not (Stage.Removed or Stage.Fixed)
            ? end.DayNumber - zone.Day(at).DayNumber
            : null;

    /// <summary>The step of the ladder reached: of the look or of the end date, whichever stands higher.</summary>
    public static LadderView? LadderOf(OrderColumns c, DateTimeOffset at)
    {
        if (ClassOf(c, at) is not { } riskClass)
            return null;
        var look = c.LookDueAt is { } due
            ? Standing.Ladder.At(LadderItem.Look, due, riskClass, c.AnsweredAt, at)
            : null;
        var end =
            c.Stage == Stage.InService && c.EndsAt is { } ends
                ? Standing.Ladder.At(LadderItem.EndDate, ends, riskClass, c.AnsweredAt, at)
                : null;
        return end is not null && end.Step >= (look?.Step ?? LadderStep.HeadsUp) ? end : look ?? end;
    }

    private static DateOnly? Day(DateTimeOffset? at, TimeZoneInfo zone) => at is { } moment ? zone.Day(moment) : null;
}
