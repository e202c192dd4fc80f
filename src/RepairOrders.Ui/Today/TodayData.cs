using RepairOrders.Contract;
using RepairOrders.Ui.Stock;

namespace RepairOrders.Ui.Today;

/// <summary>What one person's day begins with: read once, by his roles.</summary>
public sealed record TodayData
{
    private const int LookAheadDays = 7;

    public IReadOnlyList<WaitingOrder> Waiting { get; private init; } = [];
    public IReadOnlyList<RegisterRow> CannotWait { get; private init; } = [];
    public IReadOnlyList<RegisterRow> Looks { get; private init; } = [];
    public ShiftView Shift { get; private init; } = new([], [], false, default);
    public IReadOnlyList<RegisterRow> ToIssue { get; private init; } = [];
    public IReadOnlyList<BatchView> Expiring { get; private init; } = [];
    public IReadOnlyList<BinView> Counts { get; private init; } = [];
    public IReadOnlyList<InstrumentView> Calibrations { get; private init; } = [];
    public IReadOnlyList<ReviewRow> Review { get; private init; } = [];
    public IReadOnlyList<RegisterRow> Reassess { get; private init; } = [];
    public IReadOnlyList<CarriedRiskView> Carried { get; private init; } = [];
    public IReadOnlyList<ShutdownView> Shutdowns { get; private init; } = [];
    public LiveFiguresView? Figures { get; private init; }
    public IReadOnlyList<PersonRow> People { get; private init; } = [];
    public IReadOnlyList<SiteView> Sites { get; private init; } = [];
    public bool NoLine { get; private init; }

    public static async Task<TodayData> Read(RepairOrdersClient client, MeView me, DateOnly today)
    {
        bool Is(params Role[] roles) => roles.Any(me.Roles.Contains);
        var data = new TodayData { Sites = await client.Sites() };
        if (Is(Role.Administrator))
            data = data with
            {
                People = (await client.People(limit: 200)).Rows,
                NoLine = (await client.Lines(limit: 1)).Rows.Count == 0,
            };
        if (me.Sites.Count == 0)
            return data;
        // The longest reads run beside the others.
        var waiting = me.Roles.All(r => r is Role.Reader or Role.Administrator) ? null : client.Waiting();
        var shift = Is(Role.Supervisor, Role.Technician) ? client.Shift(limits: Is(Role.Supervisor)) : null;
        if (Is(Role.Supervisor, Role.IntegrityEngineer, Role.Manager, Role.Reader))
            data = data with { CannotWait = await Flagged(client) };
        if (Is(Role.Supervisor, Role.Technician))
            data = data with { Looks = await LooksOf(client, today) };
        if (Is(Role.Storekeeper))
            data = await Stores(data, client, me, today);
        if (Is(Role.IntegrityEngineer))
            data = data with
            {
                Review = (await client.OverdueReview()).Rows,
                Reassess = (await client.Register(new(Flag: Flags.ReassessmentOwed, Live: true))).Rows,
                Shutdowns = [.. (await client.Shutdowns()).Where(s => s.Leaning.Any(o => o.LosesOut))],
            };
        if (Is(Role.IntegrityEngineer, Role.Manager))
        {
            var carried = await Task.WhenAll(me.Sites.Select(s => client.CarriedRisk(s)));
            data = data with { Carried = [.. carried.SelectMany(c => c).OrderByDescending(c => c.Sum).Take(8)] };
        }
        if (Is(Role.Manager))
            data = data with { Figures = await client.LiveFigures() };
        if (shift is not null)
            data = data with { Shift = await shift };
        return waiting is null ? data : data with { Waiting = (await waiting).Rows };
    }

    private static async Task<IReadOnlyList<RegisterRow>> Flagged(RepairOrdersClient client)
    {
        string[] flags =
        [
            Contract.Flags.Leaking,
            Contract.Flags.PastLife,
            Contract.Flags.RemovalOwed,
            Contract.Flags.LookOverdue,
            Contract.Flags.ApprovalOwed,
            Contract.Flags.RecallHit,
            Contract.Flags.Stopped,
        ];
        var pages = await Task.WhenAll(
            flags.Select(f => client.Register(new(Flag: f, Live: true, Sort: RegisterSort.EndDate)))
        );
        return [.. pages.SelectMany(p => p.Rows).DistinctBy(r => r.Number)];
    }

    private static async Task<IReadOnlyList<RegisterRow>> LooksOf(RepairOrdersClient client, DateOnly today)
    {
        var until = today.AddDays(LookAheadDays);
        var page = await client.Register(new(Stages: [Stage.InService], Sort: RegisterSort.NextLook, Live: true));
        return [.. page.Rows.Where(r => r.NextLook <= until || r.NextThickness <= until)];
    }

    private static async Task<TodayData> Stores(TodayData data, RepairOrdersClient client, MeView me, DateOnly today)
    {
        var soon = today.AddDays(StockWords.SoonDays);
        var batches = await Task.WhenAll(me.Sites.Select(s => StockWords.All(client, s)));
        var bins = await Task.WhenAll(me.Sites.Select(s => client.Bins(s)));
        var instruments = await Task.WhenAll(me.Sites.Select(s => client.Instruments(s, limit: 200)));
        return data with
        {
            ToIssue = (await client.Register(new(Stages: [Stage.Approved, Stage.Consented], Live: true))).Rows,
            Expiring =
            [
                .. batches.SelectMany(b => b).Where(b => b.Balance.InBins > 0 && StockWords.Mind(b, today) is not null),
            ],
            Counts = [.. bins.SelectMany(b => b).Where(b => b.CountDue is not null || b.Wanting.Count > 0)],
            Calibrations =
            [
                .. instruments
                    .SelectMany(i => i.Rows)
                    .Where(i => i.Said.Withdrawn is null && i.Said.CalibrationDue <= soon)
                    .OrderBy(i => i.Said.CalibrationDue),
            ],
        };
    }
}
