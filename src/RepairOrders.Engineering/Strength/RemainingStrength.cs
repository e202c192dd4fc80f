using RepairOrders.Engineering.Methods;
using UnitsNet;
using static RepairOrders.Engineering.Strength.StrengthPaper;

namespace RepairOrders.Engineering.Strength;

/// <summary>One method's answer, and how it stands beside the others.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="Standing">How it stands.</param>
/// <param name="Reason">Why, as a sentence.</param>
/// <param name="Working">Its hand calculation.</param>
/// <param name="Findings">Its own findings.</param>
public sealed record ComparedAnswer(
    StrengthAnswer Answer,
    AnswerStanding Standing,
    string Reason,
    IReadOnlyList<WorkingStep> Working,
    IReadOnlyList<Finding> Findings
);

/// <summary>All methods' answers to one metal loss, which of them governs, and why they differ.</summary>
/// <param name="Answers">Every method's answer, refused ones too.</param>
/// <param name="Governs">Code of the method that governs; nothing where no pressure is credited.</param>
/// <param name="SafePressure">Its safe pressure, gauge; nothing where no pressure is credited.</param>
/// <param name="PressureLimit">The lower of safe pressure and MAOP: a safe pressure above the MAOP is no permission to raise it.</param>
/// <param name="EstimatedRepairFactor">MAOP over safe pressure; nothing where no pressure is credited.</param>
/// <param name="WhyTheyDiffer">What each method assumes, a sentence each.</param>
public sealed record StrengthComparison(
    IReadOnlyList<ComparedAnswer> Answers,
    string? Governs,
    Pressure? SafePressure,
    Pressure? PressureLimit,
    double? EstimatedRepairFactor,
    IReadOnlyList<string> WhyTheyDiffer
);

/// <summary>Remaining strength of a pipe with metal loss, by every method that applies.</summary>
public static partial class RemainingStrength
{
    private static readonly Clause Rule = new("the lowest answer that counts governs", "", Provenance.OwnRule);
    private static readonly Clause Gate = new("ASME B31G-2012", "depth gates", Provenance.FromMemory);
    private static readonly Clause Plausibility = new(
        "a wall more than 1.25 times nominal is measured again",
        "",
        Provenance.OwnRule
    );

    private static readonly string[] Cautions =
    [
        "These are screening equations for smooth metal loss in sound, ductile straight pipe. They do not cover cracks, dents, gouges, grooved seams, fittings or circumferential bands where the axial load governs.",
        "A safe pressure above the established limit is no permission to raise the pressure.",
        "A good result is a reason to plan a temporary repair, never an approval: that belongs to the owner's engineer or inspector and to the local code.",
    ];

    /// <summary>Compares every method's answer to one metal loss.</summary>
    /// <remarks>
    /// <para>Formula: PS = min over the answers that count; limit = min(PS, MAOP); ERF = MAOP / PS; see <see cref="PipelineMetalLoss.AssessOriginal"/>, <see cref="PipelineMetalLoss.AssessModified"/>, <see cref="EffectiveArea.Assess"/>, <see cref="LocalThinArea.Assess"/>, <see cref="CorrodedPipeSingleDefect.Assess"/>.</para>
    /// <para>Symbols: PS safe pressure, MPa; MAOP established maximum operating pressure, MPa; ERF estimated repair factor, -.</para>
    /// <para>Validity: those of the methods. d/t above 80 %: no pressure is credited. With a profile the two Level 1 answers are second opinions; 0.85 dL is set aside for a long patch (z &gt; 20) that is flat or not known not to be, and the corroded-pipe method counts for a long loss; else that method is a second opinion unless it stands alone. In plant piping no pressure is credited where API 579-1 refuses.</para>
    /// <para>Reference: ASME B31G-2012; API 579-1 Part 5; DNV-RP-F101 (from memory); the choice among them is our own rule.</para>
    /// </remarks>
    /// <param name="strengthCase">The case.</param>
    /// <returns>The answers, which governs, and why they differ; the working is that of the answer that governs.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>D 611 mm, t 8.2 mm, X65 (450/535 MPa), the profile of <see cref="EffectiveArea.Weakest"/>, safety factor 1.39: effective area governs with PS = 12.007 / 1.39 = 8.638 MPa.</example>
    public static Calculated<StrengthComparison> Compare(StrengthCase strengthCase)
    {
        var (D, t, d, L) = Dimensions(strengthCase);
        var MAOP = Take.Gauge("maopBar", strengthCase.Maop);
        var compared = Ranked(strengthCase, L * L / (D * t), IsTooDeep(d, t));
        var governing = compared.Find(a => a.Standing == AnswerStanding.Governs);
        var safe = governing?.Answer.SafePressure;
        var limit = safe is { } p ? Pressure.FromMegapascals(Math.Min(p.Megapascals, MAOP)) : (Pressure?)null;
        var result = new StrengthComparison(
            compared,
            governing?.Answer.Code,
            safe,
            limit,
            governing?.Answer.EstimatedRepairFactor,
            [.. compared.Select(a => $"{a.Answer.Name}: {a.Answer.Assumes}")]
        );
        var findings = Common(strengthCase, d, t)
            .Concat(Verdict(result, governing, MAOP))
            .Concat(Native(strengthCase, compared))
            .Concat(governing?.Findings ?? []);
        return new(result, governing?.Working ?? [], [.. findings], Cautions);
    }

