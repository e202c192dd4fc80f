using System.Globalization;
using RepairOrders.Api.Wire;

namespace RepairOrders.Api.Calculations;

/// <summary>Bounds of what the engine takes in another unit, or as a type of its own that cannot hold every number.</summary>
internal static class Bounds
{
    public static double Of(string field, double value, double least, double greatest) =>
        value >= least && value <= greatest
            ? value
            : throw new MalformedAsk(
                field,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{field} is {value:G6}; allowed is {least:G6} to {greatest:G6}."
                )
            );
}
