using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;
using static RepairOrders.Engineering.Strength.StrengthPaper;

namespace RepairOrders.Engineering.Strength;

public static partial class LocalThinArea
{
    internal const string Code = "local-thin-area";

    private const string Name = "API 579-1 Part 5, Level 1";
    private const double LeastRatio = 0.20;
    private const double LeastWall = 1.3;

    private const string Polynomial =
        "1.0010 − 0.014195 λ + 0.29090 λ² − 0.096420 λ³ + 0.020890 λ⁴ − 0.0030540 λ⁵ + 2.9570 × 10⁻⁴ λ⁶ − 1.8462 × 10⁻⁵ λ⁷ + 7.1553 × 10⁻⁷ λ⁸ − 1.5631 × 10⁻⁸ λ⁹ + 1.4656 × 10⁻¹⁰ λ¹⁰";

    private static readonly Clause Part5 = new("API 579-1/ASME FFS-1", "Part 5, Level 1", Provenance.FromMemory);
    private static readonly Clause Limits = new("API 579-1/ASME FFS-1", "5.4.2");
    private static readonly Clause Scope = new("API 579-1/ASME FFS-1", "5.2", Provenance.FromMemory);
    private static readonly Clause Eq3a = new("ASME B31.3-2012", "304.1.2, eq. (3a) solved for P");

    /// <summary>Pressure a local thin area holds until the next revisit, by API 579-1 Part 5 Level 1.</summary>
    /// <remarks>
    /// <para>Formula: tc = t − FCA; Rt = (tmm − FCA)/tc; λ, Mt, RSF, MAWPr of <see cref="LengthParameter"/>, <see cref="Bulging"/>, <see cref="RemainingStrengthFactor"/>, <see cref="ReducedPressure"/>; MAWP of the uniform wall tc by ASME B31.3.</para>
    /// <para>Symbols: t wall beside the loss, tmm least wall, FCA future corrosion allowance, mm; others those of the formulae.</para>
    /// <para>Validity: Rt ≥ 0.20; tmm − FCA ≥ 1.3 mm; 1.8 sqrt(Di tc) from a discontinuity; circumferential extent up to twice the axial one; not cyclic, brittle. Outside the first two and the scope the method is refused; the others are findings. Di = D − 2 tc for internal loss, else D − 2 t.</para>
    /// <para>Reference: API 579-1/ASME FFS-1, Part 5 (from memory; the limits were seen on a public sheet).</para>
    /// </remarks>
    /// <param name="strengthCase">The case, with its plant piping data.</param>
    /// <returns>What the method says; it gives a safe pressure but no failure pressure.</returns>
    /// <exception cref="ImpossibleInputException">A value is negative or outside what the field allows.</exception>
    /// <example>DN 150, t 7.11 mm inside loss to 4.0 mm, s 100 mm, FCA 0.5 mm, S 137.9 MPa: RSF = 0.64613, MAWP 11.183 MPa, MAWPr = 8.0288 MPa.</example>
    public static Calculated<StrengthAnswer> Assess(StrengthCase strengthCase)
    {
        var (D, t, d, s) = Dimensions(strengthCase);
        if (strengthCase.Plant is not { } plant)
        {
            return Refused(
                Code,
                Name,
                Refuse(
                    "future-loss-unknown",
                    "Without a loss expected until the next revisit there is no future allowance and no answer; for a pipeline the method is not needed.",
                    null,
                    null,
                    null,
                    Part5
                )
            );
        }
        var FCA = Take.Extent("futureLossMm", plant.FutureLoss);
        if ((OutOfScope(strengthCase.Pipe, plant) ?? TooThin(t, d, FCA)) is { } refusal)
        {
            return Refused(Code, Name, refusal);
        }
        var held = Compute(strengthCase, plant, D, t, d, s);
        var answer = new StrengthAnswer(
            Code,
            Name,
            null,
            Pressure.FromMegapascals(held.MAWPr),
            StrengthPaper.Factor(strengthCase, held.MAWPr),
            Text(
                $"The design stress, not a flow stress: RSF {held.RSF:0.000} of a wall of {held.tc:0.00} mm, with {FCA:0.00} mm of future loss."
            )
        );
        return new(answer, Shown(strengthCase, plant, held, s), [.. Findings(strengthCase.Loss, plant, held, s)], []);
    }