    private static List<ComparedAnswer> Ranked(StrengthCase strengthCase, double z, bool tooDeep)
    {
        var effective = EffectiveArea.Assess(strengthCase);
        // A profile stands in for Level 1 only where its own method applies.
        var profiled = EffectiveArea.IsProfiled(strengthCase.Loss) && effective.Result.SafePressure is not null;
        var longAndFlat = PipelineMetalLoss.IsLongAndFlat(strengthCase.Loss, z);
        var thin = LocalThinArea.Assess(strengthCase);
        List<(Calculated<StrengthAnswer> Answer, AnswerStanding Standing)> answers =
        [
            (PipelineMetalLoss.AssessOriginal(strengthCase), StrengthRules.Original(profiled)),
            (PipelineMetalLoss.AssessModified(strengthCase), StrengthRules.Modified(profiled, longAndFlat)),
            (effective, AnswerStanding.Counts),
            (thin, AnswerStanding.Counts),
        ];
        var alone = !answers.Exists(a =>
            a.Standing == AnswerStanding.Counts && a.Answer.Result.SafePressure is not null
        );
        answers.Add((CorrodedPipeSingleDefect.Assess(strengthCase), StrengthRules.CorrodedPipe(z, alone)));
        var credits = StrengthRules.Credits(
            tooDeep,
            strengthCase.Plant is not null,
            thin.Result.SafePressure is not null
        );
        var lowest = credits ? Lowest(answers) : null;
        return [.. answers.Select(a => Compared(a.Answer, Stand(a, lowest, credits), longAndFlat))];
    }

    private static StrengthAnswer? Lowest(List<(Calculated<StrengthAnswer> Answer, AnswerStanding Standing)> answers) =>
        answers
            .Where(a => a.Standing == AnswerStanding.Counts && a.Answer.Result.SafePressure is not null)
            .Select(a => a.Answer.Result)
            .MinBy(a => a.SafePressure!.Value.Megapascals);

    private static AnswerStanding Stand(
        (Calculated<StrengthAnswer> Answer, AnswerStanding Standing) a,
        StrengthAnswer? lowest,
        bool credits
    )
    {
        if (a.Answer.Result.SafePressure is null)
        {
            return AnswerStanding.Refused;
        }
        if (!credits)
        {
            return AnswerStanding.SetAside;
        }
        return ReferenceEquals(a.Answer.Result, lowest) ? AnswerStanding.Governs : a.Standing;
    }

    private static ComparedAnswer Compared(
        Calculated<StrengthAnswer> answer,
        AnswerStanding standing,
        bool longAndFlat
    ) =>
        new(
            answer.Result,
            standing,
            Reason(answer.Result.Code, standing, longAndFlat),
            answer.Working,
            answer.Findings
        );

    private static string Reason(string code, AnswerStanding standing, bool longAndFlat) =>
        standing switch
        {
            AnswerStanding.Governs => "The lowest answer that counts.",
            AnswerStanding.Counts => "Counts, and is higher than the one that governs.",
            AnswerStanding.SecondOpinion when code == CorrodedPipeSingleDefect.Code =>
                "A second opinion with a safety format of its own.",
            AnswerStanding.SecondOpinion => "A shape is assumed here that the profile has measured.",
            AnswerStanding.SetAside when longAndFlat && code == PipelineMetalLoss.ModifiedCode =>
                "0.85 dL over-predicts a long flat patch.",
            AnswerStanding.SetAside => "No pressure is credited: too deep, or the method for plant piping refused.",
            _ => "The method does not apply; its finding says why.",
        };

