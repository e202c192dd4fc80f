using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;

namespace RepairOrders.Api.Calculations;

/// <summary>What is taken where an ask leaves a factor out. Each is told in a finding: a default is no measurement.</summary>
internal static class Defaults
{
    public const double QualityFactor = 1;
    public const double DesignFactor = 0.72;
    public const double SafetyFactor = 1.39;
    public const double UsageFactor = 0.72;

    private static readonly Clause UnknownSeam = new("49 CFR 192", "113", Provenance.FromMemory);

    public static IEnumerable<Finding> Of(PipeToReckon pipe) =>
        Taken(
            pipe.QualityFactor,
            "quality-factor-default",
            "No quality factor was given: 1 is taken, which holds for seamless pipe. Where the seam is not known, take 0.80 above NPS 4 and 0.60 up to it.",
            QualityFactor,
            UnknownSeam
        );

    public static IEnumerable<Finding> Of(WallDutyToReckon duty) =>
        duty.Code is WallCodeToReckon.B314 or WallCodeToReckon.B318
            ? Taken(
                duty.DesignFactor,
                "design-factor-default",
                "No design factor was given: 0.72 is taken, the greatest. A gas line in location class 2 to 4 has less.",
                DesignFactor,
                new("ASME B31.8", "841.1.1")
            )
            : [];

    public static IEnumerable<Finding> OfFactors(double? safety, double? usage) =>
        Taken(
                safety,
                "safety-factor-default",
                "No safety factor was given: 1.39 is taken, 1/0.72. A line of a higher location class asks for more.",
                SafetyFactor,
                Clause.Default("ratio of test pressure to established pressure")
            )
            .Concat(
                Taken(
                    usage,
                    "usage-factor-default",
                    "No usage factor was given: 0.72 is taken.",
                    UsageFactor,
                    Clause.Default("that of the pipeline's design")
                )
            );

    private static IEnumerable<Finding> Taken(double? given, string code, string words, double value, Clause source)
    {
        if (given is null)
            yield return new(code, Severity.Watch, words, value, null, "-", source);
    }
}
