using RepairOrders.Api.Consenting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Sizing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Approving;

/// <summary>One signature under a design. It names the design by its fingerprint, so a changed design needs new ones.</summary>
internal sealed class Approval : SignedRecord<ApproveOrder>, IMovesStage
{
    private Approval() { }

    public Approval(ApproveOrder ask)
        : base(ask) { }

    public override string Kind => "approval";

    public override string Summary =>
        $"as {Words.Of(Asked.As)}{(string.IsNullOrWhiteSpace(Asked.Remark) ? "" : $": {Asked.Remark}")}";

    public Stage After(Stage before, RepairOrder order) =>
        !Signatures.CompletesAt(this, order) ? before
        : before == Stage.Consented ? Stage.Approved
        : Planning.After(before, this, order, Stage.Approved);

    /// <summary>What stands against this person signing at all, in any capacity.</summary>
    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (Before(order, by, at) is { } no)
            return no;
        var design = order.PendingDesign!;
        var places = Signatures.Missing(order, design).Select(c => Place(order, design, c, by, at)).ToList();
        return places.Contains(null) ? null : places[0];
    }

    /// <summary>What stands against this signature.</summary>
    public static Objection? Objection(RepairOrder order, ApproveOrder ask, Person by, DateTimeOffset at)
    {
        if (Before(order, by, at) is { } no)
            return no;
        var design = order.PendingDesign!;
        if (ask.Fingerprint != design.Asked.Fingerprint)
            return new Objection(
                "design-changed",
                "The design is not the one that was on your screen. Read the order again and sign what you see.",
                "the signer, after reading it again"
            );
        return Signatures.Missing(order, design).Contains(ask.As)
            ? Place(order, design, ask.As, by, at)
            : new Objection(
                "place-filled",
                $"No signature as {Words.Of(ask.As)} is missing. Class {design.Asked.Risk.Class} still asks for: {Words.List<ApprovalCapacity>([.. Signatures.Missing(order, design)])}.",
                "somebody who can sign in a capacity that is missing"
            );
    }

    private static Objection? Before(RepairOrder order, Person by, DateTimeOffset at) =>
        Planning.NotOpen(order, "An approval")
        ?? Authority.Objection(by, order, at)
        ?? NothingToSign(order)
        ?? FactsChanged(order, order.PendingDesign!)
        ?? Oneself(order, order.PendingDesign!, by);

    private static Objection? NothingToSign(RepairOrder order) =>
        order.PendingDesign is null
            ? new Objection(
                "nothing-to-sign",
                "There is no design that awaits signatures.",
                "integrity engineer, by sizing the repair"
            )
            {
                IsOfStage = true,
            }
            : null;

    private static Objection? FactsChanged(RepairOrder order, Design design)
    {
        if (order.Last<Assessing.Assessment>()!.Id != design.Asked.Assessment)
            return new Objection(
                "assessed-since",
                "The pipe was assessed again after the design was made. Size it again, then sign.",
                "integrity engineer"
            );
        if (
            order.Surroundings.Shutdowns.FirstOrDefault(s =>
                s.Name == design.Asked.ShutdownName && s.StartsOn < design.Asked.EndDate.On
            ) is
            { } sooner
        )
            return new Objection(
                "shutdown-brought-forward",
                $"{sooner.Name} was brought forward to {sooner.StartsOn:yyyy-MM-dd}, before the end date of the design. Size it again, then sign.",
                "integrity engineer"
            );
        return Assessing.Judging.FactsOf(order) != design.Asked.Facts
            ? new Objection(
                "facts-changed",
                "The line list says something else than when the repair was sized. Size it again, then sign.",
                "integrity engineer"
            )
            : null;
    }

    private static Objection? Oneself(RepairOrder order, Design design, Person by)
    {
        if (order.Records.OfType<Requesting.Request>().Any(r => r.ById == by.Id))
            return new Objection(
                "own-request",
                "You raised this request, so another person must approve it.",
                "another person of the role that is missing"
            );
        return Signatures.Under(order, design).Any(a => a.ById == by.Id)
            ? new Objection(
                "signed-already",
                "You have signed this design already. Four eyes are two persons, whatever roles each holds.",
                "another person"
            )
            : null;
    }

    private static Objection? Place(
        RepairOrder order,
        Design design,
        ApprovalCapacity place,
        Person by,
        DateTimeOffset at
    )
    {
        if (!Holds(order, by, place))
            return new Objection(
                "capacity",
                $"You cannot sign as {Words.Of(place)}: that takes the role. The manager signs as supervisor only where one supervisor is all there is, for what he raised or fitted.",
                $"somebody who can sign as {Words.Of(place)}"
            );
        return Authority.Scope(by, Words.Of(place))
            ?? Signatures.OwnWork(order, design, place, by)
            ?? OnlyConsenters(order, design, by);
    }

    private static bool Holds(RepairOrder order, Person by, ApprovalCapacity place) =>
        place switch
        {
            ApprovalCapacity.Supervisor => by.Is(Role.Supervisor)
                || (by.Is(Role.Manager) && Signatures.ManagerStandsIn(order)),
            ApprovalCapacity.Engineer => by.Is(Role.IntegrityEngineer),
            _ => by.Is(Role.Manager),
        };

    private static Objection? OnlyConsenters(RepairOrder order, Design design, Person by)
    {
        var consenters = order.InRound<Consent>().Select(c => c.GivenBy).ToHashSet();
        var signers = Signatures.Under(order, design).Select(a => a.ById).Append(by.Id);
        return
            consenters.Count > 0 && Signatures.Missing(order, design).Count() == 1 && signers.All(consenters.Contains)
            ? new Objection(
                "all-consented",
                "Every approver would be somebody who consented. At least one must be somebody who gave no consent.",
                "a person of the same capacity who gave no consent"
            )
            : null;
    }
}
