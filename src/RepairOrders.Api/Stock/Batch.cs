using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Stock;

/// <summary>Material of one item made and received together. How it stands is the last of its judgements.</summary>
internal sealed class Batch
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid ItemId { get; init; }
    public StockItem Item { get; init; } = null!;
    public string Number { get; init; } = "";
    public DateOnly? Expiry { get; init; }
    public string? Certificate { get; init; }
    public BatchStanding Standing { get; private set; }
    public string? StandingWhy { get; private set; }
    public List<BatchJudgement> Judgements { get; } = [];

    /// <summary>The expiry is the last day it may be used.</summary>
    public bool ExpiredOn(DateOnly day) => Expiry < day;

    public void Judge(JudgeBatch ask, Person by, DateTimeOffset at)
    {
        Judgements.Add(new BatchJudgement(Id, ask.Standing, ask.Why, by, at));
        Standing = ask.Standing;
        StandingWhy = ask.Standing == BatchStanding.Good ? null : ask.Why;
    }

    public static Objection? Objection(ReceiveBatch ask, StockItem item, Batch? known)
    {
        if (item.Expires && ask.Expiry is null)
            return new Objection(
                "expiry-missing",
                $"{item.Words} expires, and no expiry date is given. Read it off the pack; without one the batch cannot be taken in.",
                "storekeeper, with the pack in his hand"
            );
        if (known is not null && (known.Expiry != ask.Expiry || (known.Certificate ?? "") != (ask.Certificate ?? "")))
            return new Objection(
                "batch-differs",
                $"Batch {ask.Number} is on the books with expiry {known.Expiry:yyyy-MM-dd} and certificate {known.Certificate ?? "none"}. Read the pack again; if it really differs, quarantine the batch.",
                "storekeeper"
            );
        return null;
    }

    /// <summary>Setting apart and calling back are never refused; freeing is an engineer's judgement.</summary>
    public static Objection? Objection(JudgeBatch ask, Person by) =>
        ask.Standing == BatchStanding.Good && !by.Is(Role.IntegrityEngineer)
            ? new Objection(
                "engineer-frees",
                "A batch that was set apart or called back is freed by an integrity engineer, with his reason.",
                "integrity engineer"
            )
            : null;
}

/// <summary>One judgement of a batch; the list only grows.</summary>
internal sealed class BatchJudgement
{
    private BatchJudgement() { }

    public BatchJudgement(Guid batch, BatchStanding standing, string why, Person by, DateTimeOffset at)
    {
        BatchId = batch;
        Standing = standing;
        Why = why;
        ById = by.Id;
        By = by.FullName;
        At = at;
    }

    public Guid Id { get; private set; } = Guid.CreateVersion7();
    public Guid BatchId { get; private set; }
    public BatchStanding Standing { get; private set; }
    public string Why { get; private set; } = "";
    public Guid ById { get; private set; }
    public string By { get; private set; } = "";
    public DateTimeOffset At { get; private set; }
}
