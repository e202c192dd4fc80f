using System.Text.Json;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Standing;

/// <summary>Real orders, walked to their stage over HTTP; then only the clock moves, and no job runs.</summary>
public sealed class FlagsOverTime(Workshop workshop)
{
    [Fact]
    public async Task A_look_falls_due_runs_out_of_grace_and_is_made()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        await Lacks(scene, number, Flags.LookDue, Flags.InGrace, Flags.LookOverdue);
        await Until(scene, number, Flags.LookDue, TimeSpan.FromDays(1));
        await Until(scene, number, Flags.InGrace, TimeSpan.FromHours(1));
        await Shows(scene, number, Flags.LookDue);
        await Lacks(scene, number, Flags.LookOverdue);
        await Until(scene, number, Flags.LookOverdue, TimeSpan.FromHours(12));
        await Lacks(scene, number, Flags.LookDue, Flags.InGrace);
        await Look(scene, number);
        await Lacks(scene, number, Flags.LookDue, Flags.InGrace, Flags.LookOverdue);
    }

    [Fact]
    public async Task Class_today_rises_past_the_end_and_moves_no_end_date()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var young = (await scene.Mara.Order(number)).Title;
        young.ClassToday.ShouldBe(young.SignedClass);
        var old = await Walk(scene, number, o => o.Title.ClassToday != young.ClassToday);
        (old.Title.ClassToday < young.ClassToday).ShouldBeTrue("A is the gravest");
        old.Title.SignedClass.ShouldBe(young.SignedClass);
        old.Title.EndDate.ShouldBe(young.EndDate);
        scene.Clock.Today.ShouldBe(young.EndDate!.Value.AddDays(1), "the first day past it");

        var due = await Walk(scene, number, o => Has(o, Flags.ThicknessDue));
        due.Title.EndDate.ShouldBe(young.EndDate);
        await Look(scene, number, walls: true);
        await Lacks(scene, number, Flags.ThicknessDue);
    }

    [Fact]
    public async Task A_debt_runs_out_and_is_granted_one_more_period()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Consented(scene);
        await Lacks(scene, number, Flags.ApprovalOwed);
        await Emergency.IntoService(scene, number);
        await Shows(scene, number, Flags.ApprovalOwed);
        await Lacks(scene, number, Flags.RemovalOwed, Flags.PastLife);

        await Until(scene, number, Flags.RemovalOwed, TimeSpan.FromHours(6));
        await Shows(scene, number, Flags.ApprovalOwed, Flags.PastLife);
        await scene.Henrik.GrantPeriod(number, new("the engineer is ill; a second one comes tomorrow"));
        await Shows(scene, number, Flags.ApprovalOwed);
        await Lacks(scene, number, Flags.RemovalOwed, Flags.PastLife);

        await Plan(scene, number, choose: true);
        await Shows(scene, number, Flags.ApprovalOwed);
        await Emergency.ConfirmBoth(scene, number);
        await Lacks(scene, number, Flags.ApprovalOwed);
    }

    [Fact]
    public async Task Work_is_stopped_a_permit_ends_and_putty_hardens()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Ready(scene);
        await Shows(scene, number, Flags.Leaking);
        await scene.Release(number, (await scene.Tove.Fitting(number)).Points[0].Point);
        await scene.Anton.StopJob(number, new("I smell gas"));
        await Shows(scene, number, Flags.Stopped);
        await scene.Mara.ResumeJob(number, new("detector reads nothing"));
        await Lacks(scene, number, Flags.Stopped, Flags.PermitOver);
        await Until(scene, number, Flags.PermitOver, TimeSpan.FromDays(1));
        await scene.Readied(number);
        await Lacks(scene, number, Flags.PermitOver);

        await scene.Fit(number);
        await Shows(scene, number, Flags.Curing);
        await scene.IntoService(number);
        await Lacks(scene, number, Flags.Leaking);
        await Walk(scene, number, o => !Has(o, Flags.Curing));
    }

    [Fact]
    public async Task An_owner_leaves_and_another_accepts()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        await Lacks(scene, number, Flags.NoOwner);
        await scene.Leaves("mara");
        await Has(scene, number, Flags.NoOwner, true);
        var offer = await scene.Ines.OfferHandOver(number, new(scene.IdOf("olaf"), "Mara has left"));
        await scene.Olaf.AcceptHandOver(number, new(offer.Id), (await scene.Rune.Order(number)).Version);
        await Has(scene, number, Flags.NoOwner, false);
    }

    [Fact]
    public async Task A_batch_is_called_back_and_freed()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var batch = (await scene.Mara.Order(number))
            .Records.Where(r => r.Kind == "material-issue")
            .SelectMany(r => r.Body.Deserialize<SignedIssue>(RepairOrdersClient.Json)!.Lines)
            .First()
            .Batch;
        await Lacks(scene, number, Flags.RecallHit, Flags.ReassessmentOwed);
        scene.Clock.Pass(TimeSpan.FromHours(1));
        await scene.Signe.JudgeBatch(batch, new(BatchStanding.Recalled, "notice 12"));
        await Shows(scene, number, Flags.RecallHit, Flags.ReassessmentOwed);
        await scene.Ines.JudgeBatch(batch, new(BatchStanding.Good, "the notice was for another lot"));
        await Lacks(scene, number, Flags.RecallHit, Flags.ReassessmentOwed);
    }

    [Fact]
    public async Task A_line_leaks_again_and_its_section_carries_risk()
    {
        var scene = await workshop.Scene();
        var first = await AnOrder.InService(scene);
        await Lacks(scene, first, Flags.RepeatLeak, Flags.ReassessmentOwed, Flags.CarriedRisk);
        scene.Clock.PassDays(1);
        var second = await AnOrder.InService(scene);
        await Shows(scene, second, Flags.RepeatLeak, Flags.CarriedRisk);
        await Shows(scene, first, Flags.ReassessmentOwed, Flags.CarriedRisk);

        await Plan(scene, first, choose: false);
        await Lacks(scene, first, Flags.ReassessmentOwed);

        await scene.Tove.ReportFailure(second, new(LeakState.Drip, "drips at the gap"));
        await Shows(scene, second, Flags.Leaking, Flags.CarriedRisk);
        await scene.Olaf.MakeSafe(
            second,
            new(SafeBy.Isolation, "IC 230", null, AreaBarred: true, null, null, FailureMode.Seal)
        );
        await Lacks(scene, second, Flags.Leaking, Flags.CarriedRisk);
        await Lacks(scene, first, Flags.CarriedRisk);

        // Two years on, the leaks before are too old to count.
        scene.Clock.PassDays(2 * 366);
        await Lacks(scene, second, Flags.RepeatLeak);
    }

    private static async Task Plan(Scene scene, string number, bool choose)
    {
        scene.Clock.Pass(TimeSpan.FromHours(1));
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        if (choose)
            await scene.Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number));
        await scene.Ines.Size(number, AnOrder.Sizing(scene), await scene.Version(number));
        var order = await scene.Mara.Order(number);
        await scene.Mara.Approve(number, new(order.Fingerprint!, ApprovalCapacity.Supervisor));
        await scene.Pavel.Approve(number, new(order.Fingerprint!, ApprovalCapacity.Engineer));
    }

    /// <summary>Day by day, each look made when it falls due.</summary>
    private static async Task<OrderSheet> Walk(Scene scene, string number, Func<OrderSheet, bool> arrived)
    {
        for (var day = 0; day < 250; day++)
        {
            var order = await scene.Mara.Order(number);
            if (arrived(order))
                return order;
            if (Has(order, Flags.LookDue))
                await Look(scene, number);
            scene.Clock.PassDays(1);
        }
        throw new InvalidOperationException($"{number} does not get there in 250 days.");
    }

    private static async Task Until(Scene scene, string number, string flag, TimeSpan step)
    {
        for (var steps = 0; !Has(await scene.Mara.Order(number), flag); steps++)
        {
            steps.ShouldBeLessThan(60, $"{flag} never shows");
            scene.Clock.Pass(step);
        }
    }

    private static async Task Look(Scene scene, string number, bool walls = false) =>
        await scene.Tove.Visit(
            number,
            await (walls ? scene.SomeVisit(number, ("3 o'clock", 6.4)) : scene.SomeVisit(number))
        );

    private static async Task Shows(Scene scene, string number, params string[] flags)
    {
        foreach (var flag in flags)
            await Has(scene, number, flag, true);
    }

    private static async Task Lacks(Scene scene, string number, params string[] flags)
    {
        foreach (var flag in flags)
            await Has(scene, number, flag, false);
    }

    // On the order's page and in the register alike.
    private static async Task Has(Scene scene, string number, string flag, bool shown)
    {
        var order = await scene.Rune.Order(number);
        Has(order, flag).ShouldBe(shown, $"{flag} among {string.Join(", ", order.Flags.Select(f => f.Code))}");
        var rows = (await scene.Rune.Register(new RegisterFilter(Flag: flag), null, 200)).Rows;
        rows.Any(r => r.Number == number).ShouldBe(shown, $"{flag} in the register");
    }

    private static bool Has(OrderSheet order, string flag) => order.Flags.Any(f => f.Code == flag);
}
