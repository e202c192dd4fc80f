using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;
using static RepairOrders.Engineering.Strength.StrengthPaper;

namespace RepairOrders.Engineering.Strength;

public static partial class CorrodedPipeSingleDefect
{
    internal const string Code = "corroded-pipe";

    private const string Name = "DNV-RP-F101 Part B, single defect";
    private const double StrongestGrade = 555;

    private static readonly Clause PartB = new("DNV-RP-F101", "8.2.1", Provenance.FromMemory);
    private static readonly Clause Flat = new("a long loss (z > 20) counts as its flat part", "", Provenance.OwnRule);
    private static readonly Clause Usage = new("DNV-RP-F101", "8.1", Provenance.FromMemory);

    /// <summary>Safe working pressure of a metal loss, by DNV-RP-F101 Part B: a second opinion.</summary>
    /// <remarks>
    /// <para>Formula: see <see cref="FailurePressure"/> and <see cref="SafeWorkingPressure"/>.</para>
    /// <para>Symbols: those of the formulae.</para>
    /// <para>Validity: d/t ≤ 0.85; carbon or low-alloy steel to X80 with a specified tensile strength; one isolated defect. Outside, the method is refused. A long loss (z &gt; 20) with a profile counts as its flat part, <see cref="RiverBottom.FlatDepth"/>.</para>
    /// <para>Reference: DNV-RP-F101, Part B (from memory).</para>
    /// </remarks>
    /// <param name="strengthCase">The case.</param>
    /// <returns>What the method says.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 812.8 mm, t 19.1 mm, d 4.775 mm, l 200 mm, fu 530.9 MPa, F2 0.72: Pf = 23.554 MPa, Psw = 15.263 MPa.</example>
    public static Calculated<StrengthAnswer> Assess(StrengthCase strengthCase)
    {
        var (D, t, greatest, l) = Dimensions(strengthCase);
        var d = DepthThatCounts(strengthCase.Loss, D, t, greatest, l);
        var pipe = strengthCase.Pipe;
        if (Refusal(pipe, greatest, t) is { } refusal)
        {
            return Refused(Code, Name, refusal);
        }
        var working = new Working();
        Givens(working, D, t, greatest, l);
        if (d < greatest)
        {
            working.Given(
                "d",
                "depth of the flat part: the shallowest place between the ends over 0.85",
                d,
                "mm",
                Flat
            );
        }
        var fu = working.Given(
            "fu",
            "specified minimum tensile strength",
            pipe.TensileStrength!.Value.Megapascals,
            "MPa",
            PipeRecord
        );
        var wall = strengthCase.Loss.ReferenceWall;
        var (depth, length) = (Length.FromMillimeters(d), Length.FromMillimeters(l));
        var Q = working.Step(
            "Q",
            "length correction",
            "sqrt(1 + 0.31 L² / (D t))",
            $"sqrt(1 + 0.31 × {l}² / ({D} × {t}))",
            LengthCorrection(length, pipe.OutsideDiameter, wall),
            "-",
            PartB
        );
        var Pf = FailurePressure(pipe.OutsideDiameter, wall, depth, length, pipe.TensileStrength.Value);
        working.Step(
            "Pf",
            "failure pressure, gauge",
            "(2 t fu / (D − t)) (1 − d/t) / (1 − d/(t Q))",
            $"(2 × {t} × {fu} / ({D} − {t})) × (1 − {d}/{t}) / (1 − {d}/({t} × {Q}))",
            Pf.Megapascals,
            "MPa",
            PartB
        );
        var safe = SafeWorkingPressure(Pf, strengthCase.UsageFactor);
        working.Step(
            "Psw",
            "safe working pressure, gauge",
            "0.9 F2 Pf",
            $"0.9 × {strengthCase.UsageFactor} × {Pf.Megapascals}",
            safe.Megapascals,
            "MPa",
            Usage
        );
        var answer = new StrengthAnswer(
            Code,
            Name,
            Pf,
            safe,
            Factor(strengthCase, safe.Megapascals),
            Text(
                $"{(d < greatest ? "The flat part's depth" : "The greatest depth")} of {d:0.00} mm over the whole length, the tensile strength of {fu:0} MPa and the method's own factors 0.9 × {strengthCase.UsageFactor:0.##}."
            )
        );
        return new(answer, working, [], []);
    }

    /// <summary>Failure pressure in MPa; nothing where the method is refused.</summary>
    internal static double? Predicted(StrengthCase strengthCase)
    {
        var (D, t, greatest, l) = Dimensions(strengthCase);
        var d = DepthThatCounts(strengthCase.Loss, D, t, greatest, l);
        var pipe = strengthCase.Pipe;
        return Refusal(pipe, greatest, t) is null
            ? FailurePressure(
                pipe.OutsideDiameter,
                strengthCase.Loss.ReferenceWall,
                Length.FromMillimeters(d),
                Length.FromMillimeters(l),
                pipe.TensileStrength!.Value
            ).Megapascals
            : null;
    }

    // A long loss counts as its flat part: that is the whole of a flat patch, and little of a ragged one.
    private static double DepthThatCounts(MetalLoss loss, double D, double t, double d, double l) =>
        l * l / (D * t) > 20 && EffectiveArea.IsProfiled(loss) ? loss.Profile!.FlatDepth.Millimeters : d;

    private static Finding? Refusal(Pipe pipe, double d, double t)
    {
        if (
            pipe.Metal is not (MetalFamily.CarbonSteel or MetalFamily.LowAlloySteel)
            || pipe.YieldStrength is not { } yield
            || pipe.TensileStrength is null
        )
        {
            return new(
                "tensile-strength-missing",
                Severity.Fail,
                "The method is for carbon and low-alloy steel with both specified strengths on record.",
                null,
                null,
                null,
                PartB,
                LimitKind.Absolute
            );
        }
        if (yield.Megapascals > StrongestGrade)
        {
            return new(
                "grade-above-x80",
                Severity.Fail,
                Text($"The method ends at X80 (555 MPa); this pipe has {yield.Megapascals:0} MPa."),
                yield.Megapascals,
                StrongestGrade,
                "MPa",
                PartB,
                LimitKind.Absolute
            );
        }
        return IsTooDeep(d, t, GreatestDepthRatio)
            ? new(
                "depth-above-85-percent",
                Severity.Fail,
                Text($"The loss is {100 * d / t:0.#} % of the wall; the method ends at 85 %."),
                100 * d / t,
                100 * GreatestDepthRatio,
                "%",
                PartB,
                LimitKind.Absolute
            )
            : null;
    }
}
