using System.Text.Json;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Sizing;

public sealed class SizingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_design_has_bill_hold_points_working_class_and_the_earliest_end_date()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Sized(scene);
        var order = await scene.Mara.Order(number);
        var design = order
            .Records.Single(r => r.Kind == "design")
            .Body.Deserialize<SignedDesign>(RepairOrdersClient.Json)!;
        design.Method.Entered.ShouldBeFalse();
        design.Method.Materials.ShouldNotBeEmpty();
        design.Method.HoldPoints.ShouldNotBeEmpty();
        design.Method.Working.ShouldNotBeEmpty();
        design.Risk.Class.ShouldBe(RiskClass.C);
        var terms = design.EndDate.Terms.ToDictionary(t => t.Code, t => t.On);
        var fit = design.Ask.PlannedFitOn;
        terms["class-cap"].ShouldBe(fit.AddDays(365));
        terms["design-life"].ShouldBe(fit.AddDays(180));
        terms.Keys.ShouldContain("half-remaining-life");
        design.EndDate.On.ShouldBe(terms.Values.Min());
        design.EndDate.Governing.Code.ShouldBe("design-life");
        (order.Title.EndDate, order.Title.Owner).ShouldBe((design.EndDate.On, "Mara Lindqvist"));
        order.Fingerprint.ShouldBe(design.Fingerprint);
        order
            .Figures.Select(f => f.Label)
            .ShouldBe(["Holds", "Wall left", "Remaining life", "End date", "Permanent fix"]);
    }

    [Fact]
    public async Task The_next_shutdown_of_the_area_ends_it_earlier()
    {
        var scene = await workshop.Scene();
        await scene.Henrik.AddShutdown(new(scene.Site, "Spring stop", "Pump house 2", scene.Clock.Today.AddDays(40)));
        var number = await AnOrder.Sized(scene);
        var design = (await scene.Mara.Order(number))
            .Records.Single(r => r.Kind == "design")
            .Body.Deserialize<SignedDesign>(RepairOrdersClient.Json)!;
        (design.EndDate.On, design.EndDate.Governing.Code, design.ShutdownName).ShouldBe(
            (scene.Clock.Today.AddDays(40), "next-shutdown", "Spring stop")
        );
    }

    [Fact]
    public async Task A_preview_shows_the_design_and_its_objection_and_writes_nothing()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Chosen(scene);
        (await scene.Ines.SizingInputs(number)).Select(i => i.Code).ShouldContain("bandWidthMm");
        var preview = await scene.Ines.PreviewSizing(number, AnOrder.Sizing(scene) with { PermanentFix = null });
        preview.Objection!.Code.ShouldBe("no-permanent-fix");
        preview.Design.Method.Materials.ShouldNotBeEmpty();
        (await scene.Ines.PreviewSizing(number, AnOrder.Sizing(scene))).Objection.ShouldBeNull();
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Chosen);
    }

    [Fact]
    public async Task Values_are_read_with_their_units_and_refused_by_name()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Chosen(scene);
        var inches = await scene.Ines.PreviewSizing(number, With(scene, ("bandWidthMm", "1.25 in")));
        inches.Design.Method["bandWidthMm"].ShouldBe(31.75);
        foreach (
            var (code, value) in new (string, InputValue)[]
            {
                ("bandWidthMm", 9000),
                ("bandWidthMm", "wide"),
                ("glueKg", 3),
            }
        )
        {
            var no = await Should.ThrowAsync<Refused>(() =>
                scene.Ines.PreviewSizing(number, With(scene, (code, value)))
            );
            no.Status.ShouldBe(400);
            no.Fields.Keys.ShouldContain($"values.{code}");
        }
        var all = await Should.ThrowAsync<Refused>(() =>
            scene.Ines.PreviewSizing(
                number,
                With(scene, ("bandWidthMm", "wide"), ("plateThicknessMm", -1), ("glueKg", 3))
            )
        );
        all.Fields.Keys.ShouldBe(["values.bandWidthMm", "values.plateThicknessMm", "values.glueKg"], ignoreOrder: true);
    }

    [Fact]
    public async Task Sizing_waits_for_a_method_chosen_since_the_last_assessment()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Assessed(scene);
        await Size(scene, number, AnOrder.Sizing(scene)).ShouldBeRefused("not-chosen");
        await scene.Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number));
        await scene.Ines.Assess(number, AnOrder.Judged(scene), await scene.Version(number));
        await Size(scene, number, AnOrder.Sizing(scene)).ShouldBeRefused("not-chosen");
    }

    [Fact]
    public async Task A_design_that_does_not_hold_is_not_signed()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Chosen(scene);
        await Size(scene, number, With(scene, ("bandYieldMpa", 205))).ShouldBeRefused("design-does-not-hold");
        await Size(scene, number, AnOrder.Sizing(scene) with { InterimLimits = null })
            .ShouldBeRefused("pressure-not-held");
    }

    [Fact]
    public async Task A_design_of_ones_own_takes_a_second_engineer_and_says_that_it_is_entered()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Chosen(scene);
        var ask = AnOrder.Sizing(scene) with { Entered = Entered, Values = new Dictionary<string, InputValue>() };
        await Size(scene, number, ask).ShouldBeRefused("entered-not-agreed");
        await scene.Pavel.Deviate(
            number,
            new("banded-patch", "the maker sized it, his calculation 12 was checked here", "calculation 12", true)
        );
        await Size(scene, number, ask with { Entered = Entered with { DesignLifeDays = null } })
            .ShouldBeRefused("end-date-open");
        var design = (await Size(scene, number, ask)).Body.Deserialize<SignedDesign>(RepairOrdersClient.Json)!;
        (design.Method.Entered, design.Method.CalculationReference).ShouldBe((true, "calculation 12"));
        design.Method.HoldPoints.ShouldNotBeEmpty("those of the method");
        var figure = (await scene.Mara.Order(number)).Figures.Single(f => f.Label == "Holds");
        figure.Remark.ShouldContain("entered");
    }

    [Fact]
    public async Task Owner_permanent_fix_and_dates_must_be_there()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Chosen(scene);
        var good = AnOrder.Sizing(scene);
        await Size(scene, number, good with { Owner = null }).ShouldBeRefused("no-owner");
        await Size(scene, number, good with { Owner = scene.IdOf("rune") }).ShouldBeRefused("owner-cannot-sign");
        await Size(scene, number, good with { PermanentFix = null }).ShouldBeRefused("no-permanent-fix");
        await Size(scene, number, good with { PlannedFitOn = scene.Clock.Today.AddDays(-1) })
            .ShouldBeRefused("fit-in-the-past");
        await Size(scene, number, good with { MaterialStatementEnds = scene.Clock.Today })
            .ShouldBeRefused("no-life-left");
    }

    [Fact]
    public async Task A_pipe_that_may_part_takes_a_restraint_for_its_end_load()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Assessed(scene, judged: AnOrder.Judged(scene) with { Unrestrained = true });
        await scene.Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number));
        await Size(scene, number, AnOrder.Sizing(scene)).ShouldBeRefused("axial-short");
        await Size(scene, number, Restrained(scene, 10)).ShouldBeRefused("restraint-short");
        await Size(scene, number, Restrained(scene, 25));
        (await scene.Mara.Order(number)).Title.Stage.ShouldBe(Stage.Sized);
    }

    [Fact]
    public async Task A_safety_critical_line_runs_under_a_change_control()
    {
        var scene = await workshop.Scene();
        var main = Cast.Weep(scene.Site) with { Line = "FM-200-0012", Fluid = "fire water" };
        var number = await AnOrder.Assessed(scene, main);
        await scene.Ines.Choose(number, AnOrder.BandedPatch, await scene.Version(number));
        var no = (await scene.Ines.PreviewSizing(number, AnOrder.Sizing(scene) with { InterimLimits = null })).Design;
        no.Facts.SafetyCritical.ShouldBeTrue();
        await Size(scene, number, Fire(scene)).ShouldBeRefused("no-change-control");
        await Size(scene, number, Fire(scene) with { ChangeControl = new("MOC-9", scene.Clock.Today.AddDays(100)) });
    }

    private static readonly EnteredDesign Entered = new(
        "calculation 12",
        "Pavel Horak",
        [new("lengthMm", "length", 300, "mm")],
        Measure.Of(10, "bar"),
        [],
        [],
        [],
        0,
        0,
        Measure.Of(20, "°C"),
        365,
        Measure.Of(3, "mm"),
        CarriesAxialLoad: false
    );

    private static SizeRepair Restrained(Scene scene, double kilonewtons) =>
        AnOrder.Sizing(scene) with
        {
            Restraint = new("two tie rods M20 across the coupling", Measure.Of(kilonewtons, "kN"), "calculation 14"),
        };

    private static SizeRepair Fire(Scene scene)
    {
        var low = Measure.Of(4, "bar");
        return With(scene, ("pressureBar", 4)) with { InterimLimits = new(low, null, "pump 2 throttled") };
    }

    private static SizeRepair With(Scene scene, params (string Code, InputValue Value)[] values)
    {
        var all = AnOrder.PatchValues.ToDictionary();
        foreach (var (code, value) in values)
            all[code] = value;
        return AnOrder.Sizing(scene) with { Values = all };
    }

    private static async Task<RecordView> Size(Scene scene, string number, SizeRepair ask) =>
        await scene.Ines.Size(number, ask, await scene.Version(number));
}
