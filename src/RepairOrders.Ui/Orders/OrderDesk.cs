using RepairOrders.Contract;
using RepairOrders.Ui.Forms;
using RepairOrders.Ui.Session;

namespace RepairOrders.Ui.Orders;

/// <summary>What the panels of one order look up, each list read once: the person, the site's clock, people and instruments.</summary>
internal sealed class OrderDesk(ApiConnection api, MeView me, SiteView site)
{
    private IReadOnlyList<PersonRow>? people;
    private IReadOnlyList<DescribeInstrument>? instruments;

    public MeView Me { get; } = me;

    public string Site { get; } = site.ShortName;

    public TimeZoneInfo Zone { get; } =
        TimeZoneInfo.TryFindSystemTimeZoneById(site.Details.TimeZone, out var zone) ? zone : TimeZoneInfo.Utc;

    public DateOnly Today(DateTimeOffset at) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, Zone).DateTime);

    public Task<RepairOrdersClient> Client(string? key = null) => api.Client(key);

    public async Task<IReadOnlyList<PersonRow>> People() =>
        people ??= (await (await api.Client()).People(site: Site, limit: 200)).Rows;

    public async Task<IReadOnlyList<DescribeInstrument>> Instruments() =>
        instruments ??= [
            .. (await (await api.Client()).Instruments(Site, limit: 200))
                .Rows.Where(i => i.Objection is null)
                .Select(i => i.Said),
        ];

    /// <summary>What the person is, for a form that asks in which capacity he signs.</summary>
    public async Task<bool> Holds(string competence) =>
        (await People()).FirstOrDefault(p => p.Id == Me.Id)?.Competences.Any(c => c.Kind == competence) ?? false;
}

/// <summary>The order a panel stands on, and the desk it looks things up at.</summary>
internal sealed record StepContext(OrderSheet Sheet, OrderDesk Desk)
{
    public string Number => Sheet.Title.Number;

    public DateOnly Today => Desk.Today(Sheet.ReadAt);

    /// <summary>The last record of a kind that stands.</summary>
    public RecordView? Last(string kind) => Sheet.Records.LastOrDefault(r => r.Kind == kind && r.SetAsideAt is null);

    public T? Last<T>(string kind)
        where T : class => Last(kind)?.Read<T>();

    public IEnumerable<RecordView> All(string kind) => Sheet.Records.Where(r => r.Kind == kind && r.SetAsideAt is null);

    /// <summary>
    /// The same with the version to send. A photograph taken in a form is a record of its own and moves the order's version; while
    /// nothing else was signed since the form was opened, what its reader saw still holds.
    /// </summary>
    public async Task<StepContext> Latest()
    {
        var api = await Desk.Client();
        if ((await api.OrderVersion(Number)).Version == Sheet.Version)
            return this;
        var now = await api.Order(Number);
        return SameButPhotographs(Sheet, now) ? this with { Sheet = Sheet with { Version = now.Version } } : this;
    }

    /// <summary>Whether two readings of an order differ by photographs at most.</summary>
    public static bool SameButPhotographs(OrderSheet seen, OrderSheet now) =>
        seen.Title.Stage == now.Title.Stage
        && seen.Fingerprint == now.Fingerprint
        && Signed(seen).SequenceEqual(Signed(now));

    private static IEnumerable<(Guid, DateTimeOffset?)> Signed(OrderSheet sheet) =>
        sheet.Records.Where(r => r.Kind != "photo").Select(r => (r.Id, r.SetAsideAt));
}
