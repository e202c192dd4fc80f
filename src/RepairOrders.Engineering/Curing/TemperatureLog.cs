using System.Globalization;
using UnitsNet;

namespace RepairOrders.Engineering.Curing;

/// <summary>One reading of a temperature log. The sensor sits on the pipe, not in the air.</summary>
/// <param name="At">When it was read.</param>
/// <param name="Temperature">What it showed, °C.</param>
public sealed record LogReading(DateTimeOffset At, Temperature Temperature);

/// <summary>A stretch of time at one temperature.</summary>
/// <param name="Mean">Mean temperature over the stretch, °C.</param>
/// <param name="Length">How long it is, h.</param>
public sealed record CureInterval(Temperature Mean, Duration Length);

/// <summary>From readings to stretches of time.</summary>
public static class TemperatureLog
{
    /// <summary>The longest time between two readings that is still bridged, h.</summary>
    public const double LongestGapH = 2;

    /// <summary>Cuts a log into intervals, each at the mean of its two readings.</summary>
    /// <remarks>
    /// <para>Formula: Tm = (T1 + T2)/2, Δt = t2 − t1.</para>
    /// <para>Symbols: T1, T2 readings, °C; t1, t2 their times; Tm mean temperature, °C; Δt length, h.</para>
    /// <para>Validity: readings at most 2 h apart; longer gaps are flagged by whoever credits them.</para>
    /// <para>Reference: own rule. The rate rises faster than in proportion with temperature, so the mean of the two rates would credit more
    /// than the rate at the mean temperature.</para>
    /// </remarks>
    /// <param name="log">The readings, in order of time.</param>
    /// <returns>One interval between each two readings, °C and h.</returns>
    /// <exception cref="ImpossibleInputException">No reading, readings out of order, or a temperature outside −60 to 300 °C.</exception>
    /// <example>20 °C at 8:00 and 24 °C at 9:00: one interval of 1 h at 22 °C.</example>
    public static IReadOnlyList<CureInterval> Intervals(IReadOnlyList<LogReading> log)
    {
        ArgumentNullException.ThrowIfNull(log);
        if (log.Count == 0)
        {
            throw new ImpossibleInputException("log", "empty", "at least one reading");
        }

        for (var i = 0; i < log.Count; i++)
        {
            CureRate.Celsius(string.Create(CultureInfo.InvariantCulture, $"log[{i}].temperatureC"), log[i].Temperature);
            if (i > 0 && log[i].At <= log[i - 1].At)
            {
                throw new ImpossibleInputException(
                    string.Create(CultureInfo.InvariantCulture, $"log[{i}].at"),
                    log[i].At.ToString("o", CultureInfo.InvariantCulture),
                    "later than the reading before it"
                );
            }
        }

        return [.. log.Zip(log.Skip(1), Between)];
    }

    private static CureInterval Between(LogReading first, LogReading second) =>
        new(
            Temperature.FromDegreesCelsius((first.Temperature.DegreesCelsius + second.Temperature.DegreesCelsius) / 2),
            Duration.FromHours((second.At - first.At).TotalHours)
        );
}
