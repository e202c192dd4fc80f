using RepairOrders.Api.Calculations;
using RepairOrders.Api.Drawing;
using RepairOrders.Contract;
using RepairOrders.Engineering.Risk;
using static RepairOrders.Api.Charts.Reckoned.Sweeps;
using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Charts.Reckoned;

/// <summary>Charts of what is reckoned of time and risk.</summary>
internal static class LifeCharts
{
    public static IEnumerable<Chart?> Of(CalculateRemainingLife ask)
    {
        var life = Result(ask, RemainingLife.Calculate);
        List<Spot> read =
        [
            .. ask
                .Readings.GroupBy(r => r.On)
                .OrderBy(g => g.Key)
                .Select(g => new Spot(g.Key.DayNumber, g.Min(r => r.WallMm))),
        ];
        List<Curve> curves = [new("thinnest read", read, Pen.Outline, Marked: true)];
        if (life is { GoverningMmPerYear: { } rate, ReachesRequiredOn: { } end })
            curves.Add(
                new(
                    Say($"{rate:0.00} mm a year"),
                    [
                        new(life.ActualOn.DayNumber, life.ActualMm),
                        new(Math.Min(end.DayNumber, life.ActualOn.DayNumber + 36525), ask.RequiredWallMm),
                    ],
                    Pen.Hidden
                )
            );
        yield return Chart(
            "thickness-trend",
            "Thickness trend",
            "day",
            [
                new Panel(
                    "wall, mm",
                    curves,
                    [
                        new(Say($"required {Number(ask.RequiredWallMm)}"), ask.RequiredWallMm),
                        .. life.ReachesRequiredOn is { } reached && reached.DayNumber - life.ActualOn.DayNumber < 36525
                            ? [new Limit(Say($"reached {reached:yyyy-MM-dd}"), reached.DayNumber, Upright: true)]
                            : Array.Empty<Limit>(),
                    ]
                ),
            ],
            calendar: true
        );
    }

    public static IEnumerable<Chart?> Of(CalculateOutliving ask)
    {
        // The curve needs no million samples; the answer beside it has them.
        var told = Result(ask with { Samples = Math.Min(ask.Samples, 20_000) }, Outliving.Calculate);
        if (told.Curve.Count < 2)
            yield break;
        yield return Chart(
            "shortfall",
            "Chance that it falls short by a day",
            "day",
            [
                new Panel(
                    "probability",
                    [
                        new(
                            "falls short",
                            [.. told.Curve.Select(c => new Spot(c.On.DayNumber, c.Probability))],
                            Pen.Outline
                        ),
                    ],
                    [
                        new(Say($"target {ask.TargetProbability:0.####}"), ask.TargetProbability),
                        new(Say($"asked {ask.By:yyyy-MM-dd}"), ask.By.DayNumber, Upright: true),
                    ]
                ),
            ],
            calendar: true
        );
    }

    public static IEnumerable<Chart?> Of(CalculateRevisitPlan ask)
    {
        var plan = Result(ask, RevisitPlan.Calculate);
        var start = DateOnly.FromDateTime(ask.InServiceFrom.DateTime).DayNumber;
        List<Spot> Every(DateTimeOffset first, double days, double row)
        {
            List<Spot> looks = [];
            for (double at = DateOnly.FromDateTime(first.DateTime).DayNumber; at <= ask.EndDate.DayNumber; at += days)
            {
                looks.Add(new(Math.Floor(at), row));
                if (looks.Count == 400)
                    break;
            }
            return looks;
        }
        var looks = Every(plan.FirstLook, Math.Max(1, plan.LookIntervalDays), 2);
        var walls = Every(plan.FirstThickness, Math.Max(1, plan.ThicknessIntervalDays), 1);
        List<Curve> curves = [new("in service", [new(start, 0)], Pen.Outline, Marked: true)];
        if (looks.Count > 0)
            curves.Add(new(Say($"look, {looks.Count}"), looks, Pen.None, Marked: true));
        if (walls.Count > 0)
            curves.Add(new(Say($"wall read, {walls.Count}"), walls, Pen.Alarm, Marked: true));
        yield return Chart(
            "revisits",
            "When it is looked at",
            "day",
            [
                new Panel(
                    "kind of visit",
                    curves,
                    [new(Say($"ends {ask.EndDate:yyyy-MM-dd}"), ask.EndDate.DayNumber, Upright: true)]
                )
                {
                    Ranks = true,
                },
            ],
            calendar: true
        );
    }

    public static IEnumerable<Chart?> Of(CalculateRiskClass ask)
    {
        var rank = Result(ask, RiskOfRepair.Calculate);
        yield return Matrix(rank.AsSigned, rank.Today);
    }

    // Five by five, the class in each field, and where this repair stands.
    private static Chart Matrix(RiskView signed, RiskView? today)
    {
        const double left = 18,
            top = 14,
            wide = 15,
            high = 10;
        var board = new Board();
        board.Text(0, 4.2, "Risk matrix", bold: true, size: 3.7);
        foreach (var c in Enumerable.Range(1, 5))
        foreach (var l in Enumerable.Range(1, 5))
        {
            var risk = RiskRanking.FromMatrix(c, l);
            var (x, y) = (left + (l - 1) * wide, top + (5 - c) * high);
            var fill = Shade(risk);
            board.Put(Trace.Box(x, y, x + wide, y + high), Pen.Thin, fill);
            var here = c == signed.Consequence && l == signed.Likelihood;
            var now = today is not null && c == today.Consequence && l == today.Likelihood;
            if (here || now)
                board.Put(Trace.Box(x + 0.8, y + 0.8, x + wide - 0.8, y + high - 0.8), Pen.Alarm);
            board.Text(
                x + wide / 2,
                y + high / 2 + 1.3,
                $"{risk}{(here ? ", signed" : now ? ", today" : "")}",
                Align.Middle,
                here || now ? 2.9 : 3.4,
                bold: here || now,
                ink: Inks.Dark(fill) ? Pen.None : Pen.Outline
            );
        }
        foreach (var i in Enumerable.Range(1, 5))
        {
            board.Text(left - 2, top + (5 - i) * high + high / 2 + 1.2, Say($"{i}"), Align.Right, 3.4, ink: Pen.Quiet);
            board.Text(
                left + (i - 1) * wide + wide / 2,
                top + 5 * high + 5,
                Say($"{i}"),
                Align.Middle,
                3.4,
                ink: Pen.Quiet
            );
        }
        board.Text(4, top + 2.5 * high, "consequence", Align.Middle, 3.4, turn: -90);
        board.Text(left + 2.5 * wide, top + 5 * high + 10.4, "likelihood", Align.Middle, 3.4);
        List<IReadOnlyList<string>> rows =
        [
            ["as signed", $"{signed.Consequence}", $"{signed.Likelihood}", $"{signed.Class}"],
        ];
        if (today is not null)
            rows.Add(["today", $"{today.Consequence}", $"{today.Likelihood}", $"{today.Class}"]);
        return new(
            "risk-matrix",
            "Risk matrix",
            ["when", "consequence", "likelihood", "class"],
            rows,
            new("risk-matrix", "Risk matrix.", Graph.Width, top + 5 * high + 12.5, board.Marks)
        );
    }

    private static Fill Shade(Engineering.Risk.RiskClass risk) =>
        risk switch
        {
            Engineering.Risk.RiskClass.A => Fill.Scale1,
            Engineering.Risk.RiskClass.B => Fill.Scale2,
            Engineering.Risk.RiskClass.C => Fill.Scale4,
            _ => Fill.Paper,
        };
}
