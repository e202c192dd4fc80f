using RepairOrders.Engineering.Strength;
using UnitsNet;

namespace RepairOrders.Engineering.Life;

/// <summary>How long until a defect has outgrown its repair, in depth, length or hole.</summary>
public static class DefectGrowth
{
    /// <summary>Time until the wall is down to what carries the end load.</summary>
    /// <remarks>
    /// <para>Formula: T_d = (t_mm − t_req,axial)/CR_local.</para>
    /// <para>Symbols: T_d time, y; t_mm least wall measured, mm; t_req,axial wall the end load needs, mm; CR_local local rate, mm/y.</para>
    /// <para>Validity: the local rate goes on as it was.</para>
    /// <para>Reference: derived here from API 570, 7.1.1, put to the axial wall.</para>
    /// </remarks>
    /// <param name="measured">Least wall t_mm.</param>
    /// <param name="requiredAxial">Wall the end load needs.</param>
    /// <param name="localRate">Local rate.</param>
    /// <returns>Time T_d; 0 where the wall is short already, nothing where the rate is 0 or less.</returns>
    /// <exception cref="ImpossibleInputException">A wall is negative.</exception>
    /// <example>4.0 mm, 0.64 mm needed, 0.4 mm a year: T_d = 3.36/0.4 = 8.4 years.</example>
    public static Duration? DepthLife(Length measured, Length requiredAxial, Speed localRate) =>
        RemainingLife.Of(measured, requiredAxial, localRate);

    /// <summary>Time until the defect has grown along the pipe to the seals of an unbonded clamp.</summary>
    /// <remarks>
    /// <para>Formula: T_L = (L_seal − L − 2 m)/(2 CR_axial).</para>
    /// <para>Symbols: T_L time, y; L_seal length between the seals, mm; L axial length of the defect, mm; m margin kept at each seal, mm; CR_axial growth at each end, mm/y.</para>
    /// <para>Validity: growth at both ends; under an unbonded clamp trapped fluid may make it faster.</para>
    /// <para>Reference: derived here.</para>
    /// </remarks>
    /// <param name="betweenSeals">Length between the seals L_seal.</param>
    /// <param name="axialLength">Axial length of the defect L.</param>
    /// <param name="sealMargin">Margin m at each seal.</param>
    /// <param name="axialRate">Growth at each end.</param>
    /// <returns>Time T_L; 0 where nothing is left, nothing where the rate is 0 or less.</returns>
    /// <exception cref="ImpossibleInputException">A length is negative.</exception>
    /// <example>200 mm between seals, 60 mm long, margins of 25 mm, 5 mm a year: T_L = 90/10 = 9 years.</example>
    public static Duration? LengthLife(Length betweenSeals, Length axialLength, Length sealMargin, Speed axialRate)
    {
        var L_seal = Take.Extent("lengthBetweenSealsMm", betweenSeals);
        var L = Take.Extent("axialLengthMm", axialLength);
        var m = Take.Extent("sealMarginMm", sealMargin);
        return Room(L_seal - L - 2 * m, axialRate);
    }

    /// <summary>Time until a hole has grown to the largest its plug or soft patch is rated for.</summary>
    /// <remarks>
    /// <para>Formula: T_h = (d_rated − d)/(2 CR_local).</para>
    /// <para>Symbols: T_h time, y; d_rated largest hole the patch is rated for, mm; d hole now, mm; CR_local local rate, mm/y.</para>
    /// <para>Validity: plugs and soft patches; the rim goes back all round at the local rate.</para>
    /// <para>Reference: derived here.</para>
    /// </remarks>
    /// <param name="ratedHole">Largest hole of the patch d_rated.</param>
    /// <param name="hole">Equivalent hole diameter now d.</param>
    /// <param name="localRate">Local rate.</param>
    /// <returns>Time T_h; 0 where the hole is as large already, nothing where the rate is 0 or less.</returns>
    /// <exception cref="ImpossibleInputException">A diameter is negative.</exception>
    /// <example>Rated for 25 mm, hole 5 mm, 0.5 mm a year: T_h = 20/1.0 = 20 years.</example>
    public static Duration? HoleLife(Length ratedHole, Length hole, Speed localRate)
    {
        var d_rated = Take.Extent("ratedHoleMm", ratedHole);
        var d = Take.Extent("holeDiameterMm", hole);
        return Room(d_rated - d, localRate);
    }

    private static Duration? Room(double room, Speed rate)
    {
        if (room <= 0)
        {
            return Duration.Zero;
        }
        var years = room / (2 * rate.MillimetresPerYear());
        return years is > 0 and <= RemainingLife.LongestYears ? RemainingLife.Years(years) : null;
    }
}
