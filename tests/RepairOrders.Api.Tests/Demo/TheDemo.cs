using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using RepairOrders.Api.Fitting;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Store;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Demo;

public sealed class TheDemo(LoadedDemo demo, ITestOutputHelper output) : IClassFixture<LoadedDemo>
{
    [Fact]
    public async Task Some_sixty_orders_stand_in_every_stage_and_show_every_flag()
    {
        output.WriteLine($"loaded in {demo.Took.TotalSeconds:0.0} s");
        var rows = (await demo.Rune.Register(new(), limit: 100)).Rows;
        rows.Count.ShouldBeInRange(55, 75);
        Enum.GetValues<Stage>().Except(rows.Select(r => r.Stage)).ShouldBeEmpty();
        Flags.All.Except(rows.SelectMany(r => r.Flags).Select(f => f.Code)).ShouldBeEmpty();
        rows.Select(r => r.Method).OfType<string>().Distinct().Count().ShouldBeGreaterThanOrEqualTo(5);
    }

    [Fact]
    public async Task Stage_and_columns_of_every_order_follow_from_its_records()
    {
        await using var store = demo.Store.Open();
        var reader = await store.Users.SingleAsync(p => p.UserName == "rune");
        var numbers = await store.Orders.AsNoTracking().Select(o => o.Number).ToListAsync();
        List<string> different = [];
        foreach (var number in numbers)
        {
            await using var fresh = demo.Store.Open();
            var order = await fresh.Order(number, reader);
            Stages.Of(order).ShouldBe(order.Stage, number);
            var (rebuilt, kept) = (Written(OrderColumns.From(order)), Written(order.Columns));
            if (rebuilt != kept)
                different.Add($"{number}\n{rebuilt}\n{kept}");
        }
        numbers.Count.ShouldBeGreaterThan(55);
        different.ShouldBeEmpty();
    }

    [Fact]
    public async Task Every_history_verifies()
    {
        await using var store = demo.Store.Open();
        using var words = new StringWriter();
        (await Verification.Report(store, words)).ShouldBeTrue(words.ToString());
    }

    [Fact]
    public async Task The_books_of_every_batch_balance()
    {
        var batches = (await demo.Rune.Batches("mill", limit: 200)).Rows;
        batches.ShouldNotBeEmpty();
        foreach (var (number, b) in batches.Select(b => (b.Number, b.Balance)))
        {
            b.Received.ShouldBe(b.InBins + b.OutOnOrders + b.Used + b.Scrapped, number);
            new[] { b.InBins, b.OutOnOrders, b.Used, b.Scrapped }.ShouldAllBe(q => q >= 0, number);
        }
        batches.Sum(b => b.Balance.Used).ShouldBeGreaterThan(0);
        batches.Sum(b => b.Balance.Scrapped).ShouldBeGreaterThan(0);
    }

    [Fact]
    public async Task Pictures_are_there_and_nobody_is_left_signed_in()
    {
        await using var store = demo.Store.Open();
        (await store.Set<Photo>().CountAsync()).ShouldBeGreaterThan(300);
        (
            await store.Sessions.CountAsync(s =>
                s.RevokedAt == null && s.Person.UserName != "rune" && !s.Person.Disabled
            )
        ).ShouldBe(0);
    }

    [Fact]
    public async Task A_page_of_the_register_comes_within_300_ms()
    {
        (await demo.Rune.Register(new(), limit: 50)).Rows.Count.ShouldBe(50);
        var median = await Alone.Median(() => demo.Rune.Register(new(), limit: 50));
        output.WriteLine($"median {median:0} ms");
        median.ShouldBeLessThan(300);
    }

    private static string Written(OrderColumns columns) => JsonSerializer.Serialize(columns, RepairOrdersClient.Json);
}
