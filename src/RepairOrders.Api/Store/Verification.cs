using System.Text.Json;
using RepairOrders.Api.Instruments;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Stock;
using RepairOrders.Api.Wire;
using RepairOrders.Contract;

namespace RepairOrders.Api.Store;

/// <summary>Verifies histories: that no entry was changed, added or taken out, and that the records say what their entries say.</summary>
internal static class Verification
{
    /// <summary>A page of orders, oldest first; all sites where nobody is given.</summary>
    public static async Task<VerificationView> Journals(
        RepairStore store,
        Person? by,
        Guid? after,
        int limit,
        CancellationToken stop
    )
    {
        var asked = store.Orders.AsNoTracking();
        if (by is not null)
            asked = asked.Where(o => by.Sites.Contains(o.Site.ShortName));
        if (after is not null)
            asked = asked.Where(o => o.Id > after);
        var orders = await asked
            .OrderBy(o => o.Id)
            .Take(limit + 1)
            .Include(o => o.Records)
            .Include(o => o.Journal)
            .AsSplitQuery()
            .ToListAsync(stop);
        var page = orders.Take(limit).ToList();
        var broken = page.Select(o => (Order: o, At: JournalChain.BrokenAt(o, [.. o.Journal.OrderBy(j => j.Line)])))
            .Select(o => o.At is { } line ? Broken("order", o.Order.Number, line) : Disagreement(o.Order))
            .OfType<BrokenChainView>();
        return new(
            page.Count,
            page.Sum(o => o.Journal.Count),
            [.. broken],
            orders.Count > limit ? page[^1].Id.ToString() : null
        );
    }

    /// <summary>Everything administrators keep; all sites where nobody is given.</summary>
    public static async Task<VerificationView> Changes(RepairStore store, Person? by, CancellationToken stop)
    {
        var people = store.Users.AsNoTracking();
        var sites = store.Sites.AsNoTracking();
        var lines = store.Lines.AsNoTracking();
        var items = store.Set<StockItem>().AsNoTracking();
        var bins = store.Set<Bin>().AsNoTracking();
        var instruments = store.Set<Instrument>().AsNoTracking();
        var methods = store.EmergencyMethods.AsNoTracking();
        if (by is not null)
        {
            people = people.Seen(by);
            sites = sites.Where(s => by.Sites.Contains(s.ShortName));
            lines = lines.Where(l => sites.Any(s => s.Id == l.SiteId));
            items = items.Where(i => sites.Any(s => s.Id == i.SiteId));
            bins = bins.Where(b => sites.Any(s => s.Id == b.SiteId));
            instruments = instruments.Where(i => sites.Any(s => s.Id == i.SiteId));
            methods = methods.Where(m => sites.Any(s => s.Id == m.SiteId));
        }
        List<(IKept Kept, string Name)> kept =
        [
            .. (await people.OrderBy(p => p.Id).ToListAsync(stop)).Select(p => ((IKept)p, p.UserName!)),
            .. (await sites.OrderBy(s => s.Id).ToListAsync(stop)).Select(s => ((IKept)s, s.ShortName)),
            .. (await lines.OrderBy(l => l.Id).ToListAsync(stop)).Select(l => ((IKept)l, l.Number)),
            .. (await items.OrderBy(i => i.Id).ToListAsync(stop)).Select(i => ((IKept)i, i.Code)),
            .. (await bins.OrderBy(b => b.Id).ToListAsync(stop)).Select(b => ((IKept)b, b.Code)),
            .. (await instruments.OrderBy(i => i.Id).ToListAsync(stop)).Select(i => ((IKept)i, i.Serial)),
            .. (await methods.OrderBy(m => m.Id).ToListAsync(stop)).Select(m => ((IKept)m, m.Entry.Name)),
        ];
        var ids = kept.Select(k => k.Kept.Id).ToList();
        var changes = (
            await store.Changes.AsNoTracking().Where(c => by == null || ids.Contains(c.SubjectId)).ToListAsync(stop)
        ).ToLookup(c => c.SubjectId);
        var broken = kept.Select(k =>
                BrokenAt(k.Kept, [.. changes[k.Kept.Id].OrderBy(c => c.Line)]) is { } line
                    ? Broken(k.Kept.Kind, k.Name, line)
                    : null
            )
            .OfType<BrokenChainView>()
            .ToList();
        if (by is null)
            broken.AddRange(
                changes
                    .Where(c => !ids.Contains(c.Key))
                    .Select(c => new BrokenChainView(
                        c.First().Kind,
                        c.Key.ToString(),
                        1,
                        $"There is no {c.First().Kind} of these entries any more."
                    ))
            );
        return new(kept.Count, changes.Sum(c => c.Count()), broken, null);
    }

    /// <summary>Everything in the store, page by page, as lines to read.</summary>
    /// <returns>Whether all verify.</returns>
    public static async Task<bool> Report(RepairStore store, TextWriter output)
    {
        var (chains, entries, broken) = (0, 0, 0);
        async Task Count(VerificationView page)
        {
            (chains, entries, broken) = (chains + page.Chains, entries + page.Entries, broken + page.Broken.Count);
            foreach (var chain in page.Broken)
                await output.WriteLineAsync($"{chain.Kind} {chain.Name}, entry {chain.Line}: {chain.What}");
        }
        string? after = null;
        do
        {
            var page = await Journals(store, null, Keys.Read(after), Keys.MostRows, default);
            await Count(page);
            after = page.Next;
        } while (after is not null);
        await Count(await Changes(store, null, default));
        await output.WriteLineAsync($"{chains} histories of {entries} entries verified, {broken} broken.");
        return broken == 0;
    }

    public static int? BrokenAt(IKept kept, IReadOnlyList<Change> changes)
    {
        var previous = "";
        for (var i = 0; i < changes.Count; i++)
        {
            if (changes[i].Line != i + 1 || !changes[i].Follows(previous))
                return i + 1;
            previous = changes[i].Hash;
        }
        return changes.Count != kept.Revision || previous != kept.ChangesHash ? changes.Count + 1 : null;
    }

    // The chain holds; now the records themselves, which it quotes.
    private static BrokenChainView? Disagreement(RepairOrder order)
    {
        var signed = order
            .Journal.Where(j => j.RecordId is not null && j.New.Length > 0)
            .ToLookup(j => j.RecordId!.Value);
        foreach (var record in order.Records)
        {
            if (signed[record.Id].MinBy(j => j.Line) is not { } entry)
                return new(
                    "order",
                    order.Number,
                    order.JournalLines + 1,
                    $"No entry tells of the {record.Kind} {record.Id}."
                );
            if (
                entry.ById != record.ById
                || entry.By != record.By
                || entry.At != record.At
                || !Same(entry.New, record.Body)
            )
                return new(
                    "order",
                    order.Number,
                    entry.Line,
                    $"The {record.Kind} is not what entry {entry.Line} says was signed."
                );
        }
        return signed.FirstOrDefault(s => order.Records.All(r => r.Id != s.Key)) is { } gone
            ? new(
                "order",
                order.Number,
                gone.First().Line,
                $"The record that entry {gone.First().Line} tells of is gone."
            )
            : null;
    }

    private static bool Same(string told, string kept)
    {
        using var left = JsonDocument.Parse(told);
        using var right = JsonDocument.Parse(kept);
        return JsonElement.DeepEquals(left.RootElement, right.RootElement);
    }

    private static BrokenChainView Broken(string kind, string name, int line) =>
        new(kind, name, line, $"Entry {line} of {kind} {name} is missing or not what was written.");
}
