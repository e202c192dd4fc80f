using System.Globalization;
using RepairOrders.Api.Approving;
using RepairOrders.Api.Instruments;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Readying;
using RepairOrders.Contract;

namespace RepairOrders.Api.Fitting;

/// <summary>What a hold point asks for, and whether it is there. No signature without its evidence.</summary>
internal static class HoldPointEvidence
{
    private const int LeastReadings = 2;
    private const int LeastProfileReadings = 3;
    private const int LeastHardnessReadings = 3;

    // Of the qualified value (from memory of ISO 24817 practice).
    private const double LeastHardnessShare = 0.9;

    public static Objection? Objection(
        RepairOrder order,
        WorkPlan plan,
        HoldPointView point,
        ReleaseHoldPoint ask,
        Instrument? instrument,
        Person? witness,
        DateTimeOffset at
    )
    {
        foreach (var evidence in point.Evidence)
            if (Missing(order, plan, point, evidence, ask, at) is { } missing)
                return missing;
        return Read(order, point, instrument, at) ?? Witnessed(order, plan, point, ask, witness, at);
    }

    private static Objection? Missing(
        RepairOrder order,
        WorkPlan plan,
        HoldPointView point,
        Evidence evidence,
        ReleaseHoldPoint ask,
        DateTimeOffset at
    ) =>
        evidence switch
        {
            Evidence.ThicknessReadings => Walls(plan, ask),
            Evidence.DiameterReadings => Diameters(ask),
            Evidence.SurfaceGrade => Surface(ask),
            Evidence.ClimateReading => Climate(order, at),
            Evidence.Mix => MixThere(order, at),
            Evidence.TorqueReadings => Tightening.Objection(plan, ask.Tightening ?? []),
            Evidence.HardnessReading => Hardness(order, ask),
            Evidence.CureLog => CureClock.NotSet(order),
            Evidence.Photo => Photographed(order, point),
            _ => null,
        };

