using Microsoft.EntityFrameworkCore;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Failing;

/// <summary>A failure is never refused; making safe names its controls, and who may keep it contained.</summary>
public sealed class FailingOverHttp(Workshop workshop)
{
    private static readonly ReportFailure Drip = new(LeakState.Drip, "dripping at the lower edge of the plate");

    private static readonly MakeSafe Contained = new(
        SafeBy.Containment,
        null,
        "tray and drain hose, pressure cut to 3 bar",
        AreaBarred: true,
        "field operator, every two hours",
        null,
        FailureMode.NotYetKnown
    );

    [Fact]
    public async Task It_leaves_service_at_once_whoever_reports_it()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        await Refuses(
            "no-failure",
            () => scene.Ines.StateFailureMode(number, new(Guid.CreateVersion7(), FailureMode.Seal, "the putty let go"))
        );
        var failure = await scene.Signe.ReportFailure(number, Drip);
        var failed = await scene.Mara.Order(number);
        failed.Title.Stage.ShouldBe(Stage.Failed);
        failed.Flags.ShouldContain(f => f.Code == Flags.Leaking);
        // A second report is taken too.
        await scene.Tove.ReportFailure(number, Drip with { State = LeakState.Jet });

        await Refuses(
            "failure-not-found",
            () => scene.Ines.StateFailureMode(number, new(Guid.CreateVersion7(), FailureMode.Seal, "the putty let go"))
        );
        await Refuses(
            "failure-mode-not-stated",
            () => scene.Ines.StateFailureMode(number, new(failure.Id, FailureMode.NotYetKnown, "not looked at"))
        );
        await scene.Ines.StateFailureMode(
            number,
            new(failure.Id, FailureMode.Seal, "the putty let go at the lower edge")
        );
    }

    [Fact]
    public async Task Contained_it_is_watched_under_named_controls_or_else_isolated()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        await scene.Tove.ReportFailure(number, Drip);
        await Refuses("operations-in-charge-needed", () => scene.Mara.MakeSafe(number, Contained));
        await Refuses("controls-not-named", () => scene.Olaf.MakeSafe(number, Contained with { Controls = " " }));
        await Refuses("area-not-barred", () => scene.Olaf.MakeSafe(number, Contained with { AreaBarred = false }));
        await Refuses("no-watch", () => scene.Olaf.MakeSafe(number, Contained with { WatchBy = null }));
        await Refuses(
            "isolation-certificate-missing",
            () => scene.Olaf.MakeSafe(number, Contained with { By = SafeBy.Isolation })
        );
        await Refuses(
            "nothing-to-agree",
            () => scene.Henrik.AgreeContainment(number, new(Guid.CreateVersion7(), "until noon"))
        );
        await scene.Olaf.MakeSafe(number, Contained);
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.MadeSafe);
        await scene.Olaf.MakeSafe(number, Contained with { By = SafeBy.Isolation, IsolationCertificate = "IC 311" });
        var isolated = await scene.Mara.Order(number);
        isolated.Title.Stage.ShouldBe(Stage.MadeSafe);
        isolated.Flags.ShouldNotContain(f => f.Code == Flags.Leaking);
    }

    [Fact]
    public async Task On_class_A_it_stays_contained_only_with_the_manager()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.ApprovedWith(scene, AnOrder.Grave(scene));
        (await scene.Mara.Order(number)).Title.SignedClass.ShouldBe(RiskClass.A);
        await scene.Issue(number);
        await scene.Readied(number);
        await scene.Fit(number);
        await scene.IntoService(number);
        await scene.Tove.ReportFailure(number, Drip);
        var safe = await scene.Olaf.MakeSafe(number, Contained);
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Failed, "not before the manager agrees");
        await Refuses(
            "other-containment",
            () => scene.Henrik.AgreeContainment(number, new(Guid.CreateVersion7(), "until noon"))
        );

        // The rule sees the person, not the desk: whoever signed the containment does not agree to it as manager either.
        var olaf = scene.IdOf("olaf");
        await Become([Role.Supervisor, Role.Manager]);
        await Refuses(
            "own-containment",
            () => scene.Olaf.AgreeContainment(number, new(safe.Id, "until the day shift"))
        );
        await Become([Role.Supervisor]);
        await scene.Henrik.AgreeContainment(number, new(safe.Id, "until the day shift has isolated it"));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.MadeSafe);

        Task Become(Role[] roles) =>
            workshop.InStore(async store =>
            {
                var person = await store.Users.SingleAsync(p => p.Id == olaf);
                person.Roles = [.. roles];
                await store.SaveChangesAsync();
            });
    }

    [Fact]
    public async Task Above_its_auto_ignition_temperature_a_leak_is_never_contained()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        await scene.Line(
            "CW-150-3104",
            line =>
            {
                line.Flammable = true;
                line.AutoIgnitionC = 15;
            }
        );
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        await scene.Tove.ReportFailure(number, Drip);
        await Refuses("never-contained-above-auto-ignition", () => scene.Olaf.MakeSafe(number, Contained));
    }
}
