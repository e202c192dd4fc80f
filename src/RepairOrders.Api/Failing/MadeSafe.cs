using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Standing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Failing;

/// <summary>The failed repair isolated, or contained under a watch.</summary>
internal sealed class MadeSafe : SignedRecord<SignedMadeSafe>, IMovesStage
{
    private MadeSafe() { }

    public MadeSafe(SignedMadeSafe body)
        : base(body) { }

    public override string Kind => "made-safe";

    public override string Summary =>
        Asked.Ask.By == SafeBy.Isolation
            ? $"isolated, certificate {Asked.Ask.IsolationCertificate}"
            : $"contained: {Asked.Ask.Controls}; watched by {Asked.Ask.WatchBy}{(Asked.ManagerNeeded ? "; the manager has to agree" : "")}";

    public override Tone Tone => Asked.Ask.By == SafeBy.Isolation ? Tone.Go : Tone.Watch;

    public bool Contained => Asked.Ask.By == SafeBy.Containment;

    // Containment in place of an isolation is no safer than containment at once: it waits for the manager all the same.
    public Stage After(Stage before, RepairOrder order) =>
        before is not (Stage.Failed or Stage.MadeSafe) ? before
        : Asked.ManagerNeeded ? Stage.Failed
        : Stage.MadeSafe;

    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        Orders.Objection.NotNow(order, "A made-safe", Stage.Failed, Stage.MadeSafe)
        ?? Authority.Objection(by, order, at)
        ?? (
            by.IsCompetent(Competence.OperationsInCharge, order.Site.Today(at))
                ? null
                : new Objection(
                    "operations-in-charge-needed",
                    "Making safe is signed by operations in charge, with that competence in date.",
                    "operations in charge"
                )
        );

    public static Objection? Objection(RepairOrder order, MakeSafe ask, Person by, DateTimeOffset at) =>
        Objection(order, by, at)
        ?? (ask.By == SafeBy.Isolation ? OfIsolation(ask) : OfContainment(order, ask))
        ?? StandIn(order, ask);

    /// <summary>Containment on class A holds only with the manager.</summary>
    public static bool NeedsManager(RepairOrder order, MakeSafe ask, Person by, DateTimeOffset at) =>
        ask.By == SafeBy.Containment && ClassHistory.At(order, at) == RiskClass.A && !by.Is(Role.Manager);

    private static Objection? OfIsolation(MakeSafe ask) =>
        string.IsNullOrWhiteSpace(ask.IsolationCertificate)
            ? new Objection(
                "isolation-certificate-missing",
                "The line is said to be isolated and no certificate is named. Give its number: the valves, blinds and locks stand on it.",
                "operations in charge"
            )
            : null;

    private static Objection? OfContainment(RepairOrder order, MakeSafe ask)
    {
        if (Facts.AboveAutoIgnition(order))
            return new Objection(
                "never-contained-above-auto-ignition",
                "The fluid is above its auto-ignition temperature: a leak may take fire by itself. Isolate the line; it is never contained.",
                "operations in charge, by isolating the line"
            );
        if (string.IsNullOrWhiteSpace(ask.Controls))
            return new Objection(
                "controls-not-named",
                "Name the controls that contain the leak: tray, screen, pressure cut, drain.",
                "operations in charge"
            );
        if (!ask.AreaBarred)
            return new Objection(
                "area-not-barred",
                "Bar the area first: a contained leak is watched from outside it.",
                "operations in charge"
            );
        return string.IsNullOrWhiteSpace(ask.WatchBy)
            ? new Objection("no-watch", "Say who watches the contained leak and how often.", "operations in charge")
            : null;
    }

    private static Objection? StandIn(RepairOrder order, MakeSafe ask) =>
        Facts.SafetyCritical(order) && string.IsNullOrWhiteSpace(ask.StandIn)
            ? new Objection(
                "no-stand-in",
                "The line protects people and its duty is lost or at risk. Say what stands in for it meanwhile: a fire watch, a hired pump, another main.",
                "operations in charge"
            )
            : null;
}
