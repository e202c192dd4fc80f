using RepairOrders.Api.Drawing;
using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Charts;

/// <summary>
/// The wall unrolled: places along the pipe across, clock positions down, the figure in each field and one hue from thin (strong)
/// to sound (pale), which every eye and every printer tells apart.
/// </summary>
internal static class ThicknessGrid
{
    private const double Left = 19;
    private const double LeastWide = 8.4;
    private const double MostWide = 17;
    private const double High = 8;
    private const double Step = 9.4;

    /// <param name="along">Names of the places along the pipe, with the flow.</param>
    /// <param name="clock">Clock positions, hours.</param>
    /// <param name="walls">Wall by clock position, then place, mm; nothing where none was read.</param>
    /// <param name="nominal">Wall as ordered, mm.</param>
    /// <param name="required">Required wall, mm; fields below it are framed.</param>
    public static Chart Of(
        IReadOnlyList<string> along,
        IReadOnlyList<double> clock,
        IReadOnlyList<IReadOnlyList<double?>> walls,
        double nominal,
        double? required
    )
    {
        const string title = "Wall read, unrolled";
        var board = new Board();
        var wide = Math.Clamp((Graph.Width - Left - 1) / along.Count, LeastWide, MostWide);
        board.Text(0, 4.2, title, bold: true, size: 3.7);
        board.Text(0, 9.4, Say($"mm of {Number(nominal)} as ordered"), size: 3.3, ink: Pen.Quiet);
        board.Text(0, 13.8, "across: along the pipe, with the flow, mm →", size: 3.3, ink: Pen.Quiet);
        var top = 20 + Headed(board, along, wide);
        for (var r = 0; r < clock.Count; r++)
        {
            var y = top + r * High;
            board.Text(Left - 1.6, y + High / 2 + 1.1, Clock(clock[r]), Align.Right, 3.1, ink: Pen.Quiet);
            for (var c = 0; c < along.Count; c++)
                Field(board, Left + c * wide, y, wide, walls[r][c], nominal, required);
        }
        var bottom = Key(board, top + clock.Count * High + 4, nominal, required);
        return new(
            "thickness-grid",
            title,
            ["clock", .. along.Select(a => $"{a}, mm")],
            [
                .. walls.Select(
                    (row, r) =>
                        (IReadOnlyList<string>)
                            [
                                Say($"{clock[r]:0.#}"),
                                .. row.Select(w => w is { } read ? Chart.Number(read) : "not read"),
                            ]
                ),
            ],
            new(
                "thickness-grid",
                title + ".",
                Math.Max(Graph.Width, Left + along.Count * wide + 1),
                bottom,
                board.Marks
            )
        );
    }

    private static string Clock(double hours) => Say($"{hours:0.#} o'clock");

    // Places in words stand in up to three short lines; figures that would touch leave some out.
    private static double Headed(Board board, IReadOnlyList<string> along, double wide)
    {
        var blocks = along.Select(a => TextWidth.Wrap(a, 3.1, wide - 0.6)).ToList();
        var deep = blocks.Max(b => Math.Min(3, b.Count));
        var widest = blocks.Max(b => b.Max(l => TextWidth.Of(l, 3.1))) + 1;
        var every = deep > 1 ? 1 : (int)Math.Ceiling(widest / wide);
        for (var c = 0; c < along.Count; c += every)
        {
            var lines = blocks[c].Take(3).ToList();
            for (var k = 0; k < lines.Count; k++)
                board.Text(
                    Left + (c + 0.5) * wide,
                    19 + (deep - lines.Count + k) * 3.8,
                    lines[k],
                    Align.Middle,
                    3.1,
                    ink: Pen.Quiet
                );
        }
        return (deep - 1) * 3.8;
    }

    private static void Field(
        Board board,
        double x,
        double y,
        double wide,
        double? wall,
        double nominal,
        double? required
    )
    {
        var fill = wall is { } read ? Shade(read / nominal) : Fill.Paper;
        var low = wall < required;
        board.Put(Trace.Box(x, y, x + wide, y + High), Pen.Thin, fill);
        if (low)
            board.Put(Trace.Box(x + 0.5, y + 0.5, x + wide - 0.5, y + High - 0.5), Pen.Alarm);
        board.Text(
            x + wide / 2,
            y + High / 2 + 1.2,
            wall is { } figure ? Say($"{figure:0.0}") : "–",
            Align.Middle,
            3.3,
            bold: low,
            ink: Inks.Dark(fill) ? Pen.None : Pen.Outline
        );
    }

    /// <summary>Seven steps from half the wall and less to the whole wall.</summary>
    public static Fill Shade(double share) =>
        (Fill)((int)Fill.Scale0 + Math.Clamp((int)Math.Floor((share - 0.44) / 0.08), 0, 6));

    private static double Key(Board board, double y, double nominal, double? required)
    {
        for (var i = 0; i < 7; i++)
            board.Put(
                Trace.Box(Left + Step * i, y, Left + Step * (i + 1), y + 3.4),
                Pen.Thin,
                (Fill)((int)Fill.Scale0 + i)
            );
        for (var i = 1; i < 7; i++)
            board.Text(
                Left + Step * i,
                y + 7.2,
                Say($"{nominal * (0.44 + 0.08 * i):0.0}"),
                Align.Middle,
                3,
                ink: Pen.Quiet
            );
        if (required is not { } least)
            return y + 9;
        board.Put(Trace.Box(Left, y + 10, Left + 5, y + 13.4), Pen.Alarm);
        board.Text(
            Left + 7,
            y + 12.9,
            Say($"framed, bold: below the required {Number(least)}"),
            size: 3.3,
            ink: Pen.Alarm
        );
        return y + 15.5;
    }
}
