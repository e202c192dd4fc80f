using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.OrderSheets;

/// <summary>The order page names one next action for the person who reads it: what brings the order on, or nothing.</summary>
public sealed class NextActions(Workshop workshop)
{
    [Fact]
    public async Task Before_work_it_waits_for_one_person_after_the_other()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        await Waits(scene, number, ("ines", "record-assessment"), ("mara", null), ("tove", null));
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        await Waits(scene, number, ("ines", "choose-method"));
        await scene.Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number));
        await Waits(scene, number, ("ines", "size-repair"));
        await scene.Ines.Size(number, AnOrder.Sizing(scene), await scene.Version(number));
        await Waits(
            scene,
            number,
            ("mara", "approve-order"),
            ("ines", "approve-order"),
            ("tove", null),
            ("rune", null)
        );
    }

    [Fact]
    public async Task At_work_it_waits_for_stores_supervisor_technician_and_witness()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        await Waits(scene, number, ("signe", "issue-material"), ("tove", null), ("ines", null));
        await scene.Issue(number);
        await Waits(scene, number, ("olaf", "ready-order"), ("signe", null));
        await scene.Readied(number);
        await Waits(scene, number, ("tove", "release-hold-point"), ("rune", null));
        await scene.Fit(number);
        await Waits(scene, number, ("tove", "record-proof"));
        var proof = await scene.Tove.RecordProof(number, await scene.Test(number));
        await Waits(scene, number, ("pavel", "witness-proof"), ("mara", "witness-proof"));
        await scene.Pavel.WitnessProof(number, proof.Id, new WitnessProof("tight"));
        await Waits(scene, number, ("mara", "accept-first-look"));
    }

    [Fact]
    public async Task In_service_a_visit_waits_only_when_the_look_is_due()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        await Waits(scene, number, ("tove", null), ("mara", null));
        scene.Clock.PassDays(7);
        await Waits(scene, number, ("tove", "record-visit"));
    }

    private static async Task Waits(Scene scene, string number, params (string Person, string? Action)[] expected)
    {
        foreach (var (person, action) in expected)
            (await scene.As(person).Order(number)).Next?.Action.ShouldBe(action, person);
        foreach (var (person, action) in expected.Where(e => e.Action is null))
            (await scene.As(person).Order(number)).Next.ShouldBeNull(person);
    }
}
