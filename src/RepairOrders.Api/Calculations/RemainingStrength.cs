using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Strength;
using static RepairOrders.Api.Calculations.Quantities;
using AnswerStanding = RepairOrders.Contract.AnswerStanding;
using DefectSide = RepairOrders.Engineering.Damage.DefectSide;

namespace RepairOrders.Api.Calculations;

internal static class RemainingStrength
{
    public static CalculationAnswer<RemainingStrengthResult> Calculate(CalculateRemainingStrength ask)
    {
        var sheet = new Worksheet();
        var compared = sheet.Take(Engineering.Strength.RemainingStrength.Compare(Case(ask)));
        sheet.Take([], Told(ask), []);
        return sheet.Answer(View(compared));
    }

    // Of the methods only that for plant piping has a quality factor.
    private static IEnumerable<Finding> Told(CalculateRemainingStrength ask) =>
        Defaults.OfFactors(ask.SafetyFactor, ask.UsageFactor).Concat(ask.Plant is null ? [] : Defaults.Of(ask.Pipe));

    public static StrengthCase Case(CalculateRemainingStrength ask) =>
        new(
            ask.Pipe.Pipe(),
            new MetalLoss(
                Mm(ask.ReferenceWallMm),
                Mm(ask.DepthMm),
                Mm(ask.AxialLengthMm),
                Mm(ask.CircumferentialLengthMm),
                ask.Side.As<DefectSide>(),
                ask.Profile is { } p
                    ? RiverBottom.Of(p.Select(x => new ProfilePoint(Mm(x.PositionMm), Mm(x.DepthMm))))
                    : null
            ),
            Bar(ask.MaopBar),
            Celsius(ask.TemperatureC),
            ask.SafetyFactor ?? Defaults.SafetyFactor,
            ask.UsageFactor ?? Defaults.UsageFactor,
            ask.Plant.Plant()
        );

    public static RemainingStrengthResult View(StrengthComparison compared) =>
        new(
            compared.Governs,
            compared.SafePressure?.Bars,
            compared.PressureLimit?.Bars,
            compared.EstimatedRepairFactor,
            [.. compared.Answers.Select(View)],
            compared.WhyTheyDiffer
        );

    private static StrengthAnswerResult View(ComparedAnswer compared) =>
        new(
            compared.Answer.Code,
            compared.Answer.Name,
            compared.Standing.As<AnswerStanding>(),
            compared.Reason,
            compared.Answer.Assumes,
            compared.Answer.FailurePressure?.Bars,
            compared.Answer.SafePressure?.Bars,
            compared.Answer.EstimatedRepairFactor,
            [.. compared.Working.Select(s => s.View())],
            [.. compared.Findings.Select(f => f.View())]
        );
}
