using RepairOrders.Api.Failing;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.WorkSheaf;

namespace RepairOrders.Api.Tests.Failing;

/// <summary>A failure is never refused; what makes it safe has to be named.</summary>
public sealed class FailureRules
{
    private static readonly MakeSafe Isolated = new(
        SafeBy.Isolation,
        "IC 301",
        null,
        false,
        null,
        null,
        FailureMode.NotYetKnown
    );

    private static readonly MakeSafe Contained = new(
        SafeBy.Containment,
        null,
        "drip tray, screen, pressure cut to 2 bar",
        true,
        "the pump house round, each hour",
        null,
        FailureMode.NotYetKnown
    );

    [Fact]
    public void It_leaves_in_service_at_once()
    {
        var sheaf = InService();
        sheaf.Order.Sign(new Failure(new(LeakState.Weep, "wet under the lower half")), Anton, sheaf.Now);
        sheaf.Order.Stage.ShouldBe(Stage.Failed);
    }

    [Fact]
    public void Operations_in_charge_makes_it_safe_and_names_the_certificate()
    {
        var sheaf = Failed();
        MadeSafe.Objection(sheaf.Order, Isolated, Mara, sheaf.Now)!.Code.ShouldBe("operations-in-charge-needed");
        Safe(sheaf, Isolated with { IsolationCertificate = " " })!.Code.ShouldBe("isolation-certificate-missing");
        Safe(sheaf, Isolated).ShouldBeNull();
    }

    [Fact]
    public void A_contained_leak_has_controls_a_barred_area_and_a_watch()
    {
        var sheaf = Failed();
        Safe(sheaf, Contained with { Controls = "" })!.Code.ShouldBe("controls-not-named");
        Safe(sheaf, Contained with { AreaBarred = false })!.Code.ShouldBe("area-not-barred");
        Safe(sheaf, Contained with { WatchBy = null })!.Code.ShouldBe("no-watch");
        Safe(sheaf, Contained).ShouldBeNull();
    }

    [Theory]
    [InlineData(RiskClass.A, true)]
    [InlineData(RiskClass.B, false)]
    public void Only_on_class_A_containment_waits_for_the_manager(RiskClass signed, bool waits)
    {
        var sheaf = Failed(signed);
        MadeSafe.NeedsManager(sheaf.Order, Contained, Olaf, sheaf.Now).ShouldBe(waits);
        MadeSafe.NeedsManager(sheaf.Order, Isolated, Olaf, sheaf.Now).ShouldBeFalse();
        MadeSafe.NeedsManager(sheaf.Order, Contained, Henrik, sheaf.Now).ShouldBeFalse("he is the manager");
    }

    [Fact]
    public void How_it_failed_is_stated_or_not_but_never_half()
    {
        var sheaf = Failed();
        var failure = sheaf.Order.All<Failure>().Single();
        State(sheaf, new(failure.Id, FailureMode.NotYetKnown, "sent to the laboratory"))!
            .Code.ShouldBe("failure-mode-not-stated");
        State(sheaf, new(Guid.NewGuid(), FailureMode.Seal, "seal extruded"))!.Code.ShouldBe("failure-not-found");
        State(sheaf, new(failure.Id, FailureMode.Seal, "seal extruded")).ShouldBeNull();
        FailureStatement.Unknown(sheaf.Order).ShouldHaveSingleItem();
        sheaf.Order.Sign(new FailureStatement(new(failure.Id, FailureMode.Seal, "seal extruded")), Ines, sheaf.Now);
        FailureStatement.Unknown(sheaf.Order).ShouldBeEmpty();
    }

    private static WorkSheaf Failed(RiskClass signed = RiskClass.C)
    {
        var sheaf = InService(signed);
        sheaf.Order.Sign(new Failure(new(LeakState.Drip, "dripping at the gap")), Anton, sheaf.Now);
        return sheaf.Pass(TimeSpan.FromMinutes(1));
    }

    private static Objection? Safe(WorkSheaf sheaf, MakeSafe ask) =>
        MadeSafe.Objection(sheaf.Order, ask, Olaf, sheaf.Now);

    private static Objection? State(WorkSheaf sheaf, StateFailureMode ask) =>
        FailureStatement.Objection(sheaf.Order, ask, Ines, sheaf.Now);
}
