using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Readying;
using RepairOrders.Contract;

namespace RepairOrders.Api.Proving;

/// <summary>One signature under a waiver of the test, with the examination made instead.</summary>
internal sealed class TestWaiver : SignedRecord<WaiveTest>
{
    private TestWaiver() { }

    public TestWaiver(WaiveTest ask)
        : base(ask) { }

    public override string Kind => "test-waiver";

    public override string Summary => $"as {Words.Of(Asked.As)}: {Asked.Why}. Instead: {Asked.Substitute}";

    public override Tone Tone => Tone.Watch;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Orders.Objection.NotNow(order, "A waiver of the test", Stage.Fitting, Stage.Fitted)
        ?? Authority.Objection(by, order, at);

    /// <summary>What stands against this signature.</summary>
    public static Objection? Objection(RepairOrder order, WaiveTest ask, Person by, DateTimeOffset at)
    {
        if (Objection(order, by, at) is { } no)
            return no;
        var holds = ask.As switch
        {
            WaiverCapacity.Engineer => by.Is(Role.IntegrityEngineer),
            WaiverCapacity.Inspector => Crew.IsInspector(by, order.Site.Today(at)) && !Crew.Fitted(order, by.Id),
            _ => by.Is(Role.Manager),
        };
        if (!holds)
            return new Objection(
                "waiver-capacity",
                $"You cannot waive a test as {Words.Of(ask.As)}{(ask.As == WaiverCapacity.Inspector ? "; the inspector is no fitter of this round" : "")}.",
                $"somebody who can sign as {Words.Of(ask.As)}"
            );
        return order.InRound<TestWaiver>().Any(w => w.ById == by.Id || w.Asked.As == ask.As)
            ? new Objection(
                "waiver-signed",
                $"You, or somebody as {Words.Of(ask.As)}, signed this waiver already. Two places take two persons.",
                "another person"
            )
            : null;
    }
}

/// <summary>Whether a test is waived: engineer and inspector, on class A the manager too.</summary>
internal static class Waivers
{
    public static IEnumerable<WaiverCapacity> Missing(RepairOrder order, WorkPlan plan)
    {
        WaiverCapacity[] needed =
            plan.Class == RiskClass.A
                ? [WaiverCapacity.Engineer, WaiverCapacity.Inspector, WaiverCapacity.Manager]
                : [WaiverCapacity.Engineer, WaiverCapacity.Inspector];
        return needed.Except(order.InRound<TestWaiver>().Select(w => w.Asked.As));
    }

    public static Objection? Objection(RepairOrder order, WorkPlan plan) =>
        Missing(order, plan).ToArray() is { Length: > 0 } missing
            ? new Objection(
                "no-test",
                $"No leak test is recorded. Test it, or ask for a signed waiver with another examination; missing under it: {Words.List<WaiverCapacity>(missing)}.",
                "technician, by the test; or who waives it"
            )
            : null;
}
