using RepairOrders.Api.Fitting;
using RepairOrders.Api.Instruments;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.WorkSheaf;

namespace RepairOrders.Api.Tests.Fitting;

public sealed class FitRules
{
    private static WorkSheaf AtWork(RiskClass signed = RiskClass.C) => WorkSheaf.Approved(signed).Issued().Ready();

    [Fact]
    public void Hold_points_are_signed_in_their_order()
    {
        var sheaf = AtWork();
        Sign(sheaf, "diameter")!.Sentence.ShouldStartWith("Work may not pass \"as-described is right\" unsigned");
        Sign(sheaf, "as-described").ShouldBeNull();
        sheaf.Release("as-described");
        Sign(sheaf, "diameter").ShouldBeNull();
        Sign(sheaf, "as-described")!.Code.ShouldBe("hold-point-signed");
    }

    [Fact]
    public void A_design_that_names_no_order_is_worked_from_the_top_down()
    {
        var design = Clamp with { HoldPoints = [Point("first"), Point("second")] };
        var sheaf = WorkSheaf.Approved(design: design).Issued().Ready();
        Sign(sheaf, "second")!.Code.ShouldBe("hold-point-out-of-order");
        sheaf.Release("first");
        Sign(sheaf, "second").ShouldBeNull();
    }

    [Fact]
    public void The_first_signature_begins_the_fitting_and_the_last_ends_it()
    {
        var sheaf = AtWork();
        sheaf.Order.Stage.ShouldBe(Stage.Ready);
        foreach (var point in sheaf.Plan.HoldPoints.SkipLast(1))
        {
            sheaf.Release(point.Code);
            sheaf.Order.Stage.ShouldBe(Stage.Fitting);
        }
        var last = sheaf.Release("as-left");
        sheaf.Order.Stage.ShouldBe(Stage.Fitted);
        sheaf.Order.SetAside(last, Tove, sheaf.Now, "wrong photograph");
        sheaf.Order.Stage.ShouldBe(Stage.Fitting);
        sheaf.Release("as-left");
        sheaf.Order.Stage.ShouldBe(Stage.Fitted);
    }

    [Fact]
    public void Only_a_named_fitter_signs_and_a_supervisor_never_does()
    {
        var sheaf = AtWork();
        Sign(sheaf, "as-described", Anton).ShouldBeNull();
        Sign(sheaf, "as-described", Vera)!.Code.ShouldBe("not-a-fitter");
        Sign(sheaf, "as-described", Mara)!.Code.ShouldBe("not-a-fitter");
    }

    [Fact]
    public void What_an_inspector_releases_no_fitter_signs()
    {
        var sheaf = AtWork();
        foreach (var point in sheaf.Plan.HoldPoints.TakeWhile(p => p.Code != "inspection"))
            sheaf.Release(point.Code);
        Sign(sheaf, "inspection", Tove)!.Code.ShouldBe("wrong-signer");
        Sign(sheaf, "inspection", Pavel).ShouldBeNull();
        var permit = sheaf.Permit();
        sheaf.Order.Sign(
            new Api.Readying.Readiness(new(permit, [new(Pavel.Id, Pavel.FullName)], false)),
            Mara,
            sheaf.Now
        );
        Sign(sheaf, "inspection", Pavel)!.Code.ShouldBe("wrong-signer");
    }

    [Fact]
    public void When_the_permit_is_over_nothing_is_signed_and_what_was_read_stays()
    {
        var sheaf = AtWork().Climate();
        sheaf.Release("as-described");
        sheaf.Pass(TimeSpan.FromHours(8));
        var no = Sign(sheaf, "diameter")!;
        no.Code.ShouldBe("permit-over");
        no.Sentence.ShouldEndWith("readings so far are kept.");
        sheaf.Order.InRound<ClimateReading>().Count().ShouldBe(1);
        ClimateReading.Objection(sheaf.Order, Tove, sheaf.Now).ShouldBeNull();
    }

    [Fact]
    public void A_wall_below_what_the_design_relies_on_is_not_as_written()
    {
        var sheaf = AtWork();
        sheaf.Photographed(PhotoOf.HoldPoint, "as-described");
        var ask = new ReleaseHoldPoint("as-described", Walls: [Wall("left", 6.2), Wall("right", 4.9)]);
        Evidenced(sheaf, ask)!.Sentence.ShouldStartWith("At right the wall is 4.9 mm; the design relies on 5.0 mm.");
        Evidenced(sheaf, ask with { Walls = [Wall("left", 6.2)] })!.Code.ShouldBe("walls-missing");
        Evidenced(sheaf, ask with { Walls = [Wall("left", 6.2), Wall("right", 5)] }).ShouldBeNull();
    }

