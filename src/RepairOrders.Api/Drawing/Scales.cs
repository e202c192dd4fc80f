using System.Globalization;

namespace RepairOrders.Api.Drawing;

/// <summary>Scales a draughtsman uses, and heights too thin to be seen.</summary>
internal static class Scales
{
    private static readonly double[] Steps =
    [
        10,
        5,
        4,
        3,
        2.5,
        2,
        1.5,
        1,
        1 / 1.25,
        1 / 1.5,
        1 / 2.0,
        1 / 2.5,
        1 / 3.0,
        1 / 4.0,
        1 / 5.0,
        1 / 6.0,
        1 / 8.0,
        1 / 10.0,
        1 / 12.5,
        1 / 15.0,
        1 / 20.0,
        1 / 25.0,
        1 / 30.0,
        1 / 40.0,
        1 / 50.0,
        1 / 75.0,
        1 / 100.0,
        1 / 200.0,
        1 / 500.0,
        1 / 1000.0,
    ];

    /// <summary>The largest scale not above what fits.</summary>
    public static double Fitting(double most) => Steps.FirstOrDefault(s => s <= most * 1.0001, Steps[^1]);

    public static string Words(double scale) =>
        scale >= 1
            ? string.Create(CultureInfo.InvariantCulture, $"{scale:0.##} : 1")
            : string.Create(CultureInfo.InvariantCulture, $"1 : {1 / scale:0.##}");
}

/// <summary>
/// Heights above the pipe on paper. Each layer is drawn to scale, but never thinner than can be seen, and what lies on it moves
/// out with it.
/// </summary>
internal sealed class Heights
{
    private readonly double scale;
    private readonly List<(double Mm, double Paper)> faces;

    public Heights(IEnumerable<double> faces, double scale, double least)
    {
        this.scale = scale;
        var sorted = faces.Append(0).Select(f => Math.Round(f, 3)).Distinct().Order().ToList();
        var zero = sorted.IndexOf(0);
        var paper = new double[sorted.Count];
        for (var i = zero + 1; i < sorted.Count; i++)
            paper[i] = paper[i - 1] + Math.Max(least, (sorted[i] - sorted[i - 1]) * scale);
        for (var i = zero - 1; i >= 0; i--)
            paper[i] = paper[i + 1] - Math.Max(least, (sorted[i + 1] - sorted[i]) * scale);
        this.faces = [.. sorted.Zip(paper)];
        Stretched = this.faces.Zip(this.faces.Skip(1)).Any(f => (f.Second.Mm - f.First.Mm) * scale < least - 1e-9);
    }

    /// <summary>Some layer is drawn thicker than its scale.</summary>
    public bool Stretched { get; }

    public double Top => faces[^1].Paper;

    public double Bottom => faces[0].Paper;

    public double At(double mm)
    {
        if (mm <= faces[0].Mm)
            return faces[0].Paper + (mm - faces[0].Mm) * scale;
        for (var i = 1; i < faces.Count; i++)
            if (mm <= faces[i].Mm + 1e-9)
            {
                var (a, b) = (faces[i - 1], faces[i]);
                return a.Paper + (mm - a.Mm) / (b.Mm - a.Mm) * (b.Paper - a.Paper);
            }
        return faces[^1].Paper + (mm - faces[^1].Mm) * scale;
    }

    /// <summary>The faces of wall, loss and pieces.</summary>
    public static IEnumerable<double> Of(Subject s, Fit fit)
    {
        yield return -s.Wall;
        yield return -s.Nominal;
        if (s.Thinnest is > 0 and var left && left < s.Wall)
            yield return s.Outer ? left - s.Wall : -left;
        foreach (var piece in fit.Pieces)
        {
            yield return piece.Inner;
            yield return piece.Outer;
        }
        // Beyond an arc plate a band lies on the pipe itself.
        foreach (var band in fit.Pieces.Where(p => p.RunsDownFrom is not null))
            yield return band.Outer - band.Inner;
    }
}
