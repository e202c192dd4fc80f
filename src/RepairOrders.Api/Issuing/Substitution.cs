using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Issuing;

/// <summary>What an engineer agreed to.</summary>
/// <param name="Ask">Line, item and reason.</param>
/// <param name="Plan">The design or emergency entry.</param>
/// <param name="Need">What the bill names.</param>
/// <param name="Words">What stands in.</param>
internal sealed record SignedSubstitution(AgreeSubstitution Ask, Guid Plan, string Need, string Words);

/// <summary>An engineer's agreement that something else is issued than the bill names.</summary>
internal sealed class Substitution : SignedRecord<SignedSubstitution>
{
    private Substitution() { }

    public Substitution(SignedSubstitution body)
        : base(body) { }

    public override string Kind => "substitution";

    public override string Summary => $"{Asked.Words} for {Asked.Need}: {Asked.Ask.Why}";

    public static bool Agreed(RepairOrder order, WorkPlan plan, int line, string item) =>
        order
            .InRound<Substitution>()
            .Any(s => s.Asked.Plan == plan.Id && s.Asked.Ask.Line == line && s.Asked.Ask.Item == item);

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Orders.Objection.NotNow(
            order,
            "A substitution",
            Stage.Approved,
            Stage.Issued,
            Stage.Ready,
            Stage.Consented,
            Stage.Fitting
        ) ?? Authority.Objection(by, order, at);
}
