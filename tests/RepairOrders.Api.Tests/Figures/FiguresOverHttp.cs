using System.Text.Json;
using RepairOrders.Contract;
using static RepairOrders.Api.Tests.RefusalOf;

namespace RepairOrders.Api.Tests.Figures;

/// <summary>A site's own figures take two signatures, and an order keeps those it was decided under.</summary>
public sealed class FiguresOverHttp(Workshop workshop)
{
    private static readonly ProposeFigures Shorter = new(
        FiguresRules.With(RiskClass.C, row => row with { CapDays = 200, LookHours = 24 * 20 }) with
        {
            SurveyDays = 14,
        },
        "insurer asks for no more than 200 days on class C"
    );

    [Fact]
    public async Task Two_sign_and_only_then_they_are_in_force()
    {
        var scene = await workshop.Scene();
        (await scene.Rune.Figures(scene.Site)).ShouldHaveSingleItem().InForce.ShouldBeTrue();
        await scene.Ines.ProposeFigures(scene.Site, Shorter);
        await Refuses("figures-await-second", () => scene.Pavel.ProposeFigures(scene.Site, Shorter));
        await Refuses("figures-own-proposal", () => scene.Ines.ConfirmFigures(scene.Site, 2));
        await Refuses("figures-not-waiting", () => scene.Pavel.ConfirmFigures(scene.Site, 1));
        (await scene.Pavel.Figures(scene.Site))[^1]
            .ShouldSatisfyAllConditions(f => f.InForce.ShouldBeFalse(), f => f.Objection.ShouldBeNull());
        await scene.Pavel.ConfirmFigures(scene.Site, 2);
        var all = await scene.Mara.Figures(scene.Site);
        all.Select(f => f.InForce).ShouldBe([false, true]);
        (all[1].Proposed!.By, all[1].Confirmed!.By).ShouldBe(("Ines Duarte", "Pavel Horak"));
        await Refuses("figures-not-waiting", () => scene.Henrik.DropFigures(scene.Site, 2, new("too strict")));
        (await scene.Ada.SiteChanges(scene.Site))
            .Select(c => c.What)
            .ShouldBe(["figures proposed, version 2", "figures in force, version 2"], ignoreOrder: false);
    }

    [Fact]
    public async Task What_waits_can_be_taken_back()
    {
        var scene = await workshop.Scene();
        await scene.Ines.ProposeFigures(scene.Site, Shorter);
        (await scene.Henrik.DropFigures(scene.Site, 2, new("the insurer took it back"))).Count.ShouldBe(1);
        (await scene.Henrik.ProposeFigures(scene.Site, Shorter))[^1].Version.ShouldBe(2);
    }

    [Fact]
    public async Task A_figure_out_of_its_range_is_named()
    {
        var scene = await workshop.Scene();
        var worse = Shorter with { Figures = FiguresRules.With(RiskClass.A, row => row with { GraceHours = 40 }) };
        var no = await Should.ThrowAsync<Refused>(() => scene.Ines.ProposeFigures(scene.Site, worse));
        no.Status.ShouldBe(400);
        no.Fields["figures.classes"].Single().ShouldContain("graceHours is 40 for class A and 24 for class B");
        var never = Shorter with { Figures = Shorter.Figures with { ConsentStandsHours = 100 } };
        (await Should.ThrowAsync<Refused>(() => scene.Ines.ProposeFigures(scene.Site, never))).Fields.Keys.ShouldBe([
            "figures.consentStandsHours",
        ]);
    }

    [Fact]
    public async Task An_order_keeps_the_figures_it_was_decided_under()
    {
        var scene = await workshop.Scene();
        var before = await AnOrder.InService(scene);
        var looked = (await scene.Mara.Order(before)).NextLook;
        await scene.Ines.ProposeFigures(scene.Site, Shorter);
        await scene.Pavel.ConfirmFigures(scene.Site, 2);
        (await scene.Mara.Order(before)).NextLook.ShouldBe(looked);
        var after = await AnOrder.Sized(scene);
        var design = await Design(scene, after);
        design.FiguresVersion.ShouldBe(2);
        design.EndDate.Terms.Single(t => t.Code == "class-cap").On.ShouldBe(design.Ask.PlannedFitOn.AddDays(200));
        (await Design(scene, before)).FiguresVersion.ShouldBe(1);
    }

    private static async Task<SignedDesign> Design(Scene scene, string number) =>
        (await scene.Mara.Order(number))
            .Records.Last(r => r.Kind == "design")
            .Body.Deserialize<SignedDesign>(RepairOrdersClient.Json)!;
}
