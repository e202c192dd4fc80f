using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Assessing;

internal static class Readings
{
    /// <summary>Refuses readings of a day that has not come.</summary>
    public static void Check(IReadOnlyList<ThicknessReading> readings, string field, DateOnly today)
    {
        for (var i = 0; i < readings.Count; i++)
            if (readings[i].On > today)
                throw new MalformedAsk(
                    $"{field}[{i}].on",
                    $"{field}[{i}].on is {readings[i].On:yyyy-MM-dd}; allowed is {today:yyyy-MM-dd} or earlier."
                );
    }
}
