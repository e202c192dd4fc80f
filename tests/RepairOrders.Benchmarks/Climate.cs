using BenchmarkDotNet.Attributes;
using RepairOrders.Engineering.Curing;
using RepairOrders.Engineering.Surface;
using UnitsNet;

namespace RepairOrders.Benchmarks;

/// <summary>The climate gate now, its windows in a week's hourly forecast, and a cure over a day's log: what a page asks at once.</summary>
[MemoryDiagnoser]
public class Climate : BesideC
{
    private static readonly DateTimeOffset Start = new(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);

    private static readonly ApplicationLimits Limits = new(Celsius(5), Celsius(40), ForWetSurfaces: false);

    private readonly ForecastHour[] week =
    [
        .. Enumerable
            .Range(0, 168)
            .Select(h => new ForecastHour(
                Start.AddHours(h),
                Celsius(12 + 6 * Math.Sin(h * Math.PI / 12)),
                RelativeHumidity.FromPercent(70 - 20 * Math.Sin(h * Math.PI / 12)),
                null
            )),
    ];

    private readonly LogReading[] day =
    [
        .. Enumerable.Range(0, 25).Select(h => new LogReading(Start.AddHours(h), Celsius(14 + h % 5))),
    ];

    private readonly RelativeHumidity humidity = RelativeHumidity.FromPercent(60);

    [Benchmark(Description = "dew point and gate")]
    public bool Gate() => SurfaceClimate.Judge(new(Celsius(14), humidity, Celsius(13)), Limits).Result.Go;

    [Benchmark(Description = "windows in 168 hours of forecast")]
    public int Windows() => ClimateForecast.Windows(week, Limits, TimeSpan.FromHours(4)).Result.Windows.Count;

    [Benchmark(Description = "cure over a day's log")]
    public bool Cured() =>
        Cure.Over(
            new(Celsius(20), Duration.FromHours(4), Duration.FromHours(24), Celsius(5)),
            day,
            []
        ).Result.SetForLoad;

    private static Temperature Celsius(double value) => Temperature.FromDegreesCelsius(value);
}
