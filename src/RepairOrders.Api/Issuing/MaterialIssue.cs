using System.Globalization;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Readying;
using RepairOrders.Api.Stock;
using RepairOrders.Contract;

namespace RepairOrders.Api.Issuing;

/// <summary>Material handed out: batch, expiry, certificate, quantity and receiver for each line.</summary>
internal sealed class MaterialIssue : SignedRecord<SignedIssue>, IMovesStage
{
    private MaterialIssue() { }

    public MaterialIssue(SignedIssue body)
        : base(body) { }

    public override string Kind => "material-issue";

    public override string Summary =>
        Asked.Lines.Count == 0
            ? "nothing to draw"
            : $"{string.Join("; ", Asked.Lines.Select(Words))} to {Asked.Receiver}{(Asked.Complete ? "" : "; more to come")}{(Bad is { } bad ? $". {bad}" : "")}";

    public override Tone Tone =>
        Bad is not null ? Tone.Stop
        : Asked.Late ? Tone.Watch
        : Tone.Go;

    private string? Bad => Asked.Lines.Select(l => l.Bad).FirstOrDefault(b => b is not null);

    private static string Words(IssuedLine l) =>
        string.Create(CultureInfo.InvariantCulture, $"{l.Quantity:0.###} {l.Unit} {l.Words}, batch {l.Number}");

    public Stage After(Stage before, RepairOrder order) =>
        Bad is not null && before is Stage.Fitting or Stage.Fitted ? Stage.Failed
        : Asked.Complete && before == Stage.Approved ? Stage.Issued
        : before;

