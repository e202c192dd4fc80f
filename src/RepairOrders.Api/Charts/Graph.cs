using RepairOrders.Api.Drawing;

namespace RepairOrders.Api.Charts;

/// <summary>
/// Curves over two axes, as an engineer draws them: round figures on the axes, limits named on their line. Several fields may
/// stand over one axis across. Drawn so narrow, and in letters so large, that a telephone shows it whole.
/// </summary>
/// <param name="code">The picture's code.</param>
/// <param name="title">What it shows.</param>
/// <param name="across">What runs across, with its unit.</param>
internal sealed class Graph(string code, string title, string across)
{
    public const double Width = 112;
    public const double TextSize = 3.4;
    private const double Left = 17;
    private const double Right = 80;
    private const double Top = 10;
    private const double Gap = 7;
    private const double Line = 4.1;

    /// <summary>Days run across, by their number.</summary>
    public bool Calendar { get; init; }

    public Picture Of(params IReadOnlyList<Panel> panels)
    {
        var board = new Board();
        var head = board.Wrapped(0, 4.2, title, Width);
        var values = panels.SelectMany(p =>
            p.Curves.SelectMany(c => c.Points).Select(s => s.X).Concat(p.Limits.Where(l => l.Upright).Select(l => l.At))
        );
        var xs = Calendar ? Axis.Calendar(values) : Axis.Round(values, fromZero: true);
        var high = panels.Count == 1 ? 58.0 : 36;
        var top = Top + head;
        foreach (var panel in panels)
        {
            new Field(board, panel, xs, new(Left, Right, top, top + high)).Draw(last: panel == panels[^1]);
            top += high + Gap;
        }
        var bottom = top - Gap;
        board.Text((Left + Right) / 2, bottom + 10.4, across, Align.Middle, TextSize);
        return new(code, title + ".", Width, bottom + 12.5, board.Marks);
    }

    private sealed record Frame(double Left, double Right, double Top, double Bottom);

    private sealed class Field(Board board, Panel panel, Axis xs, Frame frame)
    {
        private readonly Axis ys = Axis.Round(
            panel
                .Curves.SelectMany(c => c.Points)
                .Select(p => p.Y)
                .Concat(panel.Limits.Where(l => !l.Upright).Select(l => l.At)),
            !panel.OwnZero
        );

        public void Draw(bool last)
        {
            foreach (var curve in panel.Curves.Where(c => c.Fill != Fill.None))
                board.Put(Trace.Area([.. curve.Points.Select(At)]), Pen.None, curve.Fill);
            Axes(last);
            foreach (var limit in panel.Limits)
                board.Line(
                    Pen.Hidden,
                    limit.Upright ? new(X(limit.At), frame.Top) : new(frame.Left, Y(limit.At)),
                    limit.Upright ? new(X(limit.At), frame.Bottom) : new(frame.Right, Y(limit.At))
                );
            foreach (var curve in panel.Curves)
                Drawn(curve);
            Named();
        }

        private double X(double value) => frame.Left + xs.Share(value) * (frame.Right - frame.Left);

        private double Y(double value) =>
            panel.Down
                ? frame.Top + ys.Share(value) * (frame.Bottom - frame.Top)
                : frame.Bottom - ys.Share(value) * (frame.Bottom - frame.Top);

        private Spot At(Spot value) => new(X(value.X), Y(value.Y));

