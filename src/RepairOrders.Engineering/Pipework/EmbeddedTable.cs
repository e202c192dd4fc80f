using System.Globalization;
using System.Reflection;
using System.Text;

namespace RepairOrders.Engineering.Pipework;

/// <summary>A CSV table carried inside the library, with the columns of its source.</summary>
internal sealed class EmbeddedTable
{
    private readonly Dictionary<string, int> columns;
    private readonly List<string[]> rows;

    private EmbeddedTable(IReadOnlyList<string[]> lines)
    {
        columns = lines[0].Select((name, i) => (name, i)).ToDictionary(c => c.name, c => c.i);
        rows = [.. lines.Skip(1)];
    }

    public IReadOnlyCollection<string> Columns => columns.Keys;

    public IEnumerable<Row> Rows => rows.Select(r => new Row(this, r));

    /// <summary>Reads a table by its file name; the file lies in a folder called Tables anywhere in the library.</summary>
    public static EmbeddedTable Read(string file)
    {
        var library = Assembly.GetExecutingAssembly();
        var name = library
            .GetManifestResourceNames()
            .Single(n => n.EndsWith($".Tables.{file}", StringComparison.Ordinal));
        using var reader = new StreamReader(library.GetManifestResourceStream(name)!, Encoding.UTF8);
        return new([.. Lines(reader).Select(Cells)]);
    }

    private static IEnumerable<string> Lines(StreamReader reader)
    {
        while (reader.ReadLine() is { } line)
        {
            if (line.Length > 0)
            {
                yield return line;
            }
        }
    }

    // No cell of these tables runs over a line, so quotes and commas are all there is to mind.
    private static string[] Cells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        foreach (var c in line)
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }
        cells.Add(cell.ToString());
        return [.. cells];
    }

    public readonly record struct Row(EmbeddedTable Table, string[] Cells)
    {
        public string this[string column] => Cells[Table.columns[column]];

        /// <summary>The number in a cell; nothing where the cell is blank.</summary>
        public double? Number(string column) =>
            this[column] is { Length: > 0 } text ? double.Parse(text, CultureInfo.InvariantCulture) : null;
    }
}
