using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Extending;

internal static class ExtendingEndpoints
{
    public static void MapExtending(this IEndpointRouteBuilder orders)
    {
        orders
            .MapPost("/{number}/extensions", Ask)
            .Needs(Permission.AskExtension)
            .WithSummary("Ask for a later end date");
        orders
            .MapPost("/{number}/extension-decisions", Decide)
            .Needs(Permission.DecideExtension)
            .WithSummary("Decide on an extension");
    }

    private static async Task<RecordView> Ask(
        string number,
        AskExtension ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        if (ask.PermanentFix.On < order.Site.Today(at))
            throw new MalformedAsk(
                "permanentFix.on",
                $"permanentFix.on is {ask.PermanentFix.On:yyyy-MM-dd}; allowed is today or later."
            );
        RepairOrder.Refuse(Extension.Objection(order, by, at));
        var extension = Reckoning.Of(order, ask, at);
        RepairOrder.Refuse(ExtensionRules.Of(order, extension, at));
        var record = order.Sign(new Extension(extension), by, at, ask.Why);
        await store.SaveChangesAsync(CancellationToken.None);
        return record.View();
    }

    private static async Task<RecordView> Decide(
        string number,
        DecideExtension ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(ExtensionDecision.Objection(order, ask, by, at));
        var extension = Extension.Pending(order)!;
        var place = ExtensionDecision.Place(order, extension, by, at)!.Value;
        var completes = ask.Grant && ExtensionDecision.Missing(order, extension, at).Count == 1;
        var decision = order.Sign(
            new ExtensionDecision(
                new(ask, place, completes ? extension.Asked.EndDate.On : null, ExtensionRules.AfterEnd(order, at))
            ),
            by,
            at,
            ask.Why
        );
        await store.SaveChangesAsync(CancellationToken.None);
        return decision.View();
    }
}
