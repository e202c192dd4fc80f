using RepairOrders.Engineering.Surface;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Surface;

public class ClimateForecastTests
{
    private static readonly DateTimeOffset Midnight = new(2027, 3, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly ApplicationLimits Putty = new(
        Temperature.FromDegreesCelsius(5),
        Temperature.FromDegreesCelsius(40),
        false
    );

    [Fact]
    public void A_window_runs_over_the_hours_that_go()
    {
        var outlook = Windows(
            2,
            [Hour(8, 15, 90, 15), Hour(9, 15, 60, 15), Hour(10, 16, 55, 16), Hour(11, 17, 50, 17)]
        );
        outlook.Result.Windows.Single().From.ShouldBe(Midnight.AddHours(9));
        outlook.Result.FirstLongEnough!.Length.ShouldBe(TimeSpan.FromHours(2));
        outlook.Result.Hours[0].Why.ShouldContain("Humidity is 90.0 %");
    }

    [Fact]
    public void Too_short_a_window_is_a_finding()
    {
        var outlook = Windows(3, [Hour(9, 15, 60, 15), Hour(10, 15, 60, 15), Hour(11, 15, 95, 15)]);
        outlook.Result.FirstLongEnough.ShouldBeNull();
        outlook.Findings.ShouldContain(f => f.Code == "no-window");
    }

    [Fact]
    public void Unknown_steel_lags_behind_the_air_on_a_warm_morning()
    {
        var outlook = Windows(0.5, [Hour(6, 2, 90), Hour(7, 5, 85), Hour(8, 10, 80), Hour(9, 14, 75)]);
        outlook.Result.Hours[3].Steel.DegreesCelsius.ShouldBe(2);
        outlook.Result.Hours[3].Verdict.Sweating.ShouldBeTrue();
        outlook.Findings.ShouldContain(f => f.Code == "steel-taken-from-air");
    }

    [Fact]
    public void No_window_runs_across_a_gap()
    {
        var outlook = Windows(
            1,
            [Hour(8, 15, 60, 15), Hour(9, 15, 60, 15), Hour(12, 15, 60, 15), Hour(13, 15, 60, 15)]
        );
        outlook.Result.Windows.Count.ShouldBe(2);
        outlook.Findings.ShouldContain(f => f.Code == "forecast-gap");
    }

    [Fact]
    public void Hours_out_of_order_are_named() =>
        Should
            .Throw<ImpossibleInputException>(() => Windows(1, [Hour(9, 15, 60, 15), Hour(8, 15, 60, 15)]))
            .Field.ShouldBe("forecast[1].at");

    [Fact]
    public void An_empty_forecast_is_named() =>
        Should.Throw<ImpossibleInputException>(() => Windows(1, [])).Field.ShouldBe("forecast");

    private static Calculated<ClimateOutlook> Windows(double hours, IReadOnlyList<ForecastHour> forecast) =>
        ClimateForecast.Windows(forecast, Putty, TimeSpan.FromHours(hours));

    private static ForecastHour Hour(double at, double air, double humidity, double? steel = null) =>
        new(
            Midnight.AddHours(at),
            Temperature.FromDegreesCelsius(air),
            RelativeHumidity.FromPercent(humidity),
            steel is { } c ? Temperature.FromDegreesCelsius(c) : null
        );
}
