using System.Globalization;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Surface;

/// <summary>One hour of a weather forecast.</summary>
/// <param name="At">When it holds.</param>
/// <param name="Air">Air temperature, °C.</param>
/// <param name="Humidity">Relative humidity, %.</param>
/// <param name="Steel">Steel temperature, °C, where it is known (heated, or governed by what flows); nothing to take it from the air.</param>
public sealed record ForecastHour(DateTimeOffset At, Temperature Air, RelativeHumidity Humidity, Temperature? Steel);

/// <summary>What the gate says of one hour.</summary>
/// <param name="At">When.</param>
/// <param name="Steel">The steel temperature that was put in, °C.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Why">Why not, in words; empty when it is a go.</param>
public sealed record ForecastVerdict(DateTimeOffset At, Temperature Steel, ClimateVerdict Verdict, string Why);

/// <summary>A stretch of time in which every forecast hour is a go.</summary>
/// <param name="From">First hour that is a go.</param>
/// <param name="To">Last hour that is a go.</param>
/// <param name="LeastMargin">Least margin within it, K.</param>
public sealed record ClimateWindow(DateTimeOffset From, DateTimeOffset To, TemperatureDelta LeastMargin)
{
    /// <summary>How long it is open.</summary>
    public TimeSpan Length => To - From;
}

/// <summary>The windows of a forecast.</summary>
/// <param name="Hours">The verdict of each hour.</param>
/// <param name="Windows">Every stretch of go, in order.</param>
/// <param name="FirstLongEnough">The first window at least as long as the work; nothing when there is none.</param>
public sealed record ClimateOutlook(
    IReadOnlyList<ForecastVerdict> Hours,
    IReadOnlyList<ClimateWindow> Windows,
    ClimateWindow? FirstLongEnough
);

/// <summary>When the climate gate opens, from an hourly forecast.</summary>
public static class ClimateForecast
{
    // Between two rows further apart nobody knows what the weather did.
    private static readonly TimeSpan LongestGap = TimeSpan.FromHours(2);

    private static readonly Clause Ours = new("forecast rule", "", Provenance.OwnRule);

    /// <summary>Finds the windows in which a repair can be applied.</summary>
    /// <remarks>
    /// <para>Formula: a window runs over consecutive hours that each pass <see cref="SurfaceClimate.Judge"/>. Unknown steel temperature is
    /// taken as the coldest air of that hour and the three hours before.</para>
    /// <para>Symbols: none beyond those of <see cref="SurfaceClimate.Judge"/>.</para>
    /// <para>Validity: rows at most 2 h apart; a longer gap closes the window and is a finding.</para>
    /// <para>Reference: own rule: steel lags behind the air, so it sweats on a morning that warms quickly.</para>
    /// </remarks>
    /// <param name="forecast">The forecast, in order of time.</param>
    /// <param name="limits">What the material's data sheet allows.</param>
    /// <param name="work">How long the climate must hold: preparation to set-for-load.</param>
    /// <returns>Hours, windows and the first window that is long enough.</returns>
    /// <exception cref="ImpossibleInputException">No hours, hours out of order, negative work time, or a value that cannot be.</exception>
    /// <example>Hours at 8, 9, 10 and 11 o'clock, the first with 90 % humidity and the rest dry: one window, 9 to 11 o'clock.</example>
    public static Calculated<ClimateOutlook> Windows(
        IReadOnlyList<ForecastHour> forecast,
        ApplicationLimits limits,
        TimeSpan work
    )
    {
        ArgumentNullException.ThrowIfNull(forecast);
        RequireOrder(forecast);
        Require.NotNegative("workH", work.TotalHours);
        var hours = forecast.Select((hour, i) => Verdict(hour, CoolestAir(forecast, i), limits)).ToList();
        var windows = Join(hours).ToList();
        var first = windows.FirstOrDefault(w => w.Length >= work);

        var findings = Assumptions(forecast).ToList();
        findings.Add(
            first is null
                ? new(
                    "no-window",
                    Severity.Fail,
                    Text($"No window of {work.TotalHours:F1} h in this forecast."),
                    windows.Count == 0 ? 0 : windows.Max(w => w.Length.TotalHours),
                    work.TotalHours,
                    "h",
                    Ours
                )
                : new(
                    "window",
                    Severity.Pass,
                    Text($"The first window of {work.TotalHours:F1} h opens {first.From:yyyy-MM-dd HH:mm zzz}."),
                    first.Length.TotalHours,
                    work.TotalHours,
                    "h",
                    Ours
                )
        );
        var working = new Working();
        foreach (var hour in hours)
        {
            var margin = hour.Verdict.Margin.Kelvins;
            working.Step(
                "ΔT",
                Text($"margin at {hour.At:yyyy-MM-dd HH:mm}"),
                "Ts − Tc",
                $"{hour.Steel.DegreesCelsius} − {hour.Verdict.Condensation.DegreesCelsius:F2}",
                margin,
                "K",
                Ours
            );
        }

        return new(
            new(hours, windows, first),
            working,
            findings,
            ["A forecast plans the work; only a reading at the pipe releases the mix."]
        );
    }

