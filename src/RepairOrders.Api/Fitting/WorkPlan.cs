using RepairOrders.Api.Consenting;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;

namespace RepairOrders.Api.Fitting;

/// <summary>
/// What is to be fitted in this round, and by what it is judged: the approved design, or on the emergency path the entry of the
/// emergency list that both consents name.
/// </summary>
/// <param name="Id">The design's record, or the consent's.</param>
/// <param name="Method">The method's code.</param>
/// <param name="Name">The method's name.</param>
/// <param name="Class">The class that decides who consents, witnesses and how many fit.</param>
/// <param name="Emergency">Work rests on two consents.</param>
/// <param name="Design">Dimensions, bill, hold points, cure times.</param>
/// <param name="Category">Fluid service category.</param>
/// <param name="FitOn">The planned day of the fit.</param>
/// <param name="Owner">Who goes back to look.</param>
/// <param name="Limits">What the line is held to while the repair is live.</param>
internal sealed record WorkPlan(
    Guid Id,
    string Method,
    string Name,
    RiskClass Class,
    bool Emergency,
    MethodDesignView Design,
    ServiceCategory Category,
    DateOnly? FitOn,
    NamedPerson? Owner,
    InterimLimits? Limits
)
{
    public IReadOnlyList<MaterialNeedView> Bill => Design.Materials;
    public IReadOnlyList<HoldPointView> HoldPoints => Design.HoldPoints;

    /// <summary>The plan of the round at work; nothing before it is approved or consented to.</summary>
    public static WorkPlan? Of(RepairOrder order)
    {
        if (Planning.IsEmergency(order) && !WasApproved(order))
            return Emergent(order, order.InRound<Consent>().Last());
        if (order.ApprovedDesign is not { } design)
            return null;
        var signed = design.Asked;
        return new(
            design.Id,
            signed.Method.Method,
            signed.Method.Name,
            signed.Risk.Class,
            false,
            signed.Method,
            signed.Facts.Category,
            signed.Ask.PlannedFitOn,
            signed.Ask.Owner is { } owner ? new(owner, signed.OwnerName) : null,
            signed.Ask.InterimLimits
        );
    }

    // Consents given for a round that was approved the normal way carry nothing.
    private static bool WasApproved(RepairOrder order) =>
        Rounds.History(order).Any(h => h.Round == order.Round && h.Stage == Stage.Approved);

    // Nobody has assessed the pipe yet: no wall is known, the entry's own limits stand for the design's, and nobody owns a look.
    private static WorkPlan Emergent(RepairOrder order, Consent consent)
    {
        var entry = consent.Asked.Entry;
        var design = new MethodDesignView(
            entry.Method,
            entry.Name,
            true,
            entry.CalculationReference,
            [],
            entry.GreatestPressure.Value,
            entry.Materials,
            entry.HoldPoints,
            entry.Cautions,
            [],
            [],
            entry.SetForLoadHours,
            entry.FullHardnessHours,
            entry.CureReference.Value,
            null,
            0,
            false,
            []
        );
        var category = order.Line is { } line
            ? Enum.Parse<ServiceCategory>(line.ServiceCategory.ToString(), ignoreCase: true)
            : ServiceCategory.Normal;
        return new(
            consent.Id,
            entry.Method,
            entry.Name,
            consent.Asked.Risk.Class,
            true,
            design,
            category,
            null,
            null,
            null
        );
    }

    /// <summary>How many fasteners the design has; nothing where it does not say.</summary>
    public int? Fasteners =>
        Whole("clampBoltCount") ?? (Whole("bandCount") is { } bands ? bands * (Whole("fastenersPerBand") ?? 1) : null);

    private int? Whole(string dimension) => Design[dimension] is { } value ? (int)Math.Round(value) : null;
}
