using System.Globalization;
using RepairOrders.Api.Drawing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Charts;

/// <summary>A chart with the figures it shows: whoever cannot see the picture reads the table.</summary>
/// <param name="Code">Lower-case words joined by hyphens.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Columns">Headings of the table, with units.</param>
/// <param name="Rows">The figures.</param>
/// <param name="Picture">The picture.</param>
internal sealed record Chart(
    string Code,
    string Title,
    IReadOnlyList<string> Columns,
    IReadOnlyList<IReadOnlyList<string>> Rows,
    Picture Picture
)
{
    public ChartView View() => new(Code, Title, Columns, Rows, Picture.Svg());

    public static string Number(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}

/// <summary>One of the fields of a graph: what runs up in it, its curves and the levels that matter.</summary>
/// <param name="Up">What runs up, with its unit.</param>
/// <param name="Curves">The curves.</param>
/// <param name="Limits">Levels and moments that matter.</param>
internal sealed record Panel(string Up, IReadOnlyList<Curve> Curves, IReadOnlyList<Limit> Limits)
{
    /// <summary>The axis up runs downwards: depths.</summary>
    public bool Down { get; init; }

    /// <summary>The axis up begins where the figures do: temperatures.</summary>
    public bool OwnZero { get; init; }

    /// <summary>What runs up is no quantity: only the names tell it.</summary>
    public bool Ranks { get; init; }
}

/// <summary>A curve; without a line it is points alone.</summary>
/// <param name="Words">What it is; stands beside its end.</param>
/// <param name="Points">The points, in order.</param>
/// <param name="Pen">How it is drawn.</param>
/// <param name="Marked">Each point is marked.</param>
internal sealed record Curve(string Words, IReadOnlyList<Spot> Points, Pen Pen, bool Marked = false)
{
    /// <summary>What fills it, where it goes round an area.</summary>
    public Fill Fill { get; init; } = Fill.None;

    /// <summary>The point its words stand beside; nothing for the last.</summary>
    public Spot? Named { get; init; }
}

/// <summary>A level or a moment that matters, across the whole chart.</summary>
internal sealed record Limit(string Words, double At, bool Upright = false);
