using RepairOrders.Api.Calculations;
using RepairOrders.Api.Drawing;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using static RepairOrders.Api.Charts.Reckoned.Sweeps;
using static RepairOrders.Api.Drawing.Board;
using GridRows = RepairOrders.Engineering.Strength.GridRows;
using GridUnit = RepairOrders.Engineering.Strength.GridUnit;

namespace RepairOrders.Api.Charts.Reckoned;

/// <summary>Drawings and charts of what is reckoned of a pipe and its repair.</summary>
internal static class PipeCharts
{
    public static IEnumerable<Chart?> Of(CalculateWallThickness ask)
    {
        var (duty, measured) = (ask.Duty, ask.Measured?.MeasuredWallMm);
        yield return Drawing(ask.Pipe, measured, null);
        yield return Sweeps.Of(
            "required-wall",
            "Wall needed against pressure",
            "design pressure, bar",
            "wall, mm",
            Math.Max(1, 2 * duty.DesignPressureBar),
            p => Wall(Result(ask with { Duty = duty with { DesignPressureBar = p } }, WallThickness.Calculate)),
            duty.DesignPressureBar,
            [
                new(Say($"as ordered {Number(ask.Pipe.WallThicknessMm)}"), ask.Pipe.WallThicknessMm),
                .. measured is { } wall ? [new Limit(Say($"measured {Number(wall)}"), wall)] : Array.Empty<Limit>(),
            ]
        );
    }

    private static double? Wall(WallThicknessResult result) => result.RequiredMm ?? result.ForPressureMm;

    public static IEnumerable<Chart?> Of(CalculateRemainingStrength ask)
    {
        if (ask.Profile is { Count: > 1 } profile)
            yield return Profiles.Of(
                [.. profile.Select(p => p.PositionMm)],
                [.. profile.Select(p => p.DepthMm)],
                ask.Pipe.OutsideDiameterMm,
                ask.ReferenceWallMm
            );
        yield return Sweeps.Of(
            "strength",
            "Safe pressure against the length of the defect",
            "length along the pipe, mm",
            "safe pressure, bar",
            Math.Max(50, 2.5 * ask.AxialLengthMm),
            mm =>
                Result(
                    ask with
                    {
                        AxialLengthMm = mm,
                        Profile = null,
                    },
                    Calculations.RemainingStrength.Calculate
                ).SafePressureBar,
            ask.AxialLengthMm,
            new Limit(Say($"operated to {Number(ask.MaopBar)}"), ask.MaopBar)
        );
    }

    public static IEnumerable<Chart?> Of(CalculateWallLossGrid ask)
    {
        var grid = Engineering.Strength.WallLossGrid.Read(
            ask.Csv,
            new GridLayout(
                Length.FromMillimeters(ask.AxialSpacingMm),
                Length.FromMillimeters(ask.CircumferentialSpacingMm),
                (GridUnit)ask.Unit,
                (GridRows)ask.Rows
            )
        );
        yield return SurveyCharts.Grid(grid, 12, ask.Pipe.OutsideDiameterMm, ask.Pipe.WallThicknessMm, null);
        yield return SurveyCharts.RiverBottom(grid, ask.Pipe.OutsideDiameterMm, ask.ReferenceWallMm);
    }

    public static IEnumerable<Chart?> Of(CalculateAxialLoad ask)
    {
        var asked = Result(ask, AxialLoad.Calculate);
        yield return Drawing(ask.Pipe, ask.Defect.SoundWallBesideMm, ask.Defect);
        yield return Sweeps.Of(
            "end-load",
            "End load against pressure",
            "gauge pressure, bar",
            "end load, kN",
            Math.Max(1, 2 * ask.PressureBar),
            p => Result(ask with { PressureBar = p, Crushing = null }, AxialLoad.Calculate).EndLoadKn,
            ask.PressureBar,
            new Limit(Say($"the pipe carries {Number(asked.CapacityKn)}"), asked.CapacityKn)
        );
    }

    public static IEnumerable<Chart?> Of(CalculateThroughWall ask)
    {
        yield return Drawing(ask.Pipe, ask.Defect.SoundWallBesideMm, ask.Defect);
        yield return Sweeps.Of(
            "critical-length",
            "Critical length against pressure",
            "operating pressure, bar",
            "length, mm",
            Math.Max(1, 3 * ask.Service.OperatingPressureBar),
            p =>
                Result(
                    ask with
                    {
                        Service = ask.Service with
                        {
                            OperatingPressureBar = p,
                            DesignPressureBar = Math.Max(p, ask.Service.DesignPressureBar),
                        },
                    },
                    ThroughWall.Calculate
                ).CriticalLengthMm,
            ask.Service.OperatingPressureBar,
            new Limit(Say($"this flaw {Number(ask.FlawLengthMm)}"), ask.FlawLengthMm)
        );
    }

    public static IEnumerable<Chart?> Of(CalculateMethodClaims ask) =>
        [Drawing(ask.Pipe, ask.Defect.SoundWallBesideMm, ask.Defect)];

    /// <summary>A method as it is drawn and its own curves.</summary>
    public static IEnumerable<Chart?> Of(IRepairMethod method, CalculateMethod ask)
    {
        var sized = Result(ask, a => Methods.Calculate(method, a));
        var design = new MethodDesignView(
            sized.Method,
            sized.Name,
            false,
            null,
            sized.Dimensions,
            sized.PressureHeldBar,
            sized.Materials,
            sized.HoldPoints,
            [],
            [],
            [],
            sized.SetForLoadH,
            sized.FullHardnessH,
            sized.CureReferenceTemperatureC,
            sized.DesignLifeDays,
            sized.LeastWallMm,
            sized.CarriesAxialLoad,
            sized.Series
        );
        return [Drawing(ask.Pipe, ask.Defect.SoundWallBesideMm, ask.Defect, design), .. DesignCharts.Of(design)];
    }

    private static Chart Drawing(
        PipeToReckon pipe,
        double? sound,
        DefectToReckon? defect,
        MethodDesignView? design = null
    )
    {
        var subject = new Subject(
            "this pipe",
            pipe.OutsideDiameterMm,
            pipe.WallThicknessMm,
            sound > 0 ? sound : null,
            defect is null ? null
                : defect.ThroughWall ? 0
                : defect.RemainingWallMm > 0 ? defect.RemainingWallMm
                : null,
            defect is null ? null : Measured(defect),
            design
        );
        var picture = OrderPicture.Of(subject);
        return new("drawing", "Drawing, to scale", [], [], picture);
    }

    private static DefectMeasured Measured(DefectToReckon d) =>
        new(
            d.Kind,
            d.Side,
            d.Cause,
            d.ThroughWall,
            Measure.Of(d.AxialLengthMm, "mm"),
            Measure.Of(d.CircumferentialLengthMm, "mm"),
            d.HoleDiameterMm > 0 ? Measure.Of(d.HoleDiameterMm, "mm") : null,
            d.ClockHours,
            d.Growing
        );
}
