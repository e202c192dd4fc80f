using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.MakingPermanent;

public sealed class MakingPermanentOverHttp(Workshop workshop)
{
    [Fact]
    public async Task The_new_piece_is_entered_with_certificates_welds_tests_and_drawings()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Fixed(scene);
        var order = await scene.Mara.Order(number);
        order.Title.Stage.ShouldBe(Stage.Fixed);
        order.Records.Last(r => r.Kind == "permanent-fix").Summary.ShouldContain("job 4411");
        await scene.Mara.RecordPermanentFix(
            number,
            AnOrder.Spool(scene) with
            {
                Welds = "two butt welds, one repaired and radiographed again",
            },
            order.Version
        );
        order = await scene.Mara.Order(number);
        order.Title.Stage.ShouldBe(Stage.Fixed);
        order.Records.Count(r => r.Kind == "permanent-fix" && r.SetAsideAt is not null).ShouldBe(1);
    }

    [Fact]
    public async Task Every_refusal_of_a_fix_names_its_reason_and_who_clears_it()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.InService(scene);
        var fix = AnOrder.Spool(scene);
        await Is("not-now", fix);
        await scene.TakeOff(number);
        await Is("inspector-entry-missing", fix);
        await scene.Vera.InspectRemoval(number, AnOrder.Inspection, await scene.Version(number));
        fix = AnOrder.Spool(scene);
        await Is("part-certificates-missing", fix with { PartCertificates = " " });
        await Is("fix-not-tested", fix with { Tests = null });
        foreach (var day in new[] { -1, 1 })
        {
            var wrong = fix with { DoneOn = scene.Clock.Today.AddDays(day) };
            var version = await scene.Version(number);
            var no = await Should.ThrowAsync<Refused>(() => scene.Mara.RecordPermanentFix(number, wrong, version));
            no.Status.ShouldBe(400);
            no.Fields.ShouldContainKey("doneOn");
        }
        var retired = fix with { Kind = PermanentFixKind.LineRetired, PartCertificates = null, Tests = null };
        await scene.Mara.RecordPermanentFix(number, retired, await scene.Version(number));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Fixed);

        async Task Is(string code, RecordPermanentFix ask) =>
            await scene.Mara.RecordPermanentFix(number, ask, await scene.Version(number)).ShouldBeRefused(code);
    }
}
