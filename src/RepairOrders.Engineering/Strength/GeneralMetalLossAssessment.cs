using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;
using static RepairOrders.Engineering.Strength.StrengthPaper;

namespace RepairOrders.Engineering.Strength;

/// <summary>Readings of a wall that is thinned over an area.</summary>
/// <param name="ReadingsMm">Walls left, mm.</param>
/// <param name="ReferenceWall">Full wall away from the loss.</param>
/// <param name="FutureLoss">Future corrosion allowance FCA.</param>
/// <param name="Side">The face that is attacked.</param>
/// <param name="Profile">River-bottom profile along the pipe, for readings that vary too much to be averaged.</param>
public sealed record ThinnedWall(
    IReadOnlyList<double> ReadingsMm,
    Length ReferenceWall,
    Length FutureLoss,
    DefectSide Side,
    RiverBottom? Profile = null
);

/// <summary>What API 579-1 Part 4 says of a thinned wall.</summary>
/// <param name="Variation">Coefficient of variation of the readings [-].</param>
/// <param name="MayAverage">The readings may be averaged as they are.</param>
/// <param name="AveragingLength">Length over which a profile is averaged.</param>
/// <param name="Average">Average wall that counts; nothing where readings vary too much and there is no profile.</param>
/// <param name="Least">Least wall.</param>
/// <param name="Required">Required wall; nothing where it is unknown.</param>
/// <param name="Level1">Level 1 is met; nothing where it could not be judged.</param>
/// <param name="Level2">Level 2 is met; nothing where it could not be judged.</param>
public sealed record GeneralLoss(
    double Variation,
    bool MayAverage,
    Length AveragingLength,
    Length? Average,
    Length Least,
    Length? Required,
    bool? Level1,
    bool? Level2
);

public static partial class GeneralMetalLoss
{
    private const double LeastPipingWall = 1.3;

    private static readonly Clause Part4 = new("API 579-1/ASME FFS-1", "Part 4, 4.4", Provenance.FromMemory);

    /// <summary>Judges a thinned wall by its average and its least reading, by API 579-1 Part 4.</summary>
    /// <remarks>
    /// <para>Formula: Level 1: tam − FCA ≥ tmin; Level 2: tam − FCA ≥ 0.9 tmin; both: tmm − FCA ≥ max(0.5 tmin, 0.2 tnom, 1.3 mm). tam is the mean of the readings where COV ≤ 10 % and n ≥ 15, else the mean wall over L of <see cref="AveragingLength"/> about the least wall.</para>
    /// <para>Symbols: tam average wall, tmm least wall, FCA future corrosion allowance, tmin required wall, tnom nominal wall, mm; COV of <see cref="CoefficientOfVariation"/>, -; n number of readings.</para>
    /// <para>Validity: metal loss without cracks in ductile pipe; internal pressure governs. Past the end of a profile nothing is taken for sound.</para>
    /// <para>Reference: API 579-1/ASME FFS-1, Part 4 (from memory).</para>
    /// </remarks>
    /// <param name="pipe">The pipe.</param>
    /// <param name="duty">Pressure, temperature and code, for the required wall.</param>
    /// <param name="wall">The readings.</param>
    /// <returns>The judgement.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows, or fewer than two readings.</exception>
    /// <example>DN 150, 3 MPa: required 2.8 mm; readings 6.1, 5.8, 6.4, 5.9, 6.3 mm three times over, FCA 0.5 mm: average 6.10 mm, least 5.8 mm: Level 1 is met.</example>
    public static Calculated<GeneralLoss> Assess(Pipe pipe, WallDuty duty, ThinnedWall wall)
    {
        ArgumentNullException.ThrowIfNull(pipe);
        ArgumentNullException.ThrowIfNull(wall);
        var required = RequiredWall.Assess(pipe, duty);
        var (D, tr) = Shell.Of(pipe.OutsideDiameter, wall.ReferenceWall, "referenceWallMm");
        var FCA = Take.Extent("futureLossMm", wall.FutureLoss);
        double[] readings = [.. wall.ReadingsMm.Select(w => Math.Max(w, 1e-6))];
        var COV = CoefficientOfVariation(readings);
        var tmm = readings.Min();
        var working = new Working();
        working.Include(required.Working);
        working.Given("tmm", "least wall", tmm, "mm", Reading);
        working.Given("FCA", "loss expected until the next revisit", FCA, "mm", Reading);
        var mean = readings.Average();
        working.Step(
            "COV",
            "coefficient of variation",
            "√(Σ(t − mean)²/(n − 1))/mean",
            $"√({readings.Sum(x => (x - mean) * (x - mean))}/({readings.Length} − 1))/{mean}",
            COV,
            "-",
            Part4
        );
        var L = Window(working, D, tr, tmm, FCA, wall.Side);
        var mayAverage = COV <= GreatestVariation && readings.Length >= LeastReadings;
        var tam = Average(working, readings, mayAverage, wall, L);
        var (level1, level2) = Judge(pipe, required.Result.Required?.Millimeters, tam, tmm, FCA);
        var result = new GeneralLoss(
            COV,
            mayAverage,
            Mm(L),
            Mm(tam),
            Length.FromMillimeters(tmm),
            required.Result.Required,
            level1,
            level2
        );
        return new(result, working, [.. required.Findings, .. Findings(result, mayAverage)], []);
    }

