using RepairOrders.Api.Issuing;
using RepairOrders.Api.Orders;
using RepairOrders.Api.Stock;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.WorkSheaf;

namespace RepairOrders.Api.Tests.Issuing;

public sealed class IssueRules
{
    private static readonly Bin Stores1 = new() { Code = "A-1" };
    private static readonly Bin Locker = new() { Code = "L-1", Locker = true };
    private static readonly DateOnly Fit = new(2026, 3, 3);

    [Fact]
    public void Nothing_is_issued_before_the_approval()
    {
        var sheaf = WorkSheaf.Approved();
        var approval = sheaf.Order.All<Api.Approving.Approval>().First();
        sheaf.Order.SetAside(approval, Mara, Monday, "changed my mind");
        MaterialIssue.Objection(sheaf.Order, Signe, Monday).ShouldNotBeNull();
    }

    [Fact]
    public void A_batch_must_last_two_days_past_the_fit()
    {
        var sheaf = WorkSheaf.Approved();
        Line(sheaf, Lot(expiry: Fit.AddDays(2))).ShouldBeNull();
        Line(sheaf, Lot(expiry: Fit.AddDays(1)))!.Code.ShouldBe("batch-expires-before-fit");
        Line(sheaf, Lot(expiry: new DateOnly(2026, 3, 1)))!.Code.ShouldBe("batch-expired");
    }

    [Theory]
    [InlineData(BatchStanding.Quarantined, "batch-quarantined")]
    [InlineData(BatchStanding.Recalled, "batch-recalled")]
    public void A_batch_that_is_set_apart_or_recalled_is_not_issued(BatchStanding standing, string code)
    {
        var batch = Lot(expiry: Fit.AddDays(90));
        batch.Judge(new JudgeBatch(standing, "notice 12"), Signe, Monday);
        var no = Line(WorkSheaf.Approved(), batch)!;
        no.Code.ShouldBe(code);
        no.Sentence.ShouldContain("notice 12");
    }

    [Fact]
    public void Something_else_than_the_bill_names_takes_an_engineers_agreement()
    {
        var sheaf = WorkSheaf.Approved();
        var other = Lot(item: Stores.Putty("mill"), expiry: Fit.AddDays(90));
        Line(sheaf, other)!.Code.ShouldBe("substitution-not-agreed");
        sheaf.Order.Sign(
            new Substitution(new(new AgreeSubstitution(2, "PUT-12", "same base"), sheaf.Plan.Id, "sealant", "putty")),
            Ines,
            Monday
        );
        Line(sheaf, other).ShouldBeNull();
        // Agreed for that line only.
        Line(sheaf, other, line: 1).ShouldNotBeNull();
    }

    [Fact]
    public void A_quantity_that_does_not_compare_is_refused()
    {
        var item = Stores.Putty("mill") with { Need = "sealant", Unit = "pcs" };
        Line(WorkSheaf.Approved(), Lot(item: item, expiry: Fit.AddDays(90)))!.Code.ShouldBe("unit-differs");
    }

    [Fact]
    public void A_metal_part_needs_its_certificate_except_on_class_D()
    {
        var item = Stores.Band("mill") with { Need = "clamp", Unit = "pcs" };
        Line(WorkSheaf.Approved(), Lot(item: item), line: 1)!.Code.ShouldBe("certificate-missing");
        Line(WorkSheaf.Approved(), Lot(item: item, certificate: "3.1 no. 4"), line: 1).ShouldBeNull();
        Line(WorkSheaf.Approved(RiskClass.D), Lot(item: item), line: 1).ShouldBeNull();
    }

    [Fact]
    public void Without_a_storekeeper_only_a_locker_is_opened()
    {
        var batch = Lot(expiry: Fit.AddDays(90));
        Line(WorkSheaf.Approved(), batch, by: Olaf)!.Code.ShouldBe("locker-only");
        Line(WorkSheaf.Approved(), batch, by: Olaf, bin: Locker).ShouldBeNull();
    }

