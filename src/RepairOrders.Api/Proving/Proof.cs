using System.Globalization;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Instruments;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;
using RepairOrders.Engineering.Curing;
using UnitsNet;

namespace RepairOrders.Api.Proving;

/// <summary>The repair proved: a test, or the waiver it rests on, and the tag. One that leaks has failed.</summary>
internal sealed class Proof : SignedRecord<SignedProof>, IMovesStage
{
    // ASME B31.3, 345.2.2: held for at least ten minutes. A service test is held the same at each step (own rule).
    private const double LeastHoldMin = 10;

    private Proof() { }

    public Proof(SignedProof body)
        : base(body) { }

    public override string Kind => "proof";

    public override string Summary =>
        Asked.Ask.Test is { } test
            ? $"{Words.Of(test.Kind)} test, {test.Pressure.Entered} for {test.Hold.Entered} with {test.Medium}: {(test.Tight ? "tight" : $"leaked{(test.Seen is { } seen ? $", {seen}" : "")}")}; {Tag}"
            : $"test waived; {Tag}";

    private string Tag => Asked.Ask.Tag is { } tag ? $"tag {tag}" : "no tag";

    public override Tone Tone =>
        Asked.Failed ? Tone.Stop
        : Asked.Ask.Test is null || Asked.Ask.Departure is not null ? Tone.Watch
        : Tone.Go;

    public Stage After(Stage before, RepairOrder order) =>
        Asked.Failed && before == Stage.Fitted ? Stage.Failed : before;

    /// <summary>The proof that counts in this round; nothing before there is one.</summary>
    public static Proof? Of(RepairOrder order) => order.Last<Proof>();

    /// <summary>What stands against proving the repair at all.</summary>
    public static Objection? Objection(RepairOrder order, Person by, DateTimeOffset at) =>
        PointsOpen(order)
        ?? Orders.Objection.NotNow(order, "A proof", Stage.Fitted)
        ?? Authority.Objection(by, order, at)
        ?? Stop.Objection(order);

    private static Objection? PointsOpen(RepairOrder order)
    {
        if (order.Stage != Stage.Fitting || WorkPlan.Of(order) is not { } plan)
            return null;
        var open = plan.HoldPoints.Where(p => HoldPointRelease.Of(order, plan, p.Code) is null).ToList();
        return open.Count == 0
            ? null
            : new Objection(
                "hold-points-open",
                $"Hold points are unsigned: {string.Join("; ", open.Select(p => p.Title))}.",
                "technician, by signing them in turn"
            );
    }

    /// <summary>What stands against this proof.</summary>
    public static Objection? Objection(
        RepairOrder order,
        RecordProof ask,
        Instrument? gauge,
        Person by,
        DateTimeOffset at
    )
    {
        // A leak is taken down whatever else is missing.
        if (ask.Test is { Tight: false })
            return Objection(order, by, at);
        return Objection(order, by, at)
            ?? CureClock.NotSet(order, Now(ask, at))
            ?? (ask.Test is { } test ? Tested(order, test, gauge!, at) : Waivers.Objection(order, WorkPlan.Of(order)!))
            ?? Tagged(order, ask);
    }

    /// <summary>The temperature of the pipe now, as the last reading of the cure log.</summary>
    public static LogReading Now(RecordProof ask, DateTimeOffset at) =>
        new(at, Temperature.FromDegreesCelsius(ask.PipeTemperature.Value));

    private static Objection? Tested(RepairOrder order, TestMade test, Instrument gauge, DateTimeOffset at) =>
        InstrumentRules.Objection(gauge, order.Site.Today(at), InstrumentKind.PressureGauge)
        ?? GaugeRange(test, gauge)
        ?? ServiceTestAlone(WorkPlan.Of(order)!, test)
        ?? Held(test)
        ?? TooHigh(order, test)
        ?? TooLow(order, test);

    private static Objection? GaugeRange(TestMade test, Instrument gauge)
    {
        if (gauge.GreatestReading is not { } end || test.Pressure.Value <= 0)
            return null;
        var ratio = end.Value / test.Pressure.Value;
        return ratio is >= 1.5 and <= 4
            ? null
            : new Objection(
                "gauge-range",
                $"Gauge {gauge.Serial} reads to {end.Entered}; for a test at {test.Pressure.Entered} its scale should end at one and a half to four times that.",
                "technician, with another gauge"
            );
    }

    // ASME B31.3, 345.1(a) and 345.7 (from memory): at operating pressure alone only for category D.
    private static Objection? ServiceTestAlone(WorkPlan plan, TestMade test) =>
        test.Kind == TestKind.ServiceLeak && plan.Category != ServiceCategory.D && !plan.Emergency
            ? new Objection(
                "service-test-alone",
                "A leak test at operating pressure alone will do for category D fluids only. Test above it, or have the test waived with another examination.",
                "integrity engineer and inspector, by a waiver"
            )
            : null;

    private static Objection? Held(TestMade test) =>
        test.Kind is TestKind.Hydrostatic or TestKind.Pneumatic or TestKind.ServiceLeak
        && test.Hold.Value < LeastHoldMin
            ? new Objection(
                "held-too-short",
                $"It was held {test.Hold.Entered}; ten minutes are the least. Hold it again.",
                "technician"
            )
            : null;

    private static Objection? TooHigh(RepairOrder order, TestMade test)
    {
        var (most, why) = TestPressure.Greatest(order);
        return test.Pressure.Value > most
            ? new Objection(
                "test-above-wall",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{test.Pressure.Entered} is more than {most:0.#} bar, which is what {why}. A thinned pipe is never tested above what it holds. If this pressure was reached, stop and call the engineer."
                ),
                "integrity engineer"
            )
            : null;
    }

    private static Objection? TooLow(RepairOrder order, TestMade test)
    {
        var least = TestPressure.Least(order, test.Kind);
        return test.Pressure.Value < least
            ? new Objection(
                "test-below-service",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{test.Pressure.Entered} proves nothing for {least:0.#} bar, the most the line may see while the repair is live. Test at that or above."
                ),
                "technician"
            )
            : null;
    }

    private static Objection? Tagged(RepairOrder order, RecordProof ask) =>
        ask.Tag is not null && Photo.Of(order, PhotoOf.Tag).Any(p => p.Id == ask.TagPhoto)
            ? null
            : new Objection(
                "tag-photo-missing",
                "Fit the tag and photograph it; give its number and that photograph.",
                "technician"
            );
}
