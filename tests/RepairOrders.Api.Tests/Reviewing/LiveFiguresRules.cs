using RepairOrders.Api.Reviewing;

namespace RepairOrders.Api.Tests.Reviewing;

/// <summary>How the manager's figures are counted.</summary>
public sealed class LiveFiguresRules
{
    private static readonly DateTimeOffset Now = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Shares_are_of_the_live_repairs_and_ages_run_from_the_first_start()
    {
        InService[] live = [Since(10), Since(50) with { Extensions = 2 }, Since(90), Since(250)];
        var figures = LiveFiguresQuery
            .Figures(live, 1, 2, 3, 4, Now)
            .ToDictionary(f => f.Code, f => Math.Round(f.Value!.Value, 6));
        figures["live"].ShouldBe(4);
        figures["past-life"].ShouldBe(25);
        figures["look-overdue"].ShouldBe(50);
        figures["age-mean"].ShouldBe(100);
        figures["age-oldest"].ShouldBe(250);
        figures["extended"].ShouldBe(25);
        figures["approval-owed"].ShouldBe(3);
        figures["repeat-leak"].ShouldBe(4);
    }

    [Fact]
    public void Without_a_live_repair_no_share_and_no_age_is_made_up()
    {
        var figures = LiveFiguresQuery.Figures([], 0, 0, 0, 0, Now).ToDictionary(f => f.Code, f => f.Value);
        figures["live"].ShouldBe(0);
        foreach (var code in new[] { "past-life", "look-overdue", "age-mean", "age-oldest", "extended" })
            figures[code].ShouldBeNull(code);
    }

    [Fact]
    public void Each_month_stands_as_it_stood_at_its_end()
    {
        // In service since June; since 1 October; from August to 15 September.
        InService[] ever =
        [
            new("Banded patch", new(2026, 6, 10, 8, 0, 0, TimeSpan.Zero), null, 0),
            new("Laminate wrap", new(2026, 10, 1, 0, 0, 0, TimeSpan.Zero), null, 0),
            new("Plug", new(2026, 8, 1, 0, 0, 0, TimeSpan.Zero), new(2026, 9, 15, 0, 0, 0, TimeSpan.Zero), 0),
        ];
        var months = LiveFiguresQuery.Trend(ever, Now);
        months.Select(m => m.On).First().ShouldBe(new DateOnly(2025, 12, 31));
        months.Select(m => m.On).Last().ShouldBe(new DateOnly(2026, 11, 25));
        months.Select(m => m.Live).ShouldBe([0, 0, 0, 0, 0, 0, 1, 1, 2, 1, 2, 2]);
        months.Select(m => m.Begun).ShouldBe([0, 0, 0, 0, 0, 0, 1, 0, 1, 0, 1, 0]);
        months.Select(m => m.Ended).ShouldBe([0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0, 0]);
    }

    private static InService Since(int days) => new("Banded patch", Now.AddDays(-days), null, 0);
}
