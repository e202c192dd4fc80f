using RepairOrders.Api.Instruments;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Store;
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

    /// <summary>The instruments of the readings with their calibration, kept with them.</summary>
    /// <exception cref="ProcedureRefusal">One is not listed, not a thickness gauge, withdrawn, or was out of calibration on the day.</exception>
    public static async Task<IReadOnlyList<InstrumentUsed>> Instruments(
        RepairStore store,
        Guid site,
        IReadOnlyList<ThicknessReading> readings
    )
    {
        List<InstrumentUsed> used = [];
        foreach (var byGauge in readings.GroupBy(r => r.Instrument))
        {
            var gauge = await store.Instrument(site, byGauge.Key);
            RepairOrder.Refuse(InstrumentRules.Objection(gauge, byGauge.Max(r => r.On), InstrumentKind.ThicknessGauge));
            used.Add(new(gauge.Serial, gauge.CalibrationDue));
        }
        return used;
    }
}
