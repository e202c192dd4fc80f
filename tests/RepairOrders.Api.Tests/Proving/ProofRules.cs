using RepairOrders.Api.Instruments;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Proving;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.WorkSheaf;

namespace RepairOrders.Api.Tests.Proving;

public sealed class ProofRules
{
    private static readonly TestMade Water = new(
        TestKind.Hydrostatic,
        Measure.Of(6, "bar"),
        Measure.Of(15, "min"),
        "water",
        null,
        "PG-16",
        Tight: true
    );

    private static readonly Instrument Gauge = new()
    {
        Serial = "PG-16",
        Kind = InstrumentKind.PressureGauge,
        CalibrationDue = new DateOnly(2027, 1, 1),
        GreatestReading = Measure.Of(16, "bar"),
    };

    [Fact]
    public void A_tight_test_with_its_tag_proves_the_repair()
    {
        var sheaf = Fitted();
        Ask(sheaf, Water).ShouldBeNull();
        Prove(sheaf, Water);
        sheaf.Order.Stage.ShouldBe(Stage.Fitted);
    }

    [Fact]
    public void A_repair_that_has_not_set_is_not_loaded()
    {
        var sheaf = Fitted();
        var mix = sheaf.Mixed();
        sheaf.Used(mix);
        Ask(sheaf, Water)!.Code.ShouldBe("not-set-for-load");
    }

    [Fact]
    public void A_leak_is_taken_down_whatever_is_missing_and_the_order_has_failed()
    {
        var sheaf = Fitted();
        sheaf.Used(sheaf.Mixed());
        var leak = Water with { Tight = false, Seen = "drips at the gap", Gauge = "none" };
        Proof
            .Objection(sheaf.Order, new RecordProof(leak, Measure.Of(20, "°C"), null, null), null, Tove, sheaf.Now)
            .ShouldBeNull();
        Prove(sheaf, leak);
        sheaf.Order.Stage.ShouldBe(Stage.Failed);
    }

    [Fact]
    public void Without_a_test_there_is_a_waiver_or_nothing()
    {
        var sheaf = Fitted();
        Ask(sheaf, null)!.Sentence.ShouldStartWith("No leak test is recorded.");
        Waive(sheaf, WaiverCapacity.Engineer, Ines);
        Ask(sheaf, null)!.Code.ShouldBe("no-test");
        Waive(sheaf, WaiverCapacity.Inspector, Pavel);
        Ask(sheaf, null).ShouldBeNull();
    }

    [Fact]
    public void On_class_A_the_manager_signs_the_waiver_too()
    {
        var sheaf = Fitted(RiskClass.A);
        Waive(sheaf, WaiverCapacity.Engineer, Ines);
        Waive(sheaf, WaiverCapacity.Inspector, Pavel);
        Ask(sheaf, null)!.Sentence.ShouldContain("manager");
        Waive(sheaf, WaiverCapacity.Manager, Henrik);
        Ask(sheaf, null).ShouldBeNull();
    }

    [Fact]
    public void Nobody_waives_twice_and_no_fitter_as_inspector()
    {
        var sheaf = Fitted();
        Waive(sheaf, WaiverCapacity.Engineer, Pavel);
        May(WaiverCapacity.Inspector, Pavel).ShouldBe("waiver-signed");
        May(WaiverCapacity.Engineer, Ines).ShouldBe("waiver-signed");
        May(WaiverCapacity.Inspector, Ines).ShouldBe("waiver-capacity");
        May(WaiverCapacity.Inspector, Vera).ShouldBeNull();

        string? May(WaiverCapacity place, Person by) =>
            TestWaiver.Objection(sheaf.Order, new WaiveTest(place, "no water", "dye"), by, sheaf.Now)?.Code;
    }

    [Fact]
    public void The_test_presses_no_harder_than_wall_and_repair_hold_and_no_less_than_service()
    {
        var sheaf = Fitted();
        // No wall is on record here: the operating pressure is the most.
        Ask(sheaf, Water with { Pressure = Measure.Of(6.1, "bar") })!.Code.ShouldBe("test-above-wall");
        Ask(sheaf, Water with { Pressure = Measure.Of(5.9, "bar") })!.Code.ShouldBe("test-below-service");
        Ask(sheaf, Water with { Hold = Measure.Of(9, "min") })!.Code.ShouldBe("held-too-short");
    }

