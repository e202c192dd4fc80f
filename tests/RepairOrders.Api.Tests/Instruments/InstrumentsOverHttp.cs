using RepairOrders.Api.Instruments;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Instruments;

public sealed class InstrumentsOverHttp(Workshop workshop)
{
    private static readonly DateOnly Today = new(2026, 3, 2);

    private static Instrument Gauge(DateOnly due, string? withdrawn = null) =>
        new()
        {
            Serial = "PG-4",
            Kind = InstrumentKind.PressureGauge,
            CalibrationDue = due,
            Withdrawn = withdrawn,
        };

    [Fact]
    public void An_instrument_may_be_used_on_the_day_its_calibration_ends_and_not_the_day_after()
    {
        InstrumentRules.Objection(Gauge(Today), Today).ShouldBeNull();
        var no = InstrumentRules.Objection(Gauge(Today), Today.AddDays(1))!;
        no.Code.ShouldBe("instrument-out-of-calibration");
        no.Sentence.ShouldStartWith("Calibration of instrument PG-4 ended on 2026-03-02.");
    }

    [Fact]
    public void A_pressure_gauge_reads_no_wall()
    {
        InstrumentRules.Objection(Gauge(Today), Today, InstrumentKind.PressureGauge).ShouldBeNull();
        InstrumentRules
            .Objection(Gauge(Today), Today, InstrumentKind.ThicknessGauge)!
            .Code.ShouldBe("instrument-wrong-kind");
    }

    [Fact]
    public void A_withdrawn_instrument_is_not_used() =>
        InstrumentRules.Objection(Gauge(Today, "glass broken"), Today)!.Code.ShouldBe("instrument-withdrawn");

    [Fact]
    public async Task An_instrument_is_listed_changed_and_shows_why_it_may_not_be_used()
    {
        var scene = await workshop.Scene();
        var gauge = await scene.Signe.AddInstrument(Described(scene));
        gauge.Objection.ShouldBeNull();
        scene.Clock.PassDays(31);
        var listed = (await scene.Rune.Instruments(scene.Site, InstrumentKind.PressureGauge)).Rows.Single(r =>
            r.Id == gauge.Id
        );
        listed.Objection!.Code.ShouldBe("instrument-out-of-calibration");
        var renewed = await scene.Signe.ChangeInstrument(
            gauge.Id,
            gauge.Said with
            {
                CalibrationDue = scene.Clock.Today.AddDays(365),
                CalibrationReference = "cal 118",
            },
            gauge.Version
        );
        renewed.Objection.ShouldBeNull();
        (await scene.Rune.InstrumentChanges(gauge.Id))
            .Select(c => c.What)
            .ShouldBe(["instrument added", "instrument changed"]);
        (
            await Should.ThrowAsync<Refused>(() => scene.Signe.ChangeInstrument(gauge.Id, gauge.Said, gauge.Version))
        ).Status.ShouldBe(412);
        (await scene.Signe.Instruments(scene.Site, search: "nothing like it")).Rows.ShouldBeEmpty();
    }

    [Fact]
    public async Task A_serial_number_is_listed_once()
    {
        var scene = await workshop.Scene();
        await scene.Signe.AddInstrument(Described(scene));
        var no = await Should.ThrowAsync<Refused>(() => scene.Ines.AddInstrument(Described(scene)));
        (no.Status, no.Code).ShouldBe((409, "serial-taken"));
        (await Should.ThrowAsync<Refused>(() => scene.Tove.AddInstrument(Described(scene)))).Status.ShouldBe(403);
    }

    private static DescribeInstrument Described(Scene scene) =>
        new(
            scene.Site,
            "PG-4",
            InstrumentKind.PressureGauge,
            "gauge 0 to 25 bar",
            scene.Clock.Today.AddDays(30),
            "cal 101",
            Measure.Of(25, "bar")
        );
}
