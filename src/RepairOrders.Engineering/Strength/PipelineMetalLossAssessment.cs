using RepairOrders.Engineering.Methods;
using UnitsNet;
using static RepairOrders.Engineering.Strength.StrengthPaper;

namespace RepairOrders.Engineering.Strength;

public static partial class PipelineMetalLoss
{
    internal const string OriginalCode = "b31g-original";
    internal const string ModifiedCode = "b31g-modified";

    private const string OriginalName = "ASME B31G, original";
    private const string ModifiedName = "ASME B31G, modified (0.85 dL)";
    private const double Jump = 20;

    private static readonly Clause ParabolaClause = new("ASME B31G-2012", "2.2(a)", Provenance.FromMemory);
    private static readonly Clause ModifiedClause = new("ASME B31G-2012", "2.2(b)", Provenance.FromMemory);
    private static readonly Clause FlatPatch = new(
        "0.85 dL over-predicts long flat patches (burst tests recalled)",
        "",
        Provenance.OwnRule
    );

    /// <summary>Safe pressure of a metal loss, by original ASME B31G with flow stress option (a).</summary>
    /// <remarks>
    /// <para>Formula: see <see cref="FailureStressOriginal"/>; PF = 2 SF t / D; PS = PF / n.</para>
    /// <para>Symbols: those of <see cref="FailureStressOriginal"/>; n safety factor, -.</para>
    /// <para>Validity: that of <see cref="FailureStressOriginal"/> and <see cref="FlowStress.Of"/>, tested as findings; d/t above 80 % is refused. Near and above z = 20 the branch is shown.</para>
    /// <para>Reference: ASME B31G-2012, 2.2(a) (from memory).</para>
    /// </remarks>
    /// <param name="strengthCase">The case.</param>
    /// <returns>What the method says.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 500 mm, t 10 mm, d 5 mm, SMYS 360 MPa, safety factor 1: PF = 11.489 MPa at z = 20 and 7.920 MPa just above it.</example>
    public static Calculated<StrengthAnswer> AssessOriginal(StrengthCase strengthCase)
    {
        var (D, t, d, L) = Dimensions(strengthCase);
        var flow = FlowStress.Assess(FlowStressOption.A, strengthCase.Pipe, strengthCase.Temperature);
        if (Refusal(flow, d, t) is { } refusal)
        {
            return Refused(OriginalCode, OriginalName, refusal);
        }
        var working = new Working();
        Givens(working, D, t, d, L);
        working.Include(flow.Working);
        var Sflow = flow.Result!.Value.Megapascals;
        var z = working.Step(
            "z",
            "length parameter",
            "L² / (D t)",
            $"{L}² / ({D} × {t})",
            L * L / (D * t),
            "-",
            ParabolaClause
        );
        var SF = z <= Jump ? Parabola(working, Sflow, d, t, z) : Rectangle(working, Sflow, d, t);
        var assumes =
            z <= Jump
                ? Text(
                    $"A parabola of two thirds of the greatest depth over the whole length (z = {z:0.0}, up to 20); flow stress {Sflow:0} MPa."
                )
                : Text(
                    $"The greatest depth over a length without end (z = {z:0.0}, above 20); flow stress {Sflow:0} MPa."
                );
        var answer = Answer(strengthCase, working, OriginalCode, OriginalName, SF, assumes);
        return new(answer, working, [.. Branch(Sflow, D, t, d, z)], []);
    }

    /// <summary>Safe pressure of a metal loss, by modified ASME B31G with flow stress option (b).</summary>
    /// <remarks>
    /// <para>Formula: see <see cref="FailureStressModified"/>; PF = 2 SF t / D; PS = PF / n.</para>
    /// <para>Symbols: those of <see cref="FailureStressModified"/>; n safety factor, -.</para>
    /// <para>Validity: that of <see cref="FailureStressModified"/> and <see cref="FlowStress.Of"/>, tested as findings; d/t above 80 % is refused. A long patch that is flat, or not known not to be, is a finding.</para>
    /// <para>Reference: ASME B31G-2012, 2.2(b) (from memory).</para>
    /// </remarks>
    /// <param name="strengthCase">The case.</param>
    /// <returns>What the method says.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 611 mm, t 8.2 mm, d 2.8 mm, L 289 mm, SMYS 450 MPa (Sflow 519 MPa), safety factor 1: PF = 10.859 MPa.</example>
    public static Calculated<StrengthAnswer> AssessModified(StrengthCase strengthCase)
    {
        var (D, t, d, L) = Dimensions(strengthCase);
        var flow = FlowStress.Assess(FlowStressOption.B, strengthCase.Pipe, strengthCase.Temperature);
        if (Refusal(flow, d, t) is { } refusal)
        {
            return Refused(ModifiedCode, ModifiedName, refusal);
        }
        var working = new Working();
        Givens(working, D, t, d, L);
        working.Include(flow.Working);
        var Sflow = flow.Result!.Value.Megapascals;
        var z = working.Step(
            "z",
            "length parameter",
            "L² / (D t)",
            $"{L}² / ({D} × {t})",
            L * L / (D * t),
            "-",
            ModifiedClause
        );
        var M = BulgingStep(working, z);
        var SF = working.Step(
            "SF",
            "failure stress",
            "Sflow (1 − 0.85 d/t) / (1 − 0.85 (d/t)/M)",
            $"{Sflow} × (1 − 0.85 × {d}/{t}) / (1 − 0.85 × ({d}/{t})/{M})",
            Sflow * Ratio(0.85 * d / t, z),
            "MPa",
            ModifiedClause
        );
        var answer = Answer(
            strengthCase,
            working,
            ModifiedCode,
            ModifiedName,
            SF,
            Text($"0.85 of the greatest depth over the whole length; flow stress {Sflow:0} MPa.")
        );
        return new(answer, working, IsLongAndFlat(strengthCase.Loss, z) ? [LongAndFlat(strengthCase.Loss, z)] : [], []);
    }