    private static void RequireOrder(IReadOnlyList<ForecastHour> forecast)
    {
        if (forecast.Count == 0)
        {
            throw new ImpossibleInputException("forecast", "empty", "at least one hour");
        }

        for (var i = 1; i < forecast.Count; i++)
        {
            if (forecast[i].At <= forecast[i - 1].At)
            {
                throw new ImpossibleInputException(
                    $"forecast[{i}].at",
                    forecast[i].At.ToString("o", CultureInfo.InvariantCulture),
                    "later than the hour before it"
                );
            }
        }
    }

    private static Temperature CoolestAir(IReadOnlyList<ForecastHour> forecast, int i) =>
        forecast
            .Take(i + 1)
            .Where(h => forecast[i].At - h.At <= TimeSpan.FromHours(3))
            .MinBy(h => h.Air.DegreesCelsius)!
            .Air;

    private static ForecastVerdict Verdict(ForecastHour hour, Temperature coolest, ApplicationLimits limits)
    {
        var steel = hour.Steel ?? coolest;
        var judged = SurfaceClimate.Judge(new(hour.Air, hour.Humidity, steel), limits);
        var why = judged.Findings.Where(f => f.Severity == Severity.Fail).Select(f => f.Words);
        return new(hour.At, steel, judged.Result, string.Join(' ', why));
    }

    private static IEnumerable<ClimateWindow> Join(List<ForecastVerdict> hours)
    {
        var open = new List<ForecastVerdict>();
        foreach (var hour in hours)
        {
            if (open.Count > 0 && (!hour.Verdict.Go || hour.At - open[^1].At > LongestGap))
            {
                yield return Window(open);
                open.Clear();
            }

            if (hour.Verdict.Go)
            {
                open.Add(hour);
            }
        }

        if (open.Count > 0)
        {
            yield return Window(open);
        }
    }

    private static ClimateWindow Window(List<ForecastVerdict> hours) =>
        new(hours[0].At, hours[^1].At, hours.MinBy(h => h.Verdict.Margin.Kelvins)!.Verdict.Margin);

    private static IEnumerable<Finding> Assumptions(IReadOnlyList<ForecastHour> forecast)
    {
        var taken = forecast.Count(h => h.Steel is null);
        if (taken > 0)
        {
            yield return new(
                "steel-taken-from-air",
                Severity.Watch,
                Text(
                    $"Steel temperature is not given for {taken} of {forecast.Count} hours and is taken as the coldest air of the hour and the three before. A line with cold flow is colder."
                ),
                taken,
                null,
                "-",
                Clause.Default("steel lags behind the air")
            );
        }

        for (var i = 1; i < forecast.Count; i++)
        {
            var gap = forecast[i].At - forecast[i - 1].At;
            if (gap > LongestGap)
            {
                yield return new(
                    "forecast-gap",
                    Severity.Watch,
                    Text(
                        $"No forecast for {gap.TotalHours:F1} h after {forecast[i - 1].At:yyyy-MM-dd HH:mm}; no window runs across it."
                    ),
                    gap.TotalHours,
                    LongestGap.TotalHours,
                    "h",
                    Ours
                );
            }
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
