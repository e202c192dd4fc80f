using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Readying;

public sealed class ReadyingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task Every_refusal_of_a_readiness_names_its_reason_and_who_clears_it()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        await Refuses("not-now", () => scene.Readied(number));
        await scene.Issue(number);
        var now = scene.Clock.Now;
        var ready = AnOrder.Readiness(scene);
        var isolation = ready.Isolation!;
        await Is("permit-window", ready with { PermitUntil = ready.PermitFrom });
        await Is("permit-over", ready with { PermitFrom = now.AddHours(-9), PermitUntil = now.AddHours(-1) });
        await Is("not-dead", ready with { Isolation = isolation with { Reading = Measure.Of(2, "bar") } });
        await Is("proved-dead-alone", ready with { Isolation = isolation with { ProvedDeadWith = "Olaf Brekke" } });
        await Is("not-isolated", ready with { Isolation = null });
        await Is("gas-test-old", ready with { GasTest = ready.GasTest with { At = now.AddHours(-5) } });
        await Is("gas-test-fails", ready with { GasTest = ready.GasTest with { OxygenPercent = 18 } });
        await Is("competence-lapsed", ready with { Fitters = [scene.IdOf("mara")] });
        await Is("talk-not-signed", ready with { TalkSignedBy = [scene.IdOf("tove")] });
        await Is("standby-missing", ready with { PermitKind = PermitKind.ConfinedSpace });
        await Is("removal-not-ordered", ready with { For = ReadinessFor.Removal });
        scene.Clock.PassDays(31);
        await Is("approval-old", AnOrder.Readiness(scene));

        Task<Refused> Is(string code, ReadyOrder ask) => Refuses(code, () => scene.Olaf.ReadyOrder(number, ask));
    }

    [Fact]
    public async Task A_window_read_off_the_clock_on_the_wall_is_kept_in_universal_time()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Issued(scene);
        var ready = AnOrder.Readiness(scene);
        var oslo = TimeSpan.FromHours(1);
        var record = await scene.Olaf.ReadyOrder(
            number,
            ready with
            {
                PermitFrom = ready.PermitFrom.ToOffset(oslo),
                PermitUntil = ready.PermitUntil.ToOffset(oslo),
                GasTest = ready.GasTest with { At = ready.GasTest.At.ToOffset(oslo) },
            }
        );
        record.Summary.ShouldContain($"until {ready.PermitUntil:yyyy-MM-dd HH:mm} UTC");
        (await scene.Tove.Fitting(number)).PermitUntil.ShouldBe(ready.PermitUntil);
    }

    [Fact]
    public async Task A_live_fit_takes_the_consent_of_its_class_given_by_the_person_himself()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Issued(scene);
        var live = AnOrder.Readiness(scene) with { Isolation = null };
        var engineer = new ConsentToLiveFit(LiveFitCapacity.Engineer, "held at 5 bar, area roped off");
        await Refuses(
            "live-fit-place",
            () => scene.Henrik.ConsentToLiveFit(number, engineer with { As = LiveFitCapacity.Manager })
        );
        await Refuses("live-fit-capacity", () => scene.Mara.ConsentToLiveFit(number, engineer));
        await scene.Ines.ConsentToLiveFit(number, engineer);
        await Refuses("live-fit-consented", () => scene.Pavel.ConsentToLiveFit(number, engineer));
        await Refuses("live-pressure-missing", () => scene.Olaf.ReadyOrder(number, live));
        await Refuses(
            "live-pressure-high",
            () => scene.Olaf.ReadyOrder(number, live with { LivePressure = Measure.Of(7, "bar") })
        );
        await scene.Olaf.ReadyOrder(number, live with { LivePressure = Measure.Of(5, "bar") });
        var order = await scene.Mara.Order(number);
        order.Title.Stage.ShouldBe(Stage.Ready);
        order.Records.Last(r => r.Kind == "readiness").Summary.ShouldContain("line live");
    }

    [Fact]
    public async Task On_class_A_two_fit_and_the_manager_consents_to_a_live_line()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.ApprovedWith(scene, AnOrder.Grave(scene));
        (await scene.Mara.Order(number)).Title.SignedClass.ShouldBe(RiskClass.A);
        await scene.Issue(number);
        var ready = AnOrder.Readiness(scene);
        await Refuses(
            "two-fitters",
            () => scene.Olaf.ReadyOrder(number, ready with { Fitters = [scene.IdOf("tove")] })
        );
        var live = ready with { Isolation = null, LivePressure = Measure.Of(5, "bar") };
        await Refuses("not-isolated", () => scene.Olaf.ReadyOrder(number, live));
        await scene.Henrik.ConsentToLiveFit(number, new(LiveFitCapacity.Manager, "held at 5 bar, area cleared"));
        await scene.Olaf.ReadyOrder(number, live);
        await scene.Fit(number);
        await scene.Proved(number);
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Fitted);
    }

    [Fact]
    public async Task On_class_B_two_persons_consent_to_a_live_line()
    {
        var scene = await workshop.Scene();
        var judged = AnOrder.Judged(scene) with
        {
            Consequences = new(PeopleNearby.MannedArea, true, Measure.Of(500, "kg"), false),
        };
        var number = await AnOrder.ApprovedWith(scene, judged);
        (await scene.Mara.Order(number)).Title.SignedClass.ShouldBe(RiskClass.B);
        Cast.Member both = new(
            "berit",
            "Berit Moe",
            [Role.IntegrityEngineer],
            [Api.People.Competence.OperationsInCharge]
        );
        var berit = await scene.Hire(both, null, null);
        await berit.ConsentToLiveFit(number, new(LiveFitCapacity.Engineer, "held at 5 bar"));
        await Refuses(
            "live-fit-twice",
            () => berit.ConsentToLiveFit(number, new(LiveFitCapacity.OperationsInCharge, "held at 5 bar"))
        );
        await scene.Olaf.ConsentToLiveFit(number, new(LiveFitCapacity.OperationsInCharge, "held at 5 bar"));
    }

    [Fact]
    public async Task A_line_of_category_M_is_never_worked_on_live_and_welding_takes_a_hot_permit()
    {
        var scene = await workshop.Scene();
        await scene.Line("CW-150-3104", l => l.ServiceCategory = "m");
        var number = await AnOrder.ApprovedWith(
            scene,
            method: new(
                "section-replacement",
                [new("banded-patch", "the fluid may not be sealed with putty")],
                "the only method for this fluid"
            ),
            sizing: AnOrder.Sizing(scene) with
            {
                Values = new Dictionary<string, InputValue> { ["kind"] = 1, ["designLifeDays"] = 180 },
            }
        );
        await scene.Issue(number);
        var ready = AnOrder.Readiness(scene);
        await Refuses(
            "hot-permit-missing",
            () => scene.Olaf.ReadyOrder(number, ready with { PermitKind = PermitKind.Cold })
        );
        await Refuses(
            "live-fit-category-m",
            () => scene.Olaf.ReadyOrder(number, ready with { Isolation = null, LivePressure = Measure.Of(5, "bar") })
        );
    }

    [Fact]
    public async Task A_technician_does_not_ready_the_job()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Issued(scene);
        var no = await Should.ThrowAsync<Refused>(() => scene.Tove.ReadyOrder(number, AnOrder.Readiness(scene)));
        no.Status.ShouldBe(403);
    }
}