    /// <summary>A long patch that is flat, or not known not to be: 0.85 dL does not count for it.</summary>
    internal static bool IsLongAndFlat(MetalLoss loss, double z) =>
        z > Jump && !(EffectiveArea.IsProfiled(loss) && loss.Profile!.DepthVariation >= 0.15);

    /// <summary>M with its working.</summary>
    internal static double BulgingStep(Working working, double z) =>
        z <= 50
            ? working.Step(
                "M",
                "bulging factor, z ≤ 50",
                "sqrt(1 + 0.6275 z − 0.003375 z²)",
                $"sqrt(1 + 0.6275 × {z} − 0.003375 × {z}²)",
                Bulging(z),
                "-",
                ModifiedClause
            )
            : working.Step(
                "M",
                "bulging factor, z > 50",
                "0.032 z + 3.3",
                $"0.032 × {z} + 3.3",
                Bulging(z),
                "-",
                ModifiedClause
            );

    private static Finding? Refusal(Calculated<Pressure?> flow, double d, double t) =>
        IsTooDeep(d, t) ? TooDeep(d, t)
        : flow.Result is null ? flow.Findings[0]
        : null;

    private static double Parabola(Working working, double Sflow, double d, double t, double z)
    {
        var M = working.Step(
            "M",
            "bulging factor",
            "sqrt(1 + 0.8 z)",
            $"sqrt(1 + 0.8 × {z})",
            BulgingOriginal(z),
            "-",
            ParabolaClause
        );
        return working.Step(
            "SF",
            "failure stress, z ≤ 20",
            "Sflow (1 − (2/3) d/t) / (1 − (2/3)(d/t)/M)",
            $"{Sflow} × (1 − (2/3) × {d}/{t}) / (1 − (2/3) × ({d}/{t})/{M})",
            Sflow * RatioOriginal(d / t, z),
            "MPa",
            ParabolaClause
        );
    }

    private static double Rectangle(Working working, double Sflow, double d, double t) =>
        working.Step(
            "SF",
            "failure stress, z > 20",
            "Sflow (1 − d/t)",
            $"{Sflow} × (1 − {d}/{t})",
            Sflow * (1 - d / t),
            "MPa",
            ParabolaClause
        );

    private static IEnumerable<Finding> Branch(double Sflow, double D, double t, double d, double z)
    {
        if (z < 0.8 * Jump)
        {
            yield break;
        }
        var (below, above) = (2 * Sflow * RatioOriginal(d / t, Jump) * t / D, 2 * Sflow * (1 - d / t) * t / D);
        yield return new(
            "b31g-branch-jump",
            Severity.Watch,
            Text(
                $"At z = 20 the method's shape changes and its failure pressure steps from {below * 10:0.0} to {above * 10:0.0} bar; here z = {z:0.00}. The step belongs to the method."
            ),
            z,
            Jump,
            "-",
            ParabolaClause
        );
    }

    private static Finding LongAndFlat(MetalLoss loss, double z) =>
        new(
            "long-flat-patch",
            Severity.Watch,
            EffectiveArea.IsProfiled(loss) && loss.Profile is { } profile
                ? Text(
                    $"The patch is long (z = {z:0.0}) and flat ({100 * profile.DepthVariation:0} % variation of depth): 0.85 dL does not count."
                )
                : Text(
                    $"The patch is long (z = {z:0.0}) and no profile shows that it is not flat: 0.85 dL does not count."
                ),
            z,
            Jump,
            "-",
            FlatPatch
        );
}
