using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Extending;

/// <summary>A later end date asked for, with all that was reckoned for whoever decides.</summary>
internal sealed class Extension : SignedRecord<SignedExtension>
{
    private Extension() { }

    public Extension(SignedExtension body)
        : base(body) { }

    public override string Kind => "extension";

    public override string Summary =>
        $"from {Asked.From:yyyy-MM-dd} to {Asked.EndDate.On:yyyy-MM-dd} ({Asked.EndDate.Governing.Words}), class {Asked.Risk.Class}, no. {Asked.Number}{(Asked.AfterEnd ? ", asked after the end date" : Asked.Late ? ", asked late" : "")}: {Asked.Ask.Why}";

    public override Tone Tone => Asked.Late || Asked.AfterEnd ? Tone.Watch : Tone.Go;

    /// <summary>The decisions on it, oldest first.</summary>
    public IReadOnlyList<ExtensionDecision> Decisions(RepairOrder order) =>
        [.. order.All<ExtensionDecision>().Where(d => d.Asked.Ask.Extension == Id)];

    /// <summary>Nobody has refused it and a signature is missing.</summary>
    public bool IsPending(RepairOrder order) => Decisions(order).All(d => d.Asked.Ask.Grant && d.Asked.EndDate is null);

    /// <summary>The one that waits for a decision.</summary>
    public static Extension? Pending(RepairOrder order) =>
        order.InRound<Extension>().LastOrDefault(e => e.IsPending(order));

    /// <summary>Extensions granted, all rounds: a failure gives none back.</summary>
    public static IEnumerable<(Extension Extension, ExtensionDecision Decision)> Granted(RepairOrder order) =>
        order
            .All<Extension>()
            .Select(e => (Extension: e, Decision: e.Decisions(order).FirstOrDefault(d => d.Asked.EndDate is not null)))
            .Where(g => g.Decision is not null)
            .Select(g => (g.Extension, g.Decision!));

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Orders.Objection.NotNow(order, "An extension", Stage.InService, Stage.LineOutOfService)
        ?? Authority.Objection(by, order, at)
        ?? (
            Pending(order) is { } pending
                ? new Objection(
                    "extension-pending",
                    $"An extension to {pending.Asked.EndDate.On:yyyy-MM-dd} waits for its decision.",
                    string.Join(", ", pending.Asked.Needed.Select(n => Words.Of(n)))
                )
                : null
        )
        ?? ExtensionRules.OfOrder(order, at);
}
