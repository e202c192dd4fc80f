using RepairOrders.Api.Assessing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Choosing;

/// <summary>A second engineer's signature for going past a method's limits, or for the same method again where it failed.</summary>
internal sealed class Deviation : SignedRecord<SignedDeviation>
{
    public const string SameMethodAgain = "same-method-again";
    public const string EnteredDesign = "entered-design";

    private Deviation() { }

    public Deviation(SignedDeviation body)
        : base(body) { }

    public override string Kind => "deviation";

    public override string Summary => $"{Asked.Ask.Method} past {string.Join(", ", Asked.Covers)}: {Asked.Ask.Basis}";

    public override Tone Tone => Tone.Watch;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Planning.NotOpen(order, "A deviation")
        ?? Authority.Objection(by, order, at)
        ?? Claims.NotAssessed(order)
        ?? (
            order.Last<Assessment>()!.ById == by.Id
                ? new Objection(
                    "second-engineer-needed",
                    "A deviation is signed by a second engineer: not by the one who assessed the pipe.",
                    "another integrity engineer"
                )
                : null
        );

    /// <summary>Whether this one may be signed, given what the method claims.</summary>
    public static Objection? Objection(ClaimView claim, IReadOnlyList<string> covers)
    {
        if (claim.Findings.FirstOrDefault(f => f.Absolute && f.Severity == FindingSeverity.Fail) is { } limit)
            return new Objection(
                "absolute-limit",
                $"Nobody may sign past this limit. {limit.Words} Choose another method.",
                "nobody; another method or the permanent fix"
            );
        return covers.Count > 0
            ? null
            : new Objection(
                "nothing-to-deviate",
                $"The {Words.Lower(claim.Name)} is inside its limits here: there is nothing to deviate from.",
                "nobody; choose the method"
            );
    }
}
