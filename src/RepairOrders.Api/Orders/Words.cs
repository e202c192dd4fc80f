using System.Text;

namespace RepairOrders.Api.Orders;

/// <summary>Words for choices, as sentences use them.</summary>
internal static class Words
{
    /// <summary>A choice's name as lower-case words: <c>LineOutOfService</c> is "line out of service".</summary>
    public static string Of<T>(T choice)
        where T : struct, Enum
    {
        var name = choice.ToString();
        if (name.Length == 1)
            return name;
        var words = new StringBuilder();
        foreach (var letter in name)
        {
            if (char.IsUpper(letter) && words.Length > 0)
                words.Append(' ');
            words.Append(char.ToLowerInvariant(letter));
        }
        return words.ToString();
    }

    /// <summary>A name inside a sentence: "Banded patch" is "banded patch".</summary>
    public static string Lower(string name) => name.Length == 0 ? name : char.ToLowerInvariant(name[0]) + name[1..];

    /// <summary>Choices as a list: "requested, assessed or chosen".</summary>
    public static string List<T>(ReadOnlySpan<T> choices)
        where T : struct, Enum
    {
        var words = new List<string>();
        foreach (var choice in choices)
            words.Add(Of(choice));
        return words.Count < 2 ? string.Concat(words) : $"{string.Join(", ", words[..^1])} or {words[^1]}";
    }
}
