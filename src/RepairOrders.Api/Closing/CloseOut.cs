using RepairOrders.Api.Approving;
using RepairOrders.Api.Extending;
using RepairOrders.Api.Failing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Proving;
using RepairOrders.Api.Sizing;
using RepairOrders.Api.Standing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Closing;

/// <summary>The check list at the end. On classes A and B it holds once an engineer has countersigned it.</summary>
internal sealed class CloseOut : SignedRecord<CloseOrder>, IMovesStage
{
    private CloseOut() { }

    public CloseOut(CloseOrder ask)
        : base(ask) { }

    public override string Kind => "close-out";

    public override string Summary => $"cause: {Words.Of(Asked.Cause)}, {Asked.CauseFound}";

    public Stage After(Stage before, RepairOrder order) => NeedsEngineer(order) ? before : Stage.Closed;

    public static bool NeedsEngineer(RepairOrder order) => Rounds.GravestClass(order) is RiskClass.A or RiskClass.B;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Orders.Objection.NotNow(order, "A close-out", Stage.Fixed)
        ?? Authority.Objection(by, order, at)
        ?? (
            by.Is(Role.Supervisor) || Signatures.ManagerStandsIn(order)
                ? null
                : new Objection(
                    "close-capacity",
                    "A supervisor closes the order. The manager does only where one supervisor is all there is, for what he raised or fitted.",
                    "a supervisor who did not fit it"
                )
        )
        ?? (
            Facts.Fitters(order).Contains(by.Id)
                ? new Objection(
                    "fitter-may-not-close",
                    "You fitted or removed the repair. Another supervisor closes the order.",
                    "a supervisor who did not fit it"
                )
                : null
        );

    public static Objection? Objection(
        RepairOrder order,
        CloseOrder ask,
        IReadOnlyList<string> unbalanced,
        Person by,
        DateTimeOffset at
    ) => Objection(order, by, at) ?? OfCause(order, ask) ?? OfPapers(order, ask) ?? StoresOpen(unbalanced);

    private static Objection? OfCause(RepairOrder order, CloseOrder ask)
    {
        if (ask.Cause == DefectCause.Unknown)
            return new Objection(
                "cause-not-confirmed",
                "The cause is not confirmed. Without it the next leak is a matter of time; have the removed piece looked at.",
                "integrity engineer"
            );
        if (FailureStatement.Unknown(order).FirstOrDefault() is { } failure)
            return new Objection(
                "failure-mode-unknown",
                $"Nobody has stated how it failed on {failure.At:yyyy-MM-dd}.",
                "integrity engineer, by stating the failure mode"
            );
        var failed = order.All<Failure>().Any() || Rounds.History(order).Any(h => h.Stage == Stage.Failed);
        var learns = NeedsEngineer(order) || failed;
        return learns && string.IsNullOrWhiteSpace(ask.Lessons)
            ? new Objection(
                "lessons-missing",
                "Write down what was learnt: classes A and B and every failure ask for it.",
                "supervisor, with the engineer"
            )
            : null;
    }

    private static Objection? OfPapers(RepairOrder order, CloseOrder ask)
    {
        var changes = ChangeControls(order).ToList();
        if (changes.Count > 0 && string.IsNullOrWhiteSpace(ask.ChangeControlClosed))
            return new Objection(
                "change-control-open",
                $"Change control {string.Join(" and ", changes)} is not closed. Close it and give the reference of its close-out.",
                "supervisor, with whoever runs change control"
            );
        var tagged = ask.TagBack || !string.IsNullOrWhiteSpace(ask.TagLost);
        return tagged || !order.All<Proof>().Any(p => p.Asked.Ask.Tag is not null)
            ? null
            : new Objection(
                "tag-not-back",
                "The tag is not back. A tag without a repair sends somebody to the wrong place. Where it cannot be found, say where it was looked for and who was told.",
                "supervisor, once the tag is back or its loss is on record"
            );
    }

    // Of every round whose design was approved, and of every extension granted: none of them ends by itself.
    private static IEnumerable<string> ChangeControls(RepairOrder order) =>
        order
            .All<Design>()
            .Where(d => !Signatures.Missing(order, d).Any())
            .Select(d => d.Asked.Ask.ChangeControl)
            .Concat(Extension.Granted(order).Select(g => g.Extension.Asked.Ask.ChangeControl))
            .Select(c => c?.Reference)
            .OfType<string>()
            .Distinct();

    /// <summary>What is out on the order is returned, or booked as used or scrapped, before it ends.</summary>
    public static Objection? StoresOpen(IReadOnlyList<string> unbalanced) =>
        unbalanced.Count > 0
            ? new Objection(
                "stores-not-balanced",
                $"Material is still out on the order: {string.Join(", ", unbalanced)}. Return it, or book it as used or scrapped.",
                "storekeeper"
            )
            : null;
}
