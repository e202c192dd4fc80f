using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Readying;

/// <summary>One consent to a fit on the live line, given by the person himself.</summary>
internal sealed class LiveFitConsent : SignedRecord<ConsentToLiveFit>
{
    private LiveFitConsent() { }

    public LiveFitConsent(ConsentToLiveFit ask)
        : base(ask) { }

    public override string Kind => "live-fit-consent";

    public override string Summary => $"as {Words.Of(Asked.As)}: {Asked.Conditions}";

    public override Tone Tone => Tone.Watch;

    /// <summary>A the manager, B an engineer and operations in charge, C an engineer, D a supervisor.</summary>
    public static IReadOnlyList<LiveFitCapacity> Needed(RiskClass signed) =>
        signed switch
        {
            RiskClass.A => [LiveFitCapacity.Manager],
            RiskClass.B => [LiveFitCapacity.Engineer, LiveFitCapacity.OperationsInCharge],
            RiskClass.C => [LiveFitCapacity.Engineer],
            _ => [LiveFitCapacity.Supervisor],
        };

    /// <summary>
    /// The capacities nobody has consented in yet; two places take two persons. On the emergency path engineer and operations have
    /// spoken: what they consented to is this very fit.
    /// </summary>
    public static IEnumerable<LiveFitCapacity> Missing(RepairOrder order, WorkPlan plan) =>
        Needed(plan.Class)
            .Except(order.InRound<LiveFitConsent>().Select(c => c.Asked.As))
            .Except(plan.Emergency ? [LiveFitCapacity.Engineer, LiveFitCapacity.OperationsInCharge] : []);

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (
            Orders.Objection.NotNow(
                order,
                "A consent to a live fit",
                Stage.Approved,
                Stage.Consented,
                Stage.Issued,
                Stage.Ready,
                Stage.Fitting
            ) is
            { } notNow
        )
            return notNow;
        var plan = WorkPlan.Of(order)!;
        if (CategoryM(plan) is { } barred)
            return barred;
        if (!Missing(order, plan).Any())
            return new Objection(
                "live-fit-consented",
                "Every consent to a live fit that this class asks for is there.",
                "nobody needs to"
            )
            {
                IsOfStage = true,
            };
        return Authority.Objection(by, order, at);
    }

    /// <summary>What stands against consenting in this capacity.</summary>
    public static Objection? Objection(RepairOrder order, ConsentToLiveFit ask, Person by, DateTimeOffset at)
    {
        if (Objection(order, by, at) is { } no)
            return no;
        var plan = WorkPlan.Of(order)!;
        if (!Missing(order, plan).Contains(ask.As))
            return new Objection(
                "live-fit-place",
                $"Class {plan.Class} does not ask for a consent as {Words.Of(ask.As)}, or it is there already; it asks for: {Words.List<LiveFitCapacity>([.. Missing(order, plan)])}.",
                "somebody who can consent in a capacity that is missing"
            );
        if (!Holds(by, ask.As, order.Site.Today(at)))
            return new Objection(
                "live-fit-capacity",
                $"You cannot consent as {Words.Of(ask.As)}.",
                $"somebody who can consent as {Words.Of(ask.As)}"
            );
        return order.InRound<LiveFitConsent>().Any(c => c.ById == by.Id)
            ? new Objection(
                "live-fit-twice",
                "You have consented already. Two places take two persons.",
                "another person"
            )
            : null;
    }

    public static Objection? CategoryM(WorkPlan plan) =>
        plan.Category == ServiceCategory.M
            ? new Objection(
                "live-fit-category-m",
                "The fluid is of category M: one breath can do lasting harm. Nobody may consent to work on the live line; isolate it.",
                "nobody; the line is isolated first"
            )
            : null;

    private static bool Holds(Person by, LiveFitCapacity place, DateOnly on) =>
        place switch
        {
            LiveFitCapacity.Supervisor => by.Is(Role.Supervisor),
            LiveFitCapacity.Engineer => by.Is(Role.IntegrityEngineer),
            LiveFitCapacity.Manager => by.Is(Role.Manager),
            _ => Crew.IsOperationsInCharge(by, on),
        };
}
