using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Readying;

internal static class ReadyingEndpoints
{
    public static void MapReadying(this IEndpointRouteBuilder orders)
    {
        orders
            .MapPost("/{number}/readiness", Ready)
            .Needs(Permission.ReadyOrder)
            .WithSummary("Ready the job for one permit window");
        orders
            .MapPost("/{number}/live-fit-consents", Consent)
            .Needs(Permission.ConsentToLiveFit)
            .WithSummary("Consent to a fit on the live line");
    }

    private static async Task<RecordView> Ready(
        string number,
        ReadyOrder ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var fitters = new List<Person>();
        foreach (var id in ask.Fitters.Distinct())
            fitters.Add(
                await store.PersonOf(order.Site.ShortName, id)
                    ?? throw new MalformedAsk("fitters", $"fitters names {id}; allowed are people of this site.")
            );
        var at = clock.Now();
        RepairOrder.Refuse(Readiness.Objection(order, ask, fitters, by, at));
        var named = fitters.Select(f => new NamedPerson(f.Id, f.FullName)).ToList();
        var record = order.Sign(new Readiness(new(ask, named, ask.Isolation is null)), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    private static async Task<RecordView> Consent(
        string number,
        ConsentToLiveFit ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(LiveFitConsent.Objection(order, ask, by, at));
        var record = order.Sign(new LiveFitConsent(ask), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }
}