        private void Axes(bool last)
        {
            var each = frame.Bottom - frame.Top < 50 ? 2 : 1;
            for (var i = 0; i < ys.Ticks.Count && !panel.Ranks; i++)
            {
                var y = Y(ys.Ticks[i]);
                board.Line(Pen.Quiet, new(frame.Left - 1.2, y), new(frame.Left, y));
                if (i % each == 0)
                    board.Text(frame.Left - 1.8, y + 1.2, ys.Words(ys.Ticks[i]), Align.Right, TextSize, ink: Pen.Quiet);
            }
            foreach (var tick in xs.Ticks)
                board.Line(Pen.Quiet, new(X(tick), frame.Bottom), new(X(tick), frame.Bottom + 1.2));
            if (last)
                foreach (var tick in Spread())
                    board.Text(X(tick), frame.Bottom + 5, xs.Words(tick), Align.Middle, TextSize, ink: Pen.Quiet);
            board.Line(
                Pen.Outline,
                new(frame.Left, frame.Top),
                new(frame.Left, frame.Bottom),
                new(frame.Right, frame.Bottom)
            );
            board.Text(4, (frame.Top + frame.Bottom) / 2, panel.Up, Align.Middle, TextSize, turn: -90);
        }

        // Figures that would touch leave every second one out.
        private IEnumerable<double> Spread()
        {
            var each = (frame.Right - frame.Left) / Math.Max(1, xs.Ticks.Count - 1);
            var wide = xs.Ticks.Max(t => TextWidth.Of(xs.Words(t), TextSize)) + 1.5;
            var every = (int)Math.Ceiling(wide / each);
            return xs.Ticks.Where((_, i) => i % every == 0);
        }

        private void Drawn(Curve curve)
        {
            var spots = curve.Points.Select(At).ToArray();
            if (spots.Length > 1 && curve.Pen != Pen.None)
                board.Line(curve.Pen, spots);
            if (curve.Marked)
                foreach (var spot in spots)
                    board.Put(Trace.Circle(spot, 0.95), Pen.Outline, curve.Pen == Pen.Alarm ? Fill.Alarm : Fill.Paper);
        }

        // Names at the right, pushed apart where they would meet, each with a thin leader to what it names.
        private void Named()
        {
            var names = Names().OrderBy(n => n.At.Y).ThenByDescending(n => n.At.X).ToList();
            var room = Width - frame.Right - 4.4;
            var blocks = names
                .Select(n => TextWidth.Wrap(n.Text, TextSize, n.Ink == Pen.Alarm ? room / 1.1 : room))
                .ToList();
            var tops = new double[names.Count];
            var next = frame.Top - 3.0;
            for (var i = 0; i < names.Count; i++)
            {
                tops[i] = Math.Max(next, names[i].At.Y);
                next = tops[i] + Line * blocks[i].Count + 0.6;
            }
            // Below the frame stand the figures of the axis: what was pushed too far moves up again.
            var limit = frame.Bottom + 1.0;
            for (var i = names.Count - 1; i >= 0; i--)
            {
                tops[i] = Math.Min(tops[i], limit - Line * (blocks[i].Count - 1));
                limit = tops[i] - Line - 0.6;
            }
            for (var i = 0; i < names.Count; i++)
            {
                var (at, _, ink) = names[i];
                board.Line(Pen.Quiet, at, new(frame.Right + 2.4, tops[i]), new(frame.Right + 3.4, tops[i]));
                for (var k = 0; k < blocks[i].Count; k++)
                    board.Text(
                        frame.Right + 4,
                        tops[i] + 1.2 + Line * k,
                        blocks[i][k],
                        size: TextSize,
                        ink: ink,
                        bold: ink == Pen.Alarm
                    );
            }
        }

        private IEnumerable<(Spot At, string Text, Pen Ink)> Names() =>
            [
                .. panel
                    .Curves.Where(c => c.Words.Length > 0)
                    .Select(c => (At(c.Named ?? c.Points[^1]), c.Words, c.Pen == Pen.Alarm ? Pen.Alarm : Pen.Outline)),
                .. panel
                    .Limits.Where(l => !l.Upright)
                    .Select(l => (new Spot(frame.Right, Y(l.At)), l.Words, Pen.Quiet)),
                .. panel
                    .Limits.Where(l => l is { Upright: true, Words.Length: > 0 })
                    .Select(l => (new Spot(X(l.At), frame.Top + 1), l.Words, Pen.Quiet)),
            ];
    }
}
