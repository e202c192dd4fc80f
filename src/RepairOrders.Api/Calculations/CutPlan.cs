using RepairOrders.Contract;
using RepairOrders.Engineering.Cutting;
using static RepairOrders.Api.Calculations.Quantities;

namespace RepairOrders.Api.Calculations;

internal static class CutPlan
{
    public static CalculationAnswer<CutPlanResult> Calculate(CalculateCutPlan ask)
    {
        var sheet = new Worksheet();
        var plan = sheet.Take(
            CutPlanner.Plan(
                [.. ask.Bands.Select(b => new Band(b.Code, Mm(b.LengthMm)))],
                [.. ask.Stock.Select(s => new StockLength(s.Code, Mm(s.LengthMm), s.Count, s.Remnant, s.Available))],
                new CutRules(Mm(ask.KerfMm), Mm(ask.SpliceOverlapMm), Mm(ask.LeastPieceMm), Mm(ask.LeastRemnantMm)),
                TimeSpan.FromSeconds(ask.TimeLimitS)
            )
        );
        return sheet.Answer(
            new CutPlanResult(
                plan.Found,
                plan.Proven,
                plan.Splices,
                plan.LongestRemnant.Millimeters,
                plan.Bounds.ByMaterial,
                plan.Bounds.ByLargeItems,
                plan.Bounds.FirstFit,
                [.. plan.Cuts.Select(View)],
                [.. plan.Aims.Select(a => new CutAimResult(a.Code, a.Words, a.Value, a.Bound, a.Unit, a.Proven))]
            )
        );
    }

    private static StockCutResult View(StockCut cut) =>
        new(
            cut.Stock,
            cut.Length.Millimeters,
            cut.Remnant,
            [.. cut.Pieces.Select(p => new CutPieceResult(p.Band, p.Part, p.Parts, p.Length.Millimeters))],
            cut.Left.Millimeters
        );
}
