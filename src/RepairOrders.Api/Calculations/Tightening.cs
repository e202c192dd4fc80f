using RepairOrders.Contract;
using UnitsNet;
using static RepairOrders.Api.Calculations.Quantities;

namespace RepairOrders.Api.Calculations;

internal static class Tightening
{
    public static CalculationAnswer<TighteningResult> Calculate(CalculateTightening ask)
    {
        var sheet = new Worksheet();
        var plan = sheet.Take(
            Engineering.Joints.Tightening.Plan(
                Torque.FromNewtonMeters(ask.TorqueNm),
                Mm(ask.BoltDiameterMm),
                ask.NutFactorLow,
                ask.NutFactorHigh,
                Force.FromKilonewtons(Bounds.Of("preloadNeededKn", ask.PreloadNeededKn, 0, 1e6)),
                Force.FromKilonewtons(Bounds.Of("preloadAllowedKn", ask.PreloadAllowedKn, 0, 1e6)),
                ask.Screws
            )
        );
        return sheet.Answer(
            new TighteningResult(
                plan.PreloadLow.Kilonewtons,
                plan.PreloadHigh.Kilonewtons,
                plan.TorqueLeast.NewtonMeters,
                plan.TorqueMost.NewtonMeters,
                [.. plan.Passes.Select(p => new TighteningPassResult(p.Torque.NewtonMeters, p.Sequence, p.Words))]
            )
        );
    }
}
