using System.Text.Json;
using RepairOrders.Contract;
using RepairOrders.Ui.Parts;
using Picks = System.Collections.Generic.IReadOnlyList<System.Collections.Generic.KeyValuePair<string, string>>;

namespace RepairOrders.Ui.Orders;

/// <summary>What is offered for a field, looked up when its panel opens.</summary>
internal delegate Task<Picks> Offer(StepContext step);

/// <summary>The offers of the panels: nobody types a person, an instrument, a batch or a record by heart.</summary>
internal static class Offers
{
    /// <summary>People of the site; those of a role or a competence first asked for.</summary>
    public static Offer Persons(Role? role = null, string? competence = null) =>
        async step =>
            [
                .. (await step.Desk.People())
                    .Where(p => !p.Disabled && p.Roles.Any(r => r is not Role.Reader))
                    .Where(p => role is not { } r || p.Roles.Contains(r))
                    .Where(p => competence is null || p.Competences.Any(c => c.Kind == competence))
                    .Select(p => KeyValuePair.Create(p.Id.ToString(), p.FullName)),
            ];

    public static readonly Offer Anybody = Persons();

    public static Offer Instruments(params InstrumentKind[] kinds) =>
        async step =>
            [
                .. (await step.Desk.Instruments())
                    .Where(i => kinds.Contains(i.Kind))
                    .Select(i => KeyValuePair.Create(i.Serial, $"{i.Serial} · {i.Words}")),
            ];

    /// <summary>Signed records of a kind, the newest first, in the words of the sheaf.</summary>
    public static Offer Records(string kind, Func<RecordView, bool>? only = null) =>
        step =>
            Task.FromResult<Picks>([
                .. step.All(kind)
                    .Reverse()
                    .Where(r => only?.Invoke(r) ?? true)
                    .Select(r =>
                        KeyValuePair.Create(
                            r.Id.ToString(),
                            $"{Show.Moment(r.At, step.Desk.Zone)} · {r.By} · {r.Summary}"
                        )
                    ),
            ]);

    /// <summary>Batches that are out on this order.</summary>
    public static readonly Offer IssuedBatches = step =>
        Task.FromResult<Picks>([
            .. step.All("material-issue")
                .SelectMany(r => r.Read<SignedIssue>().Lines)
                .DistinctBy(l => l.Batch)
                .Select(l => KeyValuePair.Create(l.Batch.ToString(), $"{l.Number} · {l.Words}")),
        ]);

    /// <summary>The lines of the bill.</summary>
    public static readonly Offer BillLines = async step =>
        [
            .. (await (await step.Desk.Client()).PickList(step.Number)).Lines.Select(l =>
                KeyValuePair.Create($"{l.Line}", $"{l.Line} · {l.Words}")
            ),
        ];

    public static readonly Offer Bins = async step =>
        [
            .. (await (await step.Desk.Client()).Bins(step.Desk.Site)).Select(b =>
                KeyValuePair.Create(b.Said.Code, $"{b.Said.Code} · {b.Said.Words}")
            ),
        ];

    /// <summary>Batches of these items that are good and in a bin, the first to expire first.</summary>
    public static Offer GoodBatches(IEnumerable<string> items) =>
        async step =>
        {
            var client = await step.Desk.Client();
            var batches = new List<BatchView>();
            foreach (var item in items.Distinct())
                batches.AddRange(
                    (await client.Batches(step.Desk.Site, item: item, standing: BatchStanding.Good, limit: 200)).Rows
                );
            return
            [
                .. batches
                    .Where(b => !b.Expired && b.Balance.InBins > 0)
                    .Select(b =>
                        KeyValuePair.Create(
                            b.Id.ToString(),
                            $"{b.Number} · {b.Words}{(b.Expiry is { } day ? $", to {Show.Day(day)}" : "")}"
                        )
                    ),
            ];
        };

    public static readonly Offer StockItems = async step =>
        [
            .. (await (await step.Desk.Client()).StockItems(step.Desk.Site)).Rows.Select(i =>
                KeyValuePair.Create(i.Said.Code, $"{i.Said.Code} · {i.Said.Words}")
            ),
        ];

    public static readonly Offer Methods = async step =>
        [.. (await (await step.Desk.Client()).Claims(step.Number)).Select(c => KeyValuePair.Create(c.Method, c.Name))];

    public static readonly Offer EmergencyMethods = async step =>
        [
            .. (await (await step.Desk.Client()).EmergencyMethods(step.Desk.Site))
                .Where(m => m.Objection is null)
                .Select(m => KeyValuePair.Create(m.Id.ToString(), m.Entry.Name)),
        ];

    /// <summary>Consents that name this person as the one who gave them.</summary>
    public static readonly Offer OwnConsents = step =>
        Records("consent", r => r.Read<SignedConsent>().Ask.GivenBy == step.Desk.Me.Id)(step);

    public static T Read<T>(this RecordView record)
        where T : class => record.Body.Deserialize<T>(RepairOrdersClient.Json)!;
}