    [Fact]
    public void The_receiver_is_somebody_who_may_fit_and_later_one_of_the_fitters()
    {
        var sheaf = WorkSheaf.Approved();
        MaterialIssue.Receiver(sheaf.Order, sheaf.Plan, Vera, Monday).ShouldBeNull();
        MaterialIssue.Receiver(sheaf.Order, sheaf.Plan, Mara, Monday)!.Code.ShouldBe("receiver-not-on-order");
        MaterialIssue.Receiver(sheaf.Order, sheaf.Plan, null, Monday)!.Code.ShouldBe("receiver-not-on-order");
        sheaf.Issued().Ready();
        MaterialIssue.Receiver(sheaf.Order, sheaf.Plan, Vera, Monday)!.Sentence.ShouldContain("Tove Aune, Anton Reyes");
        MaterialIssue.Receiver(sheaf.Order, sheaf.Plan, Anton, Monday).ShouldBeNull();
    }

    [Fact]
    public void A_partial_issue_keeps_the_stage_until_the_bill_is_complete()
    {
        var sheaf = WorkSheaf.Approved();
        var lines = sheaf.Plan.Bill;
        Sign(sheaf, Issued(1, lines[0], 1), Issued(2, lines[1], 250));
        sheaf.Order.Stage.ShouldBe(Stage.Approved);
        Bill.Open(sheaf.Order, sheaf.Plan, 2).ShouldBe(150);
        Sign(sheaf, Issued(2, lines[1], 150));
        sheaf.Order.Stage.ShouldBe(Stage.Issued);
        MaterialIssue.Objection(sheaf.Order, Signe, Monday)!.Code.ShouldBe("issued-already");
    }

    [Fact]
    public void A_bill_with_nothing_to_draw_is_covered_from_the_start()
    {
        var sheaf = WorkSheaf.Approved(design: Clamp with { Materials = [] });
        Bill.Complete(sheaf.Order, sheaf.Plan).ShouldBeTrue();
        Api.Readying.Readiness.Objection(sheaf.Order, Mara, Monday).ShouldBeNull();
        Sign(sheaf);
        sheaf.Order.Stage.ShouldBe(Stage.Issued);
    }

    [Fact]
    public void What_comes_back_before_the_work_opens_the_bill_again()
    {
        var sheaf = WorkSheaf.Approved().Issued();
        sheaf.Order.Stage.ShouldBe(Stage.Issued);
        var line = new MovedLine("SEALANT", "sealant", SealantBatch, "lot 2", 100, "g", "bin A-1", 2, 100);
        sheaf.Order.Sign(new MaterialReturn(new(new ReturnMaterial([]), sheaf.Plan.Id, [line], false)), Signe, Monday);
        sheaf.Order.Stage.ShouldBe(Stage.Approved);
        Bill.Open(sheaf.Order, sheaf.Plan, 2).ShouldBe(100);
        Api.Readying.Readiness.Objection(sheaf.Order, Mara, Monday).ShouldNotBeNull();
    }

    [Fact]
    public void Lengths_and_masses_are_compared_across_units()
    {
        Bill.Convert(2, "m", "mm").ShouldBe(2000);
        Bill.Convert(1, "kg", "g")!.Value.ShouldBe(1000, 1e-9);
        Bill.Convert(1, "pcs", "g").ShouldBeNull();
        Bill.Convert(3, "pcs", "pcs").ShouldBe(3);
    }

    private static Objection? Line(
        WorkSheaf sheaf,
        Batch batch,
        int line = 2,
        Api.People.Person? by = null,
        Bin? bin = null
    ) =>
        MaterialIssue.Objection(
            sheaf.Order,
            sheaf.Plan,
            new IssueLine(line, batch.Id, "A-1", 1),
            batch,
            bin ?? Stores1,
            by ?? Signe,
            Monday
        );

    private static IssuedLine Issued(int line, MaterialNeedView need, double covers) =>
        new(
            line,
            need.Words,
            "X",
            need.Words,
            SealantBatch,
            "7",
            null,
            null,
            "A-1",
            (decimal)covers,
            need.Unit,
            covers,
            false,
            null
        );

    private static void Sign(WorkSheaf sheaf, params IssuedLine[] lines)
    {
        var complete = Bill.Complete(sheaf.Order, sheaf.Plan, n => lines.Where(l => l.Line == n).Sum(l => l.Covers));
        sheaf.Order.Sign(
            new MaterialIssue(
                new(new IssueMaterial(Tove.Id, [], true), Tove.FullName, sheaf.Plan.Id, lines, complete, false)
            ),
            Signe,
            sheaf.Pass(TimeSpan.FromMinutes(1)).Now
        );
    }
}
