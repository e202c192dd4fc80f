using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Approving;

/// <summary>When an approval may be taken back.</summary>
internal static class Withdrawal
{
    /// <summary>The person's own approval of the round, if there is one.</summary>
    public static Approval? Own(RepairOrder order, Person by) =>
        order.InRound<Approval>().LastOrDefault(a => a.ById == by.Id);

    public static Objection? Objection(RepairOrder order, Approval approval, Person by)
    {
        if (approval.ById != by.Id)
            return new Objection(
                "not-your-signature",
                $"This is the signature of {approval.By}; only who gave it can take it back.",
                approval.By
            );
        var pending = order.PendingDesign?.Asked.Fingerprint == approval.Asked.Fingerprint;
        return pending || order.Stage is Stage.Sized or Stage.Approved or Stage.Issued or Stage.Ready
            ? null
            : new Objection(
                "work-begun",
                $"Work has begun on this approval: the order is {Words.Of(order.Stage)}. Stop the job, or report a failure.",
                "anyone, by stopping the job"
            )
            {
                IsOfStage = true,
            };
    }
}
