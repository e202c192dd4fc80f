using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Figures;

internal static class FiguresEndpoints
{
    public static void MapFigures(this IEndpointRouteBuilder api)
    {
        var figures = api.MapGroup("/sites/{site}/figures");
        figures.MapGet("/", Read).Needs(Permission.ReadSites).WithSummary("All versions of a site's figures");
        figures.MapPost("/", Propose).Needs(Permission.KeepFigures).WithSummary("Propose other figures");
        figures
            .MapPost("/{version:int}/confirmations", Confirm)
            .Needs(Permission.KeepFigures)
            .WithSummary("Sign proposed figures as second");
        figures
            .MapPost("/{version:int}/withdrawals", Withdraw)
            .Needs(Permission.KeepFigures)
            .WithSummary("Take proposed figures back");
    }

    private static async Task<IReadOnlyList<FiguresView>> Read(
        string site,
        Person by,
        RepairStore store,
        CancellationToken stop
    ) => Views(await store.SiteSeen(site, by, stop), by);

    private static async Task<IReadOnlyList<FiguresView>> Propose(
        string site,
        ProposeFigures ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        MalformedAsk.If(SiteFiguresRules.Problems(ask.Figures));
        var kept = await store.SiteSeen(site, by);
        RepairOrder.Refuse(FiguresVersion.ProposeObjection(kept));
        var at = clock.Now();
        var proposed = new FiguresVersion(
            kept.Figures.Count + 2,
            ask.Figures,
            ask.Why,
            by.Id,
            new ListSignature(by.FullName, at)
        );
        kept.Figures = [.. kept.Figures, proposed];
        store.Changed(
            kept,
            $"figures proposed, version {proposed.Version}",
            kept.FiguresInForce,
            ask.Figures,
            by,
            at,
            ask.Why
        );
        await store.SaveChangesAsync(CancellationToken.None);
        return Views(kept, by);
    }

    private static async Task<IReadOnlyList<FiguresView>> Confirm(
        string site,
        int version,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var kept = await store.SiteSeen(site, by);
        RepairOrder.Refuse(FiguresVersion.ConfirmObjection(kept, version, by));
        var at = clock.Now();
        var old = kept.FiguresInForce;
        var confirmed = kept.FiguresAwaiting! with { Confirmed = new ListSignature(by.FullName, at) };
        kept.Figures = [.. kept.Figures.SkipLast(1), confirmed];
        store.Changed(kept, $"figures in force, version {version}", old, confirmed.Figures, by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return Views(kept, by);
    }

    private static async Task<IReadOnlyList<FiguresView>> Withdraw(
        string site,
        int version,
        DropFigures ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var kept = await store.SiteSeen(site, by);
        RepairOrder.Refuse(FiguresVersion.Awaiting(kept, version, out var waiting));
        kept.Figures = [.. kept.Figures.SkipLast(1)];
        store.Changed(kept, $"figures taken back, version {version}", waiting!.Figures, null, by, clock.Now(), ask.Why);
        await store.SaveChangesAsync(CancellationToken.None);
        return Views(kept, by);
    }

    private static IReadOnlyList<FiguresView> Views(Site site, Person by)
    {
        var inForce = site.FiguresVersionInForce;
        return
        [
            new(1, SiteFiguresRules.First, null, null, null, inForce == 1, null),
            .. site.Figures.Select(f => new FiguresView(
                f.Version,
                f.Figures,
                f.Why,
                f.Proposed,
                f.Confirmed,
                f.Version == inForce,
                FiguresVersion.ConfirmObjection(site, f.Version, by)?.View
            )),
        ];
    }
}
