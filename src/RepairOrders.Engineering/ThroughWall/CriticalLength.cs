using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using UnitsNet;
using static System.FormattableString;

namespace RepairOrders.Engineering.ThroughWall;

/// <summary>A wall that is through, or may soon be.</summary>
/// <param name="Pipe">The pipe.</param>
/// <param name="ThinnestAlongLine">Thinnest wall measured along the flaw's own axial line, not the nominal.</param>
/// <param name="FlawLength">Axial length of the flaw.</param>
/// <param name="GrowthByNextVisit">Length likely to open by the next visit.</param>
/// <param name="Pressure">Gauge pressure.</param>
/// <param name="FlowStress">Flow stress.</param>
public sealed record ThroughWallCase(
    Pipe Pipe,
    Length ThinnestAlongLine,
    Length FlawLength,
    Length GrowthByNextVisit,
    Pressure Pressure,
    Pressure FlowStress
);

/// <summary>Whether a through-wall flaw leaks or runs.</summary>
/// <param name="CriticalLength">Length at which it runs; nothing where it never does, or where the metal is not ductile.</param>
/// <param name="Length">Length by the next visit.</param>
/// <param name="HoopStress">Hoop stress in the thinnest wall.</param>
/// <param name="ShareOfYield">Hoop stress over specified yield strength; nothing where there is none.</param>
public sealed record ThroughWallCheck(Length? CriticalLength, Length Length, Pressure HoopStress, double? ShareOfYield);

/// <summary>Axial length at which a through-wall flaw runs: the ductile limit.</summary>
public static class CriticalLength
{
    /// <summary>Below this share of yield strength corrosion leaks rather than ruptures.</summary>
    public const double LeakShareOfYield = 0.3;

    private const double Quadratic = 0.003375;
    private const double Linear = 0.6275;
    private static readonly Clause Folias = new(
        "NG-18 flow-stress limit (Maxey, Kiefner) with two-range bulging factor",
        "",
        Provenance.FromMemory
    );
    private static readonly Clause LeakOrRupture = new(
        "GRI-00/0232 (2001), leak or rupture of corroded pipe",
        "",
        Provenance.FromMemory
    );
    private static readonly Clause Own = new("margin on the critical length", "", Provenance.OwnRule);

    /// <summary>Axial length at which a through-wall flaw becomes unstable in ductile pipe.</summary>
    /// <remarks>
    /// <para>Formula: S_H = Sf/M with S_H = P D/(2 t); M² = 1 + 0.6275 z − 0.003375 z² for z ≤ 50, else M = 0.032 z + 3.3; z = L²/(D t); solved for L.</para>
    /// <para>Symbols: L length, mm; S_H hoop stress, MPa; Sf flow stress, MPa; P gauge pressure, MPa; D outside diameter, mm; t thinnest wall along the flaw's line, mm; M bulging factor, -.</para>
    /// <para>Validity: ductile metal, axial flaw; round-the-pipe flaws are a matter of end load. Between the two ranges, M 4.8926 to 4.9, z is 50.</para>
    /// <para>Reference: NG-18 (Maxey, Kiefner), c = L/2, R = D/2 (from memory).</para>
    /// </remarks>
    /// <param name="pressure">Gauge pressure P.</param>
    /// <param name="outsideDiameter">Outside diameter D.</param>
    /// <param name="wall">Thinnest wall t along the flaw's line.</param>
    /// <param name="flowStress">Flow stress Sf.</param>
    /// <returns>Length L; 0 where even the unflawed wall flows, nothing where there is no pressure.</returns>
    /// <exception cref="ImpossibleInputException">Pressure is negative, or a size or stress is not above 0.</exception>
    /// <example>2 MPa, 168.3 mm, 7.11 mm, 309 MPa: M = 13.05, z = 304.8, L = 603.94 mm.</example>
    public static Length? Of(Pressure pressure, Length outsideDiameter, Length wall, Pressure flowStress)
    {
        var Sf = Take.Stress("flowStressMpa", flowStress);
        var S_H = Mawp.HoopStress(pressure, outsideDiameter, wall).Megapascals;
        var (D, t) = (outsideDiameter.Millimeters, wall.Millimeters);
        if (S_H <= 0)
        {
            return null;
        }
        if (S_H >= Sf)
        {
            return Length.Zero;
        }
        var z = BulgingLength(Sf / S_H);
        var L = Math.Sqrt(z * D * t);
        return L < 1e9 ? Length.FromMillimeters(L) : null;
    }

