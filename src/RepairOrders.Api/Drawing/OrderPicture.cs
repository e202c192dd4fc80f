using RepairOrders.Api.Drawing.Methods;
using static RepairOrders.Api.Drawing.Board;

namespace RepairOrders.Api.Drawing;

/// <summary>The drawing of an order: section, view on the defect, and the cut along the pipe, each to its stated scale.</summary>
internal static class OrderPicture
{
    public const double Width = 186;
    private const double SectionMiddle = 37;
    private const double SectionReach = 30;
    private const double ViewLeft = 82;
    private const double ViewHalf = 49;
    private const double Stub = 9;
    private const double CutWidth = 118;
    private const double CutStack = 17;
    private const double NoteWidth = 91;

    public static Picture Of(Subject s)
    {
        var board = new Board();
        var fit = Fits.Of(s);
        var section = Sections(s, fit);
        var view = Elevations(s, fit, section);
        Headed(board, s, fit, section, view);
        Flow(board);
        var half = Math.Min(ViewHalf, Math.Max(Shown(s, fit) * view, 22) + Stub);
        var (up, down) = Reaches(s, fit, section, view, half);
        var middle = 10 + up;
        new SectionView(board, s, fit, new(SectionMiddle, middle), section).Draw();
        new ElevationView(board, s, fit, new(ViewLeft + 3 + ViewHalf, middle), view, half).Draw();
        var cut = Math.Max(Math.Max(fit.Reach, s.Length / 2 * 1.3), 15);
        var bottom = Cut(board, s, fit, cut, middle + down + 3);
        bottom = Notes(board, s, fit, bottom);
        return new("drawing", Title(s), Width, bottom, board.Marks);
    }

    // The sheet is no higher than what is on it.
    private static (double Up, double Down) Reaches(Subject s, Fit fit, double section, double view, double half)
    {
        var round = new SectionView(new Board(), s, fit, default, section);
        var square = new ElevationView(new Board(), s, fit, default, view, half);
        return (
            Math.Max(round.Outermost + (fit.Round.Count > 0 ? 8 : 4), square.Reach(above: true)),
            Math.Max(round.Foot + 2, square.Reach(above: false))
        );
    }

    /// <summary>Half the length along the pipe that must be seen.</summary>
    private static double Shown(Subject s, Fit fit)
    {
        var rods = fit.Fasteners.Select(f => Math.Abs(f.Along) + f.Long / 2).DefaultIfEmpty(0).Max();
        return Math.Max(Math.Max(fit.Reach, rods), Math.Max(s.Length / 2 * 1.3, s.Outside / 3));
    }

    private static double Sections(Subject s, Fit fit)
    {
        var scale = Scales.Fitting(SectionReach / (s.Radius + fit.Height));
        // Layers drawn thicker than their scale may reach further out than they measure.
        while (new SectionView(new Board(), s, fit, default, scale).Outermost > SectionReach + 2)
            scale = Scales.Fitting(scale * 0.99);
        return scale;
    }

    // A small repair on a wide pipe would be a dot: then part of the pipe is shown, larger.
    private static double Elevations(Subject s, Fit fit, double section)
    {
        var whole = Math.Min(section, Scales.Fitting((ViewHalf - Stub) / Shown(s, fit)));
        var reach = Math.Max(fit.Reach, s.Length / 2 * 1.3);
        var round = fit.Pieces.Where(p => p.HalfAngle < 60).Select(p => p.HalfAngle).DefaultIfEmpty(0).Max();
        var high = s.Radius * Math.Sin(Math.Max(round, Math.Min(60, s.HalfAngle)) * Math.PI / 180);
        if (round <= 0 && fit.Pieces.Count > 0)
            return whole;
        var part = Scales.Fitting(
            Math.Min(ElevationView.Part * 0.8 / Math.Max(1, high), (ViewHalf - Stub) / Math.Max(1, reach))
        );
        return part > 1.9 * whole && s.Radius * part > ElevationView.Part ? part : whole;
    }

