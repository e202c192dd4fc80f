using RepairOrders.Api.Lines;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Consenting;

/// <summary>A spoken consent, written down by whoever is on shift.</summary>
internal sealed class Consent : SignedRecord<SignedConsent>, IMovesStage
{
    private Consent() { }

    public Consent(SignedConsent body)
        : base(body) { }

    public override string Kind => "consent";

    public override string Summary =>
        $"{Asked.GivenByName}, {Words.Of(Asked.Ask.As)}, at {Asked.Ask.GivenAt:HH:mm} UTC: {Asked.Ask.Said}";

    public Guid GivenBy => Asked.Ask.GivenBy;

    public Stage After(Stage before, RepairOrder order) =>
        Consents.Both(order, Round, this) && Consents.Opens(before) ? Stage.Consented : before;

    /// <summary>Whether consents can be taken at all now.</summary>
    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (Authority.Objection(by, order, at) is { } lapsed)
            return lapsed;
        if (Orders.Objection.NotNow(order, "A consent", Consents.OpenAt) is { } early)
            return early;
        if (Consents.Standing(order, at).Count() > 1)
            return new Objection(
                "consents-stand",
                "Both consents stand. Work may begin once the job is ready.",
                "nobody"
            )
            {
                IsOfStage = true,
            };
        return order.Round > 1
            ? new Objection(
                "emergency-failed-before",
                "This spot has failed before: it is no case for the emergency path. Isolate, or go the normal way.",
                "integrity engineer, by assessing the pipe"
            )
            : null;
    }

    /// <summary>Whether this one can.</summary>
    public static Objection? Objection(
        RepairOrder order,
        RecordConsent ask,
        EmergencyMethod method,
        Person? giver,
        bool failedHere,
        Person by,
        DateTimeOffset at
    ) =>
        Objection(order, by, at)
        ?? OfLine(order, ask)
        ?? method.NotGood(order.Site.Today(at))
        ?? method.DoesNotFit(LineFacts.Of(order, ask.Line, cyclic: false)!)
        ?? EmergencyBars.Objection(LineFacts.Of(order, ask.Line, cyclic: false)!, ask, failedHere)
        ?? OfGiver(order, ask, giver, at)
        ?? OfTheOther(order, ask, at);

    private static Objection? OfLine(RepairOrder order, RecordConsent ask) =>
        order.Line is null && ask.Line is null
            ? new Objection(
                "emergency-line-unknown",
                "The line is not in the line list. Give its size, wall, fluid class and design values with the consent.",
                "whoever writes the consent down"
            )
            : null;

    private static Objection? OfGiver(RepairOrder order, RecordConsent ask, Person? giver, DateTimeOffset at)
    {
        var today = order.Site.Today(at);
        var may =
            giver?.HasAuthority(today) is true
            && (
                ask.As == ConsentCapacity.EngineerOnCall
                    ? giver.Is(Role.IntegrityEngineer)
                    : giver.IsCompetent(Competence.OperationsInCharge, today)
            );
        if (!may)
            return new Objection(
                "consent-capacity",
                $"{giver?.FullName ?? "That person"} cannot consent as {Words.Of(ask.As)}: it takes {(ask.As == ConsentCapacity.EngineerOnCall ? "an integrity engineer" : "the competence operations in charge, in date")}.",
                "somebody who can"
            );
        return order.Records.OfType<Requesting.Request>().Any(r => r.ById == giver!.Id)
            ? new Objection(
                "consent-by-requester",
                $"{giver!.FullName} raised this request and cannot consent to it.",
                "another person of that capacity"
            )
            : null;
    }

    private static Objection? OfTheOther(RepairOrder order, RecordConsent ask, DateTimeOffset at)
    {
        if (ask.GivenAt + Consents.Life(order) < at)
            return new Objection(
                "consent-too-old",
                $"A consent lapses {Consents.Life(order).TotalHours:0} hours after it was given without a start. Ask for it again.",
                "the person who gave it"
            );
        var others = Consents.Standing(order, at).ToList();
        if (others.Any(o => o.Asked.Ask.As == ask.As))
            return new Objection(
                "consent-given-already",
                $"A consent as {Words.Of(ask.As)} stands already. The other one is missing.",
                "nobody"
            );
        if (others.Any(o => o.GivenBy == ask.GivenBy))
            return new Objection(
                "consent-same-person",
                "Four eyes are two persons, whatever roles each holds: the second consent comes from somebody else.",
                "another person of that capacity"
            );
        return others.Any(o => o.Asked.Ask.Method != ask.Method)
            ? new Objection(
                "consent-other-method",
                $"The other consent is for {others[0].Asked.Entry.Name}. Both must be for the same entry of the emergency list.",
                "the person who consents"
            )
            : null;
    }
}