    /// <summary>What stands against issuing anything at all.</summary>
    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        var plan = WorkPlan.Of(order);
        var open = plan is { Emergency: true }
            ? Orders.Objection.NotNow(
                order,
                "A material issue",
                Stage.Consented,
                Stage.Ready,
                Stage.Fitting,
                Stage.Fitted
            )
            : Orders.Objection.NotNow(order, "A material issue", Stage.Approved, Stage.Issued, Stage.Ready);
        return open ?? Authority.Objection(by, order, at) ?? NothingLeft(order, plan!);
    }

    private static Objection? NothingLeft(RepairOrder order, WorkPlan plan) =>
        plan.Bill.Count > 0 && Bill.Complete(order, plan)
            ? new Objection(
                "issued-already",
                "Every line of the bill is issued. What more is needed is a change of the design, or a return first.",
                "integrity engineer, by a changed design"
            )
            {
                IsOfStage = true,
            }
            : null;

    /// <summary>What stands against this receiver.</summary>
    public static Objection? Receiver(RepairOrder order, WorkPlan plan, Person? receiver, DateTimeOffset at)
    {
        var named = Readiness.Current(order, ReadinessFor.Fit)?.Asked.Fitters;
        if (
            receiver is not null
            && (
                named is null
                    ? Crew.MayFit(receiver, plan.Method, order.Site.Today(at))
                    : named.Any(f => f.Id == receiver.Id)
            )
        )
            return null;
        return new Objection(
            "receiver-not-on-order",
            named is null
                ? $"The receiver must be a technician of this site, competent in the {Orders.Words.Lower(plan.Name)} today."
                : $"The receiver must be one of the fitters: {string.Join(", ", named.Select(f => f.Name))}.",
            "storekeeper, with a receiver who fits; supervisor, who names the fitters"
        );
    }

    /// <summary>What stands against one line, once its batch is known.</summary>
    public static Objection? Objection(
        RepairOrder order,
        WorkPlan plan,
        IssueLine line,
        Batch batch,
        Bin bin,
        Person by,
        DateTimeOffset at
    )
    {
        if (line.Line > plan.Bill.Count)
            return new Objection(
                "line-not-in-bill",
                $"The bill has {plan.Bill.Count} lines; there is no line {line.Line}.",
                "storekeeper"
            );
        var need = plan.Bill[line.Line - 1];
        if (!by.Is(Role.Storekeeper) && !bin.Locker)
            return new Objection(
                "locker-only",
                $"Bin {bin.Code} is in the stores. Without a storekeeper only an emergency locker may be opened.",
                "storekeeper"
            );
        return Units(need, batch)
            ?? Certificate(plan, batch)
            ?? (FitBegan(order, plan) ? null : Usable(order, plan, batch, at))
            ?? Substituted(order, plan, line.Line, need, batch);
    }

    /// <summary>Emergency path: the fit has begun, so what is issued now is on the pipe already.</summary>
    public static bool FitBegan(RepairOrder order, WorkPlan plan) =>
        plan.Emergency && order.Stage is Stage.Fitting or Stage.Fitted;

    /// <summary>Why a batch may not be used in this fit; nothing when it may.</summary>
    public static Objection? Usable(RepairOrder order, WorkPlan plan, Batch batch, DateTimeOffset at)
    {
        var today = order.Site.Today(at);
        if (Barred(batch, today) is { } barred)
            return barred;
        var least = plan.Emergency ? today : FirstExpiryFirst.LeastExpiry(today, plan.FitOn);
        return batch.Expiry < least
            ? new Objection(
                "batch-expires-before-fit",
                $"Batch {batch.Number} of {batch.Item.Words} expires on {batch.Expiry:yyyy-MM-dd}; it must last until {least:yyyy-MM-dd}, two days past the fit.",
                "storekeeper, with another batch"
            )
            : null;
    }

    /// <summary>Why a batch may not be used today, whoever holds it.</summary>
    public static Objection? Barred(Batch batch, DateOnly today)
    {
        if (batch.ExpiredOn(today))
            return new Objection(
                "batch-expired",
                $"Batch {batch.Number} of {batch.Item.Words} expired on {batch.Expiry:yyyy-MM-dd}. Take a batch that is in date; quarantine this one.",
                "storekeeper, with another batch"
            );
        if (batch.Standing == BatchStanding.Quarantined)
            return new Objection(
                "batch-quarantined",
                $"Batch {batch.Number} of {batch.Item.Words} is quarantined: {batch.StandingWhy}.",
                "integrity engineer, who may free it; storekeeper, with another batch"
            );
        return batch.Standing == BatchStanding.Recalled
            ? new Objection(
                "batch-recalled",
                $"Batch {batch.Number} of {batch.Item.Words} is recalled: {batch.StandingWhy}.",
                "storekeeper, with another batch"
            )
            : null;
    }

    private static Objection? Units(MaterialNeedView need, Batch batch) =>
        Bill.Convert(1, batch.Item.Unit, need.Unit) is null
            ? new Objection(
                "unit-differs",
                $"The bill asks for {need.Words} in {need.Unit}; {batch.Item.Words} is counted in {batch.Item.Unit}, and the two do not compare.",
                "storekeeper, with an item counted the same way"
            )
            : null;

    public static bool LacksCertificate(WorkPlan plan, Batch batch) =>
        batch.Item.NeedsCertificate && plan.Class != RiskClass.D && string.IsNullOrWhiteSpace(batch.Certificate);

    private static Objection? Certificate(WorkPlan plan, Batch batch) =>
        LacksCertificate(plan, batch)
            ? new Objection(
                "certificate-missing",
                $"Batch {batch.Number} of {batch.Item.Words} has no certificate on record, and class {plan.Class} asks for one.",
                "storekeeper, with a batch that has one"
            )
            : null;

    private static Objection? Substituted(
        RepairOrder order,
        WorkPlan plan,
        int line,
        MaterialNeedView need,
        Batch batch
    ) =>
        batch.Item.Need == need.Code || Substitution.Agreed(order, plan, line, batch.Item.Code)
            ? null
            : new Objection(
                "substitution-not-agreed",
                $"The bill asks for {need.Words}; {batch.Item.Words} is something else, and no engineer has agreed to it.",
                "integrity engineer"
            );
}
