using RepairOrders.Api.Orders;
using RepairOrders.Api.Revisiting;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.WorkSheaf;

namespace RepairOrders.Api.Tests.Revisiting;

/// <summary>A visit shows that somebody stood there, and says what he saw.</summary>
public sealed class VisitRules
{
    [Fact]
    public void It_scans_or_photographs_the_tag_of_this_repair()
    {
        var sheaf = InService();
        var good = Good(sheaf);
        Ask(sheaf, good).ShouldBeNull();
        Ask(sheaf, good with { TagScan = null })!.Code.ShouldBe("tag-not-seen");
        Ask(sheaf, good with { TagScan = null, TagPhoto = sheaf.Photographed(PhotoOf.Tag, "t").Id }).ShouldBeNull();
        Ask(sheaf, good with { TagScan = "https://mill.example/pipe/mill-17" }).ShouldBeNull();
        Ask(sheaf, good with { TagScan = "mill-170" })!.Code.ShouldBe("tag-of-another");
    }

    [Fact]
    public void A_bare_defect_carries_no_tag_yet()
    {
        var sheaf = Approved();
        Ask(sheaf, Good(sheaf) with { TagScan = null }).ShouldBeNull();
    }

    [Fact]
    public void Each_visit_has_a_photograph_of_its_own()
    {
        var sheaf = InService();
        var good = Good(sheaf);
        Ask(sheaf, good with { Photo = null })!.Code.ShouldBe("visit-photo-missing");
        Ask(sheaf, good with { Photo = sheaf.Photographed(PhotoOf.Tag, "t").Id })!.Code.ShouldBe("visit-photo-missing");
        sheaf.Order.Sign(new Visit(new(good, sheaf.Now, false, [], null, null, null, null)), Tove, sheaf.Now);
        Ask(sheaf, good)!.Code.ShouldBe("visit-photo-used");
    }

    [Theory]
    [InlineData(LeakState.Weep)]
    [InlineData(LeakState.Drip)]
    public void A_weep_or_worse_at_a_repair_in_service_is_a_failure(LeakState seen)
    {
        var sheaf = InService();
        var ask = Good(sheaf) with { State = seen };
        Ask(sheaf, ask)!.Code.ShouldBe("weep-is-failure");
        Ask(sheaf, ask with { Result = VisitResult.ReAssess })!.Code.ShouldBe("weep-is-failure");
        Ask(sheaf, ask with { Result = VisitResult.Failed }).ShouldBeNull();
    }

    [Fact]
    public void Before_the_fit_a_weep_is_what_the_order_is_about()
    {
        var sheaf = Approved();
        Ask(sheaf, Good(sheaf) with { State = LeakState.Weep }).ShouldBeNull();
    }

    [Fact]
    public void Staying_with_an_action_says_which()
    {
        var sheaf = InService();
        var ask = Good(sheaf) with { Result = VisitResult.StayWithAction };
        Ask(sheaf, ask)!.Code.ShouldBe("action-missing");
        Ask(sheaf, ask with { Action = "clean the screen below" }).ShouldBeNull();
    }

    private static RecordVisit Good(WorkSheaf sheaf) =>
        new(
            sheaf.Order.Number,
            null,
            LeakState.Dry,
            false,
            EdgesState.Sound,
            sheaf.Photographed(PhotoOf.Visit).Id,
            VisitResult.FitToStay
        );

    private static Objection? Ask(WorkSheaf sheaf, RecordVisit ask) =>
        Visit.Objection(sheaf.Order, ask, Tove, sheaf.Now);
}
