using RepairOrders.Contract;
using RepairOrders.Ui.Parts;

namespace RepairOrders.Ui.Tests.Parts;

public sealed class ShowTests
{
    [Theory]
    [InlineData(-3, "3 days past")]
    [InlineData(-1, "1 day past")]
    [InlineData(0, "today")]
    [InlineData(1, "tomorrow")]
    [InlineData(12, "in 12 days")]
    public void Days_are_told_in_words(int days, string words) => Show.DaysLeft(days).ShouldBe(words);

    [Fact]
    public void Past_its_day_is_stop_and_within_a_month_is_watch()
    {
        Show.DaysTone(-1).ShouldBe(Tone.Stop);
        Show.DaysTone(30).ShouldBe(Tone.Watch);
        Show.DaysTone(31).ShouldBe(Tone.Go);
    }

    [Fact]
    public void A_stage_is_written_in_sentence_case() =>
        Show.Words(Stage.LineOutOfService).ShouldBe("Line out of service");

    [Fact]
    public void The_day_is_that_of_the_zone()
    {
        var clock = new StoppedClock(new(2026, 3, 14, 23, 30, 0, TimeSpan.Zero));
        clock.Today(TimeZoneInfo.FindSystemTimeZoneById("Europe/Oslo")).ShouldBe(new DateOnly(2026, 3, 15));
        clock.Today(TimeZoneInfo.FindSystemTimeZoneById("America/New_York")).ShouldBe(new DateOnly(2026, 3, 14));
        clock.Today(null).ShouldBe(new DateOnly(2026, 3, 14));
    }
}
