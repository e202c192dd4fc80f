using System.Linq.Expressions;
using System.Text.Json;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Store;

/// <summary>Something administrators keep: it is corrected in place, and each change leaves an entry.</summary>
internal interface IKept
{
    Guid Id { get; }

    /// <summary>What it is, in a word or two: person, stock item.</summary>
    string Kind { get; }

    /// <summary>Count of its changes, and its version.</summary>
    int Revision { get; set; }

    /// <summary>The hash of its last change.</summary>
    string ChangesHash { get; set; }
}

/// <summary>
/// One line of the history of something administrators keep, chained to the one before like the journal of an order. The
/// service's own store role may not change or remove it.
/// </summary>
internal sealed class Change
{
    public string Kind { get; private init; } = "";
    public Guid SubjectId { get; private init; }
    public int Line { get; private init; }
    public DateTimeOffset At { get; private init; }
    public Guid ById { get; private init; }
    public string By { get; private init; } = "";
    public string What { get; private init; } = "";
    public string? Why { get; private init; }
    public string? Old { get; private init; }
    public string? New { get; private init; }
    public string PreviousHash { get; private init; } = "";
    public string Hash { get; private init; } = "";

    /// <summary>The next change of a thing; the thing counts it.</summary>
    public static Change Of(
        IKept subject,
        string what,
        object? old,
        object? @new,
        Person by,
        DateTimeOffset at,
        string? why = null
    )
    {
        var (line, before, after) = (subject.Revision + 1, Text(old), Text(@new));
        var previous = subject.ChangesHash;
        var change = new Change
        {
            Kind = subject.Kind,
            SubjectId = subject.Id,
            Line = line,
            At = at,
            ById = by.Id,
            By = by.FullName,
            What = what,
            Why = why,
            Old = before,
            New = after,
            PreviousHash = previous,
            Hash = JournalEntry.Chain(
                previous,
                subject.Kind,
                subject.Id,
                line,
                at,
                by.Id,
                by.FullName,
                what,
                why,
                before,
                after
            ),
        };
        (subject.Revision, subject.ChangesHash) = (line, change.Hash);
        return change;
    }

    public bool Follows(string previousHash) =>
        PreviousHash == previousHash
        && Hash == JournalEntry.Chain(PreviousHash, Kind, SubjectId, Line, At, ById, By, What, Why, Old, New);

    public ChangeView View() => new(Line, At, By, What, Why, Old, New, Hash);

    private static string? Text(object? value) =>
        value is null ? null : JsonSerializer.Serialize(value, value.GetType(), RepairOrdersClient.Json);
}

internal static class KeptThings
{
    /// <summary>Writes what was changed, in the transaction of the change.</summary>
    public static void Changed(
        this RepairStore store,
        IKept subject,
        string what,
        object? old,
        object? @new,
        Person by,
        DateTimeOffset at,
        string? why = null
    ) => store.Changes.Add(Change.Of(subject, what, old, @new, by, at, why));

    /// <summary>Refuses a version that is no longer the thing's.</summary>
    public static void MustBe(this IKept subject, Wire.SeenVersion seen)
    {
        if (seen.Value != subject.Revision)
            throw new DbUpdateConcurrencyException();
    }

    /// <summary>The changes of a thing of a site that the person may see.</summary>
    public static async Task<IReadOnlyList<ChangeView>> ChangesSeen<T>(
        this RepairStore store,
        IQueryable<T> things,
        Expression<Func<T, Guid>> site,
        Guid id,
        Person by,
        CancellationToken stop
    )
        where T : class, IKept
    {
        var seen = store.Sites.Where(s => by.Sites.Contains(s.ShortName));
        var thing =
            await things
                .AsNoTracking()
                .Join(seen, site, s => s.Id, (t, _) => t)
                .SingleOrDefaultAsync(t => t.Id == id, stop)
            ?? throw new Wire.NotHere("There is no such thing that you may see.");
        return await store.ChangesOf(thing, stop);
    }

    public static async Task<IReadOnlyList<ChangeView>> ChangesOf(
        this RepairStore store,
        IKept subject,
        CancellationToken stop
    ) =>
        [
            .. (
                await store
                    .Changes.AsNoTracking()
                    .Where(c => c.SubjectId == subject.Id)
                    .OrderBy(c => c.Line)
                    .ToListAsync(stop)
            ).Select(c => c.View()),
        ];
}
