using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Consenting;

/// <summary>The consenter's own word on a consent that somebody wrote down for him.</summary>
internal sealed class Confirmation : SignedRecord<SignedConfirmation>
{
    private Confirmation() { }

    public Confirmation(SignedConfirmation body)
        : base(body) { }

    public override string Kind => "consent confirmation";

    public override string Summary =>
        Asked.Ask.Given ? $"consent confirmed{(Asked.Late ? ", late" : "")}" : $"consent not given: {Asked.Ask.Remark}";

    public override Tone Tone =>
        !Asked.Ask.Given ? Tone.Stop
        : Asked.Late ? Tone.Watch
        : Tone.Go;

    /// <summary>Whether this person has a consent of his to confirm.</summary>
    public static Objection? Objection(RepairOrder order, Person by) =>
        order.InRound<Consent>().Any(c => c.GivenBy == by.Id && !Consents.IsConfirmed(order, c))
            ? null
            : new Objection("nothing-to-confirm", "No consent of yours waits to be confirmed on this order.", "nobody")
            {
                IsOfStage = true,
            };

    public static Objection? Objection(RepairOrder order, Consent consent, Person by)
    {
        if (consent.GivenBy != by.Id)
            return new Objection(
                "not-your-consent",
                $"This consent was given by {consent.Asked.GivenByName}; only he can say so, in his own session.",
                consent.Asked.GivenByName
            );
        return Objection(order, by);
    }
}
