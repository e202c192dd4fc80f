using RepairOrders.Api.Approving;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Issuing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Readying;
using RepairOrders.Contract;

namespace RepairOrders.Api.Proving;

/// <summary>A witness's own signature under a proof.</summary>
internal sealed class ProofWitness : SignedRecord<SignedWitness>
{
    private ProofWitness() { }

    public ProofWitness(SignedWitness body)
        : base(body) { }

    public override string Kind => "proof-witness";

    public override string Summary => Asked.Remark ?? "witnessed";

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (Orders.Objection.NotNow(order, "A witness's signature", Stage.Fitted) is { } notNow)
            return notNow;
        if (Proof.Of(order) is null)
            return new Objection("not-proved-yet", "There is no proof to witness yet.", "technician, by the test")
            {
                IsOfStage = true,
            };
        var plan = WorkPlan.Of(order)!;
        return Witnesses.May(order, plan, by, at)
            ? Authority.Scope(by, "witness", "inspector")
            : new Objection(
                "cannot-witness",
                plan.Class is RiskClass.A or RiskClass.B
                    ? $"On class {plan.Class} an inspector who does not fit here witnesses the test."
                    : $"A supervisor or inspector who does not fit here witnesses the test.",
                plan.Class is RiskClass.A or RiskClass.B ? "an inspector" : "a supervisor or an inspector"
            );
    }

    /// <summary>D asks for no witness; for the others somebody must have signed under the proof that counts.</summary>
    public static Objection? Missing(RepairOrder order, WorkPlan plan, Proof proof) =>
        plan.Class == RiskClass.D || order.InRound<ProofWitness>().Any(w => w.Asked.Proof == proof.Id)
            ? null
            : new Objection(
                "witness-missing",
                $"On class {plan.Class} {(plan.Class == RiskClass.C ? "a supervisor" : "an inspector")} witnesses the test, and nobody has signed as that.",
                plan.Class == RiskClass.C ? "a supervisor who does not fit" : "an inspector who does not fit"
            );
}

/// <summary>An engineer's acceptance of everything done otherwise than written.</summary>
internal sealed class DepartureAcceptance : SignedRecord<SignedDepartures>
{
    private DepartureAcceptance() { }

    public DepartureAcceptance(SignedDepartures body)
        : base(body) { }

    public override string Kind => "departure-acceptance";

    public override string Summary => $"{string.Join("; ", Asked.Departures)}. Accepted: {Asked.Why}";

    public override Tone Tone => Tone.Watch;

    /// <summary>Departures on record that nobody has accepted.</summary>
    public static IReadOnlyList<string> Open(RepairOrder order)
    {
        var accepted = order.InRound<DepartureAcceptance>().SelectMany(a => a.Asked.Departures).ToHashSet();
        return
        [
            .. order
                .InRound<HoldPointRelease>()
                .Select(r => r.Asked.Ask.Departure)
                .Concat(order.InRound<Proof>().Select(p => p.Asked.Ask.Departure))
                .Where(d => !string.IsNullOrWhiteSpace(d))
                .OfType<string>()
                .Where(d => !accepted.Contains(d)),
        ];
    }

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Orders.Objection.NotNow(order, "An acceptance of departures", Stage.Fitting, Stage.Fitted)
        ?? (
            Open(order).Count == 0
                ? new Objection("no-departure", "No departure is on record that awaits acceptance.", "nobody needs to")
                {
                    IsOfStage = true,
                }
                : null
        )
        ?? Authority.Objection(by, order, at);
}

/// <summary>The owner's word that he goes back to look.</summary>
internal sealed class FirstLookAcceptance : SignedRecord<SignedFirstLook>
{
    private FirstLookAcceptance() { }

    public FirstLookAcceptance(SignedFirstLook body)
        : base(body) { }

    public override string Kind => "first-look-acceptance";

    public override string Summary => $"{Asked.Owner.Name} goes back to look";

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        var notNow = Orders.Objection.NotNow(
            order,
            "An acceptance of the first look",
            Stage.Approved,
            Stage.Consented,
            Stage.Issued,
            Stage.Ready,
            Stage.Fitting,
            Stage.Fitted
        );
        if (notNow is not null)
            return notNow;
        if (order.Last<FirstLookAcceptance>() is { } taken)
            return new Objection("first-look-taken", $"{taken.Asked.Owner.Name} has taken it on.", "nobody needs to")
            {
                IsOfStage = true,
            };
        if (Authority.Objection(by, order, at) is { } lapsed)
            return lapsed;
        // A hand-over accepted meanwhile goes before what the design names.
        var owner = order.Last<Owning.Owner>() is { } taker
            ? new NamedPerson(taker.ById, taker.By)
            : WorkPlan.Of(order)!.Owner;
        return owner is null || owner.Id == by.Id
            ? null
            : new Objection(
                "not-the-owner",
                $"The owner is {owner.Name}: he takes on the first look himself.",
                $"{owner.Name}; or the engineer, by naming another owner"
            );
    }
}

