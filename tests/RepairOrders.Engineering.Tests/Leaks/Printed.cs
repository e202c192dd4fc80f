using System.Globalization;

namespace RepairOrders.Engineering.Tests.Leaks;

/// <summary>Compares with a number as it stands in print: within half a unit of its last digit.</summary>
internal static class Printed
{
    /// <summary>Half a unit of the last printed digit, and the share of the value that the source's own constants differ by.</summary>
    public static void ShouldBeAsPrinted(this double computed, string printed, double share = 0)
    {
        var value = double.Parse(printed, CultureInfo.InvariantCulture);
        computed.ShouldBe(value, HalfDigit(printed) + share * Math.Abs(value) + 1e-12, printed);
    }

    private static double HalfDigit(string printed)
    {
        var point = printed.IndexOf('.', StringComparison.Ordinal);
        var decimals = point < 0 ? 0 : printed.Length - point - 1;
        return 0.5 * Math.Pow(10, -decimals);
    }
}
