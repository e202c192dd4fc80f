using RepairOrders.Api.Assessing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;

namespace RepairOrders.Api.Choosing;

/// <summary>What the methods claim of the order's pipe, and what the procedure makes of a claim.</summary>
internal static class Claims
{
    public static Objection? NotAssessed(RepairOrder order) =>
        order.Last<Assessment>() is not { } assessment || order.Request.IsAfter(assessment)
            ? new Objection(
                "not-assessed",
                "The pipe is not assessed in this round. Assess it first.",
                "integrity engineer"
            )
            {
                IsOfStage = true,
            }
            : null;

    /// <summary>Every method's claim, each with the objection to choosing it.</summary>
    public static IReadOnlyList<ClaimView> Of(RepairOrder order, Guid? chooser = null)
    {
        var judging = Judging.Of(order, order.Last<Assessment>()!.Asked.Ask);
        return
        [
            .. MethodCatalogue
                .Claims(judging.Pipe, judging.Defect, judging.Facts.Service)
                .Select(c => View(c))
                .Select(c => c with { Objection = Objection(order, c, chooser)?.View }),
        ];
    }

    /// <summary>The objection to a method on this order.</summary>
    public static Objection? Objection(RepairOrder order, ClaimView claim, Guid? chooser)
    {
        if (IsCrackLike(order) && !claim.Welded)
            return new Objection(
                "crack-like",
                "The damage is crack-like: that blocks every weldless method. Isolate, and cut it out.",
                "nobody; replacement or shut-down"
            );
        if (NoTemporaryRepair(order) is { } why && claim.Method != CutsItOut)
            return new Objection(
                "no-temporary-repair",
                $"No temporary repair is acceptable here. {why} Shut the line down and isolate it, or replace the section.",
                "nobody; shut down, or replace the section"
            );
        if (claim.Findings.FirstOrDefault(f => f.Absolute && f.Severity == FindingSeverity.Fail) is { } barred)
            return new Objection(
                "method-barred",
                $"{barred.Words} Nobody may sign past this limit of the {Words.Lower(claim.Name)}.",
                "nobody; choose another method"
            );
        return Again(order, claim, chooser) ?? Outside(order, claim, chooser);
    }

    /// <summary>What a deviation for this method would have to cover.</summary>
    public static IReadOnlyList<string> ToCover(RepairOrder order, ClaimView claim, bool enteredDesign) =>
        [
            .. claim.Findings.Where(f => f.Severity == FindingSeverity.Fail).Select(f => f.Code).Distinct(),
            .. Rounds.FailedWith(order, claim.Method) > 0 ? [Deviation.SameMethodAgain] : Array.Empty<string>(),
            .. enteredDesign ? [Deviation.EnteredDesign] : Array.Empty<string>(),
        ];

    /// <summary>What deviations of this round cover for the method; one's own does not count for oneself.</summary>
    public static IEnumerable<string> Covered(RepairOrder order, string method, Guid? chooser) =>
        order
            .InRound<Deviation>()
            .Where(d => d.Asked.Ask.Method == method && d.ById != chooser)
            .SelectMany(d => d.Asked.Covers);

    private static Objection? Again(RepairOrder order, ClaimView claim, Guid? chooser)
    {
        var times = Rounds.FailedWith(order, claim.Method);
        if (times > 1 && Rounds.GravestClass(order) <= RiskClass.B)
            return new Objection(
                "same-method-twice",
                $"The {Words.Lower(claim.Name)} has failed here {times} times. On class {Rounds.GravestClass(order)} it is not put on again: another method, or removal.",
                "nobody; choose another method"
            );
        return times > 0 && !Covered(order, claim.Method, chooser).Contains(Deviation.SameMethodAgain)
            ? new Objection(
                "same-method-again",
                $"The {Words.Lower(claim.Name)} has failed on this spot. A second engineer must sign, with a basis, that it may be put on again.",
                "a second integrity engineer, by a deviation"
            )
            : null;
    }

    private static Objection? Outside(RepairOrder order, ClaimView claim, Guid? chooser)
    {
        var open = claim
            .Findings.Where(f => f.Severity == FindingSeverity.Fail)
            .ExceptBy(Covered(order, claim.Method, chooser), f => f.Code)
            .ToList();
        return open.Count == 0
            ? null
            : new Objection(
                "outside-limits",
                $"{open[0].Words} The {Words.Lower(claim.Name)} is outside its limits here; a second engineer may sign a deviation with a basis.",
                "a second integrity engineer, by a deviation"
            );
    }

    // The one method that takes the damage out with the pipe.
    private const string CutsItOut = "section-replacement";

    private static string? NoTemporaryRepair(RepairOrder order) =>
        order.Last<Assessment>()!.Asked.Judgement.NoTemporaryRepair is [var first, ..] ? first : null;

    private static bool IsCrackLike(RepairOrder order) =>
        order.Last<Assessment>()!.Asked.Ask.Defect.Kind == DefectKind.CrackLike;

    private static ClaimView View(RankedClaim ranked) =>
        new(
            ranked.Claim.Method,
            ranked.Claim.Name,
            MethodCatalogue.Find(ranked.Claim.Method).Welded,
            ranked.Rank,
            ranked.Why,
            ranked.Claim.Inside,
            ranked.Claim.Barred,
            [.. ranked.Claim.Findings.Select(f => f.View())],
            null
        );
}
