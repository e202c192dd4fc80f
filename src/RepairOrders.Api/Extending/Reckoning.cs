using RepairOrders.Api.Assessing;
using RepairOrders.Api.Figures;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Sizing;
using RepairOrders.Api.Standing;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Life;
using RepairOrders.Engineering.Risk;
using UnitsNet;
using RiskClass = RepairOrders.Contract.RiskClass;

namespace RepairOrders.Api.Extending;

/// <summary>Reckons an extension: the class run again on the survey, and the earliest of the terms that end it.</summary>
internal static class Reckoning
{
    public static SignedExtension Of(RepairOrder order, AskExtension ask, DateTimeOffset at)
    {
        var from = EndInForce.Of(order)!;
        var figures = DecidedUnder.Figures(order);
        var risk = ClassAgain(order, ask);
        var today = order.Site.Today(at);
        var afterEnd = ExtensionRules.AfterEnd(order, at);
        var ahead = risk.Class == RiskClass.A ? figures.AskAheadDaysOnA : figures.AskAheadDays;
        return new(
            ask,
            Late: from.On.DayNumber - today.DayNumber < ahead,
            afterEnd,
            risk,
            from.On,
            End(order, ask, from.On, risk.Class, today),
            Extension.Granted(order).Count() + 1,
            [.. Extension.Granted(order).Select(g => Earlier(order, g.Extension, g.Decision))],
            ExtensionRules.Needed(risk.Class, afterEnd)
        );
    }

    private static EarlierExtension Earlier(RepairOrder order, Extension extension, ExtensionDecision last) =>
        new(
            extension.Asked.From,
            last.Asked.EndDate!.Value,
            extension.Asked.Ask.Why,
            [.. extension.Decisions(order).Select(d => d.By)]
        );

    // Never below the class it was signed under: only a full re-assessment can lower that.
    private static RiskView ClassAgain(RepairOrder order, AskExtension ask)
    {
        var design = order.ApprovedDesign!;
        var signed = design.Asked.Risk;
        if (
            ExtensionRules.Survey(order, ask)?.Asked.Ask.Readings is not { Count: > 0 } readings
            || ExtensionRules.AssessmentOf(order, design) is not { } assessment
        )
            return signed;
        var again = Designing.ClassAgain(order, design.Asked, assessment.Asked, readings).View();
        return again.Class <= signed.Class ? again : signed;
    }

    private static EndDateView End(
        RepairOrder order,
        AskExtension ask,
        DateOnly from,
        RiskClass riskClass,
        DateOnly today
    )
    {
        var design = order.ApprovedDesign!.Asked;
        var survey = ExtensionRules.Survey(order, ask);
        var read = survey is null ? today : ExtensionRules.ReadOn(order, survey);
        var length = DecidedUnder.Figures(order).Of(riskClass).ExtensionLength;
        var end = EndDate.Earliest(
            new EndDateAsk(
                read,
                from.AddDays(length.Days),
                DesignLifeLeft(design, read),
                survey?.Asked.RemainingLifeDays is { } days ? Duration.FromDays(days) : null,
                read,
                order.Surroundings.Shutdowns.Where(s => s.StartsOn > from).Select(s => (DateOnly?)s.StartsOn).Min(),
                ask.ChangeControl?.EndsOn ?? design.Ask.ChangeControl?.EndsOn,
                design.Ask.MaterialStatementEnds
            )
        );
        return EndDates.View(end.Result);
    }

    private static Duration? DesignLifeLeft(SignedDesign design, DateOnly from) =>
        design.EndDate.Terms.FirstOrDefault(t => t.Code == "design-life") is { } life
            ? Duration.FromDays(Math.Max(0, life.On.DayNumber - from.DayNumber))
            : null;
}
