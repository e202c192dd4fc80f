using RepairOrders.Engineering.Methods;
using static RepairOrders.Engineering.Strength.StrengthPaper;

namespace RepairOrders.Engineering.Strength;

public static partial class EffectiveArea
{
    internal const string Code = "effective-area";

    private const string Name = "ASME B31G Level 2, effective area";

    private static readonly Clause Level2 = new("ASME B31G-2012", "2.3", Provenance.FromMemory);
    private static readonly Clause ProfileRule = new(
        "points at most the larger of the wall and 25 mm apart, ends at full wall",
        "",
        Provenance.OwnRule
    );

    /// <summary>Safe pressure of a river-bottom profile, by ASME B31G Level 2 with flow stress option (b).</summary>
    /// <remarks>
    /// <para>Formula: see <see cref="Weakest"/>; PF = 2 SF t / D; PS = PF / n.</para>
    /// <para>Symbols: those of <see cref="Weakest"/>; n safety factor, -.</para>
    /// <para>Validity: that of <see cref="Weakest"/> and <see cref="FlowStress.Of"/>. One reading is no profile: a short loss is refused; a long one (z &gt; 20), or one whose profile misses the deepest reading or a part of the length, is taken as a rectangle of the greatest depth.</para>
    /// <para>Reference: ASME B31G-2012, 2.3 (from memory).</para>
    /// </remarks>
    /// <param name="strengthCase">The case.</param>
    /// <returns>What the method says.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 611 mm, t 8.2 mm, SMYS 450 MPa (Sflow 519 MPa), the profile of <see cref="Weakest"/>, safety factor 1: PF = 12.007 MPa over 231.2 mm.</example>
    public static Calculated<StrengthAnswer> Assess(StrengthCase strengthCase)
    {
        var (D, t, d, L) = Dimensions(strengthCase);
        var loss = strengthCase.Loss;
        var flow = FlowStress.Assess(FlowStressOption.B, strengthCase.Pipe, strengthCase.Temperature);
        var profile = ProfileOf(loss, D, t, d, L);
        if ((Refusal(profile, d, t) ?? (flow.Result is null ? flow.Findings[0] : null)) is { } refusal)
        {
            return Refused(Code, Name, refusal);
        }
        var weakest = Weakest(
            profile!.PositionsMm,
            profile.DepthsMm,
            strengthCase.Pipe.OutsideDiameter,
            loss.ReferenceWall
        );
        var working = new Working();
        Givens(working, D, t, d, L);
        working.Include(flow.Working);
        var SF = Shown(working, profile, weakest, D, t, flow.Result!.Value.Megapascals);
        var answer = Answer(
            strengthCase,
            working,
            Code,
            Name,
            SF,
            Assumes(loss, profile, weakest, flow.Result!.Value.Megapascals)
        );
        return new(answer, working, [.. Doubts(loss, L, t)], []);
    }

    /// <summary>The weakest stretch of a case whose profile is good; nothing where the method is refused for its shape.</summary>
    internal static EffectiveSection? WeakestOf(StrengthCase strengthCase)
    {
        var (D, t, d, L) = Dimensions(strengthCase);
        var profile = ProfileOf(strengthCase.Loss, D, t, d, L);
        return Refusal(profile, d, t) is null
            ? EffectiveAreaSearch.Weakest(profile!.PositionsMm, profile.DepthsMm, D, t)
            : null;
    }

    /// <summary>The loss has a profile that runs through the deepest place measured and covers its length.</summary>
    internal static bool IsProfiled(MetalLoss loss) =>
        loss.Profile is { } profile && !MissesDeepest(profile, loss) && !IsShort(profile, loss);

    private static bool MissesDeepest(RiverBottom profile, MetalLoss loss) =>
        profile.Deepest.Millimeters < loss.Depth.Millimeters * (1 - 1e-9);

    private static bool IsShort(RiverBottom profile, MetalLoss loss) =>
        profile.Span.Millimeters < 0.95 * loss.AxialLength.Millimeters;

    // A profile that misses the deepest place or a part of the length has measured less than a single reading: the greatest
    // depth over the whole length never looks stronger than any profile under it.
    private static RiverBottom? ProfileOf(MetalLoss loss, double D, double t, double d, double L) =>
        IsProfiled(loss) ? loss.Profile
        : loss.Profile is not null || L * L / (D * t) > 20 ? RiverBottom.Of([0, L], [d, d])
        : null;

