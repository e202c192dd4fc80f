using System.Globalization;
using RepairOrders.Api.Assessing;
using RepairOrders.Api.Choosing;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Sizing;

/// <summary>What a design must have before it can be signed.</summary>
internal static class DesignRules
{
    public static Objection? Objection(RepairOrder order, SignedDesign design, DateTimeOffset at) =>
        Strength(order, design) ?? Axial(order, design) ?? Dates(order, design, at) ?? References(design);

    private static Objection? Strength(RepairOrder order, SignedDesign design)
    {
        var covered = Claims.Covered(order, design.Method.Method, order.Last<Choice>()!.ById);
        var open = design
            .Method.Findings.Where(f => f.Severity == FindingSeverity.Fail)
            .FirstOrDefault(f => f.Absolute || !covered.Contains(f.Code));
        if (open is not null)
            return new Objection(
                "design-does-not-hold",
                $"The design does not hold. {open.Words} Change the values, limit the line, or choose another method.",
                "integrity engineer"
            );
        var needed = design.Ask.InterimLimits?.Pressure?.Value ?? design.Facts.DesignPressureBar;
        if (design.Method.PressureHeldBar is { } held && held < needed)
            return new Objection(
                "pressure-not-held",
                Invariant(
                    $"It holds {held:0.##} bar and the line may see {needed:0.##} bar. Size it for more, or set an interim limit it holds."
                ),
                "integrity engineer, with operations for an interim limit"
            );
        return null;
    }

    private static Objection? Axial(RepairOrder order, SignedDesign design)
    {
        var judged = order.Last<Assessment>()!.Asked.Judgement;
        if (judged.AxialShort is not true || design.Method.CarriesAxialLoad)
            return null;
        if (design.Ask.Restraint is not { } restraint)
            return new Objection(
                "axial-short",
                "The pipe cannot carry its end load beside the damage and this repair does not carry it either. A seal does not hold a pipe together: design a restraint.",
                "integrity engineer"
            );
        return judged.EndLoadKn is { } load && restraint.Holds.Value < load
            ? new Objection(
                "restraint-short",
                Invariant($"The restraint holds {restraint.Holds.Value:0.#} kN against an end load of {load:0.#} kN."),
                "integrity engineer"
            )
            : null;
    }

    private static Objection? Dates(RepairOrder order, SignedDesign design, DateTimeOffset at)
    {
        if (Rounds.InServiceSince(order) is null && design.Ask.PlannedFitOn < order.Site.Today(at))
            return new Objection(
                "fit-in-the-past",
                $"The planned fit date {design.Ask.PlannedFitOn:yyyy-MM-dd} has passed. Every life is counted from it: give the day it will be fitted.",
                "integrity engineer"
            );
        if (design.Method.DesignLifeDays is null)
            return new Objection(
                "end-date-open",
                "The design has no life, so its end date is open. Give the design life.",
                "integrity engineer"
            );
        var end = design.EndDate;
        var start = EndDates.Start(order, design.Ask.PlannedFitOn);
        return end.On <= start
            ? new Objection(
                "no-life-left",
                $"The {end.Governing.Words} ends the repair on {end.On:yyyy-MM-dd}, not after its start on {start:yyyy-MM-dd}. A temporary repair has no life here.",
                "integrity engineer; replacement, or an earlier fit"
            )
            : null;
    }

    private static Objection? References(SignedDesign design)
    {
        if (design.Ask.Owner is null)
            return new Objection("no-owner", "Nobody goes back to look at it. Name an owner.", "integrity engineer");
        if (design.Ask.PermanentFix is null)
            return new Objection(
                "no-permanent-fix",
                "Nothing ends this repair: give the number and date of the permanent fix.",
                "supervisor, who orders the permanent fix"
            );
        if ((design.Risk.Class <= RiskClass.B || design.Facts.SafetyCritical) && design.Ask.ChangeControl is null)
            return new Objection(
                "no-change-control",
                $"{(design.Facts.SafetyCritical ? "The line is safety-critical" : $"The repair is class {design.Risk.Class}")}: it runs under a change control. Give its reference and its last day.",
                "integrity engineer, with who keeps change control"
            );
        return null;
    }

    private static string Invariant(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
