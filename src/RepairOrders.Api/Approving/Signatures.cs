using RepairOrders.Api.Assessing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Requesting;
using RepairOrders.Api.Sizing;
using RepairOrders.Api.Standing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Approving;

/// <summary>Which signatures a design needs, which it has, and which designs are therefore approved.</summary>
internal static class Signatures
{
    /// <summary>The set of the class: D a supervisor, C and B an engineer with him, A the manager too.</summary>
    public static IReadOnlyList<ApprovalCapacity> Needed(RiskClass signed) =>
        signed switch
        {
            RiskClass.A => [ApprovalCapacity.Supervisor, ApprovalCapacity.Engineer, ApprovalCapacity.Manager],
            RiskClass.D => [ApprovalCapacity.Supervisor],
            _ => [ApprovalCapacity.Supervisor, ApprovalCapacity.Engineer],
        };

    /// <summary>The signatures that stand under a design, oldest first.</summary>
    public static IEnumerable<Approval> Under(RepairOrder order, Design design) =>
        order.All<Approval>().Where(a => a.Round == design.Round && a.Asked.Fingerprint == design.Asked.Fingerprint);

    public static IEnumerable<ApprovalCapacity> Missing(RepairOrder order, Design design) =>
        Needed(design.Asked.Risk.Class).Except(Under(order, design).Select(a => a.Asked.As));

    /// <summary>The last design of the round with its set complete: the one that stands.</summary>
    public static Design? Approved(RepairOrder order) =>
        order.InRound<Design>().LastOrDefault(d => !IsOutdated(order, d) && !Missing(order, d).Any());

    /// <summary>The last design of the round, while signatures are missing.</summary>
    public static Design? Pending(RepairOrder order) =>
        order.Last<Design>() is { } design && !IsOutdated(order, design) && Missing(order, design).Any()
            ? design
            : null;

    // Before work, a fresh request, assessment or choice makes a design void. In service the approved one stands until the new set is complete.
    private static bool IsOutdated(RepairOrder order, Design design) =>
        Rounds.InServiceSince(order) is null
        && (
            !design.IsAfter(order.Request)
            || !design.IsAfter(order.Last<Assessment>())
            || !design.IsAfter(order.Last<Choosing.Choice>())
        );

    /// <summary>Whether the set was complete once this approval was signed.</summary>
    public static bool CompletesAt(Approval approval, RepairOrder order)
    {
        var design = order
            .All<Design>()
            .LastOrDefault(d => d.Round == approval.Round && d.Asked.Fingerprint == approval.Asked.Fingerprint);
        if (design is null)
            return false;
        var upToHere = Under(order, design).Where(a => !a.IsAfter(approval)).Select(a => a.Asked.As);
        return !Needed(design.Asked.Risk.Class).Except(upToHere).Any();
    }

    /// <summary>
    /// Who assessed or sized may sign only as engineer, and only on class C: on A and B a second engineer does, and on D the
    /// supervisor is the second pair of eyes.
    /// </summary>
    public static Objection? OwnWork(RepairOrder order, Design design, ApprovalCapacity place, Person by)
    {
        var assessor = order.Records.OfType<Assessment>().FirstOrDefault(a => a.Id == design.Asked.Assessment)?.ById;
        if (by.Id != assessor && by.Id != design.ById)
            return null;
        if (place is ApprovalCapacity.Engineer && design.Asked.Risk.Class == RiskClass.C)
            return null;
        return new Objection(
            "own-work",
            $"You {(by.Id == assessor ? "assessed the pipe" : "sized the repair")}. On class {design.Asked.Risk.Class} another person must sign as {Words.Of(place)}.",
            $"somebody who neither assessed nor sized"
        );
    }

    /// <summary>Where one supervisor is all there is, the manager signs in his place for what he raised or fitted.</summary>
    public static bool ManagerStandsIn(RepairOrder order) =>
        order.Surroundings.Supervisors is [var only]
        && (order.Records.OfType<Request>().Any(r => r.ById == only) || Facts.Fitters(order).Contains(only));
}
