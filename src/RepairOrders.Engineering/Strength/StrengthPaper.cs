using System.Globalization;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Strength;

/// <summary>What the assessments of remaining strength write alike: the givens, the safe pressure, a refusal.</summary>
internal static class StrengthPaper
{
    public const double GreatestDepthRatio = 0.80;

    public static readonly Clause PipeRecord = new("the pipe's record", "", Provenance.Entered);
    public static readonly Clause Reading = new("thickness readings", "", Provenance.Entered);
    public static readonly Clause B31G = new("ASME B31G-2012", "1.2 and 2.2", Provenance.FromMemory);
    public static readonly Clause SafetyFactor = new("ASME B31G-2012", "1.8", Provenance.FromMemory);

    /// <summary>D, t, d and L in mm; a profile that is deeper or longer than the single reading counts.</summary>
    public static (double D, double t, double d, double L) Dimensions(StrengthCase @case)
    {
        ArgumentNullException.ThrowIfNull(@case);
        var loss = @case.Loss;
        var (D, t) = Shell.Of(@case.Pipe.OutsideDiameter, loss.ReferenceWall, "referenceWallMm");
        // Before the profile may hide them.
        Require.NotNegative("depthMm", loss.Depth.Millimeters);
        Require.NotNegative("axialLengthMm", loss.AxialLength.Millimeters);
        var d = Math.Max(loss.Depth.Millimeters, loss.Profile?.Deepest.Millimeters ?? 0);
        var L = Math.Max(loss.AxialLength.Millimeters, loss.Profile?.Span.Millimeters ?? 0);
        return (
            D,
            t,
            Take.Depth(Length.FromMillimeters(d), t),
            Take.Extent("axialLengthMm", Length.FromMillimeters(L))
        );
    }

    public static void Givens(Working working, double D, double t, double d, double L)
    {
        working.Given("D", "outside diameter", D, "mm", PipeRecord);
        working.Given("t", "wall beside the loss", t, "mm", Reading);
        working.Given("d", "greatest depth", d, "mm", Reading);
        working.Given("L", "axial length", L, "mm", Reading);
    }

    /// <summary>The failure pressure over the safety factor, with the repair factor.</summary>
    public static StrengthAnswer Answer(
        StrengthCase @case,
        Working working,
        string code,
        string name,
        double SF,
        string assumes
    )
    {
        var (D, t, _, _) = Dimensions(@case);
        var PF = working.Step(
            "PF",
            "failure pressure, gauge",
            "2 SF t / D",
            $"2 × {SF} × {t} / {D}",
            2 * SF * t / D,
            "MPa",
            B31G
        );
        var n = working.Given("n", "safety factor", @case.SafetyFactor, "-", SafetyFactor);
        var PS = PipelineMetalLoss.SafePressure(Pressure.FromMegapascals(PF), n).Megapascals;
        working.Step("PS", "safe pressure, gauge", "PF / n", $"{PF} / {n}", PS, "MPa", SafetyFactor);
        return new(code, name, Pressure.FromMegapascals(PF), Pressure.FromMegapascals(PS), Factor(@case, PS), assumes);
    }

    /// <summary>MAOP over a safe pressure; nothing where nothing is safe.</summary>
    public static double? Factor(StrengthCase @case, double safe) =>
        safe > 1e-9 ? PipelineMetalLoss.EstimatedRepairFactor(@case.Maop, Pressure.FromMegapascals(safe)) : null;

    public static Calculated<StrengthAnswer> Refused(string code, string name, Finding why) =>
        new(new(code, name, null, null, null, "Refused: " + why.Words), [], [why], []);

    public static Finding TooDeep(double d, double t) =>
        new(
            "depth-above-80-percent",
            Severity.Fail,
            Text(
                $"The loss is {100 * d / t:0.#} % of the wall; above 80 % no pressure is credited: repair or replace."
            ),
            100 * d / t,
            100 * GreatestDepthRatio,
            "%",
            B31G,
            LimitKind.Absolute
        );

    // The last bit of a quotient must not refuse a depth of exactly 80 %.
    public static bool IsTooDeep(double d, double t, double limit = GreatestDepthRatio) => d > limit * t * (1 + 1e-12);

    public static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
