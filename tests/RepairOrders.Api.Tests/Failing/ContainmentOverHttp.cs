using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Failing;

public sealed class ContainmentOverHttp(Workshop workshop)
{
    [Fact]
    public async Task On_class_A_an_isolation_gives_way_to_containment_only_with_the_manager()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.ApprovedWith(scene, AnOrder.Grave(scene));
        await scene.Issue(number);
        await scene.Readied(number);
        await scene.Fit(number);
        await scene.IntoService(number);
        await scene.Tove.ReportFailure(number, new(LeakState.Drip, "drips at the gap"));
        await scene.Olaf.MakeSafe(
            number,
            new(SafeBy.Isolation, "IC 230", null, AreaBarred: true, null, null, FailureMode.Seal)
        );
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.MadeSafe);

        scene.Clock.Pass(TimeSpan.FromHours(2));
        var contained = await scene.Olaf.MakeSafe(
            number,
            new(
                SafeBy.Containment,
                null,
                "tray and drain hose, pressure cut to 3 bar",
                AreaBarred: true,
                "area operator, every hour",
                null,
                FailureMode.Seal
            )
        );
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Failed, "nobody has agreed to a live leak");
        await scene.Henrik.AgreeContainment(number, new(contained.Id, "until the pump is changed over on Friday"));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.MadeSafe);
    }
}