    [Fact]
    public void A_signature_lacks_nothing_its_point_asks_for()
    {
        var sheaf = AtWork();
        var walls = new ReleaseHoldPoint("as-described", Walls: [Wall("left", 6), Wall("right", 6)]);
        Evidenced(sheaf, walls)!.Code.ShouldBe("photo-missing");
        Evidenced(sheaf, new("diameter", Diameters: [new("across", Measure.Of(168, "mm"))]))!
            .Code.ShouldBe("diameters-missing");
        Evidenced(sheaf, new("surface", Surface: new(SurfaceGrade.St3, [60, 58])))!.Code.ShouldBe("surface-missing");
        Evidenced(sheaf, new("climate"))!.Code.ShouldBe("climate-not-read");
        Evidenced(sheaf, new("mix"))!.Code.ShouldBe("mix-missing");
        Evidenced(sheaf, new("torque"))!.Code.ShouldBe("tightening-missing");
        Evidenced(sheaf, new("cure", ShoreD: [80, 81, 82]))!.Code.ShouldBe("not-set-for-load");
    }

    [Fact]
    public void A_reading_names_an_instrument_in_calibration()
    {
        var sheaf = AtWork();
        sheaf.Photographed(PhotoOf.HoldPoint, "as-described");
        var ask = new ReleaseHoldPoint("as-described", Walls: [Wall("left", 6), Wall("right", 6)]);
        Evidenced(sheaf, ask, instrument: false)!.Code.ShouldBe("instrument-missing");
        var old = Tool(InstrumentKind.ThicknessGauge);
        old.CalibrationDue = new DateOnly(2026, 3, 1);
        HoldPointEvidence
            .Objection(sheaf.Order, sheaf.Plan, sheaf.PointOf("as-described"), ask, old, null, sheaf.Now)!
            .Code.ShouldBe("instrument-out-of-calibration");
    }

    [Theory]
    [InlineData(18, true)] // dew point of 20 °C and 70 % is 14.4 °C: 3.6 K above it
    [InlineData(17, false)] // 2.6 K
    public void Steel_is_three_kelvin_above_the_dew_point(double steel, bool go)
    {
        var sheaf = AtWork().Climate(steel, 20, 70);
        var no = ClimateReading.Objection(sheaf.Order, Lot(limits: Stores.DryResin).Item, sheaf.Now);
        (no is null).ShouldBe(go);
        if (no is not null)
        {
            no.Code.ShouldBe("climate-no-go");
            no.Sentence.ShouldContain("It needs 17.4 °C or more. Warm the pipe, read again.");
        }
        // What the maker states for wet surfaces holds on a sweating pipe, inside its own range.
        ClimateReading.Objection(sheaf.Order, Lot(limits: Stores.WetPutty).Item, sheaf.Now).ShouldBeNull();
    }

    [Fact]
    public void A_material_is_not_mixed_outside_its_own_range()
    {
        var sheaf = AtWork().Climate(steel: 4, air: 4);
        ClimateReading
            .Objection(sheaf.Order, Lot(limits: Stores.WetPutty).Item, sheaf.Now)!
            .Sentence.ShouldContain("the material allows 5.0 to 40.0 °C");
    }

    [Fact]
    public void A_climate_speaks_for_an_hour()
    {
        var sheaf = AtWork().Climate();
        var putty = Lot(limits: Stores.WetPutty).Item;
        ClimateReading.Objection(sheaf.Order, putty, sheaf.Now.AddMinutes(60)).ShouldBeNull();
        ClimateReading.Objection(sheaf.Order, putty, sheaf.Now.AddMinutes(61))!.Code.ShouldBe("climate-not-read");
    }

    [Fact]
    public void Only_what_was_issued_and_is_in_date_is_mixed()
    {
        var sheaf = AtWork().Climate();
        Mixed(sheaf, Lot(limits: Stores.WetPutty)).ShouldBeNull();
        Mixed(sheaf, Other(Lot(limits: Stores.WetPutty)))!.Code.ShouldBe("batch-not-issued");
        Mixed(sheaf, Lot(expiry: new DateOnly(2026, 3, 1), limits: Stores.WetPutty))!.Code.ShouldBe("batch-expired");
        Mixed(sheaf, Lot(limits: null))!.Code.ShouldBe("limits-missing");
    }