    private static void Headed(Board board, Subject s, Fit fit, double section, double view)
    {
        var remark = new SectionView(new Board(), s, fit, default, section).Remark;
        board.Text(0, 4, "Section at the defect, looking with the flow", bold: true);
        board.Text(0, 8.2, Say($"{Scales.Words(section)}{remark} · mm"), ink: Pen.Quiet, size: 2.8);
        board.Text(
            ViewLeft,
            4,
            s.Defect is { } d ? Say($"View square to the defect, {d.ClockHours:0.#} o'clock") : "View from above",
            bold: true
        );
        board.Text(
            ViewLeft,
            8.2,
            Say($"{Scales.Words(view)}{(s.Radius * view > ElevationView.Part ? ", part of the pipe" : "")} · mm"),
            ink: Pen.Quiet,
            size: 2.8
        );
    }

    private static void Flow(Board board)
    {
        board.Text(Width - 13, 4, "flow", Align.Right, 2.8, ink: Pen.Quiet);
        board.Line(Pen.Dimension, new(Width - 12, 3), new(Width - 1.5, 3));
        board.Arrow(new(Width, 3), 90);
    }

    private static double Cut(Board board, Subject s, Fit fit, double shown, double top)
    {
        var along = Scales.Fitting((CutWidth / 2 - 6) / shown);
        var thick = Scales.Fitting(Math.Min(5, CutStack / (s.Wall + fit.Pieces.Select(p => p.Outer).Append(0).Max())));
        var probe = new CutView(new Board(), s, fit, default, CutWidth, along, thick);
        var y = top + 10 + Math.Max(probe.Above, 6);
        board.Text(0, top + 3, "Cut along the pipe through the defect", bold: true);
        board.Text(
            62,
            top + 3,
            Say($"along {Scales.Words(along)} · thickness {Scales.Words(thick)} · mm"),
            ink: Pen.Quiet,
            size: 2.8
        );
        new CutView(board, s, fit, new(2, y), CutWidth, along, thick).Draw();
        return y + probe.Below + 4;
    }

    private static double Notes(Board board, Subject s, Fit fit, double top)
    {
        List<string> notes = [.. fit.Notes];
        if (s.Design is null)
            notes.Add("No design yet: only pipe and defect are drawn.");
        else if (s.Design.Entered)
            notes.Add(
                Say($"Entered design, calculation {s.Design.CalculationReference}: drawn as far as its sizes tell.")
            );
        if (s.Design is not null && fit.Pieces.Count == 0)
            notes.Add(Say($"The design gives no sizes of the {s.Design.Name} to draw by."));
        if (s.Defect is null)
            notes.Add("The defect has not been measured.");
        // Two columns, read down; no note is torn between them.
        var lines = notes.ConvertAll(n => TextWidth.Wrap("– " + n, TextSize, NoteWidth));
        var half = (lines.Sum(l => l.Count) + 1) / 2;
        var (left, right) = (0, 0);
        foreach (var note in lines)
        {
            var second = left >= half;
            for (var i = 0; i < note.Count; i++)
                board.Text(
                    (second ? NoteWidth + 4 : 0) + (i == 0 ? 0 : 2.2),
                    top + 4.6 * ((second ? right : left) + i) + 3,
                    note[i]
                );
            (left, right) = second ? (left, right + note.Count) : (left + note.Count, right);
        }
        return top + 4.6 * Math.Max(left, right) + 2;
    }

    private static string Title(Subject s)
    {
        var pipe = Say($"Drawing of {s.Number}: pipe {Number(s.Outside)} mm outside, wall {Number(s.Nominal)} mm");
        var defect = SectionView.Words(s) is [var first, ..] ? $"; defect {first}" : "";
        return pipe + defect + (s.Design is { } design ? $"; {design.Name}" : "") + ".";
    }
}
