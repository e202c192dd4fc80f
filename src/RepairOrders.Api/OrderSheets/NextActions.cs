using RepairOrders.Api.Approving;
using RepairOrders.Api.Assessing;
using RepairOrders.Api.Choosing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
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
        ];
        return [.. asks.OfType<ActionView>()];

        ActionView? Ask(string step, string action, string words, Permission permission, Objection? objection) =>
            objection is { IsOfStage: true }
                ? null
                : new(step, action, words, (RoleRules.Objection(by, permission) ?? objection)?.View);
    }
}