    [Fact]
    public void A_mix_keeps_its_ratio_and_its_own_hardener()
    {
        var sheaf = AtWork().Climate();
        var resin = Lot(limits: Stores.DryResin);
        var hardener = Lot(item: Stores.Putty("mill") with { Code = "HARD-1", Need = "hardener", Limits = null });
        var stranger = Lot(item: Stores.Putty("mill") with { Code = "HARD-9", Need = "hardener", Limits = null });
        var ask = Parts(400, 100);
        Api.Fitting.Mix.Objection(sheaf.Order, ask, resin, hardener, sheaf.Now).ShouldBeNull();
        Api.Fitting.Mix.Objection(sheaf.Order, ask, resin, stranger, sheaf.Now)!.Code.ShouldBe("wrong-hardener");
        Api.Fitting.Mix.Objection(sheaf.Order, ask, resin, null, sheaf.Now)!.Code.ShouldBe("wrong-hardener");
        Api.Fitting.Mix.Objection(sheaf.Order, Parts(421, 100), resin, hardener, sheaf.Now)!
            .Sentence.ShouldStartWith("The ratio is 4.21 to 1; it must be 4 to 1 within 5 %.");
        Api.Fitting.Mix.Objection(sheaf.Order, Parts(420, 100), resin, hardener, sheaf.Now).ShouldBeNull();
        Api.Fitting.Mix.Objection(sheaf.Order, ask with { Mass = null }, resin, hardener, sheaf.Now)!
            .Code.ShouldBe("mix-ratio");
    }

    [Fact]
    public void A_mix_hotter_than_anybody_tested_is_refused()
    {
        var sheaf = AtWork().Climate();
        var hot = new StartMix(SealantBatch, null, null, null, Measure.Of(41, "°C"));
        Api.Fitting.Mix.Objection(sheaf.Order, hot, Lot(limits: Stores.WetPutty), null, sheaf.Now)!
            .Code.ShouldBe("pot-life-unknown");
    }

    /// <summary>20 min at 20 °C; without the maker's own law 2.6 for 10 K above: 7.7 min at 30 °C.</summary>
    [Fact]
    public void Pot_life_runs_by_the_warmer_of_mix_and_steel()
    {
        var ask = new StartMix(SealantBatch, null, null, null, Measure.Of(20, "°C"));
        var cool = Api.Fitting.Mix.Clock(Stores.WetPutty, ask, 12, Monday).Result;
        cool.UsableUntil.ShouldBe(Monday.AddMinutes(20));
        var warm = Api.Fitting.Mix.Clock(Stores.WetPutty, ask, 30, Monday).Result;
        (warm.UsableUntil - Monday).TotalMinutes.ShouldBe(20 / 2.6, 1e-6);
    }

    [Fact]
    public void After_its_pot_life_a_mix_is_not_used()
    {
        var sheaf = AtWork().Climate();
        var mix = sheaf.Mixed();
        MixUse.Objection(sheaf.Order, mix, Tove, sheaf.Now.AddMinutes(20)).ShouldBeNull();
        MixUse
            .Objection(sheaf.Order, mix, Tove, sheaf.Now.AddMinutes(21))!
            .Sentence.ShouldContain("is over since 1 min");
        sheaf.Used(mix);
        MixUse.Objection(sheaf.Order, mix, Tove, sheaf.Now)!.Code.ShouldBe("mix-used");
    }

    [Fact]
    public void Set_for_load_is_told_by_the_temperatures_on_the_pipe()
    {
        var sheaf = AtWork().Climate();
        sheaf.Used(sheaf.Mixed());
        // 2 h at 20 °C: an hour on the way it is not set, and it says when it is.
        sheaf.Pass(TimeSpan.FromHours(1)).Warm(20);
        CureClock.NotSet(sheaf.Order)!.Sentence.ShouldContain("has 1.0 h of the 2.0 h it needs");
        CureClock.NotSet(sheaf.Order)!.Sentence.ShouldContain("At 20 °C it is set by 2026-03-02 10:00.");
        sheaf.Pass(TimeSpan.FromHours(1)).Warm(20);
        CureClock.NotSet(sheaf.Order).ShouldBeNull();
    }

    [Fact]
    public void A_cold_pipe_sets_later_and_below_its_least_temperature_never()
    {
        var cold = AtWork().Climate(steel: 10, air: 12, humidity: 60);
        cold.Used(cold.Mixed());
        for (var hour = 0; hour < 5; hour++)
            cold.Pass(TimeSpan.FromHours(1)).Warm(10);
        // 2.6 times slower 10 K below: 5.2 h.
        CureClock.NotSet(cold.Order).ShouldNotBeNull();
        cold.Pass(TimeSpan.FromMinutes(13)).Warm(10);
        CureClock.NotSet(cold.Order).ShouldBeNull();

        var frost = AtWork().Climate(steel: 4, air: 6, humidity: 40);
        frost.Used(frost.Mixed());
        frost.Pass(TimeSpan.FromHours(1)).Warm(4);
        CureClock.NotSet(frost.Order)!.Sentence.ShouldContain("At 4 °C it never sets: warm it.");
    }

