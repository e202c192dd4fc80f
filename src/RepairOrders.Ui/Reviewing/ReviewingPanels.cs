using RepairOrders.Contract;
using RepairOrders.Ui.Orders;

namespace RepairOrders.Ui.Reviewing;

/// <summary>The panels of reviewing.</summary>
internal static class ReviewingPanels
{
    public static readonly Dictionary<string, IStepPanel> All = new()
    {
        ["answer-ladder"] = new PlainStep<AnswerLadder>(
            "Answer",
            (api, step, ask, _) => api.AnswerLadder(step.Number, ask)
        ),
        ["review-order"] = new PlainStep<ReviewOrder>(
            "Enter the review",
            (api, step, ask, _) => api.ReviewOrder(step.Number, ask)
        ),
    };
}
