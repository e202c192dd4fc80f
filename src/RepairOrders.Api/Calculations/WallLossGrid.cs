using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using static RepairOrders.Api.Calculations.Quantities;
using DefectSide = RepairOrders.Engineering.Damage.DefectSide;
using GridRows = RepairOrders.Engineering.Strength.GridRows;
using GridUnit = RepairOrders.Engineering.Strength.GridUnit;

namespace RepairOrders.Api.Calculations;

internal static class WallLossGrid
{
    public static CalculationAnswer<WallLossGridResult> Calculate(CalculateWallLossGrid ask)
    {
        var layout = new GridLayout(
            Mm(ask.AxialSpacingMm),
            Mm(ask.CircumferentialSpacingMm),
            ask.Unit.As<GridUnit>(),
            ask.Rows.As<GridRows>()
        );
        var grid = Engineering.Strength.WallLossGrid.Read(ask.Csv, layout);
        var sheet = new Worksheet();
        var answer = sheet.Take(grid.Assess(Case(ask), ask.Duty?.Duty()));
        sheet.Take([], Told(ask), []);
        return sheet.Answer(View(answer));
    }

    private static IEnumerable<Finding> Told(CalculateWallLossGrid ask) =>
        Defaults
            .OfFactors(ask.SafetyFactor, ask.UsageFactor)
            .Concat(ask.Plant is null && ask.Duty is null ? [] : Defaults.Of(ask.Pipe))
            .Concat(ask.Duty is { } duty ? Defaults.Of(duty) : []);

    // The loss itself is the grid's: only reference wall and side are taken from here.
    private static StrengthCase Case(CalculateWallLossGrid ask) =>
        new(
            ask.Pipe.Pipe(),
            new MetalLoss(Mm(ask.ReferenceWallMm), Length.Zero, Length.Zero, Length.Zero, ask.Side.As<DefectSide>()),
            Bar(ask.MaopBar),
            Celsius(ask.TemperatureC),
            ask.SafetyFactor ?? Defaults.SafetyFactor,
            ask.UsageFactor ?? Defaults.UsageFactor,
            ask.Plant.Plant()
        );

    private static WallLossGridResult View(GridAssessment grid) =>
        new(
            grid.Statistics.Count,
            grid.Statistics.Missing,
            grid.Statistics.Least.Wall.Millimeters,
            grid.Statistics.Least.Row,
            grid.Statistics.Least.Column,
            grid.Statistics.Average.Millimeters,
            grid.Statistics.Variation,
            Points(grid.Along),
            Points(grid.Round),
            [.. grid.Pits.Select(View)],
            RemainingStrength.View(grid.Strength),
            grid.General is { } general ? View(general) : null,
            new HeatMapResult(
                grid.Map.Stations,
                grid.Map.Places,
                grid.Map.AxialSpacing.Millimeters,
                grid.Map.CircumferentialSpacing.Millimeters,
                grid.Map.LossPercent
            )
        );

    private static List<ProfilePointView> Points(RiverBottom profile)
    {
        var points = new List<ProfilePointView>(profile.PositionsMm.Length);
        for (var i = 0; i < profile.PositionsMm.Length; i++)
            points.Add(new(profile.PositionsMm[i], profile.DepthsMm[i]));
        return points;
    }

    private static PitGroupResult View(PitGroup pit) =>
        new(
            pit.From.Millimeters,
            pit.AxialLength.Millimeters,
            pit.Around.Millimeters,
            pit.CircumferentialLength.Millimeters,
            pit.Depth.Millimeters,
            pit.Pits
        );

    private static GeneralLossResult View(GeneralLoss loss) =>
        new(
            loss.Variation,
            loss.MayAverage,
            loss.AveragingLength.Millimeters,
            loss.Average?.Millimeters,
            loss.Least.Millimeters,
            loss.Required?.Millimeters,
            loss.Level1,
            loss.Level2
        );
}
