using RepairOrders.Engineering.Methods;

namespace RepairOrders.Engineering.ThroughWall;

/// <summary>Whether a temporary repair may be made at all.</summary>
public enum Verdict
{
    /// <summary>Routine.</summary>
    Ok,

    /// <summary>Only with named approval and a written basis.</summary>
    Engineer,

    /// <summary>No temporary repair: isolate.</summary>
    Stop,
}

/// <summary>One row of the decision table.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Condition">The condition in words.</param>
/// <param name="Verdict">What follows when it is met.</param>
/// <param name="Reason">Why, and what would clear it.</param>
/// <param name="Basis">Where the row comes from.</param>
/// <param name="Applies">The condition.</param>
public sealed record DecisionRule(
    string Code,
    string Condition,
    Verdict Verdict,
    string Reason,
    Clause Basis,
    Func<DecisionCase, bool> Applies
);

/// <summary>The verdict and every row that led to it.</summary>
/// <param name="Verdict">The strictest verdict of the rows met; with no row met, an engineer decides.</param>
/// <param name="Reasons">The rows met, strictest first.</param>
public sealed record TemporaryRepairDecision(Verdict Verdict, IReadOnlyList<DecisionRule> Reasons)
{
    /// <summary>The decision table.</summary>
    public static IReadOnlyList<DecisionRule> Rules => DecisionTable.Rules;

    /// <summary>Whether a temporary repair may be made, by the decision table.</summary>
    /// <remarks>
    /// <para>Formula: the strictest verdict of all rows of <see cref="Rules"/> that are met; stop over engineer over ok; with no row met, engineer.</para>
    /// <para>Symbols: none.</para>
    /// <para>Validity: straight metallic pipe; the site's own rules and the law come first.</para>
    /// <para>Reference: the rows name theirs.</para>
    /// </remarks>
    /// <param name="decision">Pipe, defect, service and what is known.</param>
    /// <returns>The verdict, a finding for every row met.</returns>
    /// <exception cref="ImpossibleInputException">A class is not 0 to 3, or a wall or length is negative.</exception>
    /// <example>Cooling water, 6 bar, pinhole, 6.8 mm beside it where 2.8 mm are the structural minimum: ok.</example>
    public static Calculated<TemporaryRepairDecision> Decide(DecisionCase decision)
    {
        ArgumentNullException.ThrowIfNull(decision);
        Check(decision);
        var met = Rules.Where(r => r.Applies(decision)).OrderByDescending(r => r.Verdict).ToList();
        if (met.Count == 0)
        {
            met.Add(DecisionTable.NoRow);
        }
        var verdict = met[0].Verdict;
        return new(
            new(verdict, met),
            [],
            [.. met.Select(Finding)],
            verdict == Verdict.Stop ? ["No temporary repair: isolate the line and keep people away from the leak."] : []
        );
    }

    private static void Check(DecisionCase decision)
    {
        Require.Between("nuclearClass", decision.NuclearClass, 0, 3);
        Require.Between("marineClass", decision.MarineClass, 0, 3);
        Require.Positive("outsideDiameterMm", decision.Pipe.OutsideDiameter.Millimeters);
        Require.Positive("nominalWallMm", decision.Pipe.NominalWall.Millimeters);
        Require.Positive("structuralMinimumMm", decision.StructuralMinimum.Millimeters);
        Require.NotNegative("remainingWallMm", decision.Defect.RemainingWall.Millimeters);
        Require.NotNegative("soundWallBesideMm", decision.Defect.SoundWallBeside.Millimeters);
        Require.NotNegative("holeDiameterMm", decision.Defect.HoleDiameter.Millimeters);
        Require.NotNegative("wallMappedEachSideMm", decision.WallMappedEachSide.Millimeters);
    }

    private static Finding Finding(DecisionRule rule) =>
        new(
            rule.Code,
            rule.Verdict == Verdict.Ok ? Severity.Pass : Severity.Fail,
            $"{rule.Condition}: {rule.Reason}",
            null,
            null,
            null,
            rule.Basis,
            rule.Verdict == Verdict.Stop ? LimitKind.Absolute : LimitKind.ByDeviation
        );
}
