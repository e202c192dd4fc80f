using System.Globalization;
using RepairOrders.Api.Assessing;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;
using RepairOrders.Engineering.Strength;
using UnitsNet;

namespace RepairOrders.Api.Proving;

/// <summary>Between which pressures a repair is tested: what the line may see while it is live, and what the thinned wall holds.</summary>
internal static class TestPressure
{
    // 90 % of yield, and an allowable stress is at most two thirds of it (ASME B31.3, 302.3.2, from memory): 0.9 × 1.5.
    private const double OfAllowable = 1.35;

    /// <summary>The most the test may press, bar, and what sets it.</summary>
    public static (double Bar, string Why) Greatest(RepairOrder order)
    {
        var plan = WorkPlan.Of(order)!;
        if (order.Last<Assessment>()?.Asked.Judgement is not { } judged || plan.Emergency)
            return (
                order.Request.Asked.OperatingPressure.Value,
                "the line is operated at, and nobody has assessed the wall yet"
            );
        List<(double Bar, string Why)> limits = [.. Wall(judged)];
        if (plan.Design.PressureHeldBar is { } held)
            limits.Add((held, "the repair is sized to hold"));
        else if (judged.SafePressureBar is { } safe)
            limits.Add((safe, "the metal loss holds by its assessment"));
        return limits.Count > 0
            ? limits.MinBy(l => l.Bar)
            : (judged.Facts.OperatingPressureBar, "the line is operated at, and no wall was measured");
    }

    /// <summary>The least that proves anything, bar; nothing for tests that do not press.</summary>
    public static double? Least(RepairOrder order, TestKind kind) =>
        kind is TestKind.Hydrostatic or TestKind.Pneumatic or TestKind.ServiceLeak
            ? WorkPlan.Of(order)!.Limits?.Pressure?.Value ?? order.Request.Asked.OperatingPressure.Value
            : null;

    // The thinnest wall that is left; where there is a hole, the sound wall beside it that seal and bands bear on.
    private static IEnumerable<(double Bar, string Why)> Wall(Judgement judged)
    {
        var wall = judged.ThinnestMm is > 0 ? judged.ThinnestMm : judged.SoundWallMm;
        if (wall is not > 0)
            yield break;
        var held = Mawp.Barlow(
            Length.FromMillimeters(judged.Facts.OutsideDiameterMm),
            Length.FromMillimeters(wall.Value),
            Pressure.FromMegapascals(OfAllowable * judged.Facts.AllowableStressMpa * judged.Facts.QualityFactor)
        );
        yield return (
            held.Bars,
            string.Create(CultureInfo.InvariantCulture, $"a wall of {wall:0.0#} mm holds at nine tenths of yield")
        );
    }
}
