using RepairOrders.Host.Demo;

namespace RepairOrders.Api.Tests.Demo;

public sealed class WalkRules
{
    private static readonly DateTimeOffset Loaded = new(2026, 3, 2, 6, 30, 0, TimeSpan.Zero);

    [Fact]
    public async Task The_earliest_story_goes_on_next_and_time_only_goes_forward()
    {
        using var walk = new Walk(Loaded);
        List<(string Who, int Day)> seen = [];
        async Task Tell(string who, params int[] days)
        {
            foreach (var day in days)
            {
                await walk.Until(day);
                seen.Add((who, walk.Day));
            }
        }
        await walk.Run([() => Tell("a", -10, -3), () => Tell("b", -7, -1)]);
        seen.ShouldBe([("a", -10), ("b", -7), ("a", -3), ("b", -1)]);
        walk.GetUtcNow().ShouldBe(Loaded);
    }

    [Fact]
    public async Task A_story_that_fails_ends_the_walk_with_its_words()
    {
        using var walk = new Walk(Loaded);
        var told = false;
        var failed = await Should.ThrowAsync<InvalidOperationException>(() =>
            walk.Run([
                async () =>
                {
                    await walk.Until(-5);
                    throw new InvalidOperationException("the pipe is not there");
                },
                async () =>
                {
                    await walk.Until(-2);
                    told = true;
                },
            ])
        );
        failed.Message.ShouldBe("the pipe is not there");
        told.ShouldBeFalse();
    }

    [Fact]
    public async Task No_story_goes_on_after_the_day_of_loading()
    {
        using var walk = new Walk(Loaded);
        await Should.ThrowAsync<InvalidOperationException>(() => walk.Run([() => walk.Until(1)]));
    }
}
