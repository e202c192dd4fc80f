using System.Globalization;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>A wall to order.</summary>
/// <param name="Minimum">Wall that must be there: for pressure, with its allowances.</param>
/// <param name="Nominal">Least nominal wall to order.</param>
public sealed record OrderedWall(Length Minimum, Length Nominal);

public static partial class RequiredWall
{
    private const double UsualMillShare = 0.125;

    private static readonly Clause Eq2 = new("ASME B31.3", "304.1.1, eq. (2)");
    private static readonly Clause MillOrder = new("ASTM A53, A106, A312", "12.5 %", Provenance.FromMemory);

    /// <summary>Wall to order for new pipe, from the wall needed for pressure.</summary>
    /// <remarks>
    /// <para>Formula: tm = t + c; T = tm / (1 − m) with a tolerance in per cent, T = tm + m with a fixed one.</para>
    /// <para>Symbols: tm minimum wall, mm; t wall for pressure, mm; c allowances, mm; T nominal wall to order, mm; m mill under-tolerance, - or mm.</para>
    /// <para>Validity: those of <see cref="OrderWall(Length, Length, double)"/>; never for a measured wall. Without a tolerance 12.5 % is taken and told.</para>
    /// <para>Reference: ASME B31.3, 304.1.1, eq. (2); tolerances of the pipe's specification.</para>
    /// </remarks>
    /// <param name="forPressure">Wall for pressure t.</param>
    /// <param name="allowance">Allowances c for corrosion, erosion and threads.</param>
    /// <param name="millShare">Mill under-tolerance as a share, 0 to 0.5; nothing where it is a fixed one or not known [-].</param>
    /// <param name="millFixed">Fixed mill under-tolerance; nothing where it is a share or not known.</param>
    /// <returns>The wall to order.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>t 0.2097 in, c 0.125 in, 12.5 %: tm = 0.335 in, T = 0.383 in.</example>
    public static Calculated<OrderedWall> ToOrder(
        Length forPressure,
        Length allowance,
        double? millShare,
        Length? millFixed
    )
    {
        var working = new Working();
        var t = working.Given("t", "wall for pressure", Take.Extent("requiredWallMm", forPressure), "mm", Eq2);
        var c = working.Given("c", "allowances", Take.Extent("allowanceMm", allowance), "mm", PipeRecord);
        var tm = working.Step("tm", "minimum wall", "t + c", $"{t} + {c}", t + c, "mm", Eq2);
        var share = millShare ?? UsualMillShare;
        var T = millFixed is { } m
            ? working.Step(
                "T",
                "nominal wall to order",
                "tm + m",
                $"{tm} + {m.Millimeters}",
                OrderWall(forPressure, allowance, m).Millimeters,
                "mm",
                Eq2
            )
            : working.Step(
                "T",
                "nominal wall to order",
                "tm / (1 − m)",
                $"{tm} / (1 − {share})",
                OrderWall(forPressure, allowance, share).Millimeters,
                "mm",
                Eq2
            );
        return new(
            new(Length.FromMillimeters(tm), Length.FromMillimeters(T)),
            working,
            [.. MillTolerance(millShare, millFixed, T)],
            ["For ordering new pipe only: no mill tolerance is taken off a wall that was measured."]
        );
    }

    private static IEnumerable<Finding> MillTolerance(double? share, Length? absolute, double T)
    {
        if (share is null && absolute is null)
            yield return new(
                "mill-tolerance-default",
                Severity.Watch,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"No mill tolerance was given: 12.5 % is taken. Plate pipe and API 5L seamless up to 4 mm have a fixed one; here {T:0.00} mm is ordered."
                ),
                100 * UsualMillShare,
                null,
                "%",
                MillOrder
            );
    }
}
