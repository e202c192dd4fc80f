using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Readying;
using RepairOrders.Api.Removing;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.WorkSheaf;

namespace RepairOrders.Api.Tests.Removing;

public sealed class RemovalRules
{
    [Fact]
    public void Nothing_is_ordered_off_before_work_began() =>
        RemovalOrder.Objection(Approved().Order, Ines, Monday)!.Code.ShouldBe("nothing-on-the-pipe");

    [Fact]
    public void A_job_abandoned_half_way_is_taken_off_too()
    {
        var sheaf = Approved().Issued().Ready();
        sheaf.Release("as-described");
        RemovalOrder.Objection(sheaf.Order, Ines, sheaf.Now).ShouldBeNull();
    }

    [Fact]
    public void A_removal_once_ordered_is_brought_forward_but_never_put_off()
    {
        var sheaf = Ordered();
        var day = new DateOnly(2026, 3, 10);
        Put(sheaf, day.AddDays(1))!.Code.ShouldBe("removal-put-off");
        Put(sheaf, day).ShouldBeNull();
        Put(sheaf, day.AddDays(-1)).ShouldBeNull();
    }

    [Fact]
    public void Without_a_readiness_of_its_own_nobody_takes_it_off()
    {
        var sheaf = Ordered();
        Removal.Objection(sheaf.Order, Tove, sheaf.Now)!.Code.ShouldBe("not-ready");
        Readied(sheaf);
        Removal.Objection(sheaf.Order, Tove, sheaf.Now).ShouldBeNull();
        Removal.Objection(sheaf.Order, Vera, sheaf.Now)!.Code.ShouldBe("not-on-the-removal");
        sheaf.Pass(TimeSpan.FromHours(9));
        Removal.Objection(sheaf.Order, Tove, sheaf.Now)!.Code.ShouldBe("permit-over");
    }

    [Fact]
    public void The_photograph_shows_the_bare_pipe_and_is_on_the_order()
    {
        var sheaf = Readied(Ordered());
        var tag = sheaf.Photographed(PhotoOf.Tag);
        foreach (var photo in new Guid?[] { null, Guid.NewGuid(), tag.Id })
            Taken(sheaf, photo)!.Code.ShouldBe("bare-pipe-photo-missing");
        Taken(sheaf, sheaf.Photographed(PhotoOf.Removal).Id).ShouldBeNull();
    }

    [Theory]
    [InlineData(RiskClass.A, true)]
    [InlineData(RiskClass.B, true)]
    [InlineData(RiskClass.C, true)]
    [InlineData(RiskClass.D, false)]
    public void The_inspectors_entry_is_asked_for_on_all_but_class_D(RiskClass signed, bool asked) =>
        RemovalInspection.IsMissing(Removed(signed).Order).ShouldBe(asked);

    [Fact]
    public void An_inspector_who_took_it_off_does_not_inspect_it()
    {
        var sheaf = Removed();
        RemovalInspection.Objection(sheaf.Order, Vera, sheaf.Now).ShouldBeNull();
        RemovalInspection.Objection(sheaf.Order, Ines, sheaf.Now)!.Code.ShouldBe("inspector-needed");
        var both = Somebody("Anton Reyes", Role.Technician, [.. Cast.Methods, Competence.Inspector]);
        var named = Readied(Ordered(), both);
        Off(named);
        RemovalInspection.Objection(named.Order, both, named.Now)!.Code.ShouldBe("own-removal");
    }

    internal static WorkSheaf Ordered(RiskClass signed = RiskClass.C)
    {
        var sheaf = Fitted(signed);
        sheaf.Pass(TimeSpan.FromMinutes(1));
        sheaf.Order.Sign(new RemovalOrder(new("the spool is here", new(2026, 3, 10), "new spool")), Ines, sheaf.Now);
        sheaf.Pass(TimeSpan.FromMinutes(1));
        return sheaf;
    }

    internal static WorkSheaf Readied(WorkSheaf sheaf, Person? second = null)
    {
        second ??= Anton;
        var permit = sheaf.Permit() with
        {
            For = ReadinessFor.Removal,
            Fitters = [Tove.Id, second.Id],
            TalkSignedBy = [Tove.Id, second.Id],
        };
        Readiness.Objection(sheaf.Order, permit, [Tove, second], Mara, sheaf.Now).ShouldBeNull();
        sheaf.Order.Sign(
            new Readiness(new(permit, [new(Tove.Id, Tove.FullName), new(second.Id, second.FullName)], Live: false)),
            Mara,
            sheaf.Now
        );
        return sheaf.Pass(TimeSpan.FromMinutes(1));
    }

    internal static WorkSheaf Off(WorkSheaf sheaf)
    {
        var photo = sheaf.Photographed(PhotoOf.Removal);
        sheaf.Order.Sign(new Removal(new(photo.Id, "one pinhole", TagBack: true)), Tove, sheaf.Now);
        sheaf.Order.Stage.ShouldBe(Stage.Removed);
        return sheaf.Pass(TimeSpan.FromMinutes(1));
    }

    internal static WorkSheaf Removed(RiskClass signed = RiskClass.C) => Off(Readied(Ordered(signed)));

    private static Objection? Put(WorkSheaf sheaf, DateOnly day) =>
        RemovalOrder.Objection(sheaf.Order, new("the spool is late", day, "new spool"), Mara, sheaf.Now);

    private static Objection? Taken(WorkSheaf sheaf, Guid? photo) =>
        Removal.Objection(sheaf.Order, new(photo, "one pinhole", TagBack: true), Tove, sheaf.Now);
}