    private static IEnumerable<Finding> Common(StrengthCase strengthCase, double d, double t)
    {
        var depth = 100 * d / t;
        yield return depth switch
        {
            _ when IsTooDeep(d, t) => TooDeep(d, t),
            <= 10 => new(
                "depth-gate",
                Severity.Pass,
                Text(
                    $"The loss is {depth:0.#} % of the wall; up to 10 % no calculation is required of line pipe. In plant piping the required wall counts all the same."
                ),
                depth,
                10,
                "%",
                Gate
            ),
            _ => new(
                "depth-gate",
                Severity.Pass,
                Text($"The loss is {depth:0.#} % of the wall, between 10 and 80 %: calculated."),
                depth,
                80,
                "%",
                Gate
            ),
        };
        var nominal = 1.25 * strengthCase.Pipe.NominalWall.Millimeters;
        yield return t <= nominal
            ? new(
                "reference-wall-plausible",
                Severity.Pass,
                Text($"Wall beside the loss {t:0.00} mm, up to 1.25 × nominal."),
                t,
                nominal,
                "mm",
                Plausibility
            )
            : new(
                "reference-wall-plausible",
                Severity.Fail,
                Text(
                    $"Wall beside the loss {t:0.00} mm is more than 1.25 × nominal = {nominal:0.00} mm: take the reading again."
                ),
                t,
                nominal,
                "mm",
                Plausibility,
                LimitKind.Absolute
            );
        var n = strengthCase.SafetyFactor;
        yield return n >= 1.25
            ? new(
                "safety-factor",
                Severity.Pass,
                Text($"Safety factor {n:0.00}, at least 1.25."),
                n,
                1.25,
                "-",
                SafetyFactor
            )
            : new(
                "safety-factor",
                Severity.Fail,
                Text($"Safety factor {n:0.00} is under 1.25."),
                n,
                1.25,
                "-",
                SafetyFactor
            );
    }

    private static IEnumerable<Finding> Verdict(StrengthComparison result, ComparedAnswer? governing, double MAOP)
    {
        if (governing?.Answer is not { SafePressure: { } safe } answer)
        {
            yield return new(
                "no-pressure-credited",
                Severity.Fail,
                "No method credits this wall with a pressure: repair or replace.",
                null,
                null,
                null,
                Rule,
                LimitKind.Absolute
            );
            yield break;
        }
        var (PS, ERF) = (safe.Megapascals, answer.EstimatedRepairFactor ?? double.MaxValue);
        var severity =
            ERF > 1 ? Severity.Fail
            : ERF >= 0.95 ? Severity.Watch
            : Severity.Pass;
        var follows = ERF > 1 ? "repair or derate" : "the limit stays the lower of the two";
        yield return new(
            "estimated-repair-factor",
            severity,
            Text($"{answer.Name} governs: {PS * 10:0.0} bar against {MAOP * 10:0.0} bar, ERF {ERF:0.000}; {follows}."),
            ERF,
            1,
            "-",
            Rule
        );
        foreach (
            var other in result.Answers.Where(a =>
                a.Standing == AnswerStanding.SecondOpinion && a.Answer.SafePressure?.Megapascals < PS
            )
        )
        {
            yield return new(
                "second-opinion-lower",
                Severity.Watch,
                Text(
                    $"{other.Answer.Name} allows less, {other.Answer.SafePressure!.Value.Bars:0.0} bar. {other.Reason}"
                ),
                other.Answer.SafePressure.Value.Bars,
                PS * 10,
                "bar",
                Rule
            );
        }
    }

    private static IEnumerable<Finding> Native(StrengthCase strengthCase, List<ComparedAnswer> compared)
    {
        var native = compared.Find(a => a.Answer.Code == LocalThinArea.Code)!;
        if (strengthCase.Plant is not null && native.Standing == AnswerStanding.Refused)
        {
            yield return new(
                "plant-method-refused",
                Severity.Fail,
                $"The method for plant piping does not apply: {native.Findings[0].Words} The others are pipeline methods and no substitute: no pressure is credited.",
                null,
                null,
                null,
                Rule
            );
        }
    }
}
