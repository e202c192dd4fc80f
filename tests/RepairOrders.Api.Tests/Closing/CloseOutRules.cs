using RepairOrders.Api.Closing;
using RepairOrders.Api.Failing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.People;
using RepairOrders.Api.Tests.MakingPermanent;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.WorkSheaf;

namespace RepairOrders.Api.Tests.Closing;

public sealed class CloseOutRules
{
    private static readonly CloseOrder Lessons = AnOrder.CloseOut with { Lessons = "rinse the low point each spring" };

    [Fact]
    public void A_class_C_order_is_closed_by_a_supervisor_alone()
    {
        var sheaf = PermanentFixRules.Fixed();
        Ask(sheaf, AnOrder.CloseOut).ShouldBeNull();
        sheaf.Order.Sign(new CloseOut(AnOrder.CloseOut), Mara, sheaf.Now);
        sheaf.Order.Stage.ShouldBe(Stage.Closed);
    }

    [Theory]
    [InlineData(RiskClass.A)]
    [InlineData(RiskClass.B)]
    public void A_class_A_or_B_order_is_closed_with_lessons_and_an_engineers_name(RiskClass signed)
    {
        var sheaf = PermanentFixRules.Fixed(signed);
        Ask(sheaf, AnOrder.CloseOut)!.Code.ShouldBe("lessons-missing");
        Ask(sheaf, Lessons).ShouldBeNull();
        var closeOut = sheaf.Order.Sign(new CloseOut(Lessons), Mara, sheaf.Now);
        sheaf.Order.Stage.ShouldBe(Stage.Fixed);
        sheaf.Pass(TimeSpan.FromMinutes(1));
        CloseOutCountersignature
            .Objection(sheaf.Order, new(closeOut.Id), Mara, sheaf.Now)!
            .Code.ShouldBe("own-close-out");
        CloseOutCountersignature.Objection(sheaf.Order, new(closeOut.Id), Ines, sheaf.Now).ShouldBeNull();
        sheaf.Order.Sign(new CloseOutCountersignature(new(closeOut.Id)), Ines, sheaf.Now);
        sheaf.Order.Stage.ShouldBe(Stage.Closed);
        sheaf.Order.SetAside(closeOut, Ines, sheaf.Pass(TimeSpan.FromMinutes(1)).Now, "wrong drawing");
        sheaf.Order.Stage.ShouldBe(Stage.Fixed);
    }

    [Fact]
    public void Who_fitted_or_removed_does_not_close()
    {
        var sheaf = PermanentFixRules.Fixed();
        var tove = Tove;
        CloseOut.Objection(sheaf.Order, tove, sheaf.Now)!.Code.ShouldBe("close-capacity");
        var hats = new Person
        {
            Id = Tove.Id,
            FullName = Tove.FullName,
            Roles = [Role.Technician, Role.Supervisor],
            Sites = ["mill"],
        };
        CloseOut.Objection(sheaf.Order, hats, sheaf.Now)!.Code.ShouldBe("fitter-may-not-close");
    }

    [Fact]
    public void The_manager_closes_where_one_supervisor_is_all_there_is_and_he_raised_or_fitted_it()
    {
        var sheaf = PermanentFixRules.Fixed();
        Manager().ShouldBe("close-capacity");
        sheaf.Order.Surroundings = Surroundings.None with { Supervisors = [Mara.Id] };
        Manager().ShouldBe("close-capacity", "she neither raised nor fitted it");
        sheaf.Order.Surroundings = Surroundings.None with { Supervisors = [Tove.Id] };
        Manager().ShouldBeNull();
        sheaf.Order.Surroundings = Surroundings.None with { Supervisors = [Tove.Id, Olaf.Id] };
        Manager().ShouldBe("close-capacity");

        string? Manager() => CloseOut.Objection(sheaf.Order, Henrik, sheaf.Now)?.Code;
    }

    [Fact]
    public void The_cause_is_confirmed_and_a_failure_has_its_mode_and_its_lesson()
    {
        var sheaf = PermanentFixRules.Fixed();
        Ask(sheaf, Lessons with { Cause = DefectCause.Unknown })!.Code.ShouldBe("cause-not-confirmed");
        var failure = sheaf.Order.Sign(new Failure(new(LeakState.Drip, "dripped before")), Tove, sheaf.Now);
        Ask(sheaf, Lessons)!.Code.ShouldBe("failure-mode-unknown");
        sheaf.Order.Sign(new FailureStatement(new(failure.Id, FailureMode.Seal, "the seal let go")), Ines, sheaf.Now);
        Ask(sheaf, AnOrder.CloseOut)!.Code.ShouldBe("lessons-missing");
        Ask(sheaf, Lessons).ShouldBeNull();
    }

    [Fact]
    public void What_is_out_on_the_order_keeps_it_open()
    {
        var sheaf = PermanentFixRules.Fixed();
        var no = CloseOut.Objection(sheaf.Order, AnOrder.CloseOut, ["2 pcs of clamp, batch 7"], Mara, sheaf.Now)!;
        no.Code.ShouldBe("stores-not-balanced");
        no.Sentence.ShouldContain("2 pcs of clamp, batch 7");
    }

    [Fact]
    public void A_tag_that_was_never_fitted_need_not_come_back() =>
        Ask(PermanentFixRules.Fixed(), AnOrder.CloseOut with { TagBack = false }).ShouldBeNull();

    [Fact]
    public void Only_what_is_closed_is_reopened()
    {
        var sheaf = PermanentFixRules.Fixed();
        Reopening.Objection(sheaf.Order, Ines, sheaf.Now)!.Code.ShouldBe("not-closed");
        sheaf.Order.Sign(new CloseOut(AnOrder.CloseOut), Mara, sheaf.Now);
        Reopening.Objection(sheaf.Order, Ines, sheaf.Now).ShouldBeNull();
        var lapsed = new Person
        {
            FullName = "Outside",
            Roles = [Role.IntegrityEngineer],
            Sites = ["mill"],
            AuthorityUntil = new(2026, 1, 1),
        };
        Reopening.Objection(sheaf.Order, lapsed, sheaf.Now)!.Code.ShouldBe("authority-lapsed");
    }

    private static Objection? Ask(WorkSheaf sheaf, CloseOrder ask) =>
        CloseOut.Objection(sheaf.Order, ask, [], Mara, sheaf.Now);
}
