using RepairOrders.Contract;
using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Drawing;

/// <summary>The wall cut along the pipe through the defect, thicknesses to a scale of their own: what lies on what.</summary>
internal sealed class CutView(Board board, Subject s, Fit fit, Spot left, double width, double scale, double thickness)
{
    private const double LabelEvery = 4.3;
    private readonly Heights heights = new(Heights.Of(s, fit), thickness, 0.7);
    private readonly double middle = left.X + width / 2;

    private double X(double along) => Math.Clamp(middle + along * scale, left.X, left.X + width);

    private double Y(double height) => left.Y - heights.At(height);

    public double Above => heights.Top;

    public double Below => -heights.Bottom;

    public void Draw()
    {
        List<(Spot At, string Text, Pen Ink)> labels = [];
        Wall();
        Loss(labels);
        foreach (var piece in fit.Pieces.Where(Covers))
        {
            Body(piece);
            if (piece.Words.Length > 0)
                labels.Add((Inside(piece), piece.Words, Pen.Outline));
        }
        if (!fit.Replaces || s.Defect is null)
            labels.Add((new(left.X + width - 3, (Y(0) + Y(-s.Wall)) / 2), WallWords(), Pen.Outline));
        Pointed(labels);
    }

    // A body is cut when it lies over the defect.
    private static bool Covers(Piece p) => p.HalfAngle >= 180 || Math.Abs(p.At) <= p.HalfAngle;

    private string WallWords() =>
        s.Sound is { } sound
            ? Say($"wall {Number(sound)} of {Number(s.Nominal)}")
            : Say($"wall {Number(s.Nominal)}, as ordered");

    private void Wall()
    {
        foreach (var (from, to) in OldPipe())
            board.Put(Trace.Box(from, Y(0), to, Y(-s.Wall)), Pen.Thin, Fill.Wall, "pipe");
        foreach (var (from, to) in OldPipe())
        {
            board.Line(Pen.Outline, new(from, Y(0)), new(to, Y(0)));
            board.Line(Pen.Outline, new(from, Y(-s.Wall)), new(to, Y(-s.Wall)));
        }
        if (s.Nominal - s.Wall > 0.05)
            board.Line(Pen.Hidden, new(left.X, Y(-s.Nominal)), new(left.X + width, Y(-s.Nominal)));
    }

    private IEnumerable<(double From, double To)> OldPipe()
    {
        if (!fit.Replaces)
            return [(left.X, left.X + width)];
        var spool = fit.Pieces[0];
        return [(left.X, X(spool.From)), (X(spool.To), left.X + width)];
    }

    private void Loss(List<(Spot, string, Pen)> labels)
    {
        if (s.Defect is not { } defect || fit.Replaces)
            return;
        var (inner, outer) = SectionView.Depth(s);
        var half = Math.Max(0.8, s.Length / 2 * scale);
        var (from, to) = (Math.Max(left.X, middle - half), Math.Min(left.X + width, middle + half));
        if (s.Thinnest is null || defect.ThroughWall)
            board.Put(Trace.Box(from, Y(0), to, Y(-s.Wall)), Pen.Hidden);
        else
            board.Put(Trace.Box(from, Y(outer), to, Y(inner)), Pen.Alarm, Fill.Paper, "defect");
        if (defect.ThroughWall)
        {
            half = Math.Min(half, Math.Max(0.5, s.Hole / 2 * scale));
            board.Put(Trace.Box(middle - half, Y(0), middle + half, Y(-s.Wall)), Pen.Alarm, Fill.Alarm, "defect");
        }
        var words = SectionView.Words(s);
        labels.Add(
            (
                new(Math.Min(middle + half * 0.6, left.X + width - 6), (Y(inner) + Y(outer)) / 2 + 0.3),
                words[0],
                Pen.Alarm
            )
        );
        if (defect.Side == DefectSide.Unknown)
            labels.Add((new(middle, Y(-s.Wall) - 0.2), "side not known: drawn inside", Pen.Quiet));
    }

    private void Body(Piece p)
    {
        var (from, to, low, high) = (X(p.From), X(p.To), Y(p.Inner), Y(p.Outer));
        var run = Math.Min(p.Taper * scale, (to - from) / 2);
        var contour = p.Fillet switch
        {
            1 => Trace.Area(new(from, low), new(from, high), new(to, low)),
            -1 => Trace.Area(new(from, low), new(to, high), new(to, low)),
            _ when run > 0 => Trace.Area(new(from, low), new(from + run, high), new(to - run, high), new(to, low)),
            _ => Trace.Box(from, high, to, low),
        };
        board.Put(contour, Pen.Outline, p.Fill, p.Part);
    }

    private Spot Inside(Piece p)
    {
        var inset = Math.Min(2.5, (X(p.To) - X(p.From)) / 4) + Math.Min(p.Taper * scale, (X(p.To) - X(p.From)) / 3);
        return new(X(p.To) - inset, (Y(p.Inner) + Y(p.Outer)) / 2);
    }

    // Texts in one column at the right, in the order of the layers, each with its leader.
    private void Pointed(List<(Spot At, string Text, Pen Ink)> labels)
    {
        var sorted = labels.OrderBy(l => l.At.Y).ToList();
        var x = left.X + width + 6;
        var y = (Y(0) + Y(-s.Wall)) / 2 - Above / 2 - (sorted.Count - 1) * LabelEvery / 2;
        foreach (var (at, text, ink) in sorted)
        {
            board.Line(Pen.Thin, at, new(x - 2.5, y), new(x - 0.6, y));
            board.Put(Trace.Circle(at, 0.5), Pen.None, ink == Pen.Alarm ? Fill.Alarm : Fill.Weld);
            board.Text(x, y + 1.1, text, ink: ink, bold: ink == Pen.Alarm);
            y += LabelEvery;
        }
    }
}
