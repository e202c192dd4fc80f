using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Proving;

public sealed class ProvingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task An_order_goes_from_approval_into_service()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var order = await scene.Mara.Order(number);
        order.Title.Stage.ShouldBe(Stage.InService);
        (await scene.Signe.PickList(number)).Out.ShouldBeEmpty();
        (await scene.Rune.Journal(number)).BrokenAt.ShouldBeNull();
    }
}
