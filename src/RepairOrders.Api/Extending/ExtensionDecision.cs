using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Standing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Extending;

/// <summary>One signature on an extension.</summary>
internal sealed class ExtensionDecision : SignedRecord<SignedDecision>
{
    private ExtensionDecision() { }

    public ExtensionDecision(SignedDecision body)
        : base(body) { }

    public override string Kind => "extension-decision";

    public override string Summary =>
        $"{(Asked.Ask.Grant ? "granted" : "refused")} as {Words.Of(Asked.As)}{(Asked.EndDate is { } end ? $"; the end date is {end:yyyy-MM-dd}" : "")}{(string.IsNullOrWhiteSpace(Asked.Ask.Why) ? "" : $": {Asked.Ask.Why}")}";

    public override Tone Tone => Asked.Ask.Grant ? Tone.Go : Tone.Stop;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (Orders.Objection.NotNow(order, "A decision", Stage.InService, Stage.LineOutOfService) is { } closed)
            return closed;
        if (Extension.Pending(order) is not { } extension)
            return new Objection(
                "no-extension-waits",
                "No extension waits for a decision.",
                "supervisor, by asking for one"
            )
            {
                IsOfStage = true,
            };
        return Authority.Objection(by, order, at) ?? OfPerson(order, extension, by, at);
    }

    public static Objection? Objection(RepairOrder order, DecideExtension ask, Person by, DateTimeOffset at)
    {
        if (Objection(order, by, at) is { } no)
            return no;
        var extension = Extension.Pending(order)!;
        if (extension.Id != ask.Extension)
            return new Objection(
                "other-extension",
                "That is not the extension that waits. Read the order again.",
                "the decider, after reading it again"
            );
        if (!ask.Grant)
            return string.IsNullOrWhiteSpace(ask.Why)
                ? new Objection("refusal-without-reason", "Say why it is refused.", "the decider")
                : null;
        if (EndInForce.Of(order)?.On != extension.Asked.From)
            return new Objection(
                "end-date-moved-since",
                $"The end date has moved since this was asked: it was {extension.Asked.From:yyyy-MM-dd}. Refuse it and have it asked again.",
                "supervisor, by asking again"
            );
        return ExtensionRules.Of(order, extension.Asked, at);
    }

    /// <summary>The places the extension needs filled, that are not.</summary>
    public static IReadOnlyList<ExtensionCapacity> Missing(RepairOrder order, Extension extension, DateTimeOffset at) =>
        [
            .. ExtensionRules
                .Needed(extension.Asked.Risk.Class, ExtensionRules.AfterEnd(order, at))
                .Except(extension.Decisions(order).Select(d => d.Asked.As)),
        ];

    /// <summary>The place this person fills; nothing where he can fill none.</summary>
    public static ExtensionCapacity? Place(RepairOrder order, Extension extension, Person by, DateTimeOffset at) =>
        Missing(order, extension, at)
            .Select(p => (ExtensionCapacity?)p)
            .FirstOrDefault(p => Fills(order, by, p!.Value));

    private static Objection? OfPerson(RepairOrder order, Extension extension, Person by, DateTimeOffset at)
    {
        if (extension.ById == by.Id)
            return new Objection(
                "own-extension",
                "You asked for this extension, so others decide on it.",
                string.Join(", ", Missing(order, extension, at).Select(p => Words.Of(p)))
            );
        if (extension.Decisions(order).Any(d => d.ById == by.Id))
            return new Objection(
                "decided-already",
                "You have decided on this extension already. Four eyes are two persons.",
                string.Join(", ", Missing(order, extension, at).Select(p => Words.Of(p)))
            );
        return Place(order, extension, by, at) is not null
            ? null
            : new Objection(
                "extension-capacity",
                $"Class {extension.Asked.Risk.Class} still asks for: {string.Join(", ", Missing(order, extension, at).Select(p => Words.Of(p)))}. You cannot sign as that.",
                string.Join(", ", Missing(order, extension, at).Select(p => Words.Of(p)))
            );
    }

    private static bool Fills(RepairOrder order, Person by, ExtensionCapacity place) =>
        place switch
        {
            ExtensionCapacity.Engineer => by.Is(Role.IntegrityEngineer),
            ExtensionCapacity.Manager => by.Is(Role.Manager),
            ExtensionCapacity.SecondEngineer => IsSecond(order, by),
            _ => by.Is(Role.Manager) || IsSecond(order, by),
        };

    private static bool IsSecond(RepairOrder order, Person by)
    {
        var design = order.ApprovedDesign;
        return by.Is(Role.IntegrityEngineer)
            && design?.ById != by.Id
            && (design is null || ExtensionRules.AssessmentOf(order, design)?.ById != by.Id);
    }
}
