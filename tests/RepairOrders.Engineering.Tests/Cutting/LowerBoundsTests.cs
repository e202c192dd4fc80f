using CsCheck;
using RepairOrders.Engineering.Cutting;

namespace RepairOrders.Engineering.Tests.Cutting;

public class LowerBoundsTests
{
    [Fact]
    public void By_material_the_longest_stock_counts_first() =>
        LowerBounds.ByMaterial([600, 600], [500, 1000, 400]).ShouldBe(2);

    [Fact]
    public void By_material_too_little_is_nothing() => LowerBounds.ByMaterial([600], [500]).ShouldBeNull();

    // Derived by hand: beside the two of 60 go the 40 and nothing else; the two of 50 share one.
    [Fact]
    public void By_large_items_of_the_example() => LowerBounds.ByLargeItems([60, 60, 50, 50, 40], 100).ShouldBe(3);

    [Fact]
    public void By_large_items_three_that_cannot_share_need_three() =>
        LowerBounds.ByLargeItems([51, 51, 51], 100).ShouldBe(3);

    [Fact]
    public void By_large_items_is_never_below_the_material_of_one_stock_length() =>
        Gen.Long[1, 100]
            .Array[1, 40]
            .Sample(lengths =>
                LowerBounds.ByLargeItems(lengths, 100).ShouldBeGreaterThanOrEqualTo((int)((lengths.Sum() + 99) / 100))
            );
}
