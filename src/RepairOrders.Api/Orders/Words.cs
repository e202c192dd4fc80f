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
}
