namespace RepairOrders.Host.Demo;

/// <summary>
/// Time that is walked, not waited for: every story says when it goes on, and the earliest goes on next. One story moves at a
/// time, so what the store holds is what it would hold had the days really passed.
/// </summary>
internal sealed class Walk(DateTimeOffset today) : TimeProvider, IDisposable
{
    private readonly PriorityQueue<TaskCompletionSource, (DateTimeOffset At, int Order)> waiting = new();
    private readonly SemaphoreSlim rests = new(0);
    private DateTimeOffset now = today.AddDays(-401);
    private int order;

    public override DateTimeOffset GetUtcNow() => now;

    public DateOnly Today => DateOnly.FromDateTime(now.UtcDateTime);

    /// <summary>Goes on at a day counted from today (negative is past) and an hour of that day.</summary>
    public Task Until(double day, double hour = 0) => At(today.Date.AddDays(day).AddHours(hour));

    /// <summary>Goes on after some time.</summary>
    public Task After(TimeSpan time) => At(now + time);

    /// <summary>Walks the stories to their ends; the first failure ends the walk.</summary>
    public async Task Run(IEnumerable<Func<Task>> stories)
    {
        var told = new List<Task>();
        foreach (var story in stories)
        {
            told.Add(Tell(story));
            await rests.WaitAsync();
        }
        while (waiting.TryDequeue(out var next, out var when) && !told.Any(t => t.IsFaulted))
        {
            if (when.At > now)
                now = when.At;
            next.SetResult();
            await rests.WaitAsync();
        }
        await Task.WhenAll(told.Where(t => t.IsCompleted));
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
        finally
        {
            rests.Release();
        }
    }
}