    [Fact]
    public void The_gauge_is_in_calibration_and_suits_the_pressure()
    {
        var sheaf = Fitted();
        Ask(sheaf, Water, Wide(24)).ShouldBeNull();
        Ask(sheaf, Water, Wide(25))!.Code.ShouldBe("gauge-range");
        Ask(sheaf, Water, Wide(8))!.Code.ShouldBe("gauge-range");
        var old = Wide(16);
        old.CalibrationDue = new DateOnly(2026, 3, 1);
        Ask(sheaf, Water, old)!.Code.ShouldBe("instrument-out-of-calibration");
    }

    [Fact]
    public void A_service_test_alone_is_for_category_D_only()
    {
        var service = Water with { Kind = TestKind.ServiceLeak };
        Ask(Fitted(), service).ShouldBeNull();
    }

    [Fact]
    public void Without_a_photograph_of_its_tag_it_is_not_proved()
    {
        var sheaf = Fitted();
        var ask = new RecordProof(Water, Measure.Of(20, "°C"), "T-1", Guid.NewGuid());
        Proof.Objection(sheaf.Order, ask, Gauge, Tove, sheaf.Now)!.Code.ShouldBe("tag-photo-missing");
        var photo = sheaf.Photographed(PhotoOf.Tag).Id;
        Proof
            .Objection(sheaf.Order, ask with { Tag = null, TagPhoto = photo }, Gauge, Tove, sheaf.Now)!
            .Code.ShouldBe("tag-photo-missing");
        Proof.Objection(sheaf.Order, ask with { TagPhoto = photo }, Gauge, Tove, sheaf.Now).ShouldBeNull();
    }

    [Theory]
    [InlineData(RiskClass.A, false, true)]
    [InlineData(RiskClass.B, false, true)]
    [InlineData(RiskClass.C, true, true)]
    public void The_class_decides_who_witnesses(RiskClass signed, bool supervisor, bool inspector)
    {
        var sheaf = Fitted(signed);
        ProofWitness.Objection(sheaf.Order, Pavel, sheaf.Now)!.IsOfStage.ShouldBeTrue();
        Prove(sheaf, Water);
        May(Mara).ShouldBe(supervisor);
        May(Pavel).ShouldBe(inspector);
        // The fitters watched their own work.
        May(Tove).ShouldBeFalse();

        bool May(Person by) => ProofWitness.Objection(sheaf.Order, by, sheaf.Now) is null;
    }

    [Fact]
    public void Operations_accept_what_is_proved_witnessed_and_owned()
    {
        var sheaf = Fitted();
        Accept(sheaf).ShouldBe("not-proved");
        var proof = Prove(sheaf, Water, departure: "gap closed by a strip");
        Accept(sheaf).ShouldBe("witness-missing");
        // On C the supervisor who accepts may also be the witness.
        sheaf.Order.Sign(new ProofWitness(new(proof.Id, null)), Olaf, sheaf.Now);
        Accept(sheaf).ShouldBe("departure-open");
        sheaf.Order.Sign(
            new DepartureAcceptance(new("as strong", DepartureAcceptance.Open(sheaf.Order))),
            Ines,
            sheaf.Now
        );
        Accept(sheaf).ShouldBe("first-look-not-accepted");
        FirstLookAcceptance.Objection(sheaf.Order, Olaf, sheaf.Now)!.Code.ShouldBe("not-the-owner");
        FirstLookAcceptance.Objection(sheaf.Order, Mara, sheaf.Now).ShouldBeNull();
        sheaf.Order.Sign(new FirstLookAcceptance(new(new(Mara.Id, Mara.FullName), null)), Mara, sheaf.Now);
        FirstLookAcceptance.Objection(sheaf.Order, Mara, sheaf.Now)!.Code.ShouldBe("first-look-taken");
        Accept(sheaf, Mara).ShouldBe("not-in-charge");
        Accept(sheaf).ShouldBeNull();
        Acceptance
            .Objection(sheaf.Order, new AcceptRepair("day shift", IsolationsRemoved: false), Olaf, sheaf.Now)!
            .Code.ShouldBe("isolations-on");
        sheaf.Order.Sign(
            new Acceptance(new(new AcceptRepair("day shift", true), proof.Id, "T-1", null)),
            Olaf,
            sheaf.Now
        );
        sheaf.Order.Stage.ShouldBe(Stage.InService);
    }

