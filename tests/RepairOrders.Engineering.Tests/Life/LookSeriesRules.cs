using RepairOrders.Engineering.Life;

namespace RepairOrders.Engineering.Tests.Life;

public sealed class LookSeriesRules
{
    private static readonly DateTimeOffset Start = new(2027, 3, 1, 6, 0, 0, TimeSpan.Zero);

    // First look 7 d, then every 30 d, grace 3 d: due on day 7, 37, 67, …
    private static readonly LookRule[] Monthly = [new(Start, TimeSpan.FromDays(30), TimeSpan.FromDays(3))];

    [Fact]
    public void A_late_look_does_not_move_the_next_one_out()
    {
        var state = At(20, done: [9.0]);
        state.LastSettled.ShouldBe(Day(7));
        state.NextDue.ShouldBe(Day(37));
        state.MissedBefore.ShouldBe(0);
    }

    [Fact]
    public void A_look_in_the_last_fifth_of_the_interval_counts()
    {
        At(40, done: [7, 31.0]).NextDue.ShouldBe(Day(67));
        var early = At(40, done: [7, 30.9]);
        early.NextDue.ShouldBe(Day(37));
        early.TooEarly.ShouldBe([Day(30.9)]);
        early.CountsFrom.ShouldBe(Day(31));
    }

    [Fact]
    public void The_first_fifth_is_that_of_the_first_interval()
    {
        At(6, done: [5.6]).LastSettled.ShouldBe(Day(7));
        At(6, done: [5.5]).LastSettled.ShouldBeNull();
    }

    [Theory]
    [InlineData(6.9, false, false, false)]
    [InlineData(7.0, true, true, false)]
    [InlineData(10.0, true, true, false)]
    [InlineData(10.1, true, false, true)]
    public void Due_in_grace_overdue(double day, bool due, bool grace, bool overdue)
    {
        var state = At(day);
        (state.IsDue, state.InGrace, state.Overdue).ShouldBe((due, grace, overdue));
        state.NextDue.ShouldBe(Day(7));
    }

    [Fact]
    public void Missed_looks_are_counted_in_a_row_and_settled_by_one_visit()
    {
        At(41).MissedNow.ShouldBe(2);
        var after = At(45, done: [41.0]);
        after.MissedNow.ShouldBe(0);
        after.MissedBefore.ShouldBe(2);
        after.NextDue.ShouldBe(Day(67));
    }

    [Fact]
    public void The_next_miss_is_told_ahead()
    {
        At(6).NextMiss.ShouldBe(Day(10));
        At(11).NextMiss.ShouldBe(Day(40));
        At(20, done: [9.0]).NextMiss.ShouldBe(Day(40));
    }

    [Fact]
    public void Setting_the_clock_back_unsees_later_visits()
    {
        At(12, done: [41.0]).Overdue.ShouldBeTrue();
    }

    [Fact]
    public void A_class_that_gets_worse_pulls_the_next_look_in_but_not_into_the_past()
    {
        LookRule[] worse = [.. Monthly, new(Day(20), TimeSpan.FromDays(7), TimeSpan.FromDays(1))];
        var state = LookSeries.At(Start, TimeSpan.FromDays(7), worse, [Day(7)], Day(20));
        state.NextDue.ShouldBe(Day(20));
        state.Overdue.ShouldBeFalse();
        state.OverdueFrom.ShouldBe(Day(21));
        LookSeries.At(Start, TimeSpan.FromDays(7), worse, [Day(7), Day(20)], Day(21)).NextDue.ShouldBe(Day(27));
    }

    [Fact]
    public void A_class_that_gets_better_lengthens_only_the_interval_that_follows()
    {
        LookRule[] better = [.. Monthly, new(Day(40), TimeSpan.FromDays(90), TimeSpan.FromDays(7))];
        LookSeries.At(Start, TimeSpan.FromDays(7), better, [Day(7), Day(37)], Day(50)).NextDue.ShouldBe(Day(67));
        LookSeries
            .At(Start, TimeSpan.FromDays(7), better, [Day(7), Day(37), Day(67)], Day(70))
            .NextDue.ShouldBe(Day(157));
    }

    [Fact]
    public void Shift_looks_of_a_year_are_walked_through()
    {
        LookRule[] shifts = [new(Start, TimeSpan.FromHours(8), TimeSpan.Zero)];
        LookSeries.At(Start, TimeSpan.FromHours(24), shifts, [], Day(365)).MissedNow.ShouldBe(3 * 364);
    }

    [Fact]
    public void Impossible_series_are_refused()
    {
        Field(() => LookSeries.At(Start, TimeSpan.Zero, Monthly, [], Start)).ShouldBe("firstLook");
        Field(() => LookSeries.At(Start, TimeSpan.FromDays(7), [], [], Start)).ShouldBe("rules");
        Field(() =>
                LookSeries.At(
                    Start,
                    TimeSpan.FromDays(7),
                    [new(Start, TimeSpan.FromTicks(1), TimeSpan.Zero)],
                    [],
                    Start
                )
            )
            .ShouldBe("rules.interval");
        Field(() => LookSeries.At(Start, TimeSpan.FromDays(7), Monthly, [], DateTimeOffset.MaxValue)).ShouldBe("now");
    }

    private static string Field(Action act) => Should.Throw<ImpossibleInputException>(act).Field;

    private static LookState At(double day, double[]? done = null) =>
        LookSeries.At(Start, TimeSpan.FromDays(7), Monthly, [.. (done ?? []).Select(Day)], Day(day));

    private static DateTimeOffset Day(double day) => Start + TimeSpan.FromDays(day);
}
