using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;

namespace RepairOrders.Api.Consenting;

internal static class EmergencyMethodEndpoints
{
    public static void MapEmergencyMethods(this IEndpointRouteBuilder api)
    {
        var list = api.MapGroup("/emergency-methods").AddEndpointFilter<Writes>();
        list.MapGet("/", All).Needs(Permission.ReadRegister).WithSummary("The emergency list");
        list.MapPost("/", Put).Needs(Permission.KeepEmergencyList).WithSummary("Put a method on the emergency list");
        list.MapPost("/{id:guid}/signatures", Sign)
            .Needs(Permission.KeepEmergencyList)
            .WithSummary("Sign an entry as second");
        list.MapPost("/{id:guid}/withdrawals", Withdraw)
            .Needs(Permission.KeepEmergencyList)
            .WithSummary("Take an entry off the list");
    }

    /// <summary>The entry, if the person may see its site.</summary>
    public static async Task<EmergencyMethod> EmergencyMethod(this RepairStore store, Guid id, Person by) =>
        await store
            .EmergencyMethods.Include(m => m.Site)
            .SingleOrDefaultAsync(m => m.Id == id && by.Sites.Contains(m.Site.ShortName), CancellationToken.None)
        ?? throw new NotHere("There is no such entry of the emergency list that you may see.");

    private static async Task<IReadOnlyList<EmergencyMethodView>> All(
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop,
        string? site = null
    )
    {
        var entries = await store
            .EmergencyMethods.AsNoTracking()
            .Include(m => m.Site)
            .Where(m => by.Sites.Contains(m.Site.ShortName) && (site == null || m.Site.ShortName == site))
            .OrderBy(m => m.WithdrawnAt != null)
            .ThenByDescending(m => m.Id)
            .Take(200)
            .ToListAsync(stop);
        var at = clock.Now();
        return [.. entries.Select(m => m.View(at))];
    }

    private static async Task<EmergencyMethodView> Put(
        ListEmergencyMethod ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        _ = MethodCatalogue.Find(ask.Method);
        if (ask.GreatestDiameter.Value < ask.SmallestDiameter.Value)
            throw new MalformedAsk(
                "greatestDiameter",
                $"greatestDiameter is {ask.GreatestDiameter.Entered}; allowed is the smallest diameter, {ask.SmallestDiameter.Entered}, or more."
            );
        var site =
            await store.Sites.SingleOrDefaultAsync(s => s.ShortName == ask.Site, CancellationToken.None) is { } found
            && by.MaySee(ask.Site)
                ? found
                : throw new NotHere($"There is no site {ask.Site} that you may see.");
        var at = clock.Now();
        var method = new EmergencyMethod(site, ask, by, at);
        store.EmergencyMethods.Add(method);
        store.Changed(method, "put on the emergency list, first signature", null, ask, by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return method.View(at);
    }

    private static async Task<EmergencyMethodView> Sign(Guid id, Person by, RepairStore store, TimeProvider clock)
    {
        var method = await store.EmergencyMethod(id, by);
        var at = clock.Now();
        RepairOrder.Refuse(Consenting.EmergencyMethod.SecondObjection(method, by));
        method.Second(by, at);
        store.Changed(method, "second signature", null, method.GoodUntil, by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return method.View(at);
    }

    private static async Task<EmergencyMethodView> Withdraw(
        Guid id,
        WithdrawEmergencyMethod ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var method = await store.EmergencyMethod(id, by);
        var at = clock.Now();
        if (method.WithdrawnAt is null)
        {
            method.Withdraw(ask.Why, at);
            store.Changed(method, "withdrawn", null, null, by, at, ask.Why);
            await store.SaveChangesAsync(CancellationToken.None);
        }
        return method.View(at);
    }
}
