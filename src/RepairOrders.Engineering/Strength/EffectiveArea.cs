using System.Globalization;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>The weakest stretch of a river-bottom profile.</summary>
/// <param name="From">Index of its first point.</param>
/// <param name="To">Index of its last point.</param>
/// <param name="LengthMm">Effective length, mm.</param>
/// <param name="AreaMm2">Metal lost on it, mm².</param>
/// <param name="StrengthRatio">Failure stress over flow stress, 0 to 1 [-].</param>
public readonly record struct EffectiveSection(int From, int To, double LengthMm, double AreaMm2, double StrengthRatio);

/// <summary>
/// ASME B31G Level 2, the effective area of a river-bottom profile: every stretch of the profile is a defect of its own true
/// area, and the weakest governs.
/// </summary>
public static partial class EffectiveArea
{
    /// <summary>Finds the weakest of all stretches of a profile, by ASME B31G Level 2.</summary>
    /// <remarks>
    /// <para>Formula: for every i &lt; j: L = xj − xi, A = ∫ d dx (trapezoids), A0 = L t, z = L²/(D t), SF/Sflow = (1 − A/A0) / (1 − (A/A0)/M); the least governs, the first of equals.</para>
    /// <para>Symbols: x position along the pipe, mm; d depth, mm; L length, mm; A lost area, mm²; t wall, mm; D outside diameter, mm; M of <see cref="PipelineMetalLoss.BulgingModified"/>, -; SF failure stress, Sflow flow stress, MPa.</para>
    /// <para>Validity: as <see cref="PipelineMetalLoss.FailureStressModified"/>; x strictly increasing; d/t ≤ 0.80; end points at or near full wall.</para>
    /// <para>Reference: ASME B31G-2012, 2.3 (from memory); number of pairs n!/(2 (n − 2)!), IPC2022-87259.</para>
    /// </remarks>
    /// <param name="positionsMm">Positions x, strictly increasing, at least two [mm].</param>
    /// <param name="depthsMm">Deepest reading of the band round the pipe at each position, 0 to t [mm].</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <returns>The weakest stretch.</returns>
    /// <exception cref="ImpossibleInputException">Fewer than two points, positions that do not increase, or a depth outside 0 to t.</exception>
    /// <example>D 611 mm, t 8.2 mm, x 0 to 289 mm by 28.9 mm, d 0 1.0 1.1 1.1 1.1 1.3 1.8 2.8 2.8 1.6 0 mm: length 231.2 mm, ratio 0.86188; with Sflow 519 MPa the failure pressure is 12.007 MPa.</example>
    public static EffectiveSection Weakest(
        ReadOnlySpan<double> positionsMm,
        ReadOnlySpan<double> depthsMm,
        Length outsideDiameter,
        Length wall
    )
    {
        var (D, t) = Shell.Of(outsideDiameter, wall);
        Check(positionsMm, depthsMm, t);
        return EffectiveAreaSearch.Weakest(positionsMm, depthsMm, D, t);
    }

    /// <summary>Failure pressure of a river-bottom profile, by ASME B31G Level 2.</summary>
    /// <remarks>
    /// <para>Formula: PF = 2 SF t / D with the least SF of <see cref="Weakest"/>.</para>
    /// <para>Symbols: PF failure pressure, MPa; others those of <see cref="Weakest"/>.</para>
    /// <para>Validity: that of <see cref="Weakest"/>.</para>
    /// <para>Reference: ASME B31G-2012, 2.3 (from memory).</para>
    /// </remarks>
    /// <param name="positionsMm">Positions x, strictly increasing, at least two [mm].</param>
    /// <param name="depthsMm">Depths d, 0 to t [mm].</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Wall t.</param>
    /// <param name="flowStress">Flow stress Sflow, option (b) by custom.</param>
    /// <returns>Failure pressure PF.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>The profile of <see cref="Weakest"/> with Sflow 519 MPa: PF = 12.007 MPa.</example>
    public static Pressure FailurePressure(
        ReadOnlySpan<double> positionsMm,
        ReadOnlySpan<double> depthsMm,
        Length outsideDiameter,
        Length wall,
        Pressure flowStress
    )
    {
        var weakest = Weakest(positionsMm, depthsMm, outsideDiameter, wall);
        var Sflow = Take.Stress("flowStressMpa", flowStress);
        return Pressure.FromMegapascals(
            2 * Sflow * weakest.StrengthRatio * wall.Millimeters / outsideDiameter.Millimeters
        );
    }

    /// <summary>Metal lost over a whole profile, by trapezoids.</summary>
    /// <remarks>
    /// <para>Formula: A = Σ (xi+1 − xi) (di + di+1) / 2</para>
    /// <para>Symbols: A lost area, mm²; x position, mm; d depth, mm.</para>
    /// <para>Validity: positions strictly increasing.</para>
    /// <para>Reference: trapezoid rule, as ASME B31G-2012, 2.3 uses it (from memory).</para>
    /// </remarks>
    /// <param name="positionsMm">Positions x, strictly increasing, at least two [mm].</param>
    /// <param name="depthsMm">Depths d, 0 or more [mm].</param>
    /// <returns>Lost area A [mm²].</returns>
    /// <exception cref="ImpossibleInputException">Fewer than two points, positions that do not increase, or a negative depth.</exception>
    /// <example>The profile of <see cref="Weakest"/>: A = 421.94 mm².</example>
    public static double LostArea(ReadOnlySpan<double> positionsMm, ReadOnlySpan<double> depthsMm)
    {
        Check(positionsMm, depthsMm, double.MaxValue);
        var A = 0.0;
        for (var i = 1; i < positionsMm.Length; i++)
        {
            A += 0.5 * (positionsMm[i] - positionsMm[i - 1]) * (depthsMm[i] + depthsMm[i - 1]);
        }
        return A;
    }

    /// <summary>Number of stretches of a profile.</summary>
    /// <param name="points">Number of points n.</param>
    /// <returns>n (n − 1) / 2.</returns>
    public static long Pairs(int points) => (long)points * (points - 1) / 2;

    /// <summary>Refuses a profile that no wall can have.</summary>
    internal static void Check(ReadOnlySpan<double> x, ReadOnlySpan<double> d, double t)
    {
        if (x.Length < 2 || x.Length != d.Length)
        {
            throw new ImpossibleInputException(
                "positionsMm",
                $"{x.Length} positions with {d.Length} depths",
                "at least two points, a depth for each; one reading is no profile"
            );
        }
        for (var i = 0; i < x.Length; i++)
        {
            if (!(Math.Abs(x[i]) <= 1e9) || (i > 0 && !(x[i] > x[i - 1])))
            {
                throw Bad("positionsMm", i, x[i], "greater than the position before it");
            }
            if (!(d[i] >= 0 && d[i] <= t))
            {
                throw Bad(
                    "depthsMm",
                    i,
                    d[i],
                    string.Create(CultureInfo.InvariantCulture, $"0 to the wall of {t:G6} mm")
                );
            }
        }
    }

    private static ImpossibleInputException Bad(string field, int index, double value, string allowed) =>
        new($"{field}[{index}]", value.ToString("G6", CultureInfo.InvariantCulture), allowed);
}
