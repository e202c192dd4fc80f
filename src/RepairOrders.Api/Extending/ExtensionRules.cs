using RepairOrders.Api.Assessing;
using RepairOrders.Api.Figures;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Revisiting;
using RepairOrders.Api.Sizing;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Risk;
using RiskClass = RepairOrders.Contract.RiskClass;

namespace RepairOrders.Api.Extending;

/// <summary>What bars a later end date. Asked when it is asked for, and again when it is decided.</summary>
internal static class ExtensionRules
{
    private const int DaysWithoutReassessment = 365;

    /// <summary>What bars any extension of the order.</summary>
    public static Objection? OfOrder(RepairOrder order, DateTimeOffset at)
    {
        if (order.ApprovedDesign is not { } design)
            return new Objection(
                "approval-owed-first",
                "The repair is in service on two consents and its approval is owed. Pay that first; then there is an end date to extend.",
                "integrity engineer and the approvers of the class"
            );
        if (AssessmentOf(order, design)?.Asked.Ask.Defect.Cause is null or DefectCause.Unknown)
            return new Objection(
                "extension-cause-unknown",
                "The cause is unknown, so nobody can say how the pipe goes on. Find it and assess again.",
                "integrity engineer"
            );
        if (order.Columns.ReassessmentOwedFrom <= at)
            return new Objection(
                "re-assessment-first",
                $"A re-assessment is owed: {order.Columns.ReassessmentWhy}. Assess, size and approve again; then ask.",
                "integrity engineer"
            );
        return AfterEnd(order, at) && Extension.Granted(order).Any(g => g.Extension.Asked.AfterEnd || DecidedLate(g))
            ? new Objection(
                "late-extension-used",
                "The end date has passed, and it was extended after the end once already. It comes off, or the line goes out of service.",
                "nobody; order the removal"
            )
            : OfCount(order, design.Asked.Risk.Class);
    }

    /// <summary>What bars this one, once reckoned.</summary>
    public static Objection? Of(RepairOrder order, SignedExtension extension, DateTimeOffset at) =>
        OfOrder(order, at)
        ?? OfSurvey(order, extension.Ask, at)
        ?? OfCount(order, extension.Risk.Class)
        ?? OfEnd(order, extension);

    public static bool AfterEnd(RepairOrder order, DateTimeOffset at) => EndInForce.Of(order)?.At <= at;

    public static Visit? Survey(RepairOrder order, AskExtension ask) =>
        order.InRound<Visit>().FirstOrDefault(v => v.Id == ask.Survey);

    public static Assessment? AssessmentOf(RepairOrder order, Design design) =>
        order.All<Assessment>().FirstOrDefault(a => a.Id == design.Asked.Assessment);

    /// <summary>Who must grant it: one level above the first approval; after the end date the manager and an engineer, whatever the class.</summary>
    public static IReadOnlyList<ExtensionCapacity> Needed(RiskClass riskClass, bool afterEnd) =>
        (riskClass, afterEnd) switch
        {
            (RiskClass.A, _) => [ExtensionCapacity.Manager, ExtensionCapacity.SecondEngineer],
            (RiskClass.B, _) or (_, true) => [ExtensionCapacity.Manager, ExtensionCapacity.Engineer],
            (RiskClass.C, _) => [ExtensionCapacity.ManagerOrSecondEngineer],
            _ => [ExtensionCapacity.Engineer],
        };

    private static Objection? OfSurvey(RepairOrder order, AskExtension ask, DateTimeOffset at)
    {
        var figures = DecidedUnder.Figures(order);
        var days = AfterEnd(order, at) ? figures.SurveyDaysAfterEnd : figures.SurveyDays;
        if (Survey(order, ask) is not { IsThickness: true } survey)
            return new Objection(
                "survey-missing",
                $"An extension rests on walls read at a visit of this round, at most {days} days old. Name one.",
                "technician, by a thickness visit"
            );
        var age = order.Site.Today(at).DayNumber - ReadOn(order, survey).DayNumber;
        if (age > days)
            return new Objection(
                "survey-too-old",
                $"The survey's oldest reading is {age} days old; at most {days} days are allowed{(days < figures.SurveyDays ? " after the end date" : "")}. Read the walls again.",
                "technician, by a thickness visit"
            );
        return VisitCountersignature.Has(order, survey)
            ? null
            : new Objection(
                "survey-not-countersigned",
                "No engineer has countersigned the survey.",
                "integrity engineer, by countersigning the visit"
            );
    }

    // As old as its oldest wall: a visit of today may carry readings of an earlier day.
    public static DateOnly ReadOn(RepairOrder order, Visit survey) =>
        survey.Asked.Ask.Readings!.Select(r => r.On).Append(order.Site.Today(survey.Asked.DoneAt)).Min();

    // Known beforehand by the signed class; the class run again on the survey may be a graver one and allow fewer.
    private static Objection? OfCount(RepairOrder order, RiskClass riskClass)
    {
        var allowed = DecidedUnder.Figures(order).Of(riskClass).Extensions;
        return Extension.Granted(order).Count() >= allowed
            ? new Objection(
                "extensions-used-up",
                $"Class {riskClass} allows {allowed}, counted over all rounds, and {Extension.Granted(order).Count()} were given. It comes off, or is put right for good.",
                "nobody; order the removal"
            )
            : null;
    }

    private static Objection? OfEnd(RepairOrder order, SignedExtension extension)
    {
        if (Facts.NeedsChangeControl(order, extension.Risk.Class) && extension.Ask.ChangeControl is null)
            return new Objection(
                "change-control-not-moved",
                "The change control ends with the old date. Move it too and give its new end.",
                "supervisor, with whoever runs change control"
            );
        if (extension.EndDate.On <= extension.From)
            return new Objection(
                "extension-gains-nothing",
                $"The {extension.EndDate.Governing.Words} ends it on {extension.EndDate.On:yyyy-MM-dd}, not after {extension.From:yyyy-MM-dd}: there is nothing to grant.",
                "integrity engineer, by sizing again what is on the pipe, or by removal"
            );
        var days = extension.EndDate.On.DayNumber - Baseline(order).DayNumber;
        return days > DaysWithoutReassessment
            ? new Objection(
                "full-re-assessment-needed",
                $"On {extension.EndDate.On:yyyy-MM-dd} it would have been {days} days without a full re-assessment; at most {DaysWithoutReassessment} are allowed. Assess, size and approve again first.",
                "integrity engineer and the approvers of the class"
            )
            : null;
    }

    // Counted from the first start, or from a full assessment made since, approved.
    private static DateOnly Baseline(RepairOrder order)
    {
        var start = Rounds.FirstInService(order)!.Value;
        var assessed = AssessmentOf(order, order.ApprovedDesign!)!.At;
        return order.Site.Today(assessed > start ? assessed : start);
    }

    private static bool DecidedLate((Extension Extension, ExtensionDecision Decision) granted) =>
        granted.Decision.Asked.AfterEnd;
}