    private static Finding? Refusal(RiverBottom? profile, double d, double t) =>
        profile is null
            ? new(
                "profile-missing",
                Severity.Fail,
                "One reading is no profile; Level 1 is used.",
                null,
                null,
                null,
                Level2,
                LimitKind.Absolute
            )
        : IsTooDeep(d, t) ? TooDeep(d, t)
        : null;

    private static double Shown(
        Working working,
        RiverBottom profile,
        EffectiveSection weakest,
        double D,
        double t,
        double Sflow
    )
    {
        var n = profile.PositionsMm.Length;
        var L = weakest.LengthMm;
        var A = weakest.AreaMm2;
        working.Step("N", "stretches compared", "n (n − 1) / 2", $"{n} × ({n} − 1) / 2", Pairs(n), "-", Level2);
        working.Given(
            "Leff",
            Text(
                $"length of the weakest stretch, x = {profile.PositionsMm[weakest.From]:0.0} to {profile.PositionsMm[weakest.To]:0.0} mm"
            ),
            L,
            "mm",
            Level2
        );
        working.Given("A", "area lost on it, trapezoids", A, "mm²", Level2);
        var A0 = working.Step("A0", "area of the sound wall", "Leff t", $"{L} × {t}", L * t, "mm²", Level2);
        var z = working.Step(
            "z",
            "length parameter",
            "Leff² / (D t)",
            $"{L}² / ({D} × {t})",
            L * L / (D * t),
            "-",
            Level2
        );
        var M = PipelineMetalLoss.BulgingStep(working, z);
        return working.Step(
            "SF",
            "failure stress",
            "Sflow (1 − A/A0) / (1 − (A/A0)/M)",
            $"{Sflow} × (1 − {A}/{A0}) / (1 − ({A}/{A0})/{M})",
            Sflow * weakest.StrengthRatio,
            "MPa",
            Level2
        );
    }

    private static string Assumes(MetalLoss loss, RiverBottom profile, EffectiveSection weakest, double Sflow)
    {
        var whole = profile.Span.Millimeters;
        var share = weakest.AreaMm2 / Math.Max(1e-9, weakest.LengthMm * profile.Deepest.Millimeters);
        return !IsProfiled(loss)
            ? Text(
                $"No profile of the whole loss: the greatest depth over the whole length of {whole:0} mm; flow stress {Sflow:0} MPa."
            )
            : Text(
                $"The measured area, {share:0.00} of the greatest depth over the weakest {weakest.LengthMm:0} of {whole:0} mm; flow stress {Sflow:0} MPa."
            );
    }

    private static IEnumerable<Finding> Doubts(MetalLoss loss, double L, double t)
    {
        if (loss.Profile is not { } profile)
        {
            yield break;
        }
        if (MissesDeepest(profile, loss))
        {
            var (deepest, d) = (profile.Deepest.Millimeters, loss.Depth.Millimeters);
            yield return new(
                "profile-misses-deepest",
                Severity.Watch,
                Text(
                    $"The profile's greatest depth of {deepest:0.00} mm is less than the {d:0.00} mm measured; the greatest depth over the whole length is used instead."
                ),
                deepest,
                d,
                "mm",
                Level2
            );
        }
        var (gap, widest) = (profile.WidestGap.Millimeters, Math.Max(t, 25));
        if (gap > widest)
        {
            yield return new(
                "profile-spacing",
                Severity.Watch,
                Text($"Points are up to {gap:0} mm apart; beyond {widest:0} mm pits are missed."),
                gap,
                widest,
                "mm",
                ProfileRule
            );
        }
        var end = Math.Max(profile.DepthsMm[0], profile.DepthsMm[^1]);
        if (end > 0.1 * t)
        {
            yield return new(
                "profile-truncated",
                Severity.Watch,
                Text($"An end of the profile is {end:0.00} mm deep, more than a tenth of the wall: the loss runs on."),
                end,
                0.1 * t,
                "mm",
                ProfileRule
            );
        }
        if (IsShort(profile, loss))
        {
            yield return new(
                "profile-short",
                Severity.Watch,
                Text(
                    $"The profile covers {profile.Span.Millimeters:0} of {L:0} mm; the greatest depth over the whole length is used instead."
                ),
                profile.Span.Millimeters,
                L,
                "mm",
                ProfileRule
            );
        }
    }
}
