using System.ComponentModel.DataAnnotations;
using System.Globalization;
using Microsoft.AspNetCore.Http.HttpResults;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Lines;

internal static class LinesEndpoints
{
    public static void MapLines(this IEndpointRouteBuilder api)
    {
        var lines = api.MapGroup("/lines");
        lines.MapGet("/", Read).Needs(Permission.ReadLines).WithSummary("The line list, a page at a time");
        lines.MapPost("/", Add).Needs(Permission.KeepLines).WithSummary("Add a line");
        lines.MapGet("/{id:guid}", One).Needs(Permission.ReadLines).WithSummary("A line");
        lines
            .MapPut("/{id:guid}", Change)
            .Needs(Permission.KeepLines)
            .WithSummary("Change what is kept of a line; a retired one is back in the list");
        lines
            .MapDelete("/{id:guid}", Retire)
            .Needs(Permission.KeepLines)
            .WithSummary("Take a line out of the list; its orders keep it");
        lines.MapGet("/{id:guid}/changes", Changes).Needs(Permission.KeepLines).WithSummary("The changes of a line");
        lines
            .MapPost("/import", Import)
            .Accepts<string>("text/csv")
            .Needs(Permission.KeepLines)
            .WithSummary("Read a CSV file of lines: all of it or nothing");
        lines
            .MapGet("/template.csv", () => TypedResults.Text("\uFEFF" + LineFile.Template, "text/csv; charset=utf-8"))
            .Needs(Permission.KeepLines)
            .WithSummary("The empty file to fill with lines");
        PipeLists.Map(api);
    }

    private static async Task<LinesView> Read(
        Person by,
        RepairStore store,
        CancellationToken stop,
        string? site = null,
        [MaxLength(100)] string? search = null,
        string? area = null,
        string? section = null,
        bool retired = false,
        string? after = null,
        [Range(1, Keys.MostRows)] int limit = 50
    )
    {
        var lines = store.LinesSeen(by).AsNoTracking();
        if (site is not null)
            lines = lines.Where(l => store.Sites.Any(s => s.Id == l.SiteId && s.ShortName == site));
        if (!retired)
            lines = lines.Where(l => !l.Retired);
        if (area is not null)
            lines = lines.Where(l => l.Area == area);
        if (section is not null)
            lines = lines.Where(l => l.Section == section);
        if (search is { Length: > 0 })
            lines = Found(lines, Keys.Like(search));
        if (Keys.Read(after) is { } key)
        {
            var last = await store.Lines.Where(l => l.Id == key).Select(l => l.Number).SingleOrDefaultAsync(stop);
            lines = lines.Where(l => l.Number.CompareTo(last) > 0 || (l.Number == last && l.Id.CompareTo(key) > 0));
        }
        var rows = await lines.OrderBy(l => l.Number).ThenBy(l => l.Id).Take(limit + 1).ToListAsync(stop);
        var names = await store.Sites.ToDictionaryAsync(s => s.Id, s => s.ShortName, stop);
        return new LinesView(
            [.. rows.Take(limit).Select(l => l.View(names[l.SiteId]))],
            rows.Count > limit ? rows[limit - 1].Id.ToString() : null
        );
    }

    private static async Task<LineView> One(
        Guid id,
        Person by,
        RepairStore store,
        HttpResponse response,
        CancellationToken stop
    )
    {
        var (line, site) = await store.LineSeen(id, by, stop);
        return Answer(line, site, response);
    }

    private static async Task<Created<LineView>> Add(
        AddLine ask,
        Person by,
        RepairStore store,
        TimeProvider clock,
        HttpResponse response
    )
    {
        var at = clock.Now();
        var site = await store.SiteSeen(ask.Site, by);
        MalformedAsk.If(
            LineRules.Problems(ask.Details, site, site.Today(at).Year).Select(p => ($"details.{p.Field}", p.Sentence))
        );
        var exists = await store.Lines.AnyAsync(
            l => l.SiteId == site.Id && l.Number == ask.Number,
            CancellationToken.None
        );
        RepairOrder.Refuse(LineRules.Taken(exists, ask.Number, ask.Site));
        var line = store.AddLine(site, ask.Number, ask.Details, by, at, null);
        await store.SaveChangesAsync(CancellationToken.None);
        response.Headers.Location = $"/api/v1/lines/{line.Id}";
        return TypedResults.Created($"/api/v1/lines/{line.Id}", Answer(line, site, response));
    }