    private static Objection? Walls(WorkPlan plan, ReleaseHoldPoint ask)
    {
        if ((ask.Walls?.Count ?? 0) < LeastReadings)
            return new Objection(
                "walls-missing",
                "Read the wall at both ends at least; two readings or more go with this signature.",
                "technician"
            );
        var thin = ask.Walls!.MinBy(w => w.Wall.Value)!;
        return thin.Wall.Value < plan.Design.LeastWallMm
            ? new Objection(
                "wall-below-design",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"At {thin.Spot} the wall is {thin.Wall.Entered}; the design relies on {plan.Design.LeastWallMm:0.0#} mm. The pipe is not as written: stop the job and say so."
                ),
                "integrity engineer, after the job is stopped as not as written"
            )
            : null;
    }

    private static Objection? Diameters(ReleaseHoldPoint ask) =>
        (ask.Diameters?.Count ?? 0) < LeastReadings
            ? new Objection(
                "diameters-missing",
                "Measure the diameter in two directions at least; ovality shows only so.",
                "technician"
            )
            : null;

    private static Objection? Surface(ReleaseHoldPoint ask) =>
        (ask.Surface?.ProfileUm.Count ?? 0) < LeastProfileReadings
            ? new Objection(
                "surface-missing",
                "Give the grade of the surface and three readings of its profile or more.",
                "technician"
            )
            : null;

    private static Objection? Climate(RepairOrder order, DateTimeOffset at)
    {
        if (ClimateReading.Fresh(order, at) is not { } reading)
            return ClimateReading.NotRead();
        return reading.Asked.Verdicts.FirstOrDefault(v => !v.Go) is { } no
            ? ClimateReading.NoGo(no.Words, no.Findings.First(f => f.Severity == FindingSeverity.Fail).Words)
            : null;
    }

    private static Objection? MixThere(RepairOrder order, DateTimeOffset at)
    {
        if (order.Last<Mix>() is not { } mix)
            return new Objection(
                "mix-missing",
                "No mix is on record. Start it here when its parts meet: batch, ratio and start belong to this point.",
                "technician"
            );
        return Mix.UsedAt(order, mix.Id) is null ? MixUse.Over(mix, at) : null;
    }

    private static Objection? Hardness(RepairOrder order, ReleaseHoldPoint ask)
    {
        if ((ask.ShoreD?.Count ?? 0) < LeastHardnessReadings)
            return new Objection(
                "hardness-missing",
                "Read the hardness in three places at least, Shore D.",
                "technician"
            );
        var wanted = LeastHardness(order);
        var soft = ask.ShoreD!.Min();
        return soft < wanted
            ? new Objection(
                "hardness-short",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The softest reading is {soft} Shore D; at least {wanted:0} is needed, nine tenths of what the maker states. Wait or warm it, read again."
                ),
                "technician, once it is hard; integrity engineer if it stays soft"
            )
            : null;
    }

    /// <summary>The softest reading that will do, Shore D; nothing where no maker states one.</summary>
    public static double? LeastHardness(RepairOrder order) =>
        order.InRound<Mix>().Max(m => m.Asked.Limits.LeastHardness) * LeastHardnessShare;

    private static Objection? Photographed(RepairOrder order, HoldPointView point) =>
        Photo.Of(order, PhotoOf.HoldPoint, point.Code).Any()
            ? null
            : new Objection(
                "photo-missing",
                $"No photograph of \"{point.Title}\" is on record. Take one first.",
                "technician"
            );

    private static Objection? Read(RepairOrder order, HoldPointView point, Instrument? instrument, DateTimeOffset at)
    {
        var kinds = point.Evidence.Select(Measures).OfType<InstrumentKind>().ToArray();
        if (instrument is not null)
            return InstrumentRules.Objection(instrument, order.Site.Today(at), Reads(point.Evidence));
        return kinds.Length == 0
            ? null
            : new Objection(
                "instrument-missing",
                $"Give the serial number of the {string.Join(" or ", kinds.Select(k => Words.Of(k)))} that was read with.",
                "technician"
            );
    }

    private static InstrumentKind? Measures(Evidence evidence) =>
        evidence switch
        {
            Evidence.ThicknessReadings => InstrumentKind.ThicknessGauge,
            Evidence.TorqueReadings => InstrumentKind.TorqueWrench,
            Evidence.HardnessReading => InstrumentKind.HardnessTester,
            _ => null,
        };

    // A tape and a comparator carry no calibration; where a gauge is named, it must be in date.
    private static InstrumentKind[] Reads(IReadOnlyList<Evidence> asked) =>
        [
            .. asked.Select(Measures).OfType<InstrumentKind>(),
            .. asked.Contains(Evidence.DiameterReadings) ? [InstrumentKind.Calliper] : Array.Empty<InstrumentKind>(),
            .. asked.Contains(Evidence.SurfaceGrade) ? [InstrumentKind.ProfileGauge] : Array.Empty<InstrumentKind>(),
        ];

    /// <summary>On A and B cure and hardness are witnessed, on C what the design marks so; D asks for nobody.</summary>
    public static bool AsksWitness(WorkPlan plan, HoldPointView point) =>
        (point.Kind == HoldKind.Witness && plan.Class != RiskClass.D)
        || (
            plan.Class is RiskClass.A or RiskClass.B
            && point.Evidence.Any(e => e is Evidence.CureLog or Evidence.HardnessReading)
        );

    private static Objection? Witnessed(
        RepairOrder order,
        WorkPlan plan,
        HoldPointView point,
        ReleaseHoldPoint ask,
        Person? witness,
        DateTimeOffset at
    )
    {
        if (!AsksWitness(plan, point))
            return null;
        var wanted = plan.Class == RiskClass.C ? "a supervisor" : "an inspector";
        if (ask.Witness is not { } called || called.CalledAt > at)
            return new Objection(
                "witness-not-called",
                $"On class {plan.Class} {wanted} is called to \"{point.Title}\". Call him; if he does not come, that is recorded and work goes on.",
                "technician, by calling the witness"
            );
        return witness is not null && Witnesses.May(order, plan, witness, at)
            ? null
            : new Objection(
                "witness-wrong",
                $"The witness on class {plan.Class} is {wanted} who does not fit here.",
                $"{wanted} who is no fitter of this round"
            );
    }
}

/// <summary>Who may witness: A and B an inspector, C a supervisor; never a fitter.</summary>
internal static class Witnesses
{
    public static bool May(RepairOrder order, WorkPlan plan, Person person, DateTimeOffset at)
    {
        var today = order.Site.Today(at);
        if (Crew.Fitted(order, person.Id) || !person.HasAuthority(today))
            return false;
        return plan.Class is RiskClass.A or RiskClass.B
            ? Crew.IsInspector(person, today)
            : person.Is(Role.Supervisor)
                || Crew.IsInspector(person, today)
                || (person.Is(Role.Manager) && Signatures.ManagerStandsIn(order));
    }
}
