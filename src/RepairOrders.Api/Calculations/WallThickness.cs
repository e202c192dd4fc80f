using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using static RepairOrders.Api.Calculations.Quantities;

namespace RepairOrders.Api.Calculations;

internal static class WallThickness
{
    public static CalculationAnswer<WallThicknessResult> Calculate(CalculateWallThickness ask)
    {
        var sheet = new Worksheet();
        var (pipe, duty) = (ask.Pipe.Pipe(), ask.Duty.Duty());
        var needed = sheet.Take(RequiredWall.Assess(pipe, duty));
        var held = ask.Measured is { } m
            ? sheet.Take(
                Mawp.Assess(
                    pipe,
                    duty,
                    new MeasuredWall(
                        Mm(m.MeasuredWallMm),
                        Mm(m.ExpectedLossMm),
                        Mm(m.MechanicalAllowanceMm),
                        m.StrengthToday
                    )
                )
            )
            : null;
        var order = ask.Order is { } o && needed.ForPressure is { } wall ? sheet.Take(Ordered(o, wall)) : null;
        sheet.Take([], Defaults.Of(ask.Pipe).Concat(Defaults.Of(ask.Duty)), []);
        return sheet.Answer(
            new WallThicknessResult(
                needed.ForPressure?.Millimeters,
                needed.Structural?.Millimeters,
                needed.Alert?.Millimeters,
                needed.Required?.Millimeters,
                needed.GovernedBy,
                held is null
                    ? null
                    : new HeldPressureResult(held.Mawp?.Bars, held.WallThatCounts.Millimeters, held.StrengthToday),
                order is null ? null : new OrderedWallResult(order.Minimum.Millimeters, order.Nominal.Millimeters)
            )
        );
    }

    private static Engineering.Calculated<OrderedWall> Ordered(WallToOrder order, Length forPressure) =>
        order is { MillTolerancePercent: not null, MillToleranceMm: not null }
            ? throw new MalformedAsk(
                "order.millToleranceMm",
                "order.millTolerancePercent and order.millToleranceMm are both given; allowed is one of them."
            )
            : RequiredWall.ToOrder(
                forPressure,
                Mm(order.AllowanceMm),
                order.MillTolerancePercent is { } percent
                    ? Bounds.Of("order.millTolerancePercent", percent, 0, 50) / 100
                    : null,
                Mm(order.MillToleranceMm)
            );
}