    private static async Task<LineView> Change(
        Guid id,
        LineDetails ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock,
        HttpResponse response
    )
    {
        var at = clock.Now();
        var (line, site) = await store.LineSeen(id, by);
        line.MustBe(seen);
        MalformedAsk.If(LineRules.Problems(ask, site, site.Today(at).Year));
        var old = line.Details();
        line.Take(ask);
        store.Changed(line, "line changed", old, line.Details(), by, at);
        await store.SaveChangesAsync(CancellationToken.None);
        return Answer(line, site, response);
    }

    private static async Task<NoContent> Retire(
        Guid id,
        [Required, StringLength(2000, MinimumLength = 3)] string why,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var (line, _) = await store.LineSeen(id, by);
        line.MustBe(seen);
        line.Retired = true;
        store.Changed(line, "line retired", line.Details(), null, by, clock.Now(), why);
        await store.SaveChangesAsync(CancellationToken.None);
        return TypedResults.NoContent();
    }

    private static async Task<IReadOnlyList<ChangeView>> Changes(
        Guid id,
        Person by,
        RepairStore store,
        CancellationToken stop
    ) => await store.ChangesOf((await store.LineSeen(id, by, stop)).Line, stop);

    private static async Task<LineImportView> Import(
        [Required, StringLength(20)] string site,
        HttpRequest request,
        Person by,
        RepairStore store,
        TimeProvider clock,
        bool dryRun = false,
        bool newSections = false
    )
    {
        var at = clock.Now();
        var kept = await store.SiteSeen(site, by);
        var known = await store
            .Lines.Where(l => l.SiteId == kept.Id)
            .Select(l => l.Number)
            .ToListAsync(CancellationToken.None);
        request.Body.Position = 0;
        var file = await LineFile.Read(request.Body, kept, known.ToHashSet(), newSections, kept.Today(at).Year);
        var fresh = file.NewSections.Select(s => $"{s.Area} / {s.Section}").ToList();
        if (dryRun)
            return new LineImportView(file.Rows, 0, fresh, file.Problems);
        MalformedAsk.If(
            file.Problems.Select(p => (p.Column is null ? $"row {p.Row}" : $"row {p.Row}, {p.Column}", p.Sentence))
        );
        if (newSections && fresh.Count > 0)
        {
            var old = SitesEndpoints.Details(kept);
            kept.Areas = LineFile.With(kept, file.NewSections).Areas;
            store.Changed(kept, "site changed", old, SitesEndpoints.Details(kept), by, at, "import of lines");
        }
        foreach (var (number, details) in file.Lines)
            store.AddLine(kept, number, details, by, at, "import of lines");
        await store.SaveChangesAsync(CancellationToken.None);
        return new LineImportView(file.Rows, file.Rows, newSections ? fresh : [], []);
    }

    private static IQueryable<Line> Found(IQueryable<Line> lines, string like) =>
        lines.Where(l =>
            EF.Functions.ILike(l.Number, like)
            || EF.Functions.ILike(l.Fluid, like)
            || EF.Functions.ILike(l.Area, like)
            || EF.Functions.ILike(l.Section, like)
        );

    private static LineView Answer(Line line, Site site, HttpResponse response)
    {
        response.Headers.ETag = $"\"{line.Revision.ToString(CultureInfo.InvariantCulture)}\"";
        return line.View(site.ShortName);
    }
}

internal static class LineQuery
{
    public static IQueryable<Line> LinesSeen(this RepairStore store, Person by) =>
        store.Lines.Where(l => store.Sites.Any(s => s.Id == l.SiteId && by.Sites.Contains(s.ShortName)));

    /// <summary>The line with its site, if the person may see it.</summary>
    /// <exception cref="NotHere">There is none that he may see.</exception>
    public static async Task<(Line Line, Site Site)> LineSeen(
        this RepairStore store,
        Guid id,
        Person by,
        CancellationToken stop = default
    ) =>
        await store.LinesSeen(by).SingleOrDefaultAsync(l => l.Id == id, stop) is { } line
            ? (line, await store.Sites.SingleAsync(s => s.Id == line.SiteId, stop))
            : throw new NotHere("There is no such line that you may see.");

    public static Line AddLine(
        this RepairStore store,
        Site site,
        string number,
        LineDetails details,
        Person by,
        DateTimeOffset at,
        string? why
    )
    {
        var line = new Line { SiteId = site.Id, Number = number.Trim() };
        line.Take(details);
        store.Lines.Add(line);
        store.Changed(line, "line added", null, line.Details(), by, at, why);
        return line;
    }
}
