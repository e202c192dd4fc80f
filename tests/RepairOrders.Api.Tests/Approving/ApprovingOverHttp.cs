using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Approving;

public sealed class ApprovingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task Supervisor_and_engineer_approve_a_class_C_patch()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        var order = await scene.Mara.Order(number);
        order.Title.Stage.ShouldBe(Stage.Approved);
        order.Title.SignedClass.ShouldBe(RiskClass.C);
        order.Title.Method.ShouldBe("Banded patch");
        order.Title.Owner.ShouldBe("Mara Lindqvist");
        order.Title.EndDate.ShouldNotBeNull();
    }
}
