using RepairOrders.Api.Approving;
using RepairOrders.Api.Assessing;
using RepairOrders.Api.Choosing;
using RepairOrders.Api.Closing;
using RepairOrders.Api.Extending;
using RepairOrders.Api.Failing;
using RepairOrders.Api.MakingPermanent;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Owning;
using RepairOrders.Api.People;
using RepairOrders.Api.Removing;
using RepairOrders.Api.Reviewing;
using RepairOrders.Api.Revisiting;
using RepairOrders.Api.Sizing;
using RepairOrders.Contract;

namespace RepairOrders.Api.OrderSheets;

/// <summary>
/// Every ask that can be made of an order, in the order of the procedure, each with its rule. An ask that makes no sense at this
/// stage is left out; one that this person may not do carries the objection.
/// </summary>
internal static class NextActions
{
    public static IReadOnlyList<ActionView> For(RepairOrder order, Person by, DateTimeOffset at)
    {
        ActionView?[] asks =
        [
            Ask(
                "assessing",
                "record-assessment",
                "Assess the pipe",
                Permission.RecordAssessment,
                Assessment.Objection(order, by, at)
            ),
            Ask(
                "choosing",
                "choose-method",
                "Choose a method",
                Permission.ChooseMethod,
                Choice.Objection(order, by, at)
            ),
            Ask(
                "choosing",
                "sign-deviation",
                "Sign a deviation",
                Permission.SignDeviation,
                Deviation.Objection(order, by, at)
            ),
            Ask("sizing", "size-repair", "Size the repair", Permission.SizeRepair, Design.Objection(order, by, at)),
            Ask(
                "approving",
                "approve-order",
                "Approve the design",
                Permission.ApproveOrder,
                Approval.Objection(order, by, at)
            ),
            Ask("revisiting", "record-visit", "Record a visit", Permission.RecordVisit, Visit.Objection(order, by, at)),
            Ask(
                "revisiting",
                "countersign-visit",
                "Countersign a visit",
                Permission.CountersignVisit,
                VisitCountersignature.Objection(order, by, at)
            ),
            Ask(
                "extending",
                "ask-extension",
                "Ask for an extension",
                Permission.AskExtension,
                Extension.Objection(order, by, at)
            ),
            Ask(
                "extending",
                "decide-extension",
                "Decide on the extension",
                Permission.DecideExtension,
                ExtensionDecision.Objection(order, by, at)
            ),
            Failure.Concerns(order)
                ? Ask("failing", "report-failure", "Report a failure", Permission.ReportFailure, null)
                : null,
            Ask("failing", "make-safe", "Make it safe", Permission.MakeSafe, MadeSafe.Objection(order, by, at)),
            Ask(
                "failing",
                "agree-containment",
                "Agree to containment",
                Permission.AgreeContainment,
                ContainmentAgreement.Objection(order, by, at)
            ),
            Ask(
                "failing",
                "state-failure-mode",
                "State how it failed",
                Permission.StateFailureMode,
                FailureStatement.Objection(order, by, at)
            ),
            Ask(
                "removing",
                "order-removal",
                "Order removal",
                Permission.OrderRemoval,
                RemovalOrder.Objection(order, by, at)
            ),
            Ask(
                "removing",
                "record-removal",
                "Record the removal",
                Permission.RecordRemoval,
                Removal.Objection(order, by, at)
            ),
            Ask(
                "removing",
                "inspect-removal",
                "Enter what the bare pipe shows",
                Permission.InspectRemoval,
                RemovalInspection.Objection(order, by, at)
            ),
            Ask(
                "making-permanent",
                "record-permanent-fix",
                "Record the permanent fix",
                Permission.RecordPermanentFix,
                PermanentFix.Objection(order, by, at)
            ),
            Ask("closing", "close-order", "Close the order", Permission.CloseOrder, CloseOut.Objection(order, by, at)),
            Ask(
                "closing",
                "countersign-close-out",
                "Countersign the close-out",
                Permission.CountersignCloseOut,
                CloseOutCountersignature.Objection(order, by, at)
            ),
            Ask("closing", "reopen-order", "Reopen the order", Permission.ReopenOrder, Reopening.Objection(order)),
            Ask(
                "owning",
                "offer-hand-over",
                "Hand the order over",
                Permission.OfferHandOver,
                HandOver.Objection(order, by, at)
            ),
            Ask(
                "owning",
                "accept-hand-over",
                "Accept the order",
                Permission.AcceptHandOver,
                Owner.Objection(order, by, at)
            ),
            Ask(
                "reviewing",
                "answer-ladder",
                "Answer the ladder",
                Permission.AnswerLadder,
                LadderAnswer.Objection(order, by, at)
            ),
            Ask("reviewing", "review-order", "Enter a review", Permission.ReviewOrder, Review.Objection(order, by, at)),
        ];
        return [.. asks.OfType<ActionView>()];

        ActionView? Ask(string step, string action, string words, Permission permission, Objection? objection) =>
            objection is { IsOfStage: true }
                ? null
                : new(step, action, words, (RoleRules.Objection(by, permission) ?? objection)?.View);
    }
}