    /// <summary>Pressure held in MPa; nothing where the method is refused.</summary>
    internal static double? Held(StrengthCase strengthCase)
    {
        var (D, t, d, s) = Dimensions(strengthCase);
        return
            strengthCase.Plant is { } plant
            && (OutOfScope(strengthCase.Pipe, plant) ?? TooThin(t, d, Take.Extent("futureLossMm", plant.FutureLoss)))
                is null
            ? Compute(strengthCase, plant, D, t, d, s).MAWPr
            : null;
    }

    private static Finding? OutOfScope(Pipe pipe, PlantPiping plant)
    {
        if (pipe.Metal == MetalFamily.GrayIron)
        {
            return Refuse("metal-brittle", "The method is not for brittle metal.", null, null, null, Scope);
        }
        return plant.Cyclic
            ? Refuse("service-cyclic", "The method is not for cyclic service.", null, null, null, Scope)
            : null;
    }

    private static Finding? TooThin(double t, double d, double FCA)
    {
        var (left, tc) = (t - d - FCA, t - FCA);
        if (tc <= 0 || left < LeastWall)
        {
            return Refuse(
                "least-wall",
                Text($"The least wall less future loss is {left:0.00} mm; the method needs 1.3 mm."),
                left,
                LeastWall,
                "mm",
                Limits
            );
        }
        return left / tc < LeastRatio
            ? Refuse(
                "thickness-ratio",
                Text($"Rt = {left / tc:0.000}; the method needs 0.20."),
                left / tc,
                LeastRatio,
                "-",
                Limits
            )
            : null;
    }

    // Which face is attacked may be unknown; the smaller bore gives the longer λ, on the safe side.
    private static Numbers Compute(StrengthCase strengthCase, PlantPiping plant, double D, double t, double d, double s)
    {
        var pipe = strengthCase.Pipe;
        var FCA = plant.FutureLoss.Millimeters;
        var tc = t - FCA;
        var Di = D - 2 * (strengthCase.Loss.Side == DefectSide.Internal ? tc : t);
        var Rt = (t - d - FCA) / tc;
        var l = LengthParameter(Length.FromMillimeters(s), Length.FromMillimeters(Di), Length.FromMillimeters(tc));
        var RSF = RemainingStrengthFactor(Rt, l);
        var Y = RequiredWall.WallCoefficient(pipe.Metal, strengthCase.Temperature);
        var MAWP = Mawp.B313(
            pipe.OutsideDiameter,
            Length.FromMillimeters(tc),
            pipe.AllowableStress,
            pipe.QualityFactor,
            plant.WeldFactor,
            Y
        );
        return new(D, t, d, FCA, tc, Di, Rt, l, RSF, Y, MAWP.Megapascals, ReducedPressure(MAWP, RSF).Megapascals);
    }

