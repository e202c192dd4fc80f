using RepairOrders.Api.Orders;

namespace RepairOrders.Api.Tests.Orders;

public sealed class OrderedKeys
{
    [Fact]
    public void Keys_made_one_after_the_other_ascend_also_within_a_millisecond()
    {
        var keys = Enumerable.Range(0, 20_000).Select(_ => OrderedKey.Next()).ToList();
        keys.Zip(keys.Skip(1)).ShouldAllBe(pair => pair.First.CompareTo(pair.Second) < 0);
        keys.ShouldAllBe(key => key.Version == 7);
    }

    [Fact]
    public void No_two_alike_are_made_side_by_side()
    {
        var keys = new Guid[40_000];
        Parallel.For(0, keys.Length, i => keys[i] = OrderedKey.Next());
        keys.Distinct().Count().ShouldBe(keys.Length);
    }
}
