using RepairOrders.Api.Instruments;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Readying;
using RepairOrders.Contract;

namespace RepairOrders.Api.Fitting;

/// <summary>A hold point signed: what its title says is true, and its evidence is on record.</summary>
internal sealed class HoldPointRelease : SignedRecord<SignedRelease>, IMovesStage
{
    private HoldPointRelease() { }

    public HoldPointRelease(SignedRelease body)
        : base(body) { }

    public override string Kind => "hold-point-release";

    public override string Summary =>
        $"{Asked.Step} {Asked.Title}{(Asked.Ask.Departure is { } d ? $". Departure: {d}" : "")}";

    public override Tone Tone => Asked.Ask.Departure is null ? Tone.Go : Tone.Watch;

    public Stage After(Stage before, RepairOrder order)
    {
        if (before is not (Stage.Ready or Stage.Fitting or Stage.Fitted))
            return before;
        var signed = order
            .All<HoldPointRelease>()
            .Where(r => r.Asked.Plan == Asked.Plan && r.Round == Round && !r.Follows(this))
            .Select(r => r.Asked.Ask.HoldPoint)
            .Distinct()
            .Count();
        return signed == Asked.Of ? Stage.Fitted : Stage.Fitting;
    }

    private bool Follows(HoldPointRelease other) => At > other.At || (At == other.At && Id.CompareTo(other.Id) > 0);

    /// <summary>The release of a point that stands in this round.</summary>
    public static HoldPointRelease? Of(RepairOrder order, WorkPlan plan, string point) =>
        order.InRound<HoldPointRelease>().LastOrDefault(r => r.Asked.Plan == plan.Id && r.Asked.Ask.HoldPoint == point);

    /// <summary>The next point that may be signed: everything before it is.</summary>
    public static HoldPointView? Next(RepairOrder order, WorkPlan plan) =>
        plan.HoldPoints.FirstOrDefault(p => Of(order, plan, p.Code) is null && Waits(order, plan, p) is null);

    /// <summary>What stands against signing the next point.</summary>
    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at)
    {
        if (AtWork.Objection(order, "A hold point", by, at) is { } no)
            return no;
        var plan = WorkPlan.Of(order)!;
        return Next(order, plan) is { } next ? Signer(order, next, by, at) : null;
    }

    /// <summary>What stands against this person signing this point, before its evidence is looked at.</summary>
    public static Objection? Objection(
        RepairOrder order,
        WorkPlan plan,
        HoldPointView point,
        Person by,
        DateTimeOffset at
    ) =>
        AtWork.Objection(order, "A hold point", by, at)
        ?? Signed(order, plan, point)
        ?? OutOfOrder(order, plan, point)
        ?? Signer(order, point, by, at);

    private static Objection? Signed(RepairOrder order, WorkPlan plan, HoldPointView point) =>
        Of(order, plan, point.Code) is { } release
            ? new Objection(
                "hold-point-signed",
                $"{release.By} signed \"{point.Title}\" already.",
                "the signer or supervisor, by striking it through"
            )
            : null;

    private static Objection? OutOfOrder(RepairOrder order, WorkPlan plan, HoldPointView point) =>
        Waits(order, plan, point) is { } first
            ? new Objection(
                "hold-point-out-of-order",
                $"Work may not pass \"{first.Title}\" unsigned; that comes before \"{point.Title}\".",
                $"{first.ReleasedBy}, by signing the point before it"
            )
            : null;

    // A design that names no order is worked from the top down.
    private static HoldPointView? Waits(RepairOrder order, WorkPlan plan, HoldPointView point)
    {
        var first = plan.HoldPoints.Any(p => p.After.Count > 0)
            ? plan.HoldPoints.Where(p => point.After.Contains(p.Code))
            : plan.HoldPoints.TakeWhile(p => p.Code != point.Code);
        return first.FirstOrDefault(p => Of(order, plan, p.Code) is null);
    }

    private static Objection? Signer(RepairOrder order, HoldPointView point, Person by, DateTimeOffset at)
    {
        var (may, who) = point.ReleasedBy switch
        {
            "inspector" => (
                Crew.IsInspector(by, order.Site.Today(at)) && !Crew.Fitted(order, by.Id),
                "an inspector who does not fit here"
            ),
            "supervisor" => (by.Is(Role.Supervisor), "a supervisor"),
            _ => (true, ""),
        };
        if (who.Length == 0)
            return AtWork.NotAFitter(order, by);
        return may ? null : new Objection("wrong-signer", $"\"{point.Title}\" is released by {who}.", who);
    }

    /// <summary>What stands against striking a release through.</summary>
    public static Objection? Striking(RepairOrder order, HoldPointRelease release, Person by)
    {
        if (Orders.Objection.NotNow(order, "A strike-through", Stage.Ready, Stage.Fitting, Stage.Fitted) is { } notNow)
            return notNow;
        if (release.ById != by.Id && !by.Is(Role.Supervisor) && !by.Is(Role.IntegrityEngineer))
            return new Objection(
                "not-your-release",
                $"{release.By} signed this. He strikes it through himself, or a supervisor or engineer does.",
                "the signer, a supervisor or an engineer"
            );
        var plan = WorkPlan.Of(order);
        var leaning = plan?.HoldPoints.FirstOrDefault(p =>
            p.After.Contains(release.Asked.Ask.HoldPoint) && Of(order, plan, p.Code) is not null
        );
        return leaning is null
            ? null
            : new Objection(
                "release-leaned-on",
                $"\"{leaning.Title}\" was signed on top of it. Strike that through first.",
                "the signer, a supervisor or an engineer"
            );
    }
}
