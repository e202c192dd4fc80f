using RepairOrders.Api.Approving;
using RepairOrders.Api.Lines;
using RepairOrders.Api.People;
using RepairOrders.Api.Requesting;
using RepairOrders.Api.Sites;
using RepairOrders.Api.Sizing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Orders;

/// <summary>
/// The sheaf of signed records about one temporary repair. Each step adds one record through <see cref="Sign"/>, the only way in:
/// it writes the journal line and sets the columns that follow from the records, so no step can forget either.
/// </summary>
internal sealed class RepairOrder
{
    private readonly List<SignedRecord> records = [];

    private RepairOrder() { }

    public RepairOrder(Site site, int number, Line? line)
    {
        SiteId = site.Id;
        Site = site;
        Number = $"{site.ShortName}-{number}";
        LineId = line?.Id;
        Line = line;
    }

    public Guid Id { get; private set; } = OrderedKey.Next();
    public string Number { get; private set; } = "";
    public Guid SiteId { get; private set; }
    public Site Site { get; private set; } = null!;
    public Guid? LineId { get; private set; }
    public Line? Line { get; private set; }

    /// <summary>PostgreSQL's own row version; every step writes the order's row, so it is the version of the whole sheaf.</summary>
    public uint Version { get; private set; }

    public int JournalLines { get; private set; }
    public string JournalHash { get; private set; } = "";
    public List<JournalEntry> Journal { get; } = [];

    /// <summary>What the lists search and sort by. All of it follows from the records and is written with them.</summary>
    public OrderColumns Columns { get; private set; } = new();

    /// <summary>What the rules must know of the world round it.</summary>
    public Surroundings Surroundings { get; set; } = Surroundings.None;

    public Stage Stage => Columns.Stage;
    public int Round { get; private set; } = 1;

    /// <summary>Every record ever signed, oldest first, set-aside ones included.</summary>
    public IReadOnlyList<SignedRecord> Records => records;

    /// <summary>Records of one kind that stand, oldest first, all rounds.</summary>
    public IEnumerable<T> All<T>()
        where T : SignedRecord => records.OfType<T>().Where(r => r.Stands).OrderBy(r => r.At).ThenBy(r => r.Id);

    /// <summary>Records of one kind that stand in the round at work.</summary>
    public IEnumerable<T> InRound<T>()
        where T : SignedRecord => All<T>().Where(r => r.Round == Round);

    /// <summary>The record of one kind that stands last in the round at work.</summary>
    public T? Last<T>()
        where T : SignedRecord => InRound<T>().LastOrDefault();

    public Request Request => All<Request>().Last();

    /// <summary>When it was first asked for.</summary>
    public DateTimeOffset RaisedAt => records.OfType<Request>().Min(r => r.At);

    /// <summary>The design that stands: the round's last with its set of signatures complete.</summary>
    public Design? ApprovedDesign => Signatures.Approved(this);

    /// <summary>The design that awaits signatures.</summary>
    public Design? PendingDesign => Signatures.Pending(this);

    /// <summary>Adds a record, after its rule had nothing to object.</summary>
    public T Sign<T>(T record, Person by, DateTimeOffset at, string? why = null)
        where T : SignedRecord
    {
        record.SignedBy(this, by.FullName, by.Id, at);
        records.Add(record);
        Write($"{record.Kind} signed", why, record.Id, null, record.Body, by, at);
        return record;
    }

    /// <summary>Adds the single record of a round; the one it replaces is set aside, not erased.</summary>
    public T Replace<T>(T record, Person by, DateTimeOffset at, string? why = null)
        where T : SignedRecord
    {
        var earlier = Last<T>();
        earlier?.SetAside(by.FullName, at, why ?? "replaced");
        record.SignedBy(this, by.FullName, by.Id, at);
        records.Add(record);
        Write($"{record.Kind} signed", why, record.Id, earlier?.Body, record.Body, by, at);
        return record;
    }

    /// <summary>
    /// Signs a planning record: in service it stands beside the one the repair was approved on, before that it replaces it.
    /// </summary>
    public T SignAgain<T>(T record, Person by, DateTimeOffset at)
        where T : SignedRecord => Planning.InService(this) ? Sign(record, by, at) : Replace(record, by, at);

    /// <summary>Strikes a record through with a reason. It stays readable.</summary>
    public void SetAside(SignedRecord record, Person by, DateTimeOffset at, string why)
    {
        record.SetAside(by.FullName, at, why);
        Write($"{record.Kind} set aside", why, record.Id, record.Body, "", by, at);
    }

    /// <summary>Puts the order on another line, when the request is sent again.</summary>
    public void PutOn(Line? line) => (Line, LineId) = (line, line?.Id);

    /// <summary>Starts the next round: earlier records stay, read-only, and still count.</summary>
    public void NextRound()
    {
        Round++;
        Columns = OrderColumns.From(this);
    }

    /// <summary>Throws the objection, if there is one.</summary>
    public static void Refuse(Objection? objection)
    {
        if (objection is not null)
            throw new ProcedureRefusal(objection);
    }

    private void Write(string what, string? why, Guid record, string? old, string @new, Person by, DateTimeOffset at)
    {
        // A signature on somebody else's device says so: the signer's own word stands beside whose phone it was.
        var how = by.OnDeviceOf is { } owner ? $"by short code on the device of {owner}" : null;
        var said =
            why is null ? how
            : how is null ? why
            : $"{why} ({how})";
        var entry = JournalEntry.Next(this, what, said, record, old, @new, by.FullName, by.Id, at);
        Journal.Add(entry);
        JournalLines = entry.Line;
        JournalHash = entry.Hash;
        // Rules read the stage off the columns while the rest is reckoned.
        Columns = Columns with
        {
            Stage = Stages.Of(this),
        };
        Columns = OrderColumns.From(this);
    }
}
