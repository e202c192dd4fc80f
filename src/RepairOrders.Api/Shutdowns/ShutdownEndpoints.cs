using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Shutdowns;

internal static class ShutdownEndpoints
{
    public static void MapShutdowns(this IEndpointRouteBuilder api)
    {
        var shutdowns = api.MapGroup("/shutdowns").AddEndpointFilter<Writes>();
        shutdowns.MapGet("/", All).Needs(Permission.ReadRegister).WithSummary("Shutdowns, and who leans on them");
        shutdowns.MapGet("/{id:guid}", One).Needs(Permission.ReadRegister).WithSummary("One shutdown");
        shutdowns.MapPost("/", AddShutdown).Needs(Permission.PlanShutdowns).WithSummary("Put a shutdown on the list");
        shutdowns.MapPut("/{id:guid}", MoveShutdown).Needs(Permission.PlanShutdowns).WithSummary("Move a shutdown");
    }

    private static async Task<IReadOnlyList<ShutdownView>> All(
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop,
        string? site = null
    )
    {
        var shutdowns = await store
            .Shutdowns.AsNoTracking()
            .Include(s => s.Site)
            .Include(s => s.Moves)
            .Where(s => by.Sites.Contains(s.Site.ShortName) && (site == null || s.Site.ShortName == site))
            .OrderBy(s => s.Start)
            .ThenBy(s => s.Id)
            .Take(200)
            .ToListAsync(stop);
        List<ShutdownView> views = [];
        foreach (var shutdown in shutdowns)
            views.Add(await View(store, shutdown, clock.Now(), stop));
        return views;
    }

    private static async Task<ShutdownView> One(
        Guid id,
        Person by,
        RepairStore store,
        TimeProvider clock,
        HttpResponse response,
        CancellationToken stop
    )
    {
        var shutdown = await Load(store, id, by, stop);
        response.Headers.ETag = $"\"{shutdown.Version}\"";
        return await View(store, shutdown, clock.Now(), stop);
    }

    private static async Task<Created<ShutdownView>> AddShutdown(
        AddShutdown ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var site =
            await store.Sites.SingleOrDefaultAsync(s => s.ShortName == ask.Site, CancellationToken.None) is { } found
            && by.MaySee(ask.Site)
                ? found
                : throw new NotHere($"There is no site {ask.Site} that you may see.");
        if (ask.Start < site.Today(clock.Now()))
            throw new MalformedAsk("start", $"start is {ask.Start:yyyy-MM-dd}; allowed is today or later.");
        var named = await store.Shutdowns.AnyAsync(
            s => s.SiteId == site.Id && s.Name == ask.Name,
            CancellationToken.None
        );
        if (named)
            RepairOrder.Refuse(
                new Objection(
                    "shutdown-named-already",
                    $"The site has a shutdown named {ask.Name}. Move that one, or give another name.",
                    "whoever plans the shutdown"
                )
            );
        var shutdown = new Shutdown(site, ask.Name, ask.Area, ask.Start);
        store.Shutdowns.Add(shutdown);
        await store.SaveChangesAsync(CancellationToken.None);
        return TypedResults.Created(
            $"/api/v1/shutdowns/{shutdown.Id}",
            await View(store, shutdown, clock.Now(), CancellationToken.None)
        );
    }

    private static async Task<ShutdownView> MoveShutdown(
        Guid id,
        MoveShutdown ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var at = clock.Now();
        var shutdown = await Load(store, id, by, CancellationToken.None);
        if (shutdown.Version != seen.Value)
            throw new DbUpdateConcurrencyException();
        RepairOrder.Refuse(Shutdown.MoveObjection(shutdown, ask.Start, shutdown.Site.Today(at)));
        var move = shutdown.Move(ask.Start, ask.Why, by, at);
        if (move.To < move.From)
            Leaning.MoveIn(await Sheaves(store, shutdown), shutdown, by, at, ask.Why);
        await store.SaveChangesAsync(CancellationToken.None);
        return await View(store, shutdown, at, CancellationToken.None);
    }

    // Their rows are taken before they are read, oldest first, so that whoever signs meanwhile waits a moment.
    private static async Task<List<RepairOrder>> Sheaves(RepairStore store, Shutdown shutdown)
    {
        var ids = await Leaning.Past(store, shutdown).Select(o => o.Id).Order().ToArrayAsync(CancellationToken.None);
        await store.Database.ExecuteSqlAsync(
            $"SELECT 1 FROM orders WHERE id = ANY({ids}) ORDER BY id FOR UPDATE",
            CancellationToken.None
        );
        return await store.Orders.Where(o => ids.Contains(o.Id)).Whole().ToListAsync(CancellationToken.None);
    }

    private static async Task<Shutdown> Load(RepairStore store, Guid id, Person by, CancellationToken stop)
    {
        var shutdown = await store
            .Shutdowns.Include(s => s.Site)
            .Include(s => s.Moves)
            .SingleOrDefaultAsync(s => s.Id == id, stop);
        return shutdown is not null && by.MaySee(shutdown.Site.ShortName)
            ? shutdown
            : throw new NotHere("There is no such shutdown that you may see.");
    }

    private static async Task<ShutdownView> View(
        RepairStore store,
        Shutdown s,
        DateTimeOffset at,
        CancellationToken stop
    ) =>
        new(
            s.Id,
            s.Site.ShortName,
            s.Name,
            s.Area,
            s.Start,
            s.Version.ToString(CultureInfo.InvariantCulture),
            [.. s.Moves.OrderBy(m => m.At).Select(m => new ShutdownMoveView(m.From, m.To, m.Why, m.By, m.At))],
            await Leaning.Views(store, s, at, stop)
        );
}
