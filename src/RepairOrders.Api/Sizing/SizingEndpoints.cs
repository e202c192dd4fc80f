using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Sizing;

internal static class SizingEndpoints
{
    public static void MapSizing(this IEndpointRouteBuilder orders)
    {
        orders
            .MapGet("/{number}/sizing-inputs", Inputs)
            .Needs(Permission.ReadOrder)
            .WithSummary("What the chosen method must be told to size");
        orders
            .MapPost("/{number}/sizing-previews", Preview)
            .Needs(Permission.ReadOrder)
            .WithSummary("Size without signing; nothing is written");
        orders.MapPut("/{number}/design", Size).Needs(Permission.SizeRepair).WithSummary("Sign the design");
    }

    private static async Task<IReadOnlyList<InputView>> Inputs(
        string number,
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop
    )
    {
        var order = await store.Order(number, by, null, stop);
        RepairOrder.Refuse(Design.Objection(order, by, clock.Now()));
        return [.. Designing.Method(order).Inputs.Select(i => i.View())];
    }

    private static async Task<SizingPreview> Preview(
        string number,
        SizeRepair ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(Design.Objection(order, by, at));
        var owner = await Owner(store, order, ask);
        var design = Designing.Of(order, ask, owner, Shutdown(order, ask));
        return new(design, (Design.Objection(order, design, at) ?? OwnerCannotSign(order, ask, owner))?.View);
    }

    private static async Task<RecordView> Size(
        string number,
        SizeRepair ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var at = clock.Now();
        RepairOrder.Refuse(Design.Objection(order, by, at));
        var owner = await Owner(store, order, ask);
        var design = Designing.Of(order, ask, owner, Shutdown(order, ask));
        RepairOrder.Refuse(Design.Objection(order, design, at) ?? OwnerCannotSign(order, ask, owner));
        var record = order.SignAgain(new Design(design), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    private static async Task<Person?> Owner(RepairStore store, RepairOrder order, SizeRepair ask) =>
        ask.Owner is { } id
            ? await store.Users.SingleOrDefaultAsync(
                p => p.Id == id && p.Sites.Contains(order.Site.ShortName),
                CancellationToken.None
            )
            : null;

    private static Objection? OwnerCannotSign(RepairOrder order, SizeRepair ask, Person? owner) =>
        owner is not null
        && owner.HasAuthority(EndDates.Start(order, ask.PlannedFitOn))
        && owner.Roles.Any(r => r is Role.Supervisor or Role.Technician or Role.IntegrityEngineer or Role.Manager)
            ? null
            : new Objection(
                "owner-cannot-sign",
                "The owner must be somebody of this site who can sign a look: a supervisor, technician, engineer or manager with authority in date.",
                "integrity engineer, by naming another owner"
            );

    private static SurroundingShutdown? Shutdown(RepairOrder order, SizeRepair ask) =>
        order
            .Surroundings.Shutdowns.Where(s => s.StartsOn > EndDates.Start(order, ask.PlannedFitOn))
            .MinBy(s => s.StartsOn);
}