/// <summary>Operations take the repair into service: its life and its looks are counted from here.</summary>
internal sealed class Acceptance : SignedRecord<SignedAcceptance>, IMovesStage
{
    private Acceptance() { }

    public Acceptance(SignedAcceptance body)
        : base(body) { }

    public override string Kind => "acceptance";

    public override string Summary =>
        $"in service, tag {Asked.Tag}{(Asked.Limits is { } limits ? $", limits {Words(limits)}" : "")}; told: {Asked.Ask.OperatorsTold}";

    public Stage After(Stage before, RepairOrder order) => before == Stage.Fitted ? Stage.InService : before;

    private static string Words(InterimLimits limits) =>
        string.Join(
            ", ",
            new[] { limits.Pressure?.Entered, limits.Temperature?.Entered, limits.Words }.Where(w => w is not null)
        );

    /// <summary>What stands against taking the repair into service.</summary>
    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (Orders.Objection.NotNow(order, "An acceptance into service", Stage.Fitted) is { } notNow)
            return notNow;
        var plan = WorkPlan.Of(order)!;
        return Oneself(order, by, at)
            ?? Stop.Objection(order)
            ?? NotProved(order)
            ?? ProofWitness.Missing(order, plan, Proof.Of(order)!)
            ?? DeparturesOpen(order)
            ?? NoOwner(order)
            ?? Batches(order, plan);
    }

    /// <summary>What stands against this acceptance.</summary>
    public static Objection? Objection(RepairOrder order, AcceptRepair ask, Person by, DateTimeOffset at) =>
        Objection(order, by, at)
        ?? (
            ask.IsolationsRemoved
                ? null
                : new Objection(
                    "isolations-on",
                    "Locks of the isolation are still on. Take them all off first.",
                    "operations"
                )
        );

    private static Objection? Oneself(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (!Crew.IsOperationsInCharge(by, order.Site.Today(at)) && !StandsIn(order, by))
            return new Objection(
                "not-in-charge",
                "A repair is taken into service by operations in charge; you do not hold that competence today.",
                "operations in charge; the manager where one supervisor is all there is, for what he raised or fitted"
            );
        if ((Authority.Objection(by, order, at) ?? Authority.Scope(by, "operations in charge")) is { } not)
            return not;
        return Crew.Fitted(order, by.Id) || Proof.Of(order)?.ById == by.Id
            ? new Objection(
                "own-fit",
                "You fitted or tested this repair; another person takes it into service.",
                "another person who is operations in charge"
            )
            : null;
    }

    private static bool StandsIn(RepairOrder order, Person by) =>
        by.Is(Role.Manager) && Signatures.ManagerStandsIn(order);

    private static Objection? NotProved(RepairOrder order) =>
        Proof.Of(order) is null
            ? new Objection(
                "not-proved",
                "No leak test is recorded and none is waived. The line cannot be put in service.",
                "technician, by the test; or engineer and inspector, by a waiver with another examination"
            )
            : null;

    private static Objection? DeparturesOpen(RepairOrder order) =>
        DepartureAcceptance.Open(order) is { Count: > 0 } open
            ? new Objection(
                "departure-open",
                $"Something was done otherwise than written and no engineer has accepted it: {string.Join("; ", open)}.",
                "integrity engineer"
            )
            : null;

    private static Objection? NoOwner(RepairOrder order) =>
        order.Last<FirstLookAcceptance>() is null
            ? new Objection(
                "first-look-not-accepted",
                $"Nobody has taken on the first look. {(WorkPlan.Of(order)!.Owner is { } owner ? $"The owner is {owner.Name}." : "Somebody must, by name.")}",
                WorkPlan.Of(order)!.Owner?.Name ?? "a supervisor, technician or engineer who goes back to look"
            )
            : null;

    private static Objection? Batches(RepairOrder order, WorkPlan plan) =>
        plan.Emergency && !Bill.Complete(order, plan)
            ? new Objection(
                "batches-not-recorded",
                "Not every batch that went on the pipe is on record. Record them; they were owed within four hours of the fit.",
                "storekeeper, or the supervisor from the locker"
            )
            : null;
}
