using System.Globalization;
using RepairOrders.Api.Assessing;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.OrderSheets;

/// <summary>The figures everybody asks for: what it holds, what is left, how long, and what ends it.</summary>
internal static class Figures
{
    public static IReadOnlyList<KeyFigure> Of(RepairOrder order)
    {
        var design = (order.ApprovedDesign ?? order.PendingDesign)?.Asked;
        var judged = order.Last<Assessment>()?.Asked.Judgement;
        List<KeyFigure> figures = [];
        if (design is not null)
            figures.Add(
                new(
                    "Holds",
                    design.Method.PressureHeldBar is { } held ? Number($"{held:0.#} bar") : "seals only",
                    design.Method.Entered ? $"entered, {design.Method.CalculationReference}" : "sized here"
                )
            );
        if (judged is not null)
            figures.AddRange(Wall(judged));
        if (design is not null)
            figures.Add(new("End date", Day(design.EndDate.On), $"set by: {design.EndDate.Governing.Words}"));
        if (design?.Ask.PermanentFix is { } fix)
            figures.Add(new("Permanent fix", fix.Reference, $"planned for {Day(fix.On)}"));
        return figures;
    }

    private static IEnumerable<KeyFigure> Wall(Judgement judged)
    {
        yield return new(
            "Wall left",
            judged.SoundWallMm is { } sound ? Number($"{judged.ThinnestMm:0.0} mm, {sound:0.0} mm beside") : "not read",
            Number($"{judged.RequiredWallMm:0.0} mm required")
        );
        if (judged.RemainingLifeDays is { } life)
            yield return new(
                "Remaining life",
                Number($"{life / 365.25:0.0} years"),
                Number($"thinnest wall, {judged.RateMmPerYear:0.00} mm a year")
            );
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Number(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