    private static double? Window(Working working, double D, double tr, double tmm, double FCA, DefectSide side)
    {
        var tc = tr - FCA;
        if (tc <= 0.001 || tmm - FCA <= 0)
        {
            return null;
        }
        working.Step("tc", "wall away from the loss, less future loss", "t − FCA", $"{tr} − {FCA}", tc, "mm", Part4);
        var Di = working.Given("Di", "inside diameter", D - 2 * (side == DefectSide.Internal ? tc : tr), "mm", Part4);
        var Rt = working.Step(
            "Rt",
            "remaining thickness ratio",
            "(tmm − FCA) / tc",
            $"({tmm} − {FCA}) / {tc}",
            Math.Min(1, (tmm - FCA) / tc),
            "-",
            Part4
        );
        var L = AveragingLength(Rt, Length.FromMillimeters(Di), Length.FromMillimeters(tc)).Millimeters;
        return working.Step(
            "L",
            "length to average over",
            "Q sqrt(Di tc)",
            $"{AveragingFactor(Rt)} × sqrt({Di} × {tc})",
            L,
            "mm",
            Part4
        );
    }

    private static double? Average(Working working, double[] readings, bool mayAverage, ThinnedWall wall, double? L)
    {
        if (mayAverage)
        {
            return working.Given("tam", "mean of the readings", readings.Average(), "mm", Part4);
        }
        return wall.Profile is { } profile && L is { } length
            ? working.Given(
                "tam",
                "mean wall over L about the least",
                wall.ReferenceWall.Millimeters - profile.AverageDepth(length),
                "mm",
                Part4
            )
            : null;
    }

    private static (bool?, bool?) Judge(Pipe pipe, double? tmin, double? tam, double tmm, double FCA)
    {
        if (tmin is not { } need || tam is not { } average)
        {
            return (null, null);
        }
        var least = tmm - FCA >= Math.Max(0.5 * need, Math.Max(0.2 * pipe.NominalWall.Millimeters, LeastPipingWall));
        return (least && average - FCA >= need, least && average - FCA >= LocalThinArea.AllowableStrengthFactor * need);
    }

    private static IEnumerable<Finding> Findings(GeneralLoss result, bool mayAverage)
    {
        yield return mayAverage
            ? new(
                "readings-averaged",
                Severity.Pass,
                Text($"The readings vary by {100 * result.Variation:0.#} %: they may be averaged."),
                100 * result.Variation,
                100 * GreatestVariation,
                "%",
                Part4
            )
            : new(
                "readings-not-averaged",
                Severity.Watch,
                Text(
                    $"The readings vary by {100 * result.Variation:0.#} %, or there are fewer than {LeastReadings}: a thickness profile is needed."
                ),
                100 * result.Variation,
                100 * GreatestVariation,
                "%",
                Part4
            );
        yield return result switch
        {
            { Level1: true } => new(
                "general-loss",
                Severity.Pass,
                "General metal loss: Level 1 is met.",
                result.Average?.Millimeters,
                result.Required?.Millimeters,
                "mm",
                Part4
            ),
            { Level2: true } => new(
                "general-loss",
                Severity.Watch,
                "General metal loss: Level 1 is not met, Level 2 is.",
                result.Average?.Millimeters,
                result.Required?.Millimeters,
                "mm",
                Part4
            ),
            { Level1: null } => new(
                "general-loss-not-judged",
                Severity.Watch,
                "General metal loss could not be judged: the average or the required wall is unknown.",
                null,
                null,
                null,
                Part4
            ),
            _ => new(
                "general-loss",
                Severity.Fail,
                "General metal loss: neither Level 1 nor Level 2 is met.",
                result.Average?.Millimeters,
                result.Required?.Millimeters,
                "mm",
                Part4
            ),
        };
    }

    private static Length Mm(double? length) => Length.FromMillimeters(length ?? 0);
}
