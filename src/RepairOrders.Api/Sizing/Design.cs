using System.Globalization;
using RepairOrders.Api.Assessing;
using RepairOrders.Api.Choosing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Sizing;

/// <summary>The method design with its dates, owner, limits and references: all that the approvers sign.</summary>
internal sealed class Design : SignedRecord<SignedDesign>, IMovesStage
{
    private Design() { }

    public Design(SignedDesign body)
        : base(body) { }

    public override string Kind => "design";

    public override string Summary =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Asked.Method.Name}{(Asked.Method.Entered ? " (entered)" : "")}, class {Asked.Risk.Class}, to {Asked.EndDate.On:yyyy-MM-dd} ({Asked.EndDate.Governing.Words})"
        );

    public Stage After(Stage before, RepairOrder order) => Planning.After(before, this, order, Stage.Sized);

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Planning.NotOpen(order, "A design")
        ?? Authority.Objection(by, order, at)
        ?? Claims.NotAssessed(order)
        ?? NotChosen(order)
        ?? NoLongerAllowed(order);

    /// <summary>The objections to signing a design that has been reckoned.</summary>
    public static Objection? Objection(RepairOrder order, SignedDesign design, DateTimeOffset at) =>
        DesignRules.Objection(order, design, at);

    private static Objection? NotChosen(RepairOrder order)
    {
        var choice = order.Last<Choice>();
        if (choice is not null && (Planning.InService(order) || choice.IsAfter(order.Last<Assessment>())))
            return null;
        return new Objection(
            "not-chosen",
            choice is null
                ? "No method is chosen in this round. Choose one first."
                : "The pipe was assessed again after the method was chosen. Choose again.",
            "integrity engineer"
        )
        {
            IsOfStage = choice is null,
        };
    }

    // The limits are asked again: in service, a fresh assessment may have put the pipe outside them.
    private static Objection? NoLongerAllowed(RepairOrder order)
    {
        var choice = order.Last<Choice>()!;
        var claim = Claims.Of(order, choice.ById).First(c => c.Method == choice.Asked.Ask.Method);
        return Claims.Objection(order, claim, choice.ById);
    }
}
