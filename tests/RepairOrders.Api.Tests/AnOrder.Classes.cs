using RepairOrders.Contract;

namespace RepairOrders.Api.Tests;

internal static partial class AnOrder
{
    /// <summary>Approved with a method, a service and consequences of one's choice, by everybody its class asks for.</summary>
    public static async Task<string> ApprovedWith(
        Scene scene,
        RecordAssessment? judged = null,
        ChooseMethod? method = null,
        SizeRepair? sizing = null,
        RequestRepair? request = null
    )
    {
        var number = await Assessed(scene, request, judged);
        await scene.Ines.Choose(number, method ?? BandedPatch, await scene.Version(number));
        var asked = sizing ?? Sizing(scene);
        var under = asked with { ChangeControl = asked.ChangeControl ?? new("MOC-3", scene.Clock.Today.AddDays(80)) };
        await scene.Ines.Size(number, under, await scene.Version(number));
        var order = await scene.Mara.Order(number);
        var print = order.Fingerprint!;
        await scene.Mara.Approve(number, new(print, ApprovalCapacity.Supervisor));
        if (order.Title.SignedClass != RiskClass.D)
            await scene.Pavel.Approve(number, new(print, ApprovalCapacity.Engineer));
        if (order.Title.SignedClass == RiskClass.A)
            await scene.Henrik.Approve(number, new(print, ApprovalCapacity.Manager));
        return number;
    }

    /// <summary>A manned area, slow to isolate, a drain to the river: class A on the cooling-water line.</summary>
    public static RecordAssessment Grave(Scene scene) =>
        Judged(scene) with
        {
            Consequences = new(PeopleNearby.MannedArea, false, Measure.Of(500, "kg"), true),
        };
}
