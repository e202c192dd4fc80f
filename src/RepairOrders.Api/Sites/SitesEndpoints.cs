using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Sites;

internal static class SitesEndpoints
{
    public static void MapSites(this IEndpointRouteBuilder api)
    {
        var sites = api.MapGroup("/sites");
        sites.MapGet("/", Read).Needs(Permission.ReadSites).WithSummary("The sites you may see");
        sites.MapPost("/", Add).Needs(Permission.KeepSites).WithSummary("Add a site");
        sites.MapGet("/{site}", One).Needs(Permission.ReadSites).WithSummary("A site");
        sites.MapPut("/{site}", Change).Needs(Permission.KeepSites).WithSummary("Change what is kept of a site");
        sites.MapGet("/{site}/changes", Changes).Needs(Permission.KeepSites).WithSummary("The changes of a site");
    }

    private static async Task<IReadOnlyList<SiteView>> Read(Person by, RepairStore store, CancellationToken stop)
    {
        var sites = await store
            .Sites.AsNoTracking()
            .Where(s => by.Sites.Contains(s.ShortName))
            .OrderBy(s => s.ShortName)
            .ToListAsync(stop);
        return [.. sites.Select(View)];
    }

    private static async Task<SiteView> One(
        string site,
        Person by,
        RepairStore store,
        HttpResponse response,
        CancellationToken stop
    ) => Answer(await store.SiteSeen(site, by, stop), response);

    // Who adds a site sees it, or nobody could go on; the change stands in his own history too.
    private static async Task<Created<SiteView>> Add(
        AddSite ask,
        Person by,
        RepairStore store,
        TimeProvider clock,
        HttpResponse response
    )
    {
        var at = clock.Now();
        MalformedAsk.If(SiteRules.Problems(ask.Details).Select(p => ($"details.{p.Field}", p.Sentence)));
        RepairOrder.Refuse(
            await store.Sites.AnyAsync(s => s.ShortName == ask.ShortName, CancellationToken.None)
                ? new Objection(
                    "site-name-taken",
                    $"There is a site {ask.ShortName} already. Choose another short name.",
                    "administrator, with another name"
                )
                : null
        );
        var site = new Site { ShortName = ask.ShortName };
        Take(site, ask.Details);
        store.Sites.Add(site);
        store.Changed(site, "site added", null, Details(site), by, at);
        var person = await store.Users.SingleAsync(p => p.Id == by.Id, CancellationToken.None);
        var old = person.Details();
        person.Sites = [.. person.Sites.Append(site.ShortName).Order(StringComparer.Ordinal)];
        store.Changed(person, "person changed", old, person.Details(), by, at, $"added site {site.ShortName}");
        await store.SaveChangesAsync(CancellationToken.None);
        response.Headers.Location = $"/api/v1/sites/{site.ShortName}";
        return TypedResults.Created($"/api/v1/sites/{site.ShortName}", Answer(site, response));
    }

    private static async Task<SiteView> Change(
        string site,
        SiteDetails ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock,
        HttpResponse response
    )
    {
        MalformedAsk.If(SiteRules.Problems(ask));
        var kept = await store.SiteSeen(site, by);
        kept.MustBe(seen);
        var used = await store
            .Lines.Where(l => l.SiteId == kept.Id && !l.Retired)
            .Select(l => new { l.Area, l.Section })
            .Distinct()
            .ToListAsync(CancellationToken.None);
        RepairOrder.Refuse(SiteRules.Objection(ask, used.Select(u => (u.Area, u.Section))));
        var old = Details(kept);
        Take(kept, ask);
        store.Changed(kept, "site changed", old, Details(kept), by, clock.Now());
        await store.SaveChangesAsync(CancellationToken.None);
        return Answer(kept, response);
    }

    private static async Task<IReadOnlyList<ChangeView>> Changes(
        string site,
        Person by,
        RepairStore store,
        CancellationToken stop
    ) => await store.ChangesOf(await store.SiteSeen(site, by, stop), stop);

    private static SiteView Answer(Site site, HttpResponse response)
    {
        response.Headers.ETag = $"\"{site.Revision.ToString(CultureInfo.InvariantCulture)}\"";
        return View(site);
    }

    private static SiteView View(Site site) =>
        new(site.Id, site.ShortName, Details(site), site.Revision.ToString(CultureInfo.InvariantCulture));

    public static SiteDetails Details(Site site) =>
        new(
            site.Name,
            site.TimeZone,
            [.. site.Areas.Select(a => new AreaDetails(a.Name, [.. a.Sections], a.Supervisor))]
        );

    private static void Take(Site site, SiteDetails details)
    {
        site.Name = details.Name.Trim();
        site.TimeZone = details.TimeZone;
        site.Areas =
        [
            .. details.Areas.Select(a => new Area
            {
                Name = a.Name.Trim(),
                Sections = [.. a.Sections.Select(s => s.Trim())],
                Supervisor = a.Supervisor,
            }),
        ];
    }
}

internal static class SiteQuery
{
    /// <summary>The site, if the person may see it.</summary>
    /// <exception cref="NotHere">There is none that he may see.</exception>
    public static async Task<Site> SiteSeen(
        this RepairStore store,
        string shortName,
        Person by,
        CancellationToken stop = default
    ) =>
        by.MaySee(shortName) && await store.Sites.SingleOrDefaultAsync(s => s.ShortName == shortName, stop) is { } site
            ? site
            : throw new NotHere($"There is no site {shortName} that you may see.");
}