    [Fact]
    public void A_gap_of_more_than_two_hours_counts_for_nothing()
    {
        var sheaf = AtWork().Climate();
        sheaf.Used(sheaf.Mixed());
        sheaf.Pass(TimeSpan.FromHours(9)).Warm(20);
        CureClock.NotSet(sheaf.Order)!.Sentence.ShouldContain("has 0.0 h of the 2.0 h");
        CureClock.Of(sheaf.Order)[0].Findings.ShouldContain(f => f.Code == "log-gap");
    }

    [Fact]
    public void A_logger_may_hand_in_its_readings_afterwards()
    {
        var sheaf = AtWork().Climate();
        sheaf.Used(sheaf.Mixed());
        var readings = Enumerable
            .Range(1, 8)
            .Select(i => new CureTemperature(Monday.AddMinutes(30 * i), Measure.Of(20, "°C")));
        sheaf.Pass(TimeSpan.FromHours(9));
        sheaf.Order.Sign(new CureReading(new RecordCure([.. readings], "ST-3")), Tove, sheaf.Now);
        CureClock.NotSet(sheaf.Order).ShouldBeNull();
        var clock = CureClock.Of(sheaf.Order)[0];
        clock.EquivalentHours.ShouldBe(4, 1e-9);
        (clock.SetForLoad, clock.FullyHard).ShouldBe((true, false));
    }

    [Fact]
    public void Hardness_is_nine_tenths_of_what_the_maker_states()
    {
        var sheaf = AtWork().Climate();
        sheaf.Used(sheaf.Mixed(Stores.DryResin with { SetForLoad = Measure.Of(1, "h") }));
        for (var hour = 0; hour < 3; hour++)
            sheaf.Pass(TimeSpan.FromHours(1)).Warm(20);
        Evidenced(sheaf, new("cure", ShoreD: [63, 70]))!.Code.ShouldBe("hardness-missing");
        // 0.9 × 70
        Evidenced(sheaf, new("cure", ShoreD: [63, 70, 66])).ShouldBeNull();
        Evidenced(sheaf, new("cure", ShoreD: [62, 70, 66]))!.Code.ShouldBe("hardness-short");
    }

    [Fact]
    public void Every_fastener_ends_inside_the_window_of_the_design()
    {
        var plan = AtWork().Plan;
        Tightening.Objection(plan, Passes(45, 45, 45, 45)).ShouldBeNull();
        Tightening.Objection(plan, Passes(45, 45, 45))!.Sentence.ShouldStartWith("Fastener 4 of 4 has no reading");
        Tightening
            .Objection(plan, Passes(45, 39, 45, 45))!
            .Sentence.ShouldStartWith("Fastener 2, pass 2: 39 N m; the design allows 40 to 50 N m.");
        Tightening.Objection(plan, Passes(45, 45, 45, 51))!.Code.ShouldBe("tightening-outside");
        // The first pass may be slack, but never over.
        var first = new Tightened(1, 1, Torque: Measure.Of(52, "N m"));
        Tightening.Objection(plan, [first, .. Passes(45, 45, 45, 45).Skip(1)])!.Code.ShouldBe("tightening-outside");
        Tightening.Objection(plan, [new Tightened(1, 1)])!.Code.ShouldBe("tightening-missing");
    }

    [Theory]
    [InlineData(RiskClass.A, "cure", true)]
    [InlineData(RiskClass.B, "cure", true)]
    [InlineData(RiskClass.C, "cure", false)]
    [InlineData(RiskClass.C, "as-left", true)]
    [InlineData(RiskClass.D, "as-left", false)]
    public void The_class_decides_which_points_are_witnessed(RiskClass signed, string point, bool asked)
    {
        var sheaf = AtWork(signed);
        HoldPointEvidence.AsksWitness(sheaf.Plan, sheaf.PointOf(point)).ShouldBe(asked);
    }

    [Fact]
    public void A_witness_is_called_and_need_not_come_but_is_never_a_fitter()
    {
        var sheaf = AtWork(RiskClass.B);
        var ask = new ReleaseHoldPoint("as-left");
        Witnessed(ask, null)!.Code.ShouldBe("witness-not-called");
        ask = ask with { Witness = new(Pavel.Id, sheaf.Now, Came: false) };
        Witnessed(ask, Pavel).ShouldBeNull();
        Witnessed(ask, Mara)!.Code.ShouldBe("witness-wrong");
        Witnessed(ask, Tove)!.Code.ShouldBe("witness-wrong");

        Objection? Witnessed(ReleaseHoldPoint a, Person? witness) =>
            HoldPointEvidence.Objection(sheaf.Order, sheaf.Plan, sheaf.PointOf("as-left"), a, null, witness, sheaf.Now);
    }

