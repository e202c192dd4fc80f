using System.Globalization;
using RepairOrders.Api.Consenting;
using RepairOrders.Api.Figures;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Issuing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Standing;
using RepairOrders.Contract;
using RepairOrders.Engineering.Methods;

namespace RepairOrders.Api.Readying;

/// <summary>The job made ready for one permit window: permit, isolation or consents, gas test, fitters and talk.</summary>
internal sealed class Readiness : SignedRecord<SignedReadiness>, IMovesStage
{
    private Readiness() { }

    public Readiness(SignedReadiness body)
        : base(body) { }

    public override string Kind => "readiness";

    public override string Summary =>
        $"{(Asked.Ask.For == ReadinessFor.Removal ? "removal, " : "")}permit {Asked.Ask.Permit} until {Asked.Ask.PermitUntil:yyyy-MM-dd HH:mm} UTC, {(Asked.Live ? "line live" : $"isolated, certificate {Asked.Ask.Isolation!.Certificate}")}, {string.Join(" and ", Asked.Fitters.Select(f => f.Name))}";

    public override Tone Tone => Asked.Live ? Tone.Watch : Tone.Go;

    public Stage After(Stage before, RepairOrder order) =>
        Asked.Ask.For == ReadinessFor.Fit && before is Stage.Approved or Stage.Consented or Stage.Issued
            ? Stage.Ready
            : before;

    /// <summary>The readiness that counts now: the last one signed for this kind of work in the round.</summary>
    public static Readiness? Current(RepairOrder order, ReadinessFor what) =>
        order.InRound<Readiness>().LastOrDefault(r => r.Asked.Ask.For == what);

    /// <summary>What stands against readying the order at all, for the fit or, once it is ordered, for the removal.</summary>
    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        ToFit(order, by, at) is { IsOfStage: true } closed
            ? ToRemove(order, by, at) is { IsOfStage: true }
                ? closed
                : ToRemove(order, by, at)
            : ToFit(order, by, at);

    /// <summary>What stands against this readiness.</summary>
    public static Objection? Objection(
        RepairOrder order,
        ReadyOrder ask,
        IReadOnlyList<Person> fitters,
        Person by,
        DateTimeOffset at
    ) => ask.For == ReadinessFor.Removal ? Removal(order, ask, fitters, by, at) : Fit(order, ask, fitters, by, at);

    private static Objection? ToFit(RepairOrder order, Person by, DateTimeOffset at) =>
        NotOpen(order) ?? Authority.Objection(by, order, at) ?? ConsentsLapsed(order, at) ?? ApprovalOld(order, at);

    private static Objection? ToRemove(RepairOrder order, Person by, DateTimeOffset at) =>
        Removing.Removal.NotOpen(order) ?? Authority.Objection(by, order, at);

    private static Objection? Fit(
        RepairOrder order,
        ReadyOrder ask,
        IReadOnlyList<Person> fitters,
        Person by,
        DateTimeOffset at
    )
    {
        if (ToFit(order, by, at) is { } no)
            return no;
        var plan = WorkPlan.Of(order)!;
        return Permit.Window(order, ask.Permit, ask.PermitFrom, ask.PermitUntil, at)
            ?? Hot(plan, ask)
            ?? (ask.Isolation is null ? Live(order, plan, ask) : Dead(ask))
            ?? Gas.Objection(ask, at)
            ?? Manned(order, plan, plan.Class, ask, fitters)
            ?? Talk(ask, fitters)
            ?? Rescue(ask);
    }

    private static Objection? Removal(
        RepairOrder order,
        ReadyOrder ask,
        IReadOnlyList<Person> fitters,
        Person by,
        DateTimeOffset at
    ) =>
        ToRemove(order, by, at)
        ?? Permit.Window(order, ask.Permit, ask.PermitFrom, ask.PermitUntil, at)
        ?? RemovalLive(ask)
        ?? Dead(ask)
        ?? Gas.Objection(ask, at)
        ?? Manned(order, WorkPlan.Of(order), ClassHistory.Signed(order) ?? RiskClass.A, ask, fitters)
        ?? Talk(ask, fitters)
        ?? Rescue(ask);

    private static Objection? NotOpen(RepairOrder order)
    {
        var plan = WorkPlan.Of(order);
        if (plan is { Emergency: true })
            return Orders.Objection.NotNow(order, "A readiness", Stage.Consented, Stage.Ready, Stage.Fitting);
        return order.Stage == Stage.Approved && plan is not null && Bill.Complete(order, plan)
            ? null
            : Orders.Objection.NotNow(order, "A readiness", Stage.Issued, Stage.Ready, Stage.Fitting);
    }

    private static Objection? ConsentsLapsed(RepairOrder order, DateTimeOffset at) =>
        WorkPlan.Of(order) is { Emergency: true } ? Consents.NotStanding(order, at) : null;

