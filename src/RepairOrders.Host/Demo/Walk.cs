namespace RepairOrders.Host.Demo;

/// <summary>
/// Time that is walked, not waited for: every story says when it goes on, and the earliest goes on next. One story moves at a
/// time, so what the store holds is what it would hold had the days really passed.
/// </summary>
internal sealed class Walk : TimeProvider, IDisposable
{
    private readonly DateTimeOffset today;
    private readonly PriorityQueue<TaskCompletionSource, (DateTimeOffset At, int Order)> waiting = new();
    private readonly SemaphoreSlim rests = new(0);
    private DateTimeOffset now;
    private Exception? failure;
    private int order;

    public Walk(DateTimeOffset loaded)
    {
        // Whole seconds, as people write times down.
        today = new DateTimeOffset(loaded.Ticks - loaded.Ticks % TimeSpan.TicksPerSecond, loaded.Offset);
        now = today.AddDays(-401);
    }

    public override DateTimeOffset GetUtcNow() => now;

    public DateOnly Today => DateOnly.FromDateTime(now.UtcDateTime);

    /// <summary>Days from the day the demo is loaded; negative is past.</summary>
    public int Day => Today.DayNumber - DateOnly.FromDateTime(today.UtcDateTime).DayNumber;

    /// <summary>Goes on at a day counted from today (negative is past) and an hour of that day.</summary>
    public Task Until(double day, double hour = 0) =>
        At(new DateTimeOffset(today.UtcDateTime.Date, TimeSpan.Zero).AddDays(day).AddHours(hour));

    /// <summary>Goes on some hours before the demo is loaded.</summary>
    public Task HoursAgo(double hours) => At(today.AddHours(-hours));

    /// <summary>Goes on after some time.</summary>
    public Task After(TimeSpan time) => At(now + time);

    /// <summary>Walks the stories to their ends; the first failure ends the walk.</summary>
    public async Task Run(IEnumerable<Func<Task>> stories)
    {
        foreach (var story in stories)
        {
            _ = Tell(story);
            await rests.WaitAsync();
        }
        while (failure is null && waiting.TryDequeue(out var next, out var when))
        {
            if (when.At > today)
                throw new InvalidOperationException($"A story wants to go on at {when.At:u}, which is still to come.");
            if (when.At > now)
                now = when.At;
            next.SetResult();
            await rests.WaitAsync();
        }
        now = today;
        if (failure is not null)
            throw new InvalidOperationException(failure.Message, failure);
    }

    public void Dispose() => rests.Dispose();

    private Task At(DateTimeOffset at)
    {
        var turn = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        waiting.Enqueue(turn, (at, order++));
        rests.Release();
        return turn.Task;
    }

    private async Task Tell(Func<Task> story)
    {
        try
        {
            await story();
        }
        catch (Exception e)
        {
            failure ??= e;
        }
        finally
        {
            rests.Release();
        }
    }
}
