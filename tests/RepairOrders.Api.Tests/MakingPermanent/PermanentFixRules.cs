using RepairOrders.Api.MakingPermanent;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Removing;
using RepairOrders.Api.Tests.Removing;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.WorkSheaf;

namespace RepairOrders.Api.Tests.MakingPermanent;

public sealed class PermanentFixRules
{
    private static readonly RecordPermanentFix Spool = new(
        PermanentFixKind.Replacement,
        "job 4411",
        new(2026, 3, 2),
        "3.1 no. 88213",
        "two butt welds, radiographed",
        "water, 9 bar, tight",
        "isometric 3104 C"
    );

    [Fact]
    public void The_bare_pipe_is_inspected_before_it_is_covered_or_cut_out()
    {
        var sheaf = RemovalRules.Removed();
        Ask(sheaf, Spool)!.Code.ShouldBe("inspector-entry-missing");
        Inspected(sheaf);
        Ask(sheaf, Spool).ShouldBeNull();
        Ask(RemovalRules.Removed(RiskClass.D), Spool).ShouldBeNull();
    }

    [Fact]
    public void New_parts_have_certificates_and_are_tested_unless_the_line_is_retired()
    {
        var sheaf = Inspected(RemovalRules.Removed());
        Ask(sheaf, Spool with { PartCertificates = null })!.Code.ShouldBe("part-certificates-missing");
        Ask(sheaf, Spool with { Tests = " " })!.Code.ShouldBe("fix-not-tested");
        Ask(sheaf, Spool with { Kind = PermanentFixKind.LineRetired, PartCertificates = null, Tests = null })
            .ShouldBeNull();
    }

    [Fact]
    public void Nothing_is_fixed_for_good_while_the_repair_is_on() =>
        Ask(RemovalRules.Ordered(), Spool)!.Code.ShouldBe("not-now");

    internal static WorkSheaf Inspected(WorkSheaf sheaf)
    {
        sheaf.Order.Sign(new RemovalInspection(AnOrder.Inspection), Vera, sheaf.Now);
        return sheaf.Pass(TimeSpan.FromMinutes(1));
    }

    internal static WorkSheaf Fixed(RiskClass signed = RiskClass.C)
    {
        var sheaf = Inspected(RemovalRules.Removed(signed));
        sheaf.Order.Sign(new PermanentFix(Spool), Mara, sheaf.Now);
        sheaf.Order.Stage.ShouldBe(Stage.Fixed);
        return sheaf.Pass(TimeSpan.FromMinutes(1));
    }

    private static Objection? Ask(WorkSheaf sheaf, RecordPermanentFix ask) =>
        PermanentFix.Objection(sheaf.Order, ask, Mara, sheaf.Now);
}
