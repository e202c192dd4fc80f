using UnitsNet;

namespace RepairOrders.Engineering.Strength;

public static partial class RemainingStrength
{
    /// <summary>Screens many defects, several at a time. The answers are those of <see cref="Compare"/>, without words and working.</summary>
    /// <param name="cases">The defects.</param>
    /// <param name="results">Where the answers go, in the same order; as long as <paramref name="cases"/>.</param>
    /// <param name="threads">Greatest number of threads; −1 for as many as the machine has.</param>
    /// <param name="stop">Stops the screening.</param>
    /// <exception cref="ArgumentException">The two lists differ in length.</exception>
    public static void Screen(
        IReadOnlyList<StrengthCase> cases,
        ScreenedStrength[] results,
        int threads = -1,
        CancellationToken stop = default
    )
    {
        ArgumentNullException.ThrowIfNull(cases);
        ArgumentNullException.ThrowIfNull(results);
        if (cases.Count != results.Length)
        {
            throw new ArgumentException(
                $"{cases.Count} defects and room for {results.Length} answers",
                nameof(results)
            );
        }
        var options = new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = stop };
        Parallel.For(0, cases.Count, options, i => results[i] = Screen(cases[i]));
    }

    /// <summary>Screens one defect. A defect that cannot be gives an answer that says so, not an exception: a survey goes on.</summary>
    /// <param name="strengthCase">The defect.</param>
    /// <returns>The answer of <see cref="Compare"/>, without words and working.</returns>
    public static ScreenedStrength Screen(StrengthCase strengthCase)
    {
        try
        {
            return Judge(strengthCase);
        }
        catch (ImpossibleInputException impossible)
        {
            return new() { Error = impossible };
        }
    }

    private static ScreenedStrength Judge(StrengthCase strengthCase)
    {
        var (D, t, d, L) = StrengthPaper.Dimensions(strengthCase);
        Take.Gauge("maopBar", strengthCase.Maop);
        var (r, z, n) = (d / t, L * L / (D * t), strengthCase.SafetyFactor);
        var tooDeep = StrengthPaper.IsTooDeep(d, t);
        var pipe = strengthCase.Pipe;
        var a = tooDeep ? null : FlowStress.Allowed(FlowStressOption.A, pipe, strengthCase.Temperature);
        var b = tooDeep ? null : FlowStress.Allowed(FlowStressOption.B, pipe, strengthCase.Temperature);
        var weakest = b is null ? null : EffectiveArea.WeakestOf(strengthCase);
        var original = 2 * (a * PipelineMetalLoss.RatioOriginal(r, z)) * t / D;
        var modified = 2 * (b * PipelineMetalLoss.Ratio(0.85 * d / t, z)) * t / D;
        var effective = 2 * (b * weakest?.StrengthRatio) * t / D;
        var corroded = CorrodedPipeSingleDefect.Predicted(strengthCase);
        var thin = LocalThinArea.Held(strengthCase);

        var profiled = EffectiveArea.IsProfiled(strengthCase.Loss) && effective is not null;
        var longAndFlat = PipelineMetalLoss.IsLongAndFlat(strengthCase.Loss, z);
        var least = new Least();
        if (StrengthRules.Credits(tooDeep, strengthCase.Plant is not null, thin is not null))
        {
            least.Add(StrengthRules.Original(profiled), PipelineMetalLoss.OriginalCode, Safe(original, n));
            least.Add(StrengthRules.Modified(profiled, longAndFlat), PipelineMetalLoss.ModifiedCode, Safe(modified, n));
            least.Add(AnswerStanding.Counts, EffectiveArea.Code, Safe(effective, n));
            least.Add(AnswerStanding.Counts, LocalThinArea.Code, thin);
            var allowed = corroded is { } Pf
                ? CorrodedPipeSingleDefect
                    .SafeWorkingPressure(Pressure.FromMegapascals(Pf), strengthCase.UsageFactor)
                    .Megapascals
                : (double?)null;
            least.Add(StrengthRules.CorrodedPipe(z, least.Governs is null), CorrodedPipeSingleDefect.Code, allowed);
        }
        return new(
            least.Governs,
            In(least.Safe),
            least.Safe is { } safe ? StrengthPaper.Factor(strengthCase, safe) : null,
            In(original),
            In(modified),
            In(effective),
            In(corroded),
            In(thin),
            weakest is { } stretch ? Length.FromMillimeters(stretch.LengthMm) : null,
            null
        );
    }

    private static double? Safe(double? failure, double n) =>
        failure is { } PF ? PipelineMetalLoss.SafePressure(Pressure.FromMegapascals(PF), n).Megapascals : null;

    private static Pressure? In(double? megapascals) => megapascals is { } p ? Pressure.FromMegapascals(p) : null;

    private struct Least
    {
        public string? Governs { get; private set; }

        public double? Safe { get; private set; }

        public void Add(AnswerStanding standing, string code, double? safe)
        {
            if (standing == AnswerStanding.Counts && safe is { } p && !(p >= Safe))
            {
                (Governs, Safe) = (code, p);
            }
        }
    }
}
