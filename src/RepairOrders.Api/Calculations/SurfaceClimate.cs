using RepairOrders.Contract;
using RepairOrders.Engineering.Surface;
using UnitsNet;
using static RepairOrders.Api.Calculations.Quantities;

namespace RepairOrders.Api.Calculations;

internal static class SurfaceClimate
{
    public static CalculationAnswer<SurfaceClimateResult> Calculate(CalculateSurfaceClimate ask)
    {
        var sheet = new Worksheet();
        var limits = new ApplicationLimits(
            Celsius(ask.LeastTemperatureC),
            Celsius(ask.GreatestTemperatureC),
            ask.ForWetSurfaces
        );
        var now = sheet.Take(
            Engineering.Surface.SurfaceClimate.Judge(
                new ClimateReading(
                    Celsius(ask.AirTemperatureC),
                    RelativeHumidity.FromPercent(ask.RelativeHumidityPercent),
                    Celsius(ask.SteelTemperatureC)
                ),
                limits
            )
        );
        var outlook = ask.Forecast is { } hours ? sheet.Take(Outlook(ask, hours, limits)) : null;
        return sheet.Answer(
            new SurfaceClimateResult(
                now.Go,
                now.DewPoint.DegreesCelsius,
                now.Condensation.DegreesCelsius,
                now.Margin.Kelvins,
                now.LeastSteel.DegreesCelsius,
                now.Sweating,
                outlook is null ? null : [.. outlook.Hours.Select(View)],
                outlook is null ? null : [.. outlook.Windows.Select(View)],
                outlook?.FirstLongEnough is { } first ? View(first) : null
            )
        );
    }

    private static Engineering.Calculated<ClimateOutlook> Outlook(
        CalculateSurfaceClimate ask,
        IReadOnlyList<Contract.ForecastHour> hours,
        ApplicationLimits limits
    ) =>
        ClimateForecast.Windows(
            [
                .. hours.Select(h => new Engineering.Surface.ForecastHour(
                    h.At,
                    Celsius(h.AirTemperatureC),
                    RelativeHumidity.FromPercent(h.RelativeHumidityPercent),
                    Celsius(h.SteelTemperatureC)
                )),
            ],
            limits,
            TimeSpan.FromHours(Bounds.Of("workH", Needed("workH", ask.WorkH, "with a forecast"), 0, 10_000))
        );

    private static ClimateHour View(ForecastVerdict hour) =>
        new(
            hour.At,
            hour.Steel.DegreesCelsius,
            hour.Verdict.Go,
            hour.Verdict.DewPoint.DegreesCelsius,
            hour.Verdict.Margin.Kelvins,
            hour.Why
        );

    private static ClimateWindowResult View(ClimateWindow w) => new(w.From, w.To, w.LeastMargin.Kelvins);
}
