using RepairOrders.Engineering.Life;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Life;

public sealed class RevisitRules
{
    private static readonly DateTimeOffset Start = new(2027, 3, 1, 6, 0, 0, TimeSpan.Zero);

    // Class C of the class table (own rule): first look 7 d, looks 30 d, thickness 180 d, grace 3 d.
    private static readonly RevisitDuties ClassC = new(Days(7), Days(30), Days(180), Days(3));

    [Fact]
    public void Three_looks_fit_before_a_near_end()
    {
        var plan = RevisitPlan.Make(
            new(
                Start,
                DateOnly.FromDateTime(Start.Date).AddDays(80),
                ClassC,
                Duration.FromDays(300),
                Duration.FromDays(365)
            )
        );
        plan.Result.LookInterval.ShouldBe(new(Days(20), "a quarter of the approved life"));
        plan.Result.ThicknessInterval.ShouldBe(new(Days(150), "half the remaining life"));
        plan.Result.FirstLook.ShouldBe(Start + Days(7));
        plan.Result.FirstThickness.ShouldBe(Start + Days(150));
        plan.Findings.ShouldBeEmpty();
    }

    [Fact]
    public void First_look_is_never_later_than_the_interval()
    {
        // Class D (first look 30 d) for 40 d: looks every 10 d, so the first after 10 d too.
        var classD = new RevisitDuties(Days(30), Days(90), Days(365), Days(7));
        var plan = RevisitPlan.Make(
            new(
                Start,
                DateOnly.FromDateTime(Start.Date).AddDays(40),
                classD,
                Duration.FromDays(4000),
                Duration.FromDays(365)
            )
        );
        plan.Result.FirstLookAfter.Value.ShouldBe(Days(10));
    }

    [Fact]
    public void Without_a_remaining_life_thickness_is_read_twice_as_often()
    {
        var plan = RevisitPlan.Make(
            new(Start, DateOnly.FromDateTime(Start.Date).AddDays(365), ClassC, null, Duration.FromDays(120))
        );
        plan.Result.ThicknessInterval.Value.ShouldBe(Days(90));
        plan.Findings.ShouldContain(f => f.Code == "no-remaining-life");
    }

    [Fact]
    public void The_bound_cuts_both_intervals()
    {
        var plan = RevisitPlan.Make(
            new(
                Start,
                DateOnly.FromDateTime(Start.Date).AddDays(365),
                ClassC,
                Duration.FromDays(900),
                Duration.FromDays(14)
            )
        );
        plan.Result.LookInterval.ShouldBe(new(Days(14), "bound on the next revisit"));
        plan.Result.ThicknessInterval.ShouldBe(new(Days(14), "bound on the next revisit"));
    }

    [Fact]
    public void An_end_that_is_not_after_the_start_is_refused() =>
        Should
            .Throw<ImpossibleInputException>(() =>
                RevisitPlan.Make(new(Start, DateOnly.FromDateTime(Start.Date), ClassC, null, Duration.FromDays(90)))
            )
            .Field.ShouldBe("endDate minus start");

    [Fact]
    public void A_missing_term_counts_as_ninety_days_and_is_told()
    {
        var bound = RevisitBound.Of([new("remaining-life", Duration.FromDays(400))], Duration.FromDays(365));
        bound.Result.Value.Days.ShouldBe(90);
        bound.Result.Governing.IsDefault.ShouldBeTrue();
        bound.Findings.Count(f => f.Code == "revisit-default").ShouldBe(7);
    }

    [Fact]
    public void The_bound_never_passes_the_approval()
    {
        var bound = RevisitBound.Of(Known(Duration.FromDays(4000)), Duration.FromDays(30));
        bound.Result.Value.Days.ShouldBe(30);
        bound.Result.Governing.Code.ShouldBe("approval");
    }

    [Fact]
    public void Half_a_life_under_thirty_days_is_not_a_plan() =>
        RevisitBound
            .Of(Known(Duration.FromDays(59)), Duration.FromDays(365))
            .Findings.ShouldContain(f => f.Code == "half-life-under-30-days" && f.Severity == Severity.Fail);

    [Theory]
    [InlineData("no-such-term")]
    [InlineData("remaining-life")]
    public void A_term_that_is_not_known_or_twice_there_is_refused(string code) =>
        Should
            .Throw<ImpossibleInputException>(() =>
                RevisitBound.Of(
                    [new("remaining-life", Duration.FromDays(1)), new(code, Duration.FromDays(1))],
                    Duration.FromDays(1)
                )
            )
            .Field.ShouldBe("terms.code");

    [Fact]
    public void The_earliest_term_ends_the_repair_and_is_named()
    {
        var end = EndDate.Earliest(
            new(
                new(2027, 3, 1),
                new DateOnly(2027, 3, 1).AddDays(180),
                Duration.FromDays(730),
                Duration.FromDays(300),
                null,
                new(2027, 9, 6),
                null,
                new(2028, 1, 1)
            )
        );
        end.Result.On.ShouldBe(new DateOnly(2027, 7, 29));
        end.Result.Governing.Code.ShouldBe("half-remaining-life");
        end.Result.Terms.Select(t => t.Code)
            .ShouldBe(["half-remaining-life", "class-cap", "next-shutdown", "material-statement", "design-life"]);
        end.Findings.ShouldAllBe(f => f.Severity == Severity.Pass);
    }

    [Fact]
    public void Wall_lost_before_the_start_is_not_counted_again()
    {
        var ask = new EndDateAsk(
            new(2027, 3, 1),
            new(2029, 3, 1),
            null,
            Duration.FromDays(300),
            new(2026, 11, 21),
            null,
            null,
            null
        );
        // 100 days have gone since the reading; half of the 200 left.
        EndDate.Earliest(ask).Result.On.ShouldBe(new DateOnly(2027, 3, 1).AddDays(100));
    }

    [Fact]
    public void An_end_before_the_start_may_not_be_signed_past()
    {
        var ask = new EndDateAsk(new(2027, 3, 1), new(2027, 9, 1), null, null, null, new(2027, 2, 1), null, null);
        var end = EndDate.Earliest(ask);
        end.Result.Governing.Code.ShouldBe("next-shutdown");
        end.Findings.ShouldHaveSingleItem().Blocks.ShouldBeTrue();
    }

    private static RevisitTerm[] Known(Duration remaining) =>
        [new("remaining-life", remaining), .. RevisitBound.Codes.Skip(1).Select(c => RevisitTerm.NotApplicable(c))];

    private static TimeSpan Days(double days) => TimeSpan.FromDays(days);
}
