using RepairOrders.Api.Orders;
using RepairOrders.Api.Standing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Standing;

/// <summary>What each flag says, from columns and a clock alone.</summary>
public sealed class FlagSentences
{
    private static readonly DateTimeOffset Now = new(2026, 5, 4, 10, 0, 0, TimeSpan.Zero);
    private static readonly TimeZoneInfo Oslo = TimeZoneInfo.FindSystemTimeZoneById("Europe/Oslo");

    private static readonly OrderColumns Well = new()
    {
        Stage = Stage.InService,
        SignedClass = RiskClass.C,
        ClassDFrom = Now.AddDays(-60),
        ClassCFrom = Now.AddDays(-60),
        EndDate = new DateOnly(2026, 8, 1),
        EndsAt = Now.AddDays(90),
        InServiceSince = Now.AddDays(-60),
        LookDueAt = Now.AddDays(5),
        LookOverdueAt = Now.AddDays(8),
        ThicknessDueAt = Now.AddDays(100),
        ThicknessPlannedAt = Now.AddDays(100),
        SettledAt = Now.AddDays(-61),
        LeakedAt = Now.AddDays(-62),
        LastLeakAt = Now.AddDays(-62),
        Live = true,
    };

    [Fact]
    public void A_repair_that_is_well_has_no_flag()
    {
        var today = Of(Well);
        today.Flags.ShouldBeEmpty();
        today.Class.ShouldBe(RiskClass.C);
        today.DaysLeft.ShouldBe(89);
        today.NextLook.ShouldBe(new DateOnly(2026, 5, 9));
    }

    [Fact]
    public void A_look_falls_due_runs_through_its_grace_and_is_overdue()
    {
        Codes(Well, Well.LookDueAt!.Value).ShouldBe([Flags.LookDue]);
        Codes(Well, Well.LookDueAt.Value.AddDays(1)).ShouldBe([Flags.InGrace, Flags.LookDue]);
        Codes(Well, Well.LookOverdueAt!.Value.AddSeconds(1)).ShouldBe([Flags.LookOverdue]);
        Say(Well, Flags.InGrace, Well.LookDueAt.Value.AddDays(1))
            .ShouldBe("In grace: 2 days left until 2026-05-12 12:00, then the look is overdue.");
        Say(Well, Flags.LookOverdue, Well.LookDueAt.Value.AddDays(4))
            .ShouldBe(
                "Look overdue: it was due 4 days ago, on 2026-05-09 12:00, and its grace is over. Ladder step 1: supervisor must answer by 2026-05-15 12:00."
            );
    }

    [Fact]
    public void The_end_date_passes()
    {
        var past = Well with { EndDate = new DateOnly(2026, 5, 1), EndsAt = Now.AddHours(-60) };
        Say(past, Flags.PastLife)
            .ShouldBe(
                "Past life for 2 days: the end date was 2026-05-01. The manager and an engineer decide on a fresh survey, or it comes off. Ladder step 1: supervisor must answer by 2026-05-05 00:00."
            );
        Of(past).DaysLeft.ShouldBe(-3);
        Codes(past with { Stage = Stage.LineOutOfService, Live = false }).ShouldBeEmpty();
    }

    [Fact]
    public void An_approval_is_owed_with_its_hours_and_then_removal_is()
    {
        var owed = Well with { ApprovalOwedUntil = Now.AddHours(9) };
        Say(owed, Flags.ApprovalOwed)
            .ShouldBe("Approval owed within 9 h: assessment, choice, design and signatures by 2026-05-04 21:00.");
        Say(owed, Flags.ApprovalOwed, Now.AddHours(12))
            .ShouldBe("Approval owed since 2026-05-04 21:00, 3 h ago: the repair has to come off.");
    }

