using RepairOrders.Contract;
using static RepairOrders.Contract.ConsentCapacity;

namespace RepairOrders.Api.Tests.Consenting;

public sealed class ConsentingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_spot_that_failed_on_an_earlier_order_is_barred_whatever_was_said_at_night()
    {
        var scene = await workshop.Scene();
        var method = await Emergency.Listed(scene);
        var failed = await AnOrder.InService(scene);
        await scene.Tove.ReportFailure(failed, new(LeakState.Drip, "drips at the band"));
        var number = await AnOrder.Requested(scene);
        var spoken = Emergency.Spoken(method, scene.IdOf("ines"), ConsentCapacity.EngineerOnCall, scene.Clock.Now);
        await scene.Tove.Consent(number, spoken).ShouldBeRefused("emergency-spot-failed");
        var elsewhere = await AnOrder.Requested(scene, Cast.Weep(scene.Site) with { Place = "Pump house 2, roof" });
        await scene.Tove.Consent(elsewhere, spoken);
    }

    [Fact]
    public async Task Two_spoken_consents_bring_the_order_to_consented()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Consented(scene);
        var order = await scene.Mara.Order(number);
        order.Title.Stage.ShouldBe(Stage.Consented);
        order.Title.SignedClass.ShouldBe(RiskClass.C, "consequence 1 with likelihood 5 until assessed");
        order.Records.Count(r => r.Kind == "consent").ShouldBe(2);
    }

    [Fact]
    public async Task Each_consenter_confirms_in_his_own_session()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Consented(scene);
        var consents = (await scene.Mara.Order(number)).Records.Where(r => r.Kind == "consent").ToList();
        await scene.Olaf.ConfirmConsent(number, new(consents[0].Id, true)).ShouldBeRefused("not-your-consent");
        (await scene.Ines.Order(number)).Actions.ShouldContain(a => a.Action == "confirm-consent");
        await scene.Ines.ConfirmConsent(number, new(consents[0].Id, true));
        await scene.Ines.ConfirmConsent(number, new(consents[0].Id, true)).ShouldBeRefused("nothing-to-confirm");
        await scene.Olaf.ConfirmConsent(number, new(consents[1].Id, true));
    }

    [Fact]
    public async Task A_consent_that_was_not_given_takes_the_leave_back()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Consented(scene);
        var consent = (await scene.Mara.Order(number)).Records.First(r => r.Kind == "consent");
        var no = await Should.ThrowAsync<Refused>(() => scene.Ines.ConfirmConsent(number, new(consent.Id, false)));
        (no.Status, no.Fields.ContainsKey("remark")).ShouldBe((400, true));
        await scene.Ines.ConfirmConsent(number, new(consent.Id, false, "I said: wait for me"));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Requested);
    }

    [Fact]
    public async Task Consents_come_from_two_persons_who_can_give_them_and_not_from_the_requester()
    {
        var scene = await workshop.Scene();
        var method = await Emergency.Listed(scene);
        var number = await AnOrder.Requested(scene);
        await Consent("mara", OperationsInCharge).ShouldBeRefused("consent-capacity");
        await Consent("rune", EngineerOnCall).ShouldBeRefused("consent-capacity");
        await scene.Hire(new("both", "Bo Thomas", [Role.IntegrityEngineer], ["operations-in-charge"]));
        await Consent("both", EngineerOnCall);
        await Consent("ines", EngineerOnCall).ShouldBeRefused("consent-given-already");
        await Consent("both", OperationsInCharge).ShouldBeRefused("consent-same-person");
        await Consent("olaf", OperationsInCharge);
        await Consent("olaf", OperationsInCharge).ShouldBeRefused("consents-stand");
        var own = (await scene.Ines.Request(Cast.Weep(scene.Site))).Title.Number;
        await scene
            .Tove.Consent(own, Emergency.Spoken(method, scene.IdOf("ines"), EngineerOnCall, scene.Clock.Now))
            .ShouldBeRefused("consent-by-requester");

        Task<RecordView> Consent(string giver, ConsentCapacity place) =>
            scene.Tove.Consent(number, Emergency.Spoken(method, scene.IdOf(giver), place, scene.Clock.Now));
    }

    [Fact]
    public async Task Consents_lapse_after_twelve_hours_and_can_be_asked_for_again()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Consented(scene);
        var method = await Emergency.Listed(scene);
        var spoken = scene.Clock.Now;
        scene.Clock.Pass(TimeSpan.FromHours(12.5));
        await scene
            .Tove.Consent(number, Emergency.Spoken(method, scene.IdOf("ines"), EngineerOnCall, spoken))
            .ShouldBeRefused("consent-too-old");
        await scene.Tove.Consent(number, Emergency.Spoken(method, scene.IdOf("ines"), EngineerOnCall, scene.Clock.Now));
        var order = await scene.Mara.Order(number);
        order.Title.Stage.ShouldBe(Stage.Requested, "the lapsed ones are set aside");
        order.Records.Count(r => r is { Kind: "consent", SetAsideAt: not null }).ShouldBe(2);
    }

    [Fact]
    public async Task A_second_round_is_no_case_for_the_emergency_path()
    {
        var scene = await workshop.Scene();
        var method = await Emergency.Listed(scene);
        var number = await AnOrder.Fitting(scene);
        await scene.Tove.StopJob(number, new("the hole is twice as long", NotAsWritten: true, "30 mm, not 15"));
        await scene
            .Tove.Consent(number, Emergency.Spoken(method, scene.IdOf("ines"), EngineerOnCall, scene.Clock.Now))
            .ShouldBeRefused("emergency-failed-before");
    }

    [Fact]
    public async Task One_more_period_is_granted_once()
    {
        var scene = await workshop.Scene();
        var (band, putty) = await Emergency.Locker(scene);
        var number = await AnOrder.Consented(scene);
        await scene.Olaf.ReadyOrder(number, Emergency.Live(scene));
        await Emergency.Fit(scene, number);
        await Emergency.LetSet(scene, number);
        await Emergency.Prove(scene, number);
        await scene.Olaf.IssueMaterial(number, Emergency.FromLocker(scene, band, putty));
        await scene.Olaf.AcceptRepair(number, new("night shift, control room", IsolationsRemoved: true));
        await scene.Henrik.GrantPeriod(number, new("the engineer is ill"));
        await scene
            .Henrik.GrantPeriod(number, new("the engineer is still ill"))
            .ShouldBeRefused("period-granted-already");
    }

    [Fact]
    public async Task Both_consents_are_for_one_entry()
    {
        var scene = await workshop.Scene();
        var one = await Emergency.Listed(scene);
        var other = await Emergency.Listed(scene, Emergency.Patch(scene.Site) with { Name = "Another patch" });
        var number = await AnOrder.Requested(scene);
        await scene.Tove.Consent(number, Emergency.Spoken(one, scene.IdOf("ines"), EngineerOnCall, scene.Clock.Now));
        await scene
            .Tove.Consent(number, Emergency.Spoken(other, scene.IdOf("olaf"), OperationsInCharge, scene.Clock.Now))
            .ShouldBeRefused("consent-other-method");
    }

    [Fact]
    public async Task The_emergency_path_is_barred_where_shutting_down_is_the_answer()
    {
        var scene = await workshop.Scene();
        var method = await Emergency.Listed(scene);
        var number = await AnOrder.Requested(scene);
        var ask = Emergency.Spoken(method, scene.IdOf("ines"), EngineerOnCall, scene.Clock.Now);
        await scene.Tove.Consent(number, ask with { CrackLike = true }).ShouldBeRefused("emergency-crack-like");
        await scene.Tove.Consent(number, ask with { FailedBefore = true }).ShouldBeRefused("emergency-spot-failed");
        var listed = ask with { Consequences = AnOrder.FewPeople with { ListedContents = true } };
        await scene.Tove.Consent(number, listed).ShouldBeRefused("emergency-contents");

        var oil = await Emergency.Listed(
            scene,
            Emergency.Patch(scene.Site) with
            {
                Fluids = ["heating oil"],
                GreatestTemperature = Measure.Of(300, "°C"),
            }
        );
        await scene.Line("HO-100-0450", l => l.OperatingTemperatureC = 260);
        var hot = await AnOrder.Requested(scene, Cast.Weep(scene.Site) with { Line = "HO-100-0450" });
        await scene
            .Tove.Consent(hot, ask with { Method = oil, CauseKnown = false })
            .ShouldBeRefused("emergency-cause-unknown");
    }

    [Fact]
    public async Task An_entry_is_for_its_sizes_pressures_temperatures_and_fluids()
    {
        var scene = await workshop.Scene();
        var narrow = await Emergency.Listed(
            scene,
            Emergency.Patch(scene.Site) with
            {
                GreatestPressure = Measure.Of(4, "bar"),
            }
        );
        var number = await AnOrder.Requested(scene);
        await scene
            .Tove.Consent(number, Emergency.Spoken(narrow, scene.IdOf("ines"), EngineerOnCall, scene.Clock.Now))
            .ShouldBeRefused("list-entry-does-not-fit");
        var unlisted = await AnOrder.Requested(scene, Cast.Weep(scene.Site) with { Line = null });
        await scene
            .Tove.Consent(unlisted, Emergency.Spoken(narrow, scene.IdOf("ines"), EngineerOnCall, scene.Clock.Now))
            .ShouldBeRefused("emergency-line-unknown");
    }

    [Fact]
    public async Task The_list_is_signed_by_two_and_good_for_a_year()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        var entry = await scene.Ines.ListEmergencyMethod(Emergency.Patch(scene.Site));
        await scene.Tove.Consent(number, Spoken()).ShouldBeRefused("list-entry-unsigned");
        await scene.Ines.SignEmergencyMethod(entry.Id).ShouldBeRefused("list-second-signature");
        entry = await scene.Henrik.SignEmergencyMethod(entry.Id);
        entry.GoodUntil.ShouldBe(scene.Clock.Today.AddYears(1));
        entry.Objection.ShouldBeNull();
        await scene.Pavel.SignEmergencyMethod(entry.Id).ShouldBeRefused("list-entry-complete");
        (
            await Should.ThrowAsync<Refused>(() => scene.Mara.ListEmergencyMethod(Emergency.Patch(scene.Site)))
        ).Status.ShouldBe(403);
        scene.Clock.PassDays(366);
        await scene.Tove.Consent(number, Spoken()).ShouldBeRefused("list-entry-expired");
        await scene.Ines.WithdrawEmergencyMethod(entry.Id, "the putty is no longer made");
        await scene.Tove.Consent(number, Spoken()).ShouldBeRefused("list-entry-withdrawn");
        (await scene.Rune.EmergencyMethods(scene.Site)).Single().WithdrawnWhy.ShouldBe("the putty is no longer made");

        RecordConsent Spoken() => Emergency.Spoken(entry.Id, scene.IdOf("ines"), EngineerOnCall, scene.Clock.Now);
    }

    [Fact]
    public async Task Nothing_is_owed_before_service()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Consented(scene);
        await scene.Henrik.GrantPeriod(number, new("the engineer is ill")).ShouldBeRefused("nothing-owed");
    }

    [Fact]
    public async Task At_least_one_approver_gave_no_consent()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Consented(scene);
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        await scene.Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number));
        await scene.Ines.Size(number, AnOrder.Sizing(scene), await scene.Version(number));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Consented);
        var print = await scene.Fingerprint(number);
        await scene.Ines.Approve(number, new(print, ApprovalCapacity.Engineer));
        await scene.Olaf.Approve(number, new(print, ApprovalCapacity.Supervisor)).ShouldBeRefused("all-consented");
        await scene.Mara.Approve(number, new(print, ApprovalCapacity.Supervisor));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Approved);
    }
}
