using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Life;
using RepairOrders.Engineering.Risk;
using UnitsNet;

namespace RepairOrders.Api.Calculations;

internal static class RevisitPlan
{
    public static CalculationAnswer<RevisitPlanResult> Calculate(CalculateRevisitPlan ask)
    {
        var sheet = new Worksheet();
        var approved = Days(ask.EndDate.DayNumber - DateOnly.FromDateTime(ask.InServiceFrom.UtcDateTime).DayNumber);
        var terms = (ask.Terms ?? []).Select(t => new Engineering.Life.RevisitTerm(
            t.Code,
            t.TimeDays is { } d ? Days(d) : null,
            t.Applies
        ));
        var bound = sheet.Take(RevisitBound.Of([.. terms], approved));
        var duties = ClassDuties.Of(ask.RiskClass.As<Engineering.Risk.RiskClass>());
        var plan = sheet.Take(
            Engineering.Life.RevisitPlan.Make(
                new RevisitAsk(
                    ask.InServiceFrom,
                    ask.EndDate,
                    new RevisitDuties(duties.FirstLook, duties.LookInterval, duties.ThicknessInterval, duties.Grace),
                    ask.RemainingLifeDays is { } life ? Days(life) : null,
                    bound.Value
                )
            )
        );
        return sheet.Answer(
            new RevisitPlanResult(
                plan.LookInterval.Value.TotalDays,
                plan.LookInterval.By,
                plan.ThicknessInterval.Value.TotalDays,
                plan.ThicknessInterval.By,
                plan.FirstLook,
                plan.FirstThickness,
                plan.Grace.TotalDays,
                bound.Value.Days,
                [.. bound.Terms.Select(t => new RevisitBoundResult(t.Code, t.Words, t.Value.Days, t.IsDefault))]
            )
        );
    }

    private static Duration Days(double days) => Duration.FromDays(days);
}