    private static Working Shown(StrengthCase strengthCase, PlantPiping plant, Numbers held, double s)
    {
        var (D, t, d, FCA, tc, Di, Rt, l, RSF, Y, MAWP, MAWPr) = held;
        var working = new Working();
        Givens(working, D, t, d, s);
        working.Given("FCA", "loss expected until the next revisit", FCA, "mm", Reading);
        working.Step("tc", "wall away from the loss, less future loss", "t − FCA", $"{t} − {FCA}", tc, "mm", Part5);
        working.Step(
            "Di",
            "inside diameter",
            Di > D - 2 * t ? "D − 2 tc, corroded inside" : "D − 2 t",
            $"{D} − 2 × {(D - Di) / 2}",
            Di,
            "mm",
            Part5
        );
        working.Step("tmm", "least wall", "t − d", $"{t} − {d}", t - d, "mm", Reading);
        working.Step(
            "Rt",
            "remaining thickness ratio",
            "(tmm − FCA) / tc",
            $"({t - d} − {FCA}) / {tc}",
            Rt,
            "-",
            Part5
        );
        working.Step(
            "λ",
            "length parameter",
            "1.285 L / sqrt(Di tc)",
            $"1.285 × {s} / sqrt({Di} × {tc})",
            l,
            "-",
            Part5
        );
        StrengthFactor(working, Rt, l, RSF);
        var S = working.Given(
            "S",
            "allowable stress at temperature",
            strengthCase.Pipe.AllowableStress.Megapascals,
            "MPa",
            PipeRecord
        );
        var E = working.Given("E", "quality factor", strengthCase.Pipe.QualityFactor, "-", PipeRecord);
        var W = working.Given("W", "weld strength reduction factor", plant.WeldFactor, "-", PipeRecord);
        working.Given("Y", "wall coefficient", Y, "-", Eq3a);
        working.Step(
            "MAWP",
            "pressure of the uniform wall tc, gauge",
            "2 S E W tc / (D − 2 Y tc)",
            $"2 × {S} × {E} × {W} × {tc} / ({D} − 2 × {Y} × {tc})",
            MAWP,
            "MPa",
            Eq3a
        );
        working.Step(
            "MAWPr",
            "pressure held, gauge",
            "MAWP × min(1, RSF / 0.9)",
            $"{MAWP} × min(1, {RSF} / 0.9)",
            MAWPr,
            "MPa",
            Part5
        );
        return working;
    }

    private static void StrengthFactor(Working working, double Rt, double l, double RSF)
    {
        if (l > LongestParameter)
        {
            working.Step("RSF", "remaining strength factor, λ > 20", "Rt", $"{Rt}", RSF, "-", Part5);
            return;
        }
        var M = working.Step("Mt", "bulging factor at λ", Polynomial, $"λ = {l}", Bulging(l), "-", Part5);
        working.Step(
            "RSF",
            "remaining strength factor",
            "Rt / (1 − (1 − Rt)/Mt)",
            $"{Rt} / (1 − (1 − {Rt})/{M})",
            RSF,
            "-",
            Part5
        );
    }

    private static IEnumerable<Finding> Findings(MetalLoss loss, PlantPiping plant, Numbers held, double s)
    {
        var RSF = held.RSF;
        yield return RSF >= AllowableStrengthFactor
            ? new(
                "strength-factor",
                Severity.Pass,
                Text($"RSF {RSF:0.000} is at least 0.90: the area holds the full MAWP."),
                RSF,
                AllowableStrengthFactor,
                "-",
                Part5
            )
            : new(
                "strength-factor",
                Severity.Watch,
                Text($"RSF {RSF:0.000} is under 0.90: the pressure is reduced."),
                RSF,
                AllowableStrengthFactor,
                "-",
                Part5
            );
        var need = 1.8 * Math.Sqrt(held.Di * held.tc);
        yield return plant.DistanceToDiscontinuity is not { } distance
            ? new(
                "discontinuity-unknown",
                Severity.Watch,
                Text($"The distance to the next nozzle, elbow, support or flange is not given; {need:0} mm is needed."),
                null,
                need,
                "mm",
                Limits
            )
            : new(
                "discontinuity-distance",
                distance.Millimeters >= need ? Severity.Pass : Severity.Fail,
                Text($"{distance.Millimeters:0} mm to the next discontinuity; {need:0} mm is needed."),
                distance.Millimeters,
                need,
                "mm",
                Limits
            );
        var c = Take.Extent("circumferentialLengthMm", loss.CircumferentialLength);
        yield return new(
            "circumferential-extent",
            c <= 2 * s ? Severity.Pass : Severity.Watch,
            c <= 2 * s
                ? Text($"{c:0} mm round the pipe, up to twice the axial length.")
                : Text($"{c:0} mm round the pipe is more than twice the axial length: check the longitudinal stress."),
            c,
            2 * s,
            "mm",
            Part5
        );
    }

    private static Finding Refuse(
        string code,
        string words,
        double? value,
        double? limit,
        string? unit,
        Clause source
    ) => new(code, Severity.Fail, words, value, limit, unit, source, LimitKind.Absolute);

    private readonly record struct Numbers(
        double D,
        double t,
        double d,
        double FCA,
        double tc,
        double Di,
        double Rt,
        double l,
        double RSF,
        double Y,
        double MAWP,
        double MAWPr
    );
}
