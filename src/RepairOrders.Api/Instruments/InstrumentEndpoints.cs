using System.ComponentModel.DataAnnotations;
using System.Globalization;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Stock;
using RepairOrders.Api.Store;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Instruments;

internal static class InstrumentEndpoints
{
    public static void MapInstruments(this IEndpointRouteBuilder api)
    {
        var instruments = api.MapGroup("/instruments").AddEndpointFilter<Writes>();
        instruments.MapGet("/", List).Needs(Permission.ReadStock).WithSummary("Instruments, by serial number");
        instruments.MapPost("/", Add).Needs(Permission.KeepInstruments).WithSummary("Add an instrument");
        instruments
            .MapPut("/{id:guid}", Change)
            .Needs(Permission.KeepInstruments)
            .WithSummary("Change an instrument, after a calibration for one");
        instruments
            .MapGet(
                "/{id:guid}/changes",
                (Guid id, Person by, RepairStore store, CancellationToken stop) =>
                    store.ChangesSeen(store.Set<Instrument>(), i => i.SiteId, id, by, stop)
            )
            .Needs(Permission.ReadStock)
            .WithSummary("The changes of an instrument");
    }

    private static async Task<InstrumentsView> List(
        [Required] string site,
        Person by,
        RepairStore store,
        TimeProvider clock,
        CancellationToken stop,
        string? kind = null,
        [StringLength(100)] string? search = null,
        string? after = null,
        [Range(1, ItemEndpoints.MostRows)] int limit = 50
    )
    {
        var here = await store.SiteOf(site, by, stop);
        var all = store.Set<Instrument>().AsNoTracking().Where(i => i.SiteId == here.Id);
        if (kind is not null)
        {
            var wanted = Asked(kind);
            all = all.Where(i => i.Kind == wanted);
        }
        if (!string.IsNullOrWhiteSpace(search))
            all = all.Where(i =>
                EF.Functions.ILike(i.Serial, $"%{search}%") || EF.Functions.ILike(i.Words, $"%{search}%")
            );
        if (after is not null)
            all = all.Where(i => i.Serial.CompareTo(after) > 0);
        var page = await all.OrderBy(i => i.Serial).Take(limit + 1).ToListAsync(stop);
        var today = here.Today(clock.Now());
        return new(
            [.. page.Take(limit).Select(i => View(i, site, today))],
            page.Count > limit ? page[limit - 1].Serial : null
        );
    }

    private static async Task<InstrumentView> Add(
        DescribeInstrument ask,
        Person by,
        RepairStore store,
        TimeProvider clock
    )
    {
        var here = await store.SiteOf(ask.Site, by);
        if (
            await store
                .Set<Instrument>()
                .AnyAsync(i => i.SiteId == here.Id && i.Serial == ask.Serial, CancellationToken.None)
        )
            throw new ProcedureRefusal(
                new Objection(
                    "serial-taken",
                    $"Instrument {ask.Serial} is in the list already. Change that one.",
                    "whoever keeps the instruments"
                )
            );
        var instrument = new Instrument { SiteId = here.Id, Serial = ask.Serial };
        instrument.Describe(ask);
        store.Add(instrument);
        store.Changed(instrument, "instrument added", null, instrument.Said(ask.Site), by, clock.Now());
        await store.SaveChangesAsync(CancellationToken.None);
        return View(instrument, ask.Site, here.Today(clock.Now()));
    }

    private static async Task<InstrumentView> Change(
        Guid id,
        DescribeInstrument ask,
        Person by,
        SeenVersion seen,
        RepairStore store,
        TimeProvider clock
    )
    {
        var here = await store.SiteOf(ask.Site, by);
        var instrument =
            await store
                .Set<Instrument>()
                .SingleOrDefaultAsync(i => i.Id == id && i.SiteId == here.Id, CancellationToken.None)
            ?? throw new NotHere("There is no such instrument that you may see.");
        if (instrument.Version != seen.Value)
            throw new DbUpdateConcurrencyException();
        if (instrument.Serial != ask.Serial)
            throw new MalformedAsk(
                "serial",
                $"serial is {ask.Serial}; allowed is {instrument.Serial}, an instrument keeps its number."
            );
        var old = instrument.Said(ask.Site);
        instrument.Describe(ask);
        store.Changed(instrument, "instrument changed", old, instrument.Said(ask.Site), by, clock.Now());
        await store.SaveChangesAsync(CancellationToken.None);
        return View(instrument, ask.Site, here.Today(clock.Now()));
    }

    private static InstrumentKind Asked(string kind) =>
        Enum.TryParse<InstrumentKind>(kind, ignoreCase: true, out var known)
            ? known
            : throw new MalformedAsk(
                "kind",
                $"kind is \"{kind}\"; allowed is one of {string.Join(", ", Enum.GetNames<InstrumentKind>().Select(System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName))}."
            );

    private static InstrumentView View(Instrument instrument, string site, DateOnly today) =>
        new(
            instrument.Id,
            instrument.Version.ToString(CultureInfo.InvariantCulture),
            instrument.Said(site),
            InstrumentRules.Objection(instrument, today)?.View
        );
}
