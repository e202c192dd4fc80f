using RepairOrders.Api.Lines;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Pipework;
using static RepairOrders.Api.Calculations.Quantities;

namespace RepairOrders.Api.Calculations;

internal sealed record Girth(double GirthMm);

internal sealed record GradeAt(string Grade, double TemperatureC);

/// <summary>What is read from the tables of sizes and grades with a number in hand.</summary>
internal static class PipeTables
{
    public static CalculationAnswer<GirthResult> OfGirth(Girth ask)
    {
        var sheet = new Worksheet();
        var matches = sheet.Take(PipeSizes.FromGirth(Mm(ask.GirthMm)));
        return sheet.Answer(
            new GirthResult(
                PipeSizes.OutsideDiameterFromGirth(Mm(ask.GirthMm)).Millimeters,
                [
                    .. matches.Select(m => new DiameterMatchResult(
                        m.Listed.Family,
                        m.Listed.Size,
                        m.Listed.OutsideDiameter.Millimeters,
                        m.Difference.Millimeters,
                        m.Listed.Source.ToString()
                    )),
                ]
            )
        );
    }

    public static CalculationAnswer<AllowableStressResult> Allowable(GradeAt ask)
    {
        var sheet = new Worksheet();
        var grade =
            PipeLists.Grade(ask.Grade)
            ?? throw new MalformedAsk(
                "grade",
                $"grade is \"{ask.Grade}\"; allowed is a name listed at /api/v1/pipe-grades, such as {PipeGrades.All[0].Name}."
            );
        var stress = sheet.Take(PipeGrades.AllowableStress(grade, Celsius(ask.TemperatureC)));
        return sheet.Answer(new AllowableStressResult(stress?.Megapascals));
    }
}
