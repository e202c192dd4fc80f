using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Testing;
using UnitsNet;
using static RepairOrders.Api.Calculations.Quantities;
using ServiceCategory = RepairOrders.Engineering.Pipework.ServiceCategory;
using TestKind = RepairOrders.Engineering.Testing.TestKind;

namespace RepairOrders.Api.Calculations;

internal static class PressureTest
{
    public static CalculationAnswer<PressureTestResult> Calculate(CalculatePressureTest ask)
    {
        var sheet = new Worksheet();
        var test = sheet.Take(
            Engineering.Testing.PressureTest.Plan(
                new PressureTestAsk(
                    ask.Kind.As<TestKind>(),
                    Bar(ask.DesignPressureBar),
                    Bar(ask.OperatingPressureBar),
                    Mpa(ask.StressAtTestMpa),
                    Mpa(ask.StressAtDesignMpa),
                    Mm(ask.OutsideDiameterMm),
                    Mm(ask.RemainingWallMm),
                    Mpa(ask.YieldStrengthMpa),
                    Bar(ask.PipeHoldsBar),
                    Bar(ask.RepairRatingBar),
                    Bar(ask.WeakestComponentBar),
                    ask.ServiceCategory.As<ServiceCategory>(),
                    ask.GasInside,
                    ask.VolumeM3 is { } volume ? Volume.FromCubicMeters(volume) : null
                )
            )
        );
        return sheet.Answer(
            new PressureTestResult(
                test.Pressure.Bars,
                test.CodePressure.Bars,
                test.Cap.Pressure.Bars,
                test.Cap.Words,
                test.ServicePressureOnly,
                [.. test.Steps.Select(s => new TestStepResult(s.Pressure.Bars, s.HoldMinutes, s.Words))],
                test.ReliefSetting?.Bars,
                test.Energy?.Kilojoules,
                test.StandOff?.Meters
            )
        );
    }
}
