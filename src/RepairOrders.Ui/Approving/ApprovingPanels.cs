using RepairOrders.Ui.Orders;

namespace RepairOrders.Ui.Approving;

/// <summary>The panels of approving.</summary>
internal static class ApprovingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["approve-order"] = new OwnPanel<ApprovalPanel>(),
        ["withdraw-approval"] = new PlainStep<GiveReason>(
            "Withdraw your approval",
            (api, step, ask, _) =>
                api.WithdrawApproval(
                    step.Number,
                    step.All("approval").Last(a => a.By == step.Desk.Me.FullName).Id,
                    ask.Why,
                    step.Sheet.Version
                )
        ),
    };
}
