using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Exiting;

/// <summary>The second signature of an exit: operations in charge under a refusal, the other of two under a line out of service.</summary>
internal sealed class ExitSignature : SignedRecord<SignExit>, IMovesStage
{
    private ExitSignature() { }

    public ExitSignature(SignExit ask)
        : base(ask) { }

    public override string Kind => "exit signature";

    public override string Summary => $"as {Words.Of(Asked.As)}{(Asked.Remark is { Length: > 0 } r ? $": {r}" : "")}";

    public Stage After(Stage before, RepairOrder order) =>
        before == Stage.InService
        && order.All<Exit>().FirstOrDefault(e => e.Id == Asked.Exit)?.Asked.Kind == ExitKind.LineOutOfService
            ? Stage.LineOutOfService
            : before;

    /// <summary>The exit that waits for a second signature, if any.</summary>
    public static Exit? Waiting(RepairOrder order) =>
        order
            .InRound<Exit>()
            .LastOrDefault(e =>
                e.Asked.Kind is ExitKind.Refused or ExitKind.LineOutOfService
                && (e.Asked.Kind == ExitKind.Refused) == (order.Stage == Stage.Refused)
                && !order.All<ExitSignature>().Any(s => s.Asked.Exit == e.Id)
            );

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (Waiting(order) is not { } exit)
            return new Objection("no-exit-waits", "No exit of this order waits for a second signature.", "nobody")
            {
                IsOfStage = true,
            };
        if (Authority.Objection(by, order, at) is { } lapsed)
            return lapsed;
        if (by.Id == exit.ById)
            return new Objection(
                "exit-signed-already",
                "You have signed this exit. The second signature comes from another person.",
                Words.Of(Second(exit))
            );
        return ExitRules.Holds(order, Second(exit), by, at)
            ? null
            : new Objection(
                "exit-second-capacity",
                $"The second signature is that of the {(Second(exit) == ExitCapacity.Engineer ? "integrity engineer" : "operations in charge")}.",
                Words.Of(Second(exit))
            );
    }

    public static Objection? Objection(RepairOrder order, SignExit ask, Person by, DateTimeOffset at) =>
        Objection(order, by, at)
        ?? (
            Waiting(order) is { } exit && exit.Id == ask.Exit && Second(exit) == ask.As
                ? null
                : new Objection(
                    "exit-not-that-one",
                    $"The exit that waits is signed as {Words.Of(Second(Waiting(order)!))}.",
                    Words.Of(Second(Waiting(order)!))
                )
        );

    private static ExitCapacity Second(Exit exit) =>
        exit.Asked.As == ExitCapacity.OperationsInCharge ? ExitCapacity.Engineer : ExitCapacity.OperationsInCharge;
}