    [Fact]
    public void A_stopped_job_stands_still_until_the_cause_is_cleared_and_the_resin_restarted()
    {
        var sheaf = AtWork().Climate();
        var open = sheaf.Mixed();
        sheaf.Pass(TimeSpan.FromMinutes(2));
        sheaf.Order.Sign(new Stop(new(new StopJob("gas alarm"), false)), Signe, sheaf.Now);
        Sign(sheaf, "as-described")!.Sentence.ShouldStartWith("Signe Dahl stopped the job: gas alarm.");
        MixUse.Objection(sheaf.Order, open, Tove, sheaf.Now)!.Code.ShouldBe("stopped");
        Resumption.Objection(sheaf.Order, Mara, sheaf.Now)!.Code.ShouldBe("resin-not-restarted");
        sheaf.Order.SetAside(open, Tove, sheaf.Now, "scrapped");
        Resumption.Objection(sheaf.Order, Mara, sheaf.Now).ShouldBeNull();
        sheaf.Pass(TimeSpan.FromMinutes(2));
        sheaf.Order.Sign(new Resumption(new ResumeJob("alarm was a test")), Mara, sheaf.Now);
        Sign(sheaf, "as-described").ShouldBeNull();
        Resumption.Objection(sheaf.Order, Mara, sheaf.Now)!.Code.ShouldBe("not-stopped");
    }

    [Fact]
    public void A_pipe_that_is_not_as_written_goes_to_the_next_round()
    {
        var sheaf = AtWork();
        sheaf.Release("as-described");
        var ask = new StopJob("the hole is twice as long", NotAsWritten: true);
        Stop.EndsRound(sheaf.Order, ask).ShouldBeTrue();
        sheaf.Order.Sign(new Stop(new(ask, true)), Tove, sheaf.Now);
        sheaf.Order.NextRound();
        (sheaf.Order.Stage, sheaf.Order.Round).ShouldBe((Stage.Requested, 2));
        WorkPlan.Of(sheaf.Order).ShouldBeNull();
        Stop.Standing(sheaf.Order).ShouldBeNull();
    }

    private static WallRead Wall(string spot, double mm) => new(spot, Measure.Of(mm, "mm"));

    private static Objection? Sign(WorkSheaf sheaf, string point, Person? by = null) =>
        HoldPointRelease.Objection(sheaf.Order, sheaf.Plan, sheaf.PointOf(point), by ?? Tove, sheaf.Now);

    private static Objection? Evidenced(WorkSheaf sheaf, ReleaseHoldPoint ask, bool instrument = true)
    {
        var point = sheaf.PointOf(ask.HoldPoint);
        var tool =
            !instrument ? null
            : point.Evidence.Contains(Evidence.ThicknessReadings) ? Tool(InstrumentKind.ThicknessGauge)
            : point.Evidence.Contains(Evidence.HardnessReading) ? Tool(InstrumentKind.HardnessTester)
            : null;
        return HoldPointEvidence.Objection(sheaf.Order, sheaf.Plan, point, ask, tool, null, sheaf.Now);
    }

    private static Instrument Tool(InstrumentKind kind) =>
        new()
        {
            Serial = "X-1",
            Kind = kind,
            CalibrationDue = new DateOnly(2027, 1, 1),
        };

    private static Objection? Mixed(WorkSheaf sheaf, Api.Stock.Batch batch) =>
        Api.Fitting.Mix.Objection(
            sheaf.Order,
            new StartMix(batch.Id, null, null, null, Measure.Of(20, "°C")),
            batch,
            null,
            sheaf.Now
        );

    private static Api.Stock.Batch Other(Api.Stock.Batch batch) => new() { Item = batch.Item, Number = batch.Number };

    private static StartMix Parts(double resin, double hardener) =>
        new(SealantBatch, Measure.Of(resin, "g"), Guid.NewGuid(), Measure.Of(hardener, "g"), Measure.Of(20, "°C"));

    private static IReadOnlyList<Tightened> Passes(params double[] last) =>
        [
            .. last.Select((_, i) => new Tightened(i + 1, 1, Torque: Measure.Of(20, "N m"))),
            .. last.Select((torque, i) => new Tightened(i + 1, 2, Torque: Measure.Of(torque, "N m"))),
        ];
}
