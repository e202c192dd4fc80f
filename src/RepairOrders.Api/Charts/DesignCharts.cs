using RepairOrders.Api.Drawing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Charts;

/// <summary>What a method's sizing gives as curves, such as tension and pressure round the arc; those over one axis share a chart.</summary>
internal static class DesignCharts
{
    public static IEnumerable<Chart> Of(MethodDesignView? method) =>
        (method?.Series ?? []).GroupBy(s => s.Across).Select(g => Of([.. g]));

    private static Chart Of(IReadOnlyList<SeriesView> series)
    {
        var first = series[0];
        var words = string.Join(" and ", series.Select(s => s.Words.Split(',')[0]).Distinct());
        var rest = first.Words.Contains(',', StringComparison.Ordinal) ? first.Words[first.Words.IndexOf(',')..] : "";
        var title = char.ToUpperInvariant(words[0]) + words[1..] + rest;
        return new(
            first.Code,
            title,
            [first.Across, .. series.Select(s => s.Up)],
            [
                .. first.Points.Select(
                    (p, i) =>
                        (IReadOnlyList<string>)
                            [
                                Chart.Number(p.X),
                                .. series.Select(s => Chart.Number(s.Points[Math.Min(i, s.Points.Count - 1)].Y)),
                            ]
                ),
            ],
            new Graph(first.Code, title, first.Across).Of([
                .. series.Select(s => new Panel(
                    s.Up,
                    [
                        new(
                            Board.Say($"at the end {s.Points[^1].Y:G4}"),
                            [.. s.Points.Select(p => new Spot(p.X, p.Y))],
                            Pen.Outline
                        ),
                    ],
                    []
                )),
            ])
        );
    }
}
