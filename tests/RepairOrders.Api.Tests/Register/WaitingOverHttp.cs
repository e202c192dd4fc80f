namespace RepairOrders.Api.Tests.Register;

public sealed class WaitingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_request_waits_for_the_engineer_and_for_nobody_else()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        (await scene.Ines.Waiting())
            .Rows.Select(w => (w.Row.Number, w.Action.Action))
            .ShouldBe([(number, "record-assessment")]);
        (await scene.Mara.Waiting()).Rows.ShouldBeEmpty();
        (await scene.Rune.Waiting()).Rows.ShouldBeEmpty();
    }

    [Fact]
    public async Task A_sized_repair_waits_for_the_supervisor_with_duty_and_defect()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Sized(scene);
        var waiting = (await scene.Mara.Waiting()).Rows.ShouldHaveSingleItem();
        waiting.Row.Number.ShouldBe(number);
        waiting.Action.Action.ShouldBe("approve-order");
        waiting.Duty.ShouldContain("bar");
        waiting.Defect.ShouldNotBeNullOrEmpty();
    }
}
