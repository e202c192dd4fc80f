using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Exiting;

/// <summary>A way out of the procedure beside its end.</summary>
internal sealed class Exit : SignedRecord<ExitOrder>, IMovesStage
{
    private Exit() { }

    public Exit(ExitOrder ask)
        : base(ask) { }

    public override string Kind => "exit";

    public override string Summary =>
        $"{Words.Of(Asked.Kind)}: {Asked.Why}{(Asked.Missing is { Count: > 0 } missing ? $" Missing: {string.Join("; ", missing)}" : "")}";

    public override Tone Tone => Asked.Kind == ExitKind.Refused ? Tone.Stop : Tone.Watch;

    /// <summary>A line goes out of service only with the second signature; the others move the order at once.</summary>
    public Stage After(Stage before, RepairOrder order) =>
        Asked.Kind switch
        {
            ExitKind.Returned => Stage.Returned,
            ExitKind.Refused => Stage.Refused,
            ExitKind.Withdrawn => Stage.Withdrawn,
            ExitKind.Superseded => Stage.Superseded,
            _ => before,
        };

    /// <summary>Whether this person may take this way now, whatever the particulars.</summary>
    public static Objection? Objection(RepairOrder order, ExitKind kind, Person by, DateTimeOffset at) =>
        Authority.Objection(by, order, at)
        ?? Orders.Objection.NotNow(order, $"An exit as {Words.Of(kind)}", ExitRules.OpenAt(kind))
        ?? (ExitRules.CapacityOf(order, kind, by, at) is null ? ExitRules.WrongCapacity(kind) : null);

    public static Objection? Objection(
        RepairOrder order,
        ExitOrder ask,
        RepairOrder? other,
        IReadOnlyList<string> unbalanced,
        Person by,
        DateTimeOffset at
    ) =>
        Objection(order, ask.Kind, by, at)
        ?? (ExitRules.Holds(order, ask.Kind, ask.As, by, at) ? null : ExitRules.WrongCapacity(ask.Kind))
        ?? ExitRules.Particulars(order, ask, other, unbalanced);
}
