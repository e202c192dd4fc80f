using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Choosing;

internal static class ChoosingEndpoints
{
    public static void MapChoosing(this IEndpointRouteBuilder orders)
    {
        orders
            .MapGet("/{number}/claims", ReadClaims)
            .Needs(Permission.ReadOrder)
            .WithSummary("What every method claims here");
        orders.MapPut("/{number}/choice", Choose).Needs(Permission.ChooseMethod).WithSummary("Choose the method");
        orders
            .MapPost("/{number}/deviations", Deviate)
            .Needs(Permission.SignDeviation)
            .WithSummary("Sign, as second engineer, for going past a limit");
    }

    private static async Task<IReadOnlyList<ClaimView>> ReadClaims(
        string number,
        Person by,
        RepairStore store,
        CancellationToken stop
    )
    {
        var order = await store.Order(number, by, null, stop);
        RepairOrder.Refuse(Claims.NotAssessed(order));
        return Claims.Of(order, by.Id);
    }

    private static async Task<RecordView> Choose(
        string number,
        ChooseMethod ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by, seen);
        var at = clock.Now();
        RepairOrder.Refuse(Choice.Objection(order, by, at));
        var claims = Claims.Of(order, by.Id);
        RepairOrder.Refuse(Choice.Objection(order, ask, Known(claims, ask.Method, "method"), by, at));
        var choice = order.SignAgain(new Choice(new(ask, claims)), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return choice.View();
    }

    private static async Task<RecordView> Deviate(
        string number,
        SignDeviation ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var order = await store.Order(number, by);
        var at = clock.Now();
        RepairOrder.Refuse(Deviation.Objection(order, by, at));
        var claim = Known(Claims.Of(order), ask.Method, "method");
        var covers = Claims.ToCover(order, claim, ask.EnteredDesign);
        RepairOrder.Refuse(Deviation.Objection(claim, covers));
        var deviation = order.Sign(new Deviation(new(ask, covers)), by, at, ask.Basis);
        await store.SaveChangesAsync(CancellationToken.None);
        return deviation.View();
    }

    private static ClaimView Known(IReadOnlyList<ClaimView> claims, string method, string field) =>
        claims.FirstOrDefault(c => c.Method == method)
        ?? throw new MalformedAsk(
            field,
            $"{field} is \"{method}\"; allowed is one of {string.Join(", ", claims.Select(c => c.Method))}."
        );
}
