namespace RepairOrders.Ui.Forms;

/// <summary>What a person may pick for a field whose contract is only an identity or a word: value to words, by the field's path.</summary>
public sealed class Choices : Dictionary<string, IReadOnlyList<KeyValuePair<string, string>>>
{
    /// <summary>Those of a field: by its path without row numbers, else by its name; nothing where it is typed freely.</summary>
    public static IReadOnlyList<KeyValuePair<string, string>>? Of(
        IReadOnlyDictionary<string, IReadOnlyList<KeyValuePair<string, string>>> all,
        string path,
        string name
    ) => all.TryGetValue(WithoutRows(path), out var options) || all.TryGetValue(name, out options) ? options : null;

    /// <summary>What it is called here: <c>lines[2].batch</c> is <c>lines.batch</c>.</summary>
    public static string WithoutRows(string path) => string.Concat(Parts(path));

    private static IEnumerable<string> Parts(string path)
    {
        foreach (var part in path.Split('['))
            yield return part.IndexOf(']', StringComparison.Ordinal) is >= 0 and var end ? part[(end + 1)..] : part;
    }
}
