using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Readying;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.WorkSheaf;

namespace RepairOrders.Api.Tests.Readying;

public sealed class ReadyRules
{
    [Fact]
    public void An_isolated_line_a_permit_gas_test_talk_and_competent_fitters_are_ready()
    {
        var sheaf = WorkSheaf.Approved().Issued();
        Ask(sheaf, sheaf.Permit()).ShouldBeNull();
        sheaf.Ready();
        sheaf.Order.Stage.ShouldBe(Stage.Ready);
    }

    [Fact]
    public void Without_the_whole_material_nothing_is_ready() =>
        Readiness.Objection(WorkSheaf.Approved().Order, Mara, Monday)!.IsOfStage.ShouldBeTrue();

    [Fact]
    public void A_permit_that_has_ended_is_refused_in_the_sites_own_time()
    {
        var sheaf = WorkSheaf.Approved().Issued();
        var permit = sheaf.Permit() with { PermitUntil = Monday };
        Ask(sheaf, permit)!.Code.ShouldBe("permit-window");
        // 7 o'clock in UTC is 8 o'clock at the site.
        permit = permit with
        {
            PermitFrom = Monday.AddHours(-2),
        };
        Ask(sheaf, permit)!.Sentence.ShouldStartWith("Permit PTW 881 ended 08:00. Ask for it to be revalidated");
    }

    [Fact]
    public void Proving_dead_takes_two_and_a_gauge_that_reads_nothing()
    {
        var sheaf = WorkSheaf.Approved().Issued();
        var isolation = sheaf.Permit().Isolation!;
        Ask(sheaf, sheaf.Permit() with { Isolation = isolation with { ProvedDeadWith = " olaf brekke" } })!
            .Code.ShouldBe("proved-dead-alone");
        Ask(sheaf, sheaf.Permit() with { Isolation = isolation with { Reading = Measure.Of(0.4, "bar") } })!
            .Code.ShouldBe("not-dead");
    }

    [Theory]
    [InlineData(RiskClass.A, LiveFitCapacity.Manager)]
    [InlineData(RiskClass.B, LiveFitCapacity.Engineer, LiveFitCapacity.OperationsInCharge)]
    [InlineData(RiskClass.C, LiveFitCapacity.Engineer)]
    [InlineData(RiskClass.D, LiveFitCapacity.Supervisor)]
    public void A_live_fit_takes_the_consents_of_its_class(RiskClass signed, params LiveFitCapacity[] places)
    {
        var sheaf = WorkSheaf.Approved(signed).Issued();
        var live = sheaf.Permit() with { Isolation = null, LivePressure = Measure.Of(5, "bar") };
        LiveFitConsent.Needed(signed).ShouldBe(places);
        foreach (var place in places)
        {
            Ask(sheaf, live)!.Code.ShouldBe("not-isolated");
            var who = place switch
            {
                LiveFitCapacity.Manager => Henrik,
                LiveFitCapacity.Engineer => Ines,
                _ => Olaf,
            };
            var ask = new ConsentToLiveFit(place, "held at 5 bar, nobody else within 10 m");
            LiveFitConsent.Objection(sheaf.Order, ask, who, Monday).ShouldBeNull();
            LiveFitConsent.Objection(sheaf.Order, ask, Tove, Monday)!.Code.ShouldBe("live-fit-capacity");
            sheaf.Order.Sign(new LiveFitConsent(ask), who, Monday);
        }
        Ask(sheaf, live).ShouldBeNull();
        Ask(sheaf, live with { LivePressure = null })!.Code.ShouldBe("live-pressure-missing");
        Ask(sheaf, live with { LivePressure = Measure.Of(6.1, "bar") })!.Code.ShouldBe("live-pressure-high");
    }

    [Fact]
    public void Two_places_take_two_persons()
    {
        var both = Somebody("Both Hats", Role.IntegrityEngineer, Competence.OperationsInCharge);
        var sheaf = WorkSheaf.Approved(RiskClass.B).Issued();
        sheaf.Order.Sign(new LiveFitConsent(new(LiveFitCapacity.Engineer, "at 5 bar")), both, Monday);
        var second = new ConsentToLiveFit(LiveFitCapacity.OperationsInCharge, "at 5 bar");
        LiveFitConsent.Objection(sheaf.Order, second, both, Monday)!.Code.ShouldBe("live-fit-twice");
        LiveFitConsent.Objection(sheaf.Order, second, Olaf, Monday).ShouldBeNull();
        var again = second with { As = LiveFitCapacity.Engineer };
        LiveFitConsent.Objection(sheaf.Order, again, Ines, Monday)!.Code.ShouldBe("live-fit-place");
    }

    [Fact]
    public void Nobody_consents_to_work_on_a_live_line_of_category_M()
    {
        var sheaf = WorkSheaf.Approved(RiskClass.A, category: ServiceCategory.M).Issued();
        var live = sheaf.Permit() with { Isolation = null };
        Ask(sheaf, live)!.Code.ShouldBe("live-fit-category-m");
        LiveFitConsent.Objection(sheaf.Order, Henrik, Monday)!.Code.ShouldBe("live-fit-category-m");
    }

