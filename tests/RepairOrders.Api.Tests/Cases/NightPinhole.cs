using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Cases;

/// <summary>
/// A pinhole on a sweating DN 150 cooling-water line at night. Technician and shift supervisor are on site, the engineer is on the
/// telephone. It is fitted within three hours, and the papers are paid the next day.
/// </summary>
public sealed class NightPinhole(Workshop workshop)
{
    [Fact]
    public async Task Fitted_within_three_hours_and_the_debt_paid_next_day()
    {
        var scene = await workshop.Scene();
        var raised = scene.Clock.Now;

        var number = await AnOrder.Consented(scene);
        await Emergency.IntoService(scene, number);
        (scene.Clock.Now - raised).ShouldBeLessThan(TimeSpan.FromHours(3));

        var night = await scene.Mara.Order(number);
        night.Title.Stage.ShouldBe(Stage.InService);
        night.Flags.ShouldContain(f => f.Code == Flags.ApprovalOwed);
        night.Title.Method.ShouldBe("Banded patch, by emergency consent");
        // Likelihood 5 until somebody has read the walls; the debt clock of that class is the end date.
        var due = night.Debt!.DueAt;
        night.Title.EndDate.ShouldBe(DateOnly.FromDateTime(due.UtcDateTime.AddHours(1)));
        await Refuses("approval-owed-first", () => scene.Mara.AskExtension(number, SomeExtension(scene)));

        // Next day: who was called at night confirms in his own session, the papers are made, two who gave no consent approve.
        scene.Clock.Pass(TimeSpan.FromHours(10));
        await Emergency.ConfirmBoth(scene, number);
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        await scene.Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number));
        (await scene.Mara.Order(number)).Title.Method.ShouldBe("Banded patch");
        await scene.Ines.Size(number, AnOrder.Sizing(scene), await scene.Version(number));
        var print = await scene.Fingerprint(number);
        await scene.Mara.Approve(number, new(print, ApprovalCapacity.Supervisor));
        (await scene.Mara.Order(number)).Flags.ShouldContain(f => f.Code == Flags.ApprovalOwed);
        await scene.Ines.Approve(number, new(print, ApprovalCapacity.Engineer));

        var day = await scene.Mara.Order(number);
        day.Title.Stage.ShouldBe(Stage.InService);
        day.Debt.ShouldBeNull();
        day.Flags.ShouldNotContain(f => f.Code == Flags.ApprovalOwed);
        day.Title.EndDate!.Value.ShouldBeGreaterThan(night.Title.EndDate!.Value);
        day.Title.EndDate.ShouldBe((await scene.Design(number)).EndDate.On);
        (await scene.Rune.Journal(number)).BrokenAt.ShouldBeNull();
    }

    [Fact]
    public async Task Unpaid_it_has_to_come_off_and_the_manager_may_grant_one_period()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Consented(scene);
        await Emergency.IntoService(scene, number);
        var due = (await scene.Mara.Order(number)).Debt!.DueAt;
        scene.Clock.PassDays((int)Math.Ceiling((due - scene.Clock.Now).TotalDays) + 1);
        var late = await scene.Mara.Order(number);
        late.Flags.ShouldContain(f => f.Code == Flags.RemovalOwed);
        late.Flags.ShouldContain(f => f.Code == Flags.PastLife);

        await scene.Henrik.GrantPeriod(number, new("the engineer is ill; a second one comes tomorrow"));
        var granted = await scene.Mara.Order(number);
        granted.Debt!.DueAt.ShouldBeGreaterThan(due);
        await Refuses("period-granted-already", () => scene.Henrik.GrantPeriod(number, new("and one more period")));
    }

    private static AskExtension SomeExtension(Scene scene) =>
        new(
            SlipReason.PartsLate,
            "the spool is late",
            Guid.CreateVersion7(),
            new("job 4411", scene.Clock.Today.AddDays(90))
        );
}
