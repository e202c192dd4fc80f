using RepairOrders.Api.Assessing;
using RepairOrders.Api.Figures;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Life;
using RepairOrders.Engineering.Risk;
using UnitsNet;

namespace RepairOrders.Api.Sizing;

/// <summary>From when a repair's life is counted, and when it ends.</summary>
internal static class EndDates
{
    /// <summary>The day every life is counted from: the in-service start once there is one, before that the planned fit.</summary>
    public static DateOnly Start(RepairOrder order, DateOnly plannedFit) =>
        Rounds.InServiceSince(order) is { } since ? order.Site.Today(since) : plannedFit;

    /// <summary>The last day in service as it stands now; nothing before the first approval, or on the emergency path the start.</summary>
    public static DateOnly? Of(RepairOrder order) => Standing.EndInForce.Of(order)?.On;

    public static EndDateView Reckon(
        RepairOrder order,
        SizeRepair ask,
        MethodDesignView method,
        RiskRank risk,
        DateOnly? shutdown
    )
    {
        var start = Start(order, ask.PlannedFitOn);
        var assessment = order.Last<Assessment>()!.Asked;
        var end = EndDate.Earliest(
            new EndDateAsk(
                start,
                CapEnds(order, start, risk),
                method.DesignLifeDays is { } life ? Duration.FromDays(life) : null,
                Life(method, assessment.Judgement),
                assessment.Ask.Readings.Select(r => (DateOnly?)r.On).Max(),
                shutdown,
                ask.ChangeControl?.EndsOn,
                ask.MaterialStatementEnds
            )
        );
        return View(end.Result);
    }

    /// <summary>
    /// Last day the class allows. In service nothing but an extension moves it out; over rounds it runs on from the first
    /// in-service start at the shortest cap ever signed, so a failure buys no time.
    /// </summary>
    private static DateOnly CapEnds(RepairOrder order, DateOnly start, RiskRank risk)
    {
        if (Planning.InService(order) && order.ApprovedDesign is not null && Of(order) is { } end)
            return end;
        // What is being signed now stands under the figures in force now.
        var cap = order.Site.FiguresInForce.Of(risk.Class).Cap;
        if (Rounds.FirstInService(order) is not { } first)
            return start.AddDays(cap.Days);
        var shortest = order
            .All<Design>()
            .Select(d => order.Site.FiguresOf(d.Asked.FiguresVersion).Of(d.Asked.Risk.Class).Cap)
            .Append(cap)
            .Min();
        return order.Site.Today(first).AddDays(shortest.Days);
    }

    // Where the repair holds the pressure, the wall beside it is what counts; where it only seals, the thinnest wall is.
    private static Duration? Life(MethodDesignView method, Judgement judged)
    {
        if (judged.RateMmPerYear is not { } rate)
            return null;
        var holds = method.PressureHeldBar is not null;
        var actual = (holds ? judged.SoundWallMm : Math.Min(judged.ThinnestMm ?? 0, judged.SoundWallMm ?? 0)) ?? 0;
        var least = holds ? method.LeastWallMm : judged.RequiredWallMm ?? 0;
        return RemainingLife.Of(
            Length.FromMillimeters(actual),
            Length.FromMillimeters(least),
            CorrosionRate.FromMillimetresPerYear(rate)
        );
    }

    public static EndDateView View(EndDate end) => new(end.On, View(end.Governing), [.. end.Terms.Select(View)]);

    private static EndTermView View(EndTerm term) => new(term.Code, term.Words, term.On);
}