    private static Objection? ApprovalOld(RepairOrder order, DateTimeOffset at)
    {
        if (order.InRound<Approving.Approval>().LastOrDefault() is not { } approval)
            return null;
        var seen = order.Records.Any(r => r.Stands && r.Kind == "visit" && r.At > approval.At);
        return (at - approval.At).TotalDays <= DecidedUnder.Figures(order).ApprovalStandsDays || seen
            ? null
            : new Objection(
                "approval-old",
                $"The approval is {(at - approval.At).Days} days old and nobody has looked at the pipe since. Visit it, or have the design approved again.",
                "technician, by a visit; or the approvers"
            );
    }

    private static Objection? Hot(WorkPlan plan, ReadyOrder ask) =>
        ask.PermitKind != PermitKind.Hot && MethodCatalogue.All.Any(m => m.Code == plan.Method && m.Welded)
            ? new Objection(
                "hot-permit-missing",
                $"The {Words.Lower(plan.Name)} is welded: it takes a permit for hot work.",
                "permit issuer"
            )
            : null;

    private static Objection? Dead(ReadyOrder ask)
    {
        var isolation = ask.Isolation!;
        if (isolation.Reading.Value > 0.05)
            return new Objection(
                "not-dead",
                $"The gauge at the pipe shows {isolation.Reading.Entered}: the line is not dead. Drain and vent it, prove it again.",
                "operations"
            );
        return Same(isolation.ProvedDeadBy, isolation.ProvedDeadWith)
            ? new Objection(
                "proved-dead-alone",
                "Proving dead takes two persons, one of operations and the technician.",
                "operations, with the technician"
            )
            : null;
    }

    private static bool Same(string one, string other) =>
        string.Equals(one.Trim(), other.Trim(), StringComparison.OrdinalIgnoreCase);

    private static Objection? Live(RepairOrder order, WorkPlan plan, ReadyOrder ask)
    {
        if (LiveFitConsent.CategoryM(plan) is { } barred)
            return barred;
        var missing = LiveFitConsent.Missing(order, plan).ToArray();
        if (missing.Length > 0)
            return new Objection(
                "not-isolated",
                $"No isolation certificate and no live-fit consent. Ask operations for the certificate number; on class {plan.Class} a live fit takes the consent of: {Words.List<LiveFitCapacity>(missing)}.",
                "operations, by isolating; or who can consent to a live fit"
            );
        if (ask.LivePressure is not { } pressure)
            return new Objection(
                "live-pressure-missing",
                "The line is live and no pressure reading is given. Read the gauge at the pipe.",
                "supervisor"
            );
        var most = plan.Limits?.Pressure?.Value ?? plan.Design.PressureHeldBar;
        return pressure.Value > most
            ? new Objection(
                "live-pressure-high",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The line is at {pressure.Entered}; the design allows {most:0.##} bar. Have the pressure cut first."
                ),
                "operations"
            )
            : null;
    }

    // A failed repair of an earlier round comes off without a plan of this one: then any technician may be named.
    private static Objection? Manned(
        RepairOrder order,
        WorkPlan? plan,
        RiskClass riskClass,
        ReadyOrder ask,
        IReadOnlyList<Person> fitters
    )
    {
        var lastDay = order.Site.Today(ask.PermitUntil);
        if (fitters.FirstOrDefault(f => !Crew.MayFit(f, plan?.Method, lastDay)) is { } who)
            return new Objection(
                "competence-lapsed",
                $"{who.FullName} is no technician with {(plan is null ? "an authority" : $"a competence in the {Words.Lower(plan.Name)}")} that lasts until {lastDay:yyyy-MM-dd}.",
                "administrator, who keeps competences; supervisor, with another fitter"
            );
        return riskClass is RiskClass.A or RiskClass.B && fitters.Count < 2
            ? new Objection(
                "two-fitters",
                $"Class {riskClass} is worked on by two. Name the second fitter.",
                "supervisor"
            )
            : null;
    }

    private static Objection? Talk(ReadyOrder ask, IReadOnlyList<Person> fitters) =>
        fitters.FirstOrDefault(f => !ask.TalkSignedBy.Contains(f.Id)) is { } who
            ? new Objection(
                "talk-not-signed",
                $"{who.FullName} has not signed the safety talk.",
                "supervisor, by holding the talk"
            )
            : null;

    private static Objection? Rescue(ReadyOrder ask) =>
        ask.PermitKind == PermitKind.ConfinedSpace && string.IsNullOrWhiteSpace(ask.Standby)
            ? new Objection(
                "standby-missing",
                "In a confined space somebody stands by for rescue. Name him.",
                "supervisor"
            )
            : null;

    private static Objection? RemovalLive(ReadyOrder ask) =>
        ask.Isolation is null
            ? new Objection(
                "removal-on-dead-line",
                "A repair comes off a dead line only. Have the line isolated and proved dead.",
                "operations"
            )
            : null;
}
