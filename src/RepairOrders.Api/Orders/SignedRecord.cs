using System.Text.Json;
using RepairOrders.Contract;

namespace RepairOrders.Api.Orders;

/// <summary>
/// One sheet of the sheaf: who signed what, when, in which round. A row is never overwritten or deleted; a wrong one is set
/// aside and stays readable.
/// </summary>
internal abstract class SignedRecord
{
    public Guid Id { get; private protected set; } = OrderedKey.Next();
    public Guid OrderId { get; private set; }
    public int Round { get; private set; }
    public Guid ById { get; private set; }
    public string By { get; private set; } = "";
    public DateTimeOffset At { get; private set; }
    public DateTimeOffset? SetAsideAt { get; private set; }
    public string? SetAsideBy { get; private set; }
    public string? SetAsideWhy { get; private set; }

    /// <summary>All that was signed, as JSON. One column for every kind, so that one query loads a whole sheaf.</summary>
    public string Body { get; private protected set; } = "{}";

    public bool Stands => SetAsideAt is null;

    /// <summary>The record's noun as it stands in the journal: <c>approval</c>.</summary>
    public abstract string Kind { get; }

    /// <summary>One line of what it says, for the sheaf column.</summary>
    public abstract string Summary { get; }

    public virtual Tone Tone => Tone.Go;

    /// <summary>Signed after the other; keys tell the order of two signed at one moment.</summary>
    public bool IsAfter(SignedRecord? other) => other is null || (At, Id).CompareTo((other.At, other.Id)) > 0;

    public void SignedBy(RepairOrder order, string name, Guid person, DateTimeOffset at)
    {
        OrderId = order.Id;
        Round = order.Round;
        By = name;
        ById = person;
        At = at;
    }

    public void SetAside(string by, DateTimeOffset at, string why)
    {
        SetAsideAt = at;
        SetAsideBy = by;
        SetAsideWhy = why;
    }

    public RecordView View() =>
        new(
            Id,
            Kind,
            Round,
            By,
            At,
            Summary,
            Tone,
            JsonSerializer.Deserialize<JsonElement>(Body),
            SetAsideAt,
            SetAsideBy,
            SetAsideWhy
        );
}

/// <summary>A record whose body is of a known type.</summary>
internal abstract class SignedRecord<TBody> : SignedRecord
    where TBody : class
{
    private TBody? asked;

    protected SignedRecord() { }

    protected SignedRecord(TBody body)
    {
        asked = body;
        Body = JsonSerializer.Serialize(body, RepairOrdersClient.Json);
    }

    /// <summary>What was signed.</summary>
    public TBody Asked => asked ??= JsonSerializer.Deserialize<TBody>(Body, RepairOrdersClient.Json)!;
}
