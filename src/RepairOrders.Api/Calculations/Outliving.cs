using RepairOrders.Contract;
using RepairOrders.Engineering.Life;
using static RepairOrders.Api.Calculations.Quantities;

namespace RepairOrders.Api.Calculations;

internal static class Outliving
{
    public static CalculationAnswer<OutlivingResult> Calculate(CalculateOutliving ask)
    {
        var sheet = new Worksheet();
        var answer = sheet.Take(
            Engineering.Life.Outliving.Before(
                new OutlivingAsk(
                    ask.MeasuredOn,
                    ask.By,
                    Mm(ask.WallMm),
                    Mm(ask.ReadingSpreadMm),
                    CorrosionRate.FromMillimetresPerYear(ask.CorrosionRateMmPerYear),
                    CorrosionRate.FromMillimetresPerYear(ask.RateSpreadMmPerYear),
                    Mm(ask.RequiredWallMm),
                    ask.Strength is { } need ? Need(need) : null,
                    ask.TargetProbability,
                    ask.WallRateCorrelation,
                    ask.Samples,
                    ask.Seed
                )
            )
        );
        return sheet.Answer(
            new OutlivingResult(
                View(answer.Wall),
                answer.Strength is { } strength ? View(strength) : null,
                answer.Either,
                answer.StandardError,
                answer.CrossesOn,
                [.. answer.Curve.Select(c => new ShortfallByDay(c.On, c.Probability))]
            )
        );
    }

    private static Engineering.Life.StrengthNeed Need(Contract.StrengthNeed need) =>
        new(
            Mm(need.OutsideDiameterMm),
            Mm(need.FullWallMm),
            Mm(need.AxialLengthMm),
            Mm(need.AxialLengthSpreadMm),
            Mpa(need.FlowStressMpa),
            Bar(need.PressureBar),
            Bar(need.PressureSpreadBar),
            need.SafetyFactor
        );

    private static ShortfallResult View(Shortfall s) =>
        new(s.Sampled, s.StandardError, s.FirstOrder, s.ReliabilityIndex);
}
