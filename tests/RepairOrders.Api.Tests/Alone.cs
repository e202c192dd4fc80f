using System.Diagnostics;

namespace RepairOrders.Api.Tests;

/// <summary>Tests that measure time: one after the other, after all the rest, so that none measures its neighbours.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone
{
    /// <summary>The median of twenty runs, in milliseconds, once three have warmed it.</summary>
    internal static async Task<double> Median(Func<Task> work)
    {
        for (var i = 0; i < 3; i++)
            await work();
        List<double> times = [];
        for (var i = 0; i < 20; i++)
        {
            var clock = Stopwatch.StartNew();
            await work();
            times.Add(clock.Elapsed.TotalMilliseconds);
        }
        return times.Order().ElementAt(10);
    }
}
