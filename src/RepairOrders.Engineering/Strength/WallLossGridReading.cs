using System.Globalization;

namespace RepairOrders.Engineering.Strength;

public sealed partial class WallLossGrid
{
    private const int MostCells = 1_000_000;
    private const double ThickestWall = 500;
    private const int MostNamed = 10;

    /// <summary>Reads a grid from CSV.</summary>
    /// <param name="csv">
    /// One line a row; cells parted by commas, semicolons or tabs. With semicolons or tabs a decimal comma is allowed. A blank
    /// cell was not read. Blank lines and lines that start with # are passed over.
    /// </param>
    /// <param name="layout">Spacing, unit and direction.</param>
    /// <returns>The grid.</returns>
    /// <exception cref="ImpossibleInputException">A cell is no wall, rows differ in length, or the grid is too small or too large; bad cells are named by row and column.</exception>
    public static WallLossGrid Read(string csv, GridLayout layout)
    {
        ArgumentNullException.ThrowIfNull(csv);
        ArgumentNullException.ThrowIfNull(layout);
        Require.Between("axialSpacingMm", layout.AxialSpacing.Millimeters, 0.1, 10_000);
        Require.Between("circumferentialSpacingMm", layout.CircumferentialSpacing.Millimeters, 0.1, 10_000);
        var rows = Rows(csv);
        var readings = Readings(rows, layout.Unit == GridUnit.Inch ? 25.4 : 1);
        return new(layout.Rows == GridRows.AlongThePipe ? Turned(readings) : readings, layout);
    }

    private static List<string[]> Rows(string csv)
    {
        var lines = csv.Split('\n')
            .Select(l => l.Trim('\r', ' ', '\uFEFF'))
            .Where(l => l.Length > 0 && l[0] != '#')
            .ToList();
        var separator =
            lines.Exists(l => l.Contains(';', StringComparison.Ordinal)) ? ';'
            : lines.Exists(l => l.Contains('\t', StringComparison.Ordinal)) ? '\t'
            : ',';
        var rows = lines.ConvertAll(l =>
            Array.ConvertAll(l.Split(separator), c => separator == ',' ? c.Trim() : c.Trim().Replace(',', '.'))
        );
        if (rows.Count < 2 || rows[0].Length < 2 || (long)rows.Count * rows[0].Length > MostCells)
        {
            throw new ImpossibleInputException(
                "csv",
                $"{rows.Count} rows of {(rows.Count > 0 ? rows[0].Length : 0)} cells",
                $"two rows of two cells or more, up to {MostCells} cells"
            );
        }
        var ragged = rows.FindIndex(r => r.Length != rows[0].Length);
        return ragged < 0
            ? rows
            : throw new ImpossibleInputException(
                $"csv row {ragged + 1}",
                $"{rows[ragged].Length} cells",
                $"{rows[0].Length} cells, as in row 1"
            );
    }

    private static double[,] Readings(List<string[]> rows, double millimetres)
    {
        var readings = new double[rows.Count, rows[0].Length];
        var bad = new List<string>();
        for (var r = 0; r < rows.Count; r++)
        {
            for (var c = 0; c < rows[r].Length; c++)
            {
                readings[r, c] = Cell(rows[r][c], millimetres);
                if (double.IsInfinity(readings[r, c]))
                {
                    bad.Add($"row {r + 1} column {c + 1} '{Short(rows[r][c])}'");
                }
            }
        }
        return bad.Count == 0 ? AtLeastTwo(readings) : throw BadCells(bad);
    }

    // NaN where it was not read, infinite where it is no wall.
    private static double Cell(string text, double millimetres)
    {
        if (text.Length == 0)
        {
            return double.NaN;
        }
        var number = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            ? value * millimetres
            : double.NaN;
        return number is >= 0 and <= ThickestWall ? number : double.PositiveInfinity;
    }

    private static double[,] AtLeastTwo(double[,] readings) =>
        readings.Cast<double>().Count(w => !double.IsNaN(w)) >= 2
            ? readings
            : throw new ImpossibleInputException("csv", "a grid with fewer than two readings", "two readings or more");

    private static ImpossibleInputException BadCells(List<string> bad)
    {
        var more = bad.Count > MostNamed ? $" and {bad.Count - MostNamed} more" : "";
        return new(
            "csv",
            string.Join(", ", bad.Take(MostNamed)) + more,
            $"the wall left, 0 to {ThickestWall:0} mm, or blank where it was not read"
        );
    }

    private static string Short(string text) => text.Length > 20 ? text[..20] + "…" : text;

    private static double[,] Turned(double[,] readings)
    {
        var turned = new double[readings.GetLength(1), readings.GetLength(0)];
        for (var r = 0; r < readings.GetLength(0); r++)
        {
            for (var c = 0; c < readings.GetLength(1); c++)
            {
                turned[c, r] = readings[r, c];
            }
        }
        return turned;
    }
}