    /// <summary>Whether a through-wall flaw leaks or runs.</summary>
    /// <remarks>
    /// <para>Formula: see <see cref="Of"/>; length = flaw + growth by the next visit.</para>
    /// <para>Symbols: those of <see cref="Of"/>.</para>
    /// <para>Validity: ductile metal, straight pipe, axial flaw; a sanity bound, no fitness-for-service assessment.</para>
    /// <para>Reference: NG-18 (from memory); screening at 30 % of yield after GRI-00/0232 (from memory); the margin of 3 is our own.</para>
    /// </remarks>
    /// <param name="flaw">Pipe, flaw and pressure.</param>
    /// <returns>Critical length and hoop stress, with working and findings.</returns>
    /// <exception cref="ImpossibleInputException">A size, stress or pressure cannot be.</exception>
    /// <example>DN 300 × 6.35 mm at 10 MPa, flow stress 309 MPa: critical length 39.3 mm; a flaw of 15 mm is too near: no live work.</example>
    public static Calculated<ThroughWallCheck> Check(ThroughWallCase flaw)
    {
        ArgumentNullException.ThrowIfNull(flaw);
        var length = Length.FromMillimeters(
            Take.Extent("axialLengthMm", flaw.FlawLength) + Take.Extent("growthMm", flaw.GrowthByNextVisit)
        );
        var hoop = Mawp.HoopStress(flaw.Pressure, flaw.Pipe.OutsideDiameter, flaw.ThinnestAlongLine);
        if (flaw.Pipe is { Metal: MetalFamily.GrayIron } or { YieldStrength: null })
        {
            return new(new(null, length, hoop, null), [], [NotDuctile()], []);
        }
        var critical = Of(flaw.Pressure, flaw.Pipe.OutsideDiameter, flaw.ThinnestAlongLine, flaw.FlowStress);
        var share = hoop.Megapascals / Take.Stress("yieldStrengthMpa", flaw.Pipe.YieldStrength!.Value);
        var working = new Working();
        working.Step(
            "S_H",
            "hoop stress in the thinnest wall",
            "P D/(2 t)",
            $"{flaw.Pressure.Megapascals} × {flaw.Pipe.OutsideDiameter.Millimeters}/(2 × {flaw.ThinnestAlongLine.Millimeters})",
            hoop.Megapascals,
            "MPa",
            Folias
        );
        var findings = new List<Finding> { LeaksOrRuptures(share) };
        if (critical is { } L)
        {
            Note(working, flaw, hoop, L);
            findings.Add(Margin(length.Millimeters, L.Millimeters));
        }
        return new(
            new(critical, length, hoop, share),
            [.. working],
            findings,
            findings.Exists(f => f.Severity == Severity.Fail)
                ? ["Rupture is credible: no work on the live line, keep everybody away."]
                : []
        );
    }

    private static void Note(Working working, ThroughWallCase flaw, Pressure hoop, Length critical)
    {
        var (D, t) = (flaw.Pipe.OutsideDiameter.Millimeters, flaw.ThinnestAlongLine.Millimeters);
        var (Sf, S_H) = (flaw.FlowStress.Megapascals, hoop.Megapascals);
        var M = working.Step("M", "bulging factor at which it runs", "Sf/S_H", $"{Sf}/{S_H}", Sf / S_H, "-", Folias);
        var z = M <= 1 ? 0 : BulgingLength(M);
        if (z > 50)
            working.Step("z", "of M = 0.032 z + 3.3", "(M − 3.3)/0.032", $"({M} − 3.3)/0.032", z, "-", Folias);
        else
            working.Step(
                "z",
                "of M² = 1 + 0.6275 z − 0.003375 z², at most 50",
                "2 (M² − 1)/(0.6275 + √(0.6275² − 0.0135 (M² − 1)))",
                $"2 × ({M}² − 1)/(0.6275 + √(0.6275² − 0.0135 × ({M}² − 1)))",
                z,
                "-",
                Folias
            );
        working.Step(
            "L_crit",
            "length at which the flaw runs",
            "√(z D t)",
            $"√({z} × {D} × {t})",
            critical.Millimeters,
            "mm",
            Folias
        );
    }

    private static double BulgingLength(double M)
    {
        if (M >= 0.032 * 50 + 3.3)
        {
            return (M - 3.3) / 0.032;
        }
        var root = Linear * Linear - 4 * Quadratic * (M * M - 1);
        // The lesser root, without the difference of near-equal numbers.
        return Math.Min(50, 2 * (M * M - 1) / (Linear + Math.Sqrt(Math.Max(0, root))));
    }

    private static Finding NotDuctile() =>
        new(
            "not-ductile",
            Severity.Fail,
            "The metal is brittle or has no yield strength on record: no ductile limit can be given; a flaw may run at any length.",
            null,
            null,
            null,
            Folias,
            LimitKind.Absolute
        );

    private static Finding LeaksOrRuptures(double share) =>
        new(
            "leak-or-rupture",
            share < LeakShareOfYield ? Severity.Pass : Severity.Watch,
            Invariant($"Hoop stress is {share:P0} of yield strength; ")
                + (
                    share < LeakShareOfYield
                        ? "corrosion leaks rather than ruptures."
                        : "from 30 % on rupture is credible."
                ),
            share,
            LeakShareOfYield,
            "-",
            LeakOrRupture
        );

    private static Finding Margin(double length, double critical) =>
        new(
            "critical-length",
            length < critical / 3 ? Severity.Pass : Severity.Fail,
            Invariant(
                $"The flaw is {length:G4} mm by the next visit, it runs at {critical:G4} mm; a third of that is allowed."
            ),
            length,
            critical / 3,
            "mm",
            Own,
            length < critical ? LimitKind.ByDeviation : LimitKind.Absolute
        );
}
