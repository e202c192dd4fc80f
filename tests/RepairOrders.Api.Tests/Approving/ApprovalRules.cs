using RepairOrders.Api.Approving;
using RepairOrders.Api.Orders;
using RepairOrders.Contract;
using static RepairOrders.Contract.ApprovalCapacity;

namespace RepairOrders.Api.Tests.Approving;

public sealed class ApprovalRules
{
    [Fact]
    public void On_class_D_one_supervisor_suffices()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.D).Approved("mara", Supervisor);
        sheaf.Order.Stage.ShouldBe(Stage.Approved);
    }

    [Fact]
    public void On_class_D_who_sized_may_not_sign_as_supervisor_however_many_roles_he_holds()
    {
        var sheaf = new Sheaf();
        sheaf.Join(new("both", "Bo Thomas", [Role.IntegrityEngineer, Role.Supervisor], []));
        sheaf.Assessed().Chosen().Sized(RiskClass.D, by: "both");
        sheaf.ToApprove("both", Supervisor)!.Code.ShouldBe("own-work");
    }

    [Fact]
    public void On_class_C_the_engineer_may_be_the_one_who_sized()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.C).Approved("ines", Engineer);
        sheaf.Order.Stage.ShouldBe(Stage.Sized);
        sheaf.Approved("mara", Supervisor).Order.Stage.ShouldBe(Stage.Approved);
    }

    [Theory]
    [InlineData(RiskClass.A)]
    [InlineData(RiskClass.B)]
    public void On_classes_A_and_B_who_sized_may_not_approve_and_a_second_engineer_may(RiskClass risk)
    {
        var sheaf = Sheaf.SizedAs(risk);
        sheaf.ToApprove("ines", Engineer)!.Code.ShouldBe("own-work");
        sheaf.ToApprove("pavel", Engineer).ShouldBeNull();
    }

    [Fact]
    public void On_class_B_who_assessed_may_not_approve_though_another_sized()
    {
        var sheaf = new Sheaf().Assessed(by: "pavel").Chosen().Sized(RiskClass.B, by: "ines");
        sheaf.ToApprove("pavel", Engineer)!.Code.ShouldBe("own-work");
    }

    [Fact]
    public void On_class_A_the_manager_signs_too()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.A).Approved("mara", Supervisor).Approved("pavel", Engineer);
        sheaf.Order.Stage.ShouldBe(Stage.Sized);
        sheaf.Approved("henrik", Manager).Order.Stage.ShouldBe(Stage.Approved);
    }

    [Fact]
    public void Nobody_approves_what_he_raised() =>
        Sheaf.SizedAs(RiskClass.C, raisedBy: "mara").ToApprove("mara", Supervisor)!.Code.ShouldBe("own-request");

    [Fact]
    public void One_person_signs_once_whatever_roles_he_holds()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.C);
        sheaf.Join(new("both", "Bo Thomas", [Role.IntegrityEngineer, Role.Supervisor], []));
        sheaf.Approved("both", Supervisor).ToApprove("both", Engineer)!.Code.ShouldBe("signed-already");
    }

    [Fact]
    public void A_place_is_filled_once()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.C).Approved("mara", Supervisor);
        sheaf.ToApprove("olaf", Supervisor)!.Code.ShouldBe("place-filled");
    }

    [Fact]
    public void A_signature_takes_the_role() =>
        Sheaf.SizedAs(RiskClass.C).ToApprove("mara", Engineer)!.Code.ShouldBe("capacity");

    [Fact]
    public void The_manager_signs_for_the_only_supervisor_who_raised_it()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.C, raisedBy: "mara");
        sheaf.ToApprove("henrik", Supervisor)!.Code.ShouldBe("capacity", "Olaf can sign");
        sheaf.Order.Surroundings = Surroundings.None with { Supervisors = [sheaf["mara"].Id] };
        sheaf.ToApprove("henrik", Supervisor).ShouldBeNull();
    }

    [Fact]
    public void The_manager_signs_for_the_only_supervisor_who_fitted_it()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.C);
        var sole = sheaf.Join(new("sole", "Siv Alone", [Role.Supervisor, Role.Technician], Cast.Methods));
        sheaf.Order.Surroundings = Surroundings.None with { Supervisors = [sole.Id] };
        sheaf.ToApprove("henrik", Supervisor)!.Code.ShouldBe("capacity");
        sheaf.Fits("sole").ToApprove("henrik", Supervisor).ShouldBeNull();
    }

    [Fact]
    public void The_manager_does_not_sign_for_the_only_supervisor_who_did_not_raise_it()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.C);
        sheaf.Order.Surroundings = Surroundings.None with { Supervisors = [sheaf["mara"].Id] };
        sheaf.ToApprove("henrik", Supervisor)!.Code.ShouldBe("capacity");
    }

    [Fact]
    public void A_lapsed_authority_signs_nothing()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.C);
        sheaf["pavel"].AuthorityUntil = sheaf.Today.AddDays(-1);
        sheaf.ToApprove("pavel", Engineer)!.Code.ShouldBe("authority-lapsed");
        sheaf["pavel"].AuthorityUntil = sheaf.Today;
        sheaf.ToApprove("pavel", Engineer).ShouldBeNull("its last day counts");
    }

    [Fact]
    public void An_outside_signer_signs_within_his_scope()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.B);
        sheaf["pavel"].OutsideScope = "witness at tests";
        sheaf.ToApprove("pavel", Engineer)!.Code.ShouldBe("outside-scope");
        sheaf["pavel"].OutsideScope = "second engineer on temporary repairs";
        sheaf.ToApprove("pavel", Engineer).ShouldBeNull();
    }

    [Fact]
    public void A_fingerprint_of_another_design_is_refused()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.C);
        Approval
            .Objection(sheaf.Order, new ApproveOrder(new string('0', 64), Supervisor), sheaf["mara"], sheaf.Now)!
            .Code.ShouldBe("design-changed");
    }

    [Fact]
    public void A_line_list_that_changed_since_sizing_asks_for_a_new_sizing()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.C);
        sheaf.Order.Line!.DesignPressureBar = 12;
        sheaf.ToApprove("mara", Supervisor)!.Code.ShouldBe("facts-changed");
    }

    [Fact]
    public void A_design_sized_again_needs_all_signatures_again()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.C).Approved("mara", Supervisor).Approved("ines", Engineer);
        sheaf.Sized(RiskClass.C, sizing: sheaf.Measures with { Remark = "two days later" });
        sheaf.Order.Stage.ShouldBe(Stage.Sized);
        sheaf.Order.ApprovedDesign.ShouldBeNull();
        Signatures.Missing(sheaf.Order, sheaf.Order.PendingDesign!).ShouldBe([Supervisor, Engineer]);
    }

    [Fact]
    public void A_fresh_assessment_before_work_makes_the_approval_void()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.C).Approved("mara", Supervisor).Approved("ines", Engineer).Assessed();
        sheaf.Order.Stage.ShouldBe(Stage.Assessed);
        sheaf.Order.ApprovedDesign.ShouldBeNull();
        sheaf.Order.PendingDesign.ShouldBeNull();
    }

    [Fact]
    public void A_withdrawn_approval_is_missing_again()
    {
        var sheaf = Sheaf.SizedAs(RiskClass.C).Approved("mara", Supervisor).Approved("ines", Engineer);
        var own = Withdrawal.Own(sheaf.Order, sheaf["mara"])!;
        Withdrawal.Objection(sheaf.Order, own, sheaf["ines"])!.Code.ShouldBe("not-your-signature");
        Withdrawal.Objection(sheaf.Order, own, sheaf["mara"]).ShouldBeNull();
        sheaf.Order.SetAside(own, sheaf["mara"], sheaf.Now, "the shutdown is earlier");
        sheaf.Order.Stage.ShouldBe(Stage.Sized);
        sheaf.ToApprove("mara", Supervisor).ShouldBeNull();
    }

    [Fact]
    public void At_least_one_approver_gave_no_consent()
    {
        var sheaf = new Sheaf()
            .Consented("ines", ConsentCapacity.EngineerOnCall)
            .Consented("olaf", ConsentCapacity.OperationsInCharge)
            .Assessed()
            .Chosen()
            .Sized(RiskClass.C)
            .Approved("ines", Engineer);
        sheaf.Order.Stage.ShouldBe(Stage.Consented);
        sheaf.ToApprove("olaf", Supervisor)!.Code.ShouldBe("all-consented");
        sheaf.Approved("mara", Supervisor).Order.Stage.ShouldBe(Stage.Approved);
    }

    [Fact]
    public void The_fingerprint_is_that_of_what_is_read_back()
    {
        var design = Sheaf.SizedAs(RiskClass.C).Order.PendingDesign!;
        RepairOrders.Api.Sizing.Fingerprints.Of(design.Asked).ShouldBe(design.Asked.Fingerprint);
        var read = System.Text.Json.JsonSerializer.Deserialize<SignedDesign>(design.Body, RepairOrdersClient.Json)!;
        RepairOrders.Api.Sizing.Fingerprints.Of(read).ShouldBe(design.Asked.Fingerprint);
    }
}
