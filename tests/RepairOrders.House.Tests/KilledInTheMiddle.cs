using System.Collections.Concurrent;
using System.Net;
using Microsoft.EntityFrameworkCore;
using RepairOrders.Contract;

namespace RepairOrders.House.Tests;

public sealed class KilledInTheMiddle(RealStore store)
{
    private const int Writes = 100;

    [Fact]
    public async Task What_was_acknowledged_is_there_nothing_is_half_there_and_a_repeat_finishes_the_rest()
    {
        var acknowledged = new ConcurrentDictionary<int, string>();
        await using (var host = HostProcess.Start("Run=api", $"ConnectionStrings:Store={store.Address}"))
        {
            await host.Answers("/health/ready", HttpStatusCode.OK);
            await WriteUntilKilled(host, acknowledged);
        }
        acknowledged.Count.ShouldBeInRange(30, Writes - 1);
        await NothingIsHalfThere();

        await using var again = HostProcess.Start("Run=api", $"ConnectionStrings:Store={store.Address}");
        await again.Answers("/health/ready", HttpStatusCode.OK);
        using var http = new HttpClient { BaseAddress = again.Address };
        var mara = new RepairOrdersClient(http) { Token = store.Mara };
        await Task.WhenAll(
            acknowledged.Select(async a => (await mara.Order(a.Value)).Title.Place.ShouldBe(Ask(a.Key).Place))
        );

        // Whoever lost his answer asks again with the same key.
        var numbers = new ConcurrentDictionary<int, string>();
        await Parallel.ForAsync(
            0,
            Writes,
            async (write, _) => numbers[write] = (await mara.Request(Ask(write), Key(write))).Title.Number
        );
        numbers.Values.Distinct().Count().ShouldBe(Writes);
        foreach (var (write, number) in acknowledged)
            numbers[write].ShouldBe(number);
        (await mara.Register(new RegisterFilter(), limit: 200)).Rows.Count.ShouldBe(Writes);
        await NothingIsHalfThere();
        var ada = new RepairOrdersClient(http) { Token = store.Ada };
        var verified = await ada.VerifyJournals();
        verified.Broken.ShouldBeEmpty();
        verified.Chains.ShouldBe(Writes);
    }

    private async Task WriteUntilKilled(HostProcess host, ConcurrentDictionary<int, string> acknowledged)
    {
        using var http = new HttpClient { BaseAddress = host.Address };
        var mara = new RepairOrdersClient(http) { Token = store.Mara };
        var next = -1;
        var writers = Enumerable
            .Range(0, 8)
            .Select(async _ =>
            {
                for (int write; (write = Interlocked.Increment(ref next)) < Writes; )
                {
                    try
                    {
                        acknowledged[write] = (await mara.Request(Ask(write), Key(write))).Title.Number;
                    }
                    catch (Exception gone) when (gone is HttpRequestException or IOException)
                    {
                        return;
                    }
                }
            })
            .ToList();
        while (acknowledged.Count < 30 && !writers.All(w => w.IsCompleted))
            await Task.Delay(1);
        await host.Kill();
        await Task.WhenAll(writers);
    }

    // Order, record, journal entry and kept answer are one transaction, and so is the number that was given.
    private async Task NothingIsHalfThere()
    {
        await using var open = store.Open();
        var orders = await open.Orders.CountAsync();
        (await open.Records.CountAsync()).ShouldBe(orders);
        (await open.Journal.CountAsync()).ShouldBe(orders);
        (await open.KeptAnswers.CountAsync()).ShouldBe(orders);
        (await open.Sites.SingleAsync()).LastNumber.ShouldBe(orders);
    }

    private static string Key(int write) => $"write-{write}";

    private static RequestRepair Ask(int write) =>
        new(
            "mill",
            null,
            $"Pump house 2, support {write}",
            "cooling water",
            "pinhole weeping at 4 o'clock",
            FoundHow.Round,
            LeakState.Weep,
            false,
            Measure.Of(6, "bar"),
            Measure.Of(18, "°C"),
            "drip tray",
            "the line cools the turbine",
            null
        );
}
