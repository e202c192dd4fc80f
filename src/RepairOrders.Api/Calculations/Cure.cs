using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Curing;
using UnitsNet;
using static RepairOrders.Api.Calculations.Quantities;

namespace RepairOrders.Api.Calculations;

internal static class Cure
{
    public static CalculationAnswer<CureResult> Calculate(CalculateCure ask)
    {
        if (ask.TemperatureC is null && ask.Log is null && ask.PotLife is null)
            throw new MalformedAsk(
                "temperatureC",
                "temperatureC, log and potLife are all missing; allowed is one of them at least."
            );
        var sheet = new Worksheet();
        var data = Data(ask);
        return sheet.Answer(
            new CureResult(
                ask.TemperatureC is { } at ? View(sheet.Take(Engineering.Curing.Cure.At(data, Celsius(at)))) : null,
                ask.Log is { } log
                    ? View(sheet.Take(Engineering.Curing.Cure.Over(data, Readings(log), Readings(ask.Forecast ?? []))))
                    : null,
                ask.PotLife is { } mix ? View(sheet.Take(Usable(ask, mix))) : null
            )
        );
    }

    private static CureData Data(CalculateCure ask) =>
        new(
            Celsius(ask.ReferenceTemperatureC),
            Duration.FromHours(ask.SetForLoadH),
            Duration.FromHours(ask.FullHardnessH),
            Celsius(ask.LeastTemperatureC),
            Celsius(ask.TestedLeastC),
            Celsius(ask.TestedGreatestC),
            Law(ask)
        );

    private static RateLaw? Law(CalculateCure ask) =>
        (ask.Q10Below, ask.Q10Above, ask.ActivationEnergyKjMol) switch
        {
            (null, null, null) => null,
            ({ } below, { } above, null) => new Q10Law(below, above),
            (null, null, { } energy) => new ArrheniusLaw(MolarEnergy.FromKilojoulesPerMole(energy)),
            _ => throw new MalformedAsk(
                "q10Below",
                "q10Below, q10Above and activationEnergyKjMol do not go together; allowed are both ratios, or the energy alone, or none."
            ),
        };

    private static Engineering.Calculated<WorkingTime> Usable(CalculateCure ask, PotLifeToReckon mix) =>
        PotLife.At(
            new PotLifeData(
                Celsius(mix.ReferenceTemperatureC),
                Duration.FromHours(mix.PotLifeH),
                mix.OpenTimeH is { } open ? Duration.FromHours(open) : null,
                Celsius(mix.TestedGreatestC),
                Law(ask)
            ),
            Celsius(mix.MixTemperatureC),
            mix.MixedAt
        );

    private static List<LogReading> Readings(IReadOnlyList<TemperatureAt> log) =>
        [.. log.Select(r => new LogReading(r.At, Celsius(r.TemperatureC)))];

    private static CureTimesResult View(CureTimes t) => new(t.Factor, t.SetForLoad?.Hours, t.FullHardness?.Hours);

    private static CureProgressResult View(CureProgress p) =>
        new(
            p.Equivalent.Hours,
            p.SetForLoad,
            p.FullyHard,
            p.LeftToLoad?.Hours,
            p.LeftToHardness?.Hours,
            p.ReadyForLoadAt,
            p.FullyHardAt
        );

    private static WorkingTimeResult View(WorkingTime w) => new(w.InPot.Hours, w.Open?.Hours, w.UsableUntil, w.PlaceBy);
}
