using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Life;
using static RepairOrders.Api.Calculations.Quantities;
using RateBasis = RepairOrders.Contract.RateBasis;

namespace RepairOrders.Api.Calculations;

internal static class RemainingLife
{
    public static CalculationAnswer<RemainingLifeResult> Calculate(CalculateRemainingLife ask)
    {
        var sheet = new Worksheet();
        var history = new WallHistory(
            [.. ask.Readings.Select(r => new WallReading(r.On, Mm(r.WallMm), r.Place, r.Instrument, r.IsAverage))],
            Mm(ask.NominalWallMm),
            ask.Commissioned,
            ask.Pitting,
            ask.ThroughWall,
            ask.FloorMmPerYear is { } floor ? CorrosionRate.FromMillimetresPerYear(floor) : null
        );
        var interval =
            ask.InspectionClass == 0 ? InspectionInterval.InjectionPoint : InspectionInterval.For(ask.InspectionClass);
        var rates = sheet.Take(CorrosionRate.Assess(history));
        var life = sheet.Take(Engineering.Life.RemainingLife.Forecast(rates, Mm(ask.RequiredWallMm), interval));
        return sheet.Answer(
            new RemainingLifeResult(
                rates.Place,
                rates.Actual.Millimeters,
                rates.ActualOn,
                rates.LongTerm?.MillimetresPerYear(),
                rates.ShortTerm?.MillimetresPerYear(),
                rates.Governing?.MillimetresPerYear(),
                rates.Basis.As<RateBasis>(),
                life.Remaining?.Days,
                life.ReachesRequiredOn,
                life.HalfLife?.Days,
                life.ThicknessInterval?.Days,
                life.VisualInterval?.Days,
                life.ThicknessBy
            )
        );
    }
}
