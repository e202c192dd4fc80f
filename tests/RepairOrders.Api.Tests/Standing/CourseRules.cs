using RepairOrders.Api.Figures;
using RepairOrders.Api.Standing;
using RepairOrders.Engineering.Risk;

namespace RepairOrders.Api.Tests.Standing;

public sealed class CourseRules
{
    private static readonly DateTimeOffset Start = new(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_class_C_repair_is_looked_at_after_7_days_and_then_every_30_from_due_date_to_due_date()
    {
        var fresh = Course.Of(InService(RiskClass.C, 365));
        fresh.LookDueAt.ShouldBe(Day(7));
        fresh.LookOverdueAt.ShouldBe(Day(10));
        fresh.ThicknessPlannedAt.ShouldBe(Day(180));
        // Should nobody go to the looks, the class rises and walls are asked for as on class B.
        fresh.ThicknessDueAt.ShouldBe(Day(90));
        var late = Course.Of(InService(RiskClass.C, 365, looks: [9]));
        late.LookDueAt.ShouldBe(Day(37));
    }

    [Fact]
    public void A_look_in_the_last_fifth_counts_and_an_earlier_one_moves_nothing()
    {
        Course.Of(InService(RiskClass.C, 365, looks: [7, 31])).LookDueAt.ShouldBe(Day(67));
        Course.Of(InService(RiskClass.C, 365, looks: [7, 30])).LookDueAt.ShouldBe(Day(37));
    }

    [Fact]
    public void At_least_three_looks_fall_before_the_end()
    {
        Course.Of(InService(RiskClass.D, 80)).LookDueAt.ShouldBe(Day(20));
        Course.Of(InService(RiskClass.D, 80, looks: [20])).LookDueAt.ShouldBe(Day(40));
    }

    [Fact]
    public void A_missed_look_raises_the_class_and_a_look_made_lowers_it_again()
    {
        // Consequence 2: likelihood 3 is class C, 4 class B.
        var course = Course.Of(InService(RiskClass.C, 365));
        course.At(Day(9.9)).Class.ShouldBe(RiskClass.C);
        course.At(Day(10.1)).Class.ShouldBe(RiskClass.B);
        course.From(RiskClass.B, Start).ShouldBe(Day(10) + Course.Tick);
        Course.Of(InService(RiskClass.C, 365, looks: [11])).At(Day(11.5)).Class.ShouldBe(RiskClass.C);
    }

    [Fact]
    public void A_raised_class_asks_for_the_next_look_sooner_and_the_second_miss_is_foreseen()
    {
        // Missed on day 10; at class B the one after is due 7 d after the first, on day 14, with a day of grace.
        var course = Course.Of(InService(RiskClass.C, 365));
        course.SecondMisses.ShouldBe([Day(15) + Course.Tick]);
        Course.Of(InService(RiskClass.C, 365, looks: [16])).SecondMisses.ShouldContain(Day(15) + Course.Tick);
        Course.Of(InService(RiskClass.C, 365, looks: [12])).SecondMisses.ShouldNotContain(Day(15) + Course.Tick);
    }

    [Fact]
    public void Past_half_its_life_a_repair_may_rise_a_class_and_its_next_look_is_foreseen_sooner()
    {
        double[] kept = [7, 37, 67];
        var course = Course.Of(InService(RiskClass.C, 150, looks: kept));
        course.At(Day(75.1)).Class.ShouldBe(RiskClass.B);
        // Due on day 97 at class C; at class B from day 75 it is due 7 d after day 67, but no earlier than the turn.
        course.LookDueAt.ShouldBe(Day(75) + Course.Tick);
    }

    [Fact]
    public void The_class_rises_when_the_end_date_passes_and_falls_when_it_is_extended()
    {
        var end = Day(100);
        double[] weekly = [.. Enumerable.Range(0, 20).Select(i => 2 + 7.0 * i)];
        var signed = new RiskRank(RiskClass.B, 4, 2, []);
        var facts = new CourseFacts(
            Start,
            [new(Start, signed)],
            Looks(weekly),
            new LifeFacts(Start, [new(Start, end), new(Day(110), Day(200))], 3650),
            SiteFiguresRules.First
        );
        var course = Course.Of(facts);
        course.At(Day(99)).Class.ShouldBe(RiskClass.B);
        course.At(Day(100)).Class.ShouldBe(RiskClass.A);
        course.At(Day(110)).Class.ShouldBe(RiskClass.B);
    }

    [Fact]
    public void Class_A_is_looked_at_each_shift_and_weekly_only_once_seen_dry_for_14_days()
    {
        var shifts = Enumerable.Range(2, 27).Select(i => i / 2.0).ToArray();
        Course.Of(InService(RiskClass.A, 90, looks: shifts)).LookDueAt.ShouldBe(Day(14.5));
        double[] more = [.. shifts, 14.5, 15];
        Course.Of(InService(RiskClass.A, 90, looks: more)).LookDueAt.ShouldBe(Day(22));
        var wet = InService(RiskClass.A, 90, looks: more);
        wet = wet with { Looks = [.. wet.Looks.Take(20), wet.Looks[20] with { Dry = false }, .. wet.Looks.Skip(21)] };
        Course.Of(wet).LookDueAt.ShouldBe(Day(15.5));
    }

    [Fact]
    public void Thickness_is_read_at_half_the_remaining_life_where_that_is_sooner()
    {
        var facts = InService(RiskClass.C, 365);
        Course
            .Of(facts with { InService = facts.InService! with { RemainingLifeDays = 200 } })
            .ThicknessPlannedAt.ShouldBe(Day(100));
        Course
            .Of(facts with { InService = facts.InService! with { RemainingLifeDays = null } })
            .ThicknessPlannedAt.ShouldBe(Day(90));
        var read = InService(RiskClass.C, 365, looks: [7, 37, 67, 97, 127, 157, 179]);
        read = read with { Looks = [.. read.Looks.SkipLast(1), read.Looks[^1] with { Thickness = true }] };
        Course.Of(read).ThicknessPlannedAt.ShouldBe(Day(360));
    }

    [Fact]
    public void A_bare_defect_on_a_live_line_is_looked_at_at_the_interval_of_its_class()
    {
        var bare = InService(RiskClass.B, 90) with { InService = null };
        var course = Course.Of(bare);
        course.LookDueAt.ShouldBe(Day(7));
        course.ThicknessDueAt.ShouldBeNull();
    }

    [Fact]
    public void A_class_signed_above_the_matrix_stays_above_it_when_age_is_added()
    {
        // Consequence 2 and likelihood 3 are class C; signed as B for its neighbours. Likelihood 4 is B, lifted to A.
        var facts = InService(RiskClass.C, 100);
        facts = facts with { Signed = [new(Start, new RiskRank(RiskClass.B, 2, 3, []))] };
        Course.Of(facts).At(Start).Class.ShouldBe(RiskClass.B);
        Course.Of(facts).At(Day(60)).Class.ShouldBe(RiskClass.A);
    }

    private static CourseFacts InService(RiskClass riskClass, int days, double[]? looks = null) =>
        new(
            Start,
            [new(Start, Signed(riskClass))],
            Looks(looks ?? []),
            new LifeFacts(Start, [new(Start, Day(days))], 3650),
            SiteFiguresRules.First
        );

    private static Look[] Looks(double[] days) => [.. days.Select(d => new Look(Day(d), true, false))];

    private static RiskRank Signed(RiskClass riskClass) =>
        riskClass switch
        {
            RiskClass.A => new(riskClass, 5, 3, []),
            RiskClass.B => new(riskClass, 4, 2, []),
            RiskClass.C => new(riskClass, 2, 3, []),
            _ => new(riskClass, 1, 1, []),
        };

    private static DateTimeOffset Day(double day) => Start + TimeSpan.FromDays(day);
}
