using RepairOrders.Api.Drawing;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Charts;

/// <summary>The wall cut along the pipe through the deepest place of each ring, with the stretch that governs.</summary>
internal static class Profiles
{
    /// <param name="positions">Positions along the pipe, rising, mm.</param>
    /// <param name="depths">Depths, mm.</param>
    /// <param name="outside">Outside diameter, mm.</param>
    /// <param name="wall">Wall, mm.</param>
    public static Chart Of(IReadOnlyList<double> positions, IReadOnlyList<double> depths, double outside, double wall)
    {
        const string title = "River-bottom profile";
        var weakest = EffectiveArea.Weakest(
            [.. positions],
            [.. depths],
            Length.FromMillimeters(outside),
            Length.FromMillimeters(wall)
        );
        var (from, to) = (positions[weakest.From], positions[weakest.To]);
        List<Spot> bottom = [.. positions.Zip(depths, (x, d) => new Spot(x, d))];
        var effective = bottom.Where(s => s.X >= from && s.X <= to).ToList();
        var picture = new Graph("river-bottom", title, "along the pipe, with the flow, mm").Of([
            new(
                "depth, mm",
                [
                    // The metal that is left, hatched as cut metal is.
                    new("", [.. bottom, new(positions[^1], wall), new(positions[0], wall)], Pen.None)
                    {
                        Fill = Fill.Wall,
                    },
                    new("", [new(from, 0), .. effective, new(to, 0)], Pen.None) { Fill = Fill.Scale3 },
                    new("deepest of each ring", bottom, Pen.Outline, Marked: true),
                    new(
                        Say($"effective length {Number(to - from)}"),
                        [new(from, wall), new(from, 0), new(to, 0), new(to, wall)],
                        Pen.Alarm
                    )
                    {
                        Named = new(to, wall / 2),
                    },
                ],
                [new(Say($"whole wall {Number(wall)}"), wall)]
            )
            {
                Down = true,
            },
        ]);
        return new(
            "river-bottom",
            title,
            ["along, mm", "depth, mm", "in the effective length"],
            [
                .. positions.Zip(
                    depths,
                    (x, d) =>
                        (IReadOnlyList<string>)[Chart.Number(x), Chart.Number(d), x >= from && x <= to ? "yes" : "no"]
                ),
            ],
            picture
        );
    }
}
