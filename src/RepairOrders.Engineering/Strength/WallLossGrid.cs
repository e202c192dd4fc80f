using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>What one row of a grid runs along.</summary>
public enum GridRows
{
    /// <summary>A row is a line along the pipe; its columns are stations.</summary>
    AlongThePipe,

    /// <summary>A row is a ring round the pipe; its columns are clock positions.</summary>
    RoundThePipe,
}

/// <summary>The unit of a grid's readings.</summary>
public enum GridUnit
{
    /// <summary>Millimetres.</summary>
    Millimetre,

    /// <summary>Inches.</summary>
    Inch,
}

/// <summary>How a grid of thickness readings lies on the pipe.</summary>
/// <param name="AxialSpacing">Distance between stations along the pipe.</param>
/// <param name="CircumferentialSpacing">Distance between readings round the pipe, on its surface.</param>
/// <param name="Unit">Unit of the readings.</param>
/// <param name="Rows">What one row of the text runs along.</param>
public sealed record GridLayout(Length AxialSpacing, Length CircumferentialSpacing, GridUnit Unit, GridRows Rows);

/// <summary>One reading of a grid: its place, counted from 1 as in the text, and the wall left there.</summary>
/// <param name="Row">Row of the text.</param>
/// <param name="Column">Column of the text.</param>
/// <param name="Wall">Wall left.</param>
public sealed record GridReading(int Row, int Column, Length Wall);

/// <summary>What the readings of a grid say as numbers.</summary>
/// <param name="Count">Cells that were read.</param>
/// <param name="Missing">Cells that were left blank.</param>
/// <param name="Least">The least wall and its place.</param>
/// <param name="Average">Mean wall.</param>
/// <param name="Variation">Coefficient of variation [-].</param>
public sealed record GridStatistics(int Count, int Missing, GridReading Least, Length Average, double Variation);

/// <summary>A grid of remaining wall, by station along the pipe and place round it.</summary>
public sealed partial class WallLossGrid
{
    private readonly double[,] wall; // [station, place], mm; NaN where it was not read

    private WallLossGrid(double[,] wall, GridLayout layout)
    {
        this.wall = wall;
        Layout = layout;
    }

    /// <summary>How the grid lies on the pipe.</summary>
    public GridLayout Layout { get; }

    /// <summary>Number of stations along the pipe.</summary>
    public int Stations => wall.GetLength(0);

    /// <summary>Number of places round the pipe.</summary>
    public int Places => wall.GetLength(1);

    /// <summary>Wall left at a station and place, counted from 0.</summary>
    /// <param name="station">Station along the pipe.</param>
    /// <param name="place">Place round it.</param>
    /// <returns>Wall left; nothing where it was not read.</returns>
    public Length? this[int station, int place] =>
        double.IsNaN(wall[station, place]) ? null : Length.FromMillimeters(wall[station, place]);

    /// <summary>What the readings say as numbers.</summary>
    /// <returns>Counts, least, mean and variation.</returns>
    public GridStatistics Statistics()
    {
        var read = Read().ToList();
        var (station, place) = read.MinBy(c => wall[c.Station, c.Place]);
        var readings = read.Select(c => wall[c.Station, c.Place]).ToArray();
        var (row, column) = Layout.Rows == GridRows.AlongThePipe ? (place, station) : (station, place);
        return new(
            readings.Length,
            wall.Length - readings.Length,
            new(row + 1, column + 1, Length.FromMillimeters(wall[station, place])),
            Length.FromMillimeters(readings.Average()),
            readings.Max() > 0
                ? GeneralMetalLoss.CoefficientOfVariation([.. readings.Select(w => Math.Max(w, 1e-6))])
                : 0
        );
    }

    /// <summary>The river-bottom profile along the pipe: the deepest reading of each ring.</summary>
    /// <param name="referenceWall">Full wall from which the depth counts.</param>
    /// <returns>The profile; a station where nothing was read is left out.</returns>
    /// <exception cref="ImpossibleInputException">Fewer than two stations were read.</exception>
    public RiverBottom AlongThePipe(Length referenceWall) =>
        Profile(referenceWall, Stations, Layout.AxialSpacing, s => Enumerable.Range(0, Places).Select(p => wall[s, p]));

    /// <summary>The river-bottom profile round the pipe: the deepest reading of each line along it.</summary>
    /// <param name="referenceWall">Full wall from which the depth counts.</param>
    /// <returns>The profile; a place where nothing was read is left out.</returns>
    /// <exception cref="ImpossibleInputException">Fewer than two places were read.</exception>
    public RiverBottom RoundThePipe(Length referenceWall) =>
        Profile(
            referenceWall,
            Places,
            Layout.CircumferentialSpacing,
            p => Enumerable.Range(0, Stations).Select(s => wall[s, p])
        );

    private IEnumerable<(int Station, int Place)> Read() =>
        from station in Enumerable.Range(0, Stations)
        from place in Enumerable.Range(0, Places)
        where !double.IsNaN(wall[station, place])
        select (station, place);

    private static RiverBottom Profile(
        Length referenceWall,
        int count,
        Length spacing,
        Func<int, IEnumerable<double>> across
    )
    {
        var t = referenceWall.Millimeters;
        var points = Enumerable
            .Range(0, count)
            .Select(i => (Position: i * spacing.Millimeters, Readings: across(i).Where(w => !double.IsNaN(w)).ToList()))
            .Where(line => line.Readings.Count > 0)
            .Select(line => (line.Position, Depth: Math.Max(0, t - line.Readings.Min())))
            .ToList();
        return RiverBottom.Of([.. points.Select(p => p.Position)], [.. points.Select(p => p.Depth)]);
    }
}
