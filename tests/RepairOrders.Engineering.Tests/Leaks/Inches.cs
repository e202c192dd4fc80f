using System.Globalization;

namespace RepairOrders.Engineering.Tests.Leaks;

/// <summary>Inches as the tables print them: <c>1</c> or <c>3/16</c>.</summary>
internal static class Inches
{
    public static double Parse(string text)
    {
        var parts = text.Split('/').Select(p => double.Parse(p, CultureInfo.InvariantCulture)).ToArray();
        return parts.Length == 1 ? parts[0] : parts[0] / parts[1];
    }
}
