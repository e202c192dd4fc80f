using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.OrderSheets;

/// <summary>What an open page asks every few seconds.</summary>
public sealed class OrderVersions(Workshop workshop)
{
    [Fact]
    public async Task A_signature_is_another_version_and_a_read_is_not()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        var raised = (await scene.Mara.Order(number)).Version;
        (await scene.Rune.OrderVersion(number)).Version.ShouldBe(raised);
        await scene.Ines.Assess(number, AnOrder.Judged(scene), raised);
        var assessed = (await scene.Rune.OrderVersion(number)).Version;
        assessed.ShouldNotBe(raised);
        (await scene.Mara.Order(number)).Version.ShouldBe(assessed);
        await scene.Photograph(number, PhotoOf.Assessment);
        (await scene.Rune.OrderVersion(number)).Version.ShouldNotBe(assessed, "a photograph is a record too");
    }

    [Fact]
    public async Task A_stranger_to_the_site_is_told_of_no_order()
    {
        var (here, there) = (await workshop.Scene(), await workshop.Scene());
        var number = await AnOrder.Requested(here);
        (await Should.ThrowAsync<Refused>(() => there.Mara.OrderVersion(number))).Status.ShouldBe(404);
    }
}
