using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Fitting;

/// <summary>The job stopped by somebody. No stage, permit, version or lock refuses it.</summary>
internal sealed class Stop : SignedRecord<SignedStop>, IMovesStage
{
    private Stop() { }

    public Stop(SignedStop body)
        : base(body) { }

    public override string Kind => "stop";

    public override string Summary =>
        $"{(Asked.Ask.NotAsWritten ? "not as written: " : "")}{Asked.Ask.Reason}{(Asked.EndsRound ? ". Back to be assessed" : "")}";

    public override Tone Tone => Tone.Stop;

    public Stage After(Stage before, RepairOrder order) => Asked.EndsRound ? Stage.Requested : before;

    /// <summary>Between approval and proof, what is not as written sends the order back to be assessed.</summary>
    public static bool EndsRound(RepairOrder order, StopJob ask) =>
        ask.NotAsWritten
        && order.Stage
            is Stage.Approved
                or Stage.Consented
                or Stage.Issued
                or Stage.Ready
                or Stage.Fitting
                or Stage.Fitted;

    /// <summary>The stop that stands in this round; nothing when the job may go on.</summary>
    public static Stop? Standing(RepairOrder order)
    {
        var stop = order.Last<Stop>();
        var resumed = order.Last<Resumption>();
        return stop is not null && (resumed is null || Later(stop, resumed)) ? stop : null;
    }

    /// <summary>Where nobody works there is nothing to stop; a stop sent all the same is still taken down.</summary>
    public static Objection? NothingToStop(RepairOrder order) =>
        Removing.Removal.UnderWay(order)
            ? null
            : Orders.Objection.NotNow(
                order,
                "A stop",
                Stage.Approved,
                Stage.Consented,
                Stage.Issued,
                Stage.Ready,
                Stage.Fitting,
                Stage.Fitted
            );

    public static Objection? Objection(RepairOrder order) =>
        Standing(order) is { } stop
            ? new Objection(
                "stopped",
                $"{stop.By} stopped the job: {stop.Asked.Ask.Reason}. It goes on once the cause is cleared.",
                "supervisor, once the cause is cleared"
            )
            : null;

    private static bool Later(SignedRecord one, SignedRecord other) =>
        one.At > other.At || (one.At == other.At && one.Id.CompareTo(other.Id) > 0);
}

/// <summary>A stopped job let go on: the cause is cleared, and resin that was open is scrapped.</summary>
internal sealed class Resumption : SignedRecord<ResumeJob>
{
    private Resumption() { }

    public Resumption(ResumeJob ask)
        : base(ask) { }

    public override string Kind => "resumption";

    public override string Summary => Asked.CauseCleared;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (Stop.Standing(order) is not { } stop)
            return new Objection("not-stopped", "The job is not stopped.", "nobody needs to") { IsOfStage = true };
        if (Authority.Objection(by, order, at) is { } lapsed)
            return lapsed;
        var open = order.InRound<Mix>().FirstOrDefault(m => m.At <= stop.At && Mix.UsedAt(order, m.Id) is null);
        return open is null
            ? null
            : new Objection(
                "resin-not-restarted",
                $"A mix of {open.Asked.Words}, batch {open.Asked.Number}, was open when the job stopped. Scrap it and void it; mix anew.",
                "technician, by voiding the mix"
            );
    }
}