    [Fact]
    public void A_gas_test_is_fresh_and_inside_its_limits()
    {
        var sheaf = WorkSheaf.Approved().Issued();
        var test = sheaf.Permit().GasTest;
        Gas(test with { At = Monday.AddHours(-4) }).ShouldBeNull();
        Gas(test with { At = Monday.AddHours(-4.1) }).ShouldBe("gas-test-old");
        Gas(test with { At = Monday.AddMinutes(1) }).ShouldBe("gas-test-old");
        Gas(test with { WithinPermit = false }).ShouldBe("gas-test-fails");
        Gas(test with { LowerExplosivePercent = 10 }).ShouldBe("gas-test-fails");
        Gas(test with { OxygenPercent = 19.4 }).ShouldBe("gas-test-fails");
        Gas(test with { OxygenPercent = 23.6 }).ShouldBe("gas-test-fails");

        string? Gas(GasTest t) => Ask(sheaf, sheaf.Permit() with { GasTest = t })?.Code;
    }

    [Fact]
    public void A_competence_must_last_as_long_as_the_permit()
    {
        var sheaf = WorkSheaf.Approved().Issued();
        var lapsing = Somebody("Lars Eide", Role.Technician);
        lapsing.Competences = [new Competence("bolted-clamp", new DateOnly(2026, 3, 2))];
        var permit = sheaf.Permit() with { TalkSignedBy = [lapsing.Id] };
        Readiness.Objection(sheaf.Order, permit, [lapsing], Mara, Monday).ShouldBeNull();
        permit = permit with { PermitUntil = Monday.AddDays(1) };
        var no = Readiness.Objection(sheaf.Order, permit, [lapsing], Mara, Monday)!;
        no.Code.ShouldBe("competence-lapsed");
        no.Sentence.ShouldContain("Lars Eide");
        Readiness.Objection(sheaf.Order, sheaf.Permit(), [Mara], Mara, Monday)!.Code.ShouldBe("competence-lapsed");
    }

    [Theory]
    [InlineData(RiskClass.A, true)]
    [InlineData(RiskClass.B, true)]
    [InlineData(RiskClass.C, false)]
    [InlineData(RiskClass.D, false)]
    public void On_A_and_B_two_fit(RiskClass signed, bool two)
    {
        var sheaf = WorkSheaf.Approved(signed).Issued();
        Readiness
            .Objection(sheaf.Order, sheaf.Permit(), [Tove], Mara, Monday)
            ?.Code.ShouldBe(two ? "two-fitters" : null);
        Ask(sheaf, sheaf.Permit()).ShouldBeNull();
    }

    [Fact]
    public void Every_fitter_signs_the_talk_and_in_a_confined_space_somebody_stands_by()
    {
        var sheaf = WorkSheaf.Approved().Issued();
        Ask(sheaf, sheaf.Permit() with { TalkSignedBy = [Tove.Id] })!.Sentence.ShouldStartWith("Anton Reyes");
        var confined = sheaf.Permit() with { PermitKind = PermitKind.ConfinedSpace };
        Ask(sheaf, confined)!.Code.ShouldBe("standby-missing");
        Ask(sheaf, confined with { Standby = "Signe Dahl" }).ShouldBeNull();
    }

    [Fact]
    public void A_welded_method_takes_a_permit_for_hot_work()
    {
        var sheaf = WorkSheaf.Approved(design: Clamp with { Method = "welded-patch", Name = "Welded patch" }).Issued();
        Ask(sheaf, sheaf.Permit())!.Code.ShouldBe("hot-permit-missing");
        Ask(sheaf, sheaf.Permit() with { PermitKind = PermitKind.Hot }).ShouldBeNull();
    }

    [Fact]
    public void An_approval_older_than_thirty_days_needs_a_look_first()
    {
        var sheaf = WorkSheaf.Approved().Issued();
        var approved = sheaf.Order.All<Api.Approving.Approval>().Last().At;
        Readiness.Objection(sheaf.Order, Mara, approved.AddDays(30)).ShouldBeNull();
        Readiness.Objection(sheaf.Order, Mara, approved.AddDays(30.1))!.Code.ShouldBe("approval-old");
    }

    [Fact]
    public void A_removal_is_ordered_first_and_made_on_a_dead_line()
    {
        var sheaf = WorkSheaf.Approved().Issued();
        var removal = sheaf.Permit() with { For = ReadinessFor.Removal };
        Ask(sheaf, removal)!.Code.ShouldBe("removal-not-ordered");
    }

    [Fact]
    public void A_new_permit_window_is_a_new_readiness_and_the_work_goes_on()
    {
        var sheaf = WorkSheaf.Approved().Issued().Ready();
        sheaf.Pass(TimeSpan.FromHours(9));
        Permit.Objection(sheaf.Order, ReadinessFor.Fit, sheaf.Now)!.Code.ShouldBe("permit-over");
        sheaf.Ready();
        Permit.Objection(sheaf.Order, ReadinessFor.Fit, sheaf.Now).ShouldBeNull();
        Permit.Objection(sheaf.Order, ReadinessFor.Fit, Monday)!.Code.ShouldBe("permit-not-begun");
    }

    private static Objection? Ask(WorkSheaf sheaf, ReadyOrder ask) =>
        Readiness.Objection(sheaf.Order, ask, [Tove, Anton], Mara, Monday);
}
