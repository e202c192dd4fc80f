using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Sizing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Choosing;

/// <summary>The method chosen, the others considered, and what all of them claimed at that moment.</summary>
internal sealed class Choice : SignedRecord<SignedChoice>, IMovesStage
{
    private Choice() { }

    public Choice(SignedChoice body)
        : base(body) { }

    public override string Kind => "choice";

    public override string Summary =>
        $"{Name}; not {string.Join(", ", Asked.Ask.Considered.Select(c => $"{c.Method} ({c.WhyNot})"))}";

    /// <summary>The method's name.</summary>
    public string Name => Asked.Claims.FirstOrDefault(c => c.Method == Asked.Ask.Method)?.Name ?? Asked.Ask.Method;

    public Stage After(Stage before, RepairOrder order) => Planning.After(before, this, order, Stage.Chosen);

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Planning.NotOpen(order, "A choice")
        ?? Authority.Objection(by, order, at)
        ?? Claims.NotAssessed(order)
        ?? OnThePipe(order);

    public static Objection? Objection(
        RepairOrder order,
        ChooseMethod ask,
        ClaimView claim,
        Person by,
        DateTimeOffset at
    ) =>
        Objection(order, by, at)
        ?? NotTheOneOnThePipe(order, ask)
        ?? Alternative(ask)
        ?? Claims.Objection(order, claim, by.Id);

    private static Objection? NotTheOneOnThePipe(RepairOrder order, ChooseMethod ask) =>
        WorkPlan.Of(order) is { Emergency: true } plan && Rounds.SomethingOnThePipe(order) && plan.Method != ask.Method
            ? new Objection(
                "not-on-the-pipe",
                $"What was fitted in the emergency is {plan.Method}. Choose that, with a deviation where it is outside its limits, or have it taken off.",
                "integrity engineer"
            )
            : null;

    private static Objection? OnThePipe(RepairOrder order) =>
        Planning.InService(order) && order.Last<Choice>() is not null
            ? new Objection(
                "method-on-the-pipe",
                "A repair is in service: another method means taking it off, or a new round. Dates and limits are changed by a new assessment and design.",
                "integrity engineer, by ordering removal"
            )
            {
                IsOfStage = true,
            }
            : null;

    private static Objection? Alternative(ChooseMethod ask) =>
        ask.Considered.Any(c => c.Method != ask.Method)
            ? null
            : new Objection(
                "no-alternative",
                "No other method was considered. Name one at least, and why not.",
                "integrity engineer"
            );
}
