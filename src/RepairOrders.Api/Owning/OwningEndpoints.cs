using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Owning;

internal static class OwningEndpoints
{
    public static void MapOwning(this IEndpointRouteBuilder orders)
    {
        orders
            .MapPost("/{number}/hand-overs", Offer)
            .Needs(Permission.OfferHandOver)
            .WithSummary("Offer the order to a new owner");
        orders
            .MapPut("/{number}/owner", Accept)
            .Needs(Permission.AcceptHandOver)
            .WithSummary("Accept as its new owner");
    }

    private static async Task<RecordView> Offer(
        string number,
        OfferHandOver ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        var to = await store.Users.SingleOrDefaultAsync(p => p.Id == ask.To, CancellationToken.None);
        RepairOrder.Refuse(HandOver.Objection(order, to, by, at));
        var offer = order.Sign(new HandOver(new(ask, to!.FullName)), by, at, ask.Why);
        await store.SaveChangesAsync(CancellationToken.None);
        return offer.View();
    }

    private static async Task<RecordView> Accept(
        string number,
        AcceptHandOver ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var at = clock.Now();
        RepairOrder.Refuse(Owner.Objection(order, ask, by, at));
        var owner = order.Replace(new Owner(ask), by, at, $"handed over to {by.FullName}");
        await store.SaveChangesAsync(CancellationToken.None);
        return owner.View();
    }
}
