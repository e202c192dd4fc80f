using RepairOrders.Api.Assessing;
using RepairOrders.Api.Choosing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Proving;
using RepairOrders.Api.Removing;
using RepairOrders.Api.Sizing;
using RepairOrders.Contract;

namespace RepairOrders.Api.OrderSheets;

/// <summary>
/// The one thing that waits for this person: of all he may do, what brings the order on from where it stands. Many things may be
/// done at any time, a stop or a visit; they are offered, but they do not wait.
/// </summary>
internal static class NextAction
{
    // Somebody else has done his part, and this person's answer is what is missing.
    private static readonly string[] Answers =
    [
        "confirm-consent",
        "agree-containment",
        "sign-exit",
        "witness-proof",
        "accept-departures",
        "accept-first-look",
        "accept-repair",
        "countersign-visit",
        "decide-extension",
        "accept-hand-over",
        "countersign-close-out",
        "answer-ladder",
    ];

    public static ActionView? Of(
        RepairOrder order,
        OrderColumns columns,
        IReadOnlyList<ActionView> actions,
        DateTimeOffset at
    ) =>
        Answers
            .Where(code => code != "witness-proof" || WitnessMissing(order))
            .Concat(Forward(order, columns, at))
            .Select(code => actions.FirstOrDefault(a => a.Action == code && a.Objection is null))
            .FirstOrDefault(a => a is not null);

    // One more witness may sign, but then nothing waits for him.
    private static bool WitnessMissing(RepairOrder order) =>
        Proof.Of(order) is { } proof && ProofWitness.Missing(order, Fitting.WorkPlan.Of(order)!, proof) is not null;

    private static IEnumerable<string> Forward(RepairOrder order, OrderColumns columns, DateTimeOffset at) =>
        order.Stage switch
        {
            Stage.Requested => ["record-assessment"],
            Stage.Returned => ["request-again"],
            Stage.Assessed => ["choose-method"],
            Stage.Chosen => ["size-repair"],
            Stage.Sized => ["approve-order"],
            Stage.Approved => ["issue-material", "ready-order"],
            Stage.Consented => ["ready-order", "issue-material"],
            Stage.Issued => ["ready-order"],
            Stage.Ready or Stage.Fitting => ["resume-job", "release-hold-point"],
            Stage.Fitted => ["resume-job", "record-proof", "issue-material"],
            Stage.InService => InService(order, columns, at),
            Stage.LineOutOfService => ["return-to-service"],
            Stage.Failed => ["make-safe"],
            Stage.MadeSafe => [.. Off(order), "record-assessment", "state-failure-mode"],
            Stage.Removed => ["inspect-removal", "record-permanent-fix"],
            Stage.Fixed => ["close-order"],
            _ => [],
        };

    private static IEnumerable<string> InService(RepairOrder order, OrderColumns columns, DateTimeOffset at)
    {
        foreach (var code in Off(order))
            yield return code;
        if (columns.ApprovalOwedUntil is not null || columns.ReassessmentOwedFrom <= at)
            yield return Paper(order, columns);
        if (columns.LookDueAt - TimeSpan.FromDays(1) <= at)
            yield return "record-visit";
        if (columns.EndsAt <= at)
            yield return "order-removal";
        if (columns.EndsAt - TimeSpan.FromDays(30) <= at)
            yield return "ask-extension";
    }

    private static string[] Off(RepairOrder order) =>
        OnThePipe.Is(order) && order.Last<RemovalOrder>() is not null ? ["record-removal", "ready-order"] : [];

    // The papers signed again in service, one after the other.
    private static string Paper(RepairOrder order, OrderColumns columns)
    {
        if (order.PendingDesign is not null)
            return "approve-order";
        var since = columns.ReassessmentOwedFrom ?? DateTimeOffset.MinValue;
        if (order.Last<Assessment>() is not { } assessment || assessment.At < since)
            return "record-assessment";
        return order.Last<Choice>() is null ? "choose-method" : "size-repair";
    }
}