    [Fact]
    public void Work_is_stopped_a_permit_ends_a_patch_cures()
    {
        var fitting = new OrderColumns
        {
            Stage = Stage.Fitting,
            StoppedSince = Now.AddHours(-2),
            StopWhy = "rain",
            PermitUntil = Now.AddMinutes(-20),
        };
        Say(fitting, Flags.Stopped).ShouldBe("Stopped for 2 h: rain.");
        Say(fitting, Flags.PermitOver)
            .ShouldBe(
                "Permit over for 20 min: it ended 2026-05-04 11:40. Ask for a new window; what was read is kept."
            );
        var curing = Well with { CuringUntil = Now.AddHours(3) };
        Say(curing, Flags.Curing)
            .ShouldBe("Curing: 3 h to full hardness, at 2026-05-04 15:00 if the pipe stays as warm.");
        Codes(curing, Now.AddHours(3)).ShouldBeEmpty();
    }

    [Fact]
    public void An_owner_who_cannot_sign_is_none()
    {
        var around = Around.Nothing with { OwnerLost = "Mara Lindqvist can no longer sign in", Supervisor = "olaf" };
        Of(Well, around)
            .Flags.Single()
            .ShouldBe(
                new FlagView(
                    Flags.NoOwner,
                    "No owner: Mara Lindqvist can no longer sign in. His looks go to olaf.",
                    Tone.Stop
                )
            );
    }

    [Fact]
    public void A_repeat_leak_counts_for_24_months()
    {
        var around = Around.Nothing with { Leaks = [new(Guid.NewGuid(), "mill-3", Now.AddMonths(-20))] };
        Of(Well, around).Flags.Single().Words.ShouldContain("mill-3");
        Of(Well, around, Now.AddMonths(4).AddDays(-1)).Flags.ShouldContain(f => f.Code == Flags.RepeatLeak);
        Of(Well, around, Now.AddMonths(4).AddDays(1)).Flags.ShouldNotContain(f => f.Code == Flags.RepeatLeak);
    }

    [Fact]
    public void A_later_leak_a_recall_and_a_third_neighbour_unsettle_the_papers()
    {
        var leak = Around.Nothing with { Leaks = [new(Guid.NewGuid(), "mill-9", Now.AddDays(-1))] };
        Say(Well, Flags.ReassessmentOwed, around: leak)
            .ShouldBe("Re-assessment owed: the line leaked again 24 h ago, mill-9.");
        var recall = Around.Nothing with { Recalled = [new(Now.AddDays(-3), "lot 7")] };
        Say(Well, Flags.ReassessmentOwed, around: recall).ShouldContain("lot 7");
        Say(Well, Flags.RecallHit, around: recall).ShouldContain("lot 7");
        var settled = Well with { SettledAt = Now.AddDays(-2) };
        Codes(settled, around: recall).ShouldBe([Flags.RecallHit]);
        var crowd = Around.Nothing with { Section = "CW-N", Carried = [RiskClass.B, RiskClass.C, RiskClass.C] };
        Say(Well, Flags.CarriedRisk, around: crowd).ShouldBe("3 live repairs stand on section CW-N and carry risk 15.");
        Codes(Well, around: crowd).ShouldBe([Flags.ReassessmentOwed, Flags.CarriedRisk]);
        Codes(Well with { CountsNeighbours = true }, around: crowd).ShouldBe([Flags.CarriedRisk]);
    }

    [Fact]
    public void Flags_stand_in_the_order_of_their_gravity() => FlagRules.All.Select(f => f.Code).ShouldBe(Flags.All);

    private static OrderToday Of(OrderColumns columns, Around? around = null, DateTimeOffset? at = null) =>
        OrderToday.Of(columns, around ?? Around.Nothing, Oslo, at ?? Now);

    private static IEnumerable<string> Codes(OrderColumns columns, DateTimeOffset? at = null, Around? around = null) =>
        Of(columns, around, at).Flags.Select(f => f.Code);

    private static string Say(OrderColumns columns, string code, DateTimeOffset? at = null, Around? around = null) =>
        Of(columns, around, at).Flags.Single(f => f.Code == code).Words;
}
