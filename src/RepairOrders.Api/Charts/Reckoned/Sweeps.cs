using RepairOrders.Api.Calculations;
using RepairOrders.Api.Drawing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Charts.Reckoned;

/// <summary>How a calculation's answer moves with one of its values, the others held.</summary>
internal static class Sweeps
{
    private const int Steps = 24;

    /// <param name="code">The chart's code.</param>
    /// <param name="title">What it shows.</param>
    /// <param name="across">The value that moves, with its unit.</param>
    /// <param name="up">The answer, with its unit.</param>
    /// <param name="most">How far the value moves, from 0.</param>
    /// <param name="answer">The answer at a value; nothing where there is none.</param>
    /// <param name="here">The value that was asked.</param>
    /// <param name="limits">Levels that matter.</param>
    public static Chart? Of(
        string code,
        string title,
        string across,
        string up,
        double most,
        Func<double, double?> answer,
        double here,
        params Limit[] limits
    )
    {
        var curve = Points(most, answer);
        var point = At(answer, here) is { } y ? new Spot(here, y) : (Spot?)null;
        if (curve.Count < 2)
            return null;
        List<Curve> curves = [new("", curve, Pen.Outline)];
        if (point is { } asked)
            curves.Add(new(Say($"here {Number(asked.Y)}"), [asked], Pen.Alarm, Marked: true));
        return Chart(code, title, across, [new Panel(up, curves, limits)]);
    }

    /// <summary>The points of a curve, closer together at its beginning.</summary>
    public static List<Spot> Points(double most, Func<double, double?> answer) =>
        [
            .. Enumerable
                .Range(1, Steps)
                .Select(i => most * Math.Pow((double)i / Steps, 1.5))
                .Select(x => (X: x, Y: At(answer, x)))
                .Where(p => p.Y is { } y && double.IsFinite(y))
                .Select(p => new Spot(p.X, p.Y!.Value)),
        ];

    /// <summary>A chart whose table holds its curves' points.</summary>
    public static Chart Chart(
        string code,
        string title,
        string across,
        IReadOnlyList<Panel> panels,
        bool calendar = false
    ) =>
        new(
            code,
            title,
            ["curve", across, "value"],
            [
                .. panels.SelectMany(p =>
                    p.Curves.Where(c => c.Fill == Fill.None)
                        .SelectMany(c =>
                            c.Points.Select(s =>
                                (IReadOnlyList<string>)
                                    [
                                        c.Words.Length > 0 ? c.Words : p.Up,
                                        calendar
                                            ? Say($"{DateOnly.FromDayNumber((int)s.X):yyyy-MM-dd}")
                                            : Charts.Chart.Number(s.X),
                                        Say($"{s.Y:0.####}"),
                                    ]
                            )
                        )
                ),
            ],
            new Graph(code, title, across) { Calendar = calendar }.Of(panels)
        );

    // A value the engine refuses has no point; the curve ends there.
    private static double? At(Func<double, double?> answer, double x)
    {
        try
        {
            return answer(x);
        }
        catch (Exception e) when (e is MalformedAsk or ProcedureRefusal)
        {
            return null;
        }
    }

    /// <summary>The answer by the calculation's own door, so that it refuses what that refuses.</summary>
    public static T Result<TAsk, T>(TAsk ask, Func<TAsk, CalculationAnswer<T>> calculate)
        where TAsk : notnull => Reckoning.Answer(ask, calculate).Result;
}
