using Bunit;
using RepairOrders.Contract;
using RepairOrders.Ui.Today;

namespace RepairOrders.Ui.Tests.Today;

public sealed class LongLists : BunitContext
{
    private static readonly InterimLimits Held = new(Measure.Of(6, "bar"), null, null);

    private IRenderedComponent<LimitsList> Limits(int count) =>
        Render<LimitsList>(list =>
            list.Add(
                l => l.Shift,
                new ShiftView(
                    [],
                    [
                        .. Enumerable
                            .Range(1, count)
                            .Select(i => new LimitInForce($"mill-{i}", null, "roof", Held, new DateOnly(2026, 3, i))),
                    ],
                    false,
                    default
                )
            )
        );

    [Fact]
    public void A_handful_stands_open()
    {
        var list = Limits(5);
        list.FindAll("li").Count.ShouldBe(5);
        list.FindAll("details").ShouldBeEmpty();
    }

    [Fact]
    public void Of_more_the_first_stay_in_sight_and_the_rest_is_folded_under_its_number()
    {
        var list = Limits(9);
        list.FindAll("section > ul > li").Select(l => l.QuerySelector("a")!.TextContent).Last().ShouldBe("mill-5");
        list.Find("details > summary").TextContent.ShouldBe("and 4 more");
        list.FindAll("details li").Count.ShouldBe(4);
        list.Find("details").HasAttribute("open").ShouldBeFalse();
    }
}