    [Fact]
    public void The_manager_witnesses_and_accepts_where_the_only_supervisor_raised_it()
    {
        var sheaf = Fitted();
        sheaf.Order.Sign(new RepairOrders.Api.Requesting.Request(Cast.Weep("mill")), Mara, sheaf.Now.AddDays(-1));
        var proof = Prove(sheaf, Water);
        Accept(sheaf, Henrik).ShouldBe("not-in-charge");
        ProofWitness.Objection(sheaf.Order, Henrik, sheaf.Now)!.Code.ShouldBe("cannot-witness");
        sheaf.Order.Surroundings = Surroundings.None with { Supervisors = [Mara.Id] };
        ProofWitness.Objection(sheaf.Order, Henrik, sheaf.Now).ShouldBeNull();
        sheaf.Order.Sign(new ProofWitness(new(proof.Id, null)), Henrik, sheaf.Now);
        sheaf.Order.Sign(new FirstLookAcceptance(new(new(Mara.Id, Mara.FullName), null)), Mara, sheaf.Now);
        Accept(sheaf, Henrik).ShouldBeNull();
    }

    [Fact]
    public void An_outside_inspector_witnesses_within_his_letter()
    {
        var sheaf = Fitted(RiskClass.B);
        Prove(sheaf, Water);
        var outside = Somebody("Nils Outside", Role.Technician, RepairOrders.Api.People.Competence.Inspector);
        outside.OutsideScope = "second engineer";
        ProofWitness.Objection(sheaf.Order, outside, sheaf.Now)!.Code.ShouldBe("outside-scope");
        outside.OutsideScope = "witness at tests";
        ProofWitness.Objection(sheaf.Order, outside, sheaf.Now).ShouldBeNull();
        outside.AuthorityUntil = DateOnly.FromDateTime(sheaf.Now.UtcDateTime).AddDays(-1);
        ProofWitness.Objection(sheaf.Order, outside, sheaf.Now)!.Code.ShouldBe("cannot-witness");
    }

    [Fact]
    public void Who_fitted_or_tested_does_not_accept()
    {
        var sheaf = Fitted();
        Prove(sheaf, Water);
        var both = Somebody("Tove Aune", Role.Technician, Competence.OperationsInCharge);
        sheaf.Order.Sign(
            new Api.Readying.Readiness(new(sheaf.Permit(), [new(both.Id, both.FullName)], false)),
            Mara,
            sheaf.Now
        );
        Accept(sheaf, both).ShouldBe("own-fit");
    }

    [Fact]
    public void On_class_D_nobody_need_witness()
    {
        var sheaf = Fitted(RiskClass.D);
        var proof = Prove(sheaf, Water);
        ProofWitness.Missing(sheaf.Order, sheaf.Plan, proof).ShouldBeNull();
    }

    private static Instrument Wide(double bar) =>
        new()
        {
            Serial = "PG",
            Kind = InstrumentKind.PressureGauge,
            CalibrationDue = new DateOnly(2027, 1, 1),
            GreatestReading = Measure.Of(bar, "bar"),
        };

    private static Objection? Ask(WorkSheaf sheaf, TestMade? test, Instrument? gauge = null)
    {
        var tag = sheaf.Photographed(PhotoOf.Tag);
        var ask = new RecordProof(test, Measure.Of(20, "°C"), "T-1", tag.Id);
        return Proof.Objection(sheaf.Order, ask, gauge ?? Gauge, Tove, sheaf.Now);
    }

    private static Proof Prove(WorkSheaf sheaf, TestMade test, string? departure = null) =>
        sheaf.Order.Sign(
            new Proof(
                new(
                    new RecordProof(test, Measure.Of(20, "°C"), "T-1", Guid.NewGuid(), departure),
                    !test.Tight,
                    null,
                    null,
                    []
                )
            ),
            Tove,
            sheaf.Now
        );

    private static void Waive(WorkSheaf sheaf, WaiverCapacity place, Person by)
    {
        var ask = new WaiveTest(place, "the line cannot be filled", "dye penetrant, no indication");
        TestWaiver.Objection(sheaf.Order, ask, by, sheaf.Now).ShouldBeNull();
        sheaf.Order.Sign(new TestWaiver(ask), by, sheaf.Now);
    }

    private static string? Accept(WorkSheaf sheaf, Person? by = null) =>
        Acceptance.Objection(sheaf.Order, by ?? Olaf, sheaf.Now)?.Code;
}
