namespace RepairOrders.Contract;

/// <summary>Why the procedure says no: a stable code, the sentence the person reads, and who can clear it.</summary>
/// <param name="Code">Lower-case words joined by hyphens: <c>own-request</c>.</param>
/// <param name="Sentence">What is wrong and what would mend it.</param>
/// <param name="Clears">Who can clear it.</param>
public sealed record ObjectionView(string Code, string Sentence, string Clears);

/// <summary>The service refused an ask. <see cref="Status"/> tells why; the sentence is meant for the person.</summary>
[System.Diagnostics.CodeAnalysis.SuppressMessage("Naming", "CA1710", Justification = "It reads as what happened.")]
public sealed class Refused : Exception
{
    /// <summary>A refusal as the service told it.</summary>
    /// <param name="status">The HTTP status.</param>
    /// <param name="code">The objection's code, or the kind of problem.</param>
    /// <param name="sentence">The sentence for the person.</param>
    /// <param name="clears">Who can clear it; nothing where nobody needs to.</param>
    /// <param name="fields">For a malformed ask: field path to messages.</param>
    /// <param name="traceId">The id the service's log has too.</param>
    public Refused(
        int status,
        string code,
        string sentence,
        string? clears,
        IReadOnlyDictionary<string, string[]> fields,
        string? traceId
    )
        : base(sentence)
    {
        Status = status;
        Code = code;
        Clears = clears;
        Fields = fields;
        TraceId = traceId;
    }

    /// <summary>The HTTP status: 400 malformed, 401, 403, 404, 409 the procedure says no, 412 stale, 422 key reused, 503 store away.</summary>
    public int Status { get; }

    /// <summary>The objection's code, or the kind of problem.</summary>
    public string Code { get; }

    /// <summary>Who can clear it.</summary>
    public string? Clears { get; }

    /// <summary>For a malformed ask: field path to messages.</summary>
    public IReadOnlyDictionary<string, string[]> Fields { get; }

    /// <summary>The id the service's log has too.</summary>
    public string? TraceId { get; }
}
