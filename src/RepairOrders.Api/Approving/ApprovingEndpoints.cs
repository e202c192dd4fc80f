using System.ComponentModel.DataAnnotations;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Approving;

internal static class ApprovingEndpoints
{
    public static void MapApproving(this IEndpointRouteBuilder orders)
    {
        orders.MapPost("/{number}/approvals", Approve).Needs(Permission.ApproveOrder).WithSummary("Sign the design");
        orders
            .MapDelete("/{number}/approvals/{id}", Withdraw)
            .Needs(Permission.WithdrawApproval)
            .WithSummary("Withdraw one's approval before work begins");
    }

    private static async Task<RecordView> Approve(
        string number,
        ApproveOrder ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(Approval.Objection(order, ask, by, at));
        var approval = order.Sign(new Approval(ask), by, at, ask.Remark);
        await store.SaveChangesAsync(CancellationToken.None);
        return approval.View();
    }

    private static async Task<IResult> Withdraw(
        string number,
        Guid id,
        [Required, StringLength(2000, MinimumLength = 3)] string why,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var approval =
            order.InRound<Approval>().FirstOrDefault(a => a.Id == id)
            ?? throw new NotHere("There is no such approval in this round.");
        RepairOrder.Refuse(Withdrawal.Objection(order, approval, by));
        order.SetAside(approval, by, clock.Now(), why);
        await store.SaveChangesAsync(CancellationToken.None);
        return TypedResults.NoContent();
    }
}
