using RepairOrders.Api.Tests.Sites;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Lines;

public sealed class LinesOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_line_is_added_changed_and_retired_each_on_record()
    {
        var scene = await Prepared();
        var line = await scene.Ada.AddLine(new AddLine(scene.Site, "CW-150-3105", LineListRules.CoolingWater));
        line.Details.ShouldBe(LineListRules.CoolingWater);
        Measure.TryRead("90 psi", "bar", out var psi).ShouldBeTrue();
        var changed = await scene.Ada.ChangeLine(line.Id, line.Details with { OperatingPressure = psi! }, line.Version);
        changed.Details.OperatingPressure.Value.ShouldBe(6.2053, 0.0001);
        await scene.Ada.RetireLine(line.Id, "taken down with pump 4", changed.Version);
        (await scene.Mara.Lines(search: "3105")).Rows.ShouldBeEmpty();
        (await scene.Mara.Lines(search: "3105", retired: true)).Rows.Single().Retired.ShouldBeTrue();
        var ask = Cast.Weep(scene.Site) with { Line = "CW-150-3105" };
        (await Should.ThrowAsync<Refused>(() => scene.Tove.Request(ask))).Code.ShouldBe("line-not-listed");
        var changes = await scene.Ada.LineChanges(line.Id);
        changes.Select(c => c.What).ShouldBe(["line added", "line changed", "line retired"]);
        changes[2].Why.ShouldBe("taken down with pump 4");
        (await scene.Ada.VerifyChanges()).Broken.ShouldBeEmpty();
        var back = await scene.Ada.ChangeLine(line.Id, changed.Details, "3");
        back.Retired.ShouldBeFalse();
    }

    [Fact]
    public async Task A_number_stands_once_and_every_wrong_field_is_named()
    {
        var scene = await Prepared();
        var twice = new AddLine(scene.Site, "CW-150-3104", LineListRules.CoolingWater);
        var no = await Should.ThrowAsync<Refused>(() => scene.Ada.AddLine(twice));
        (no.Status, no.Code).ShouldBe((409, "line-number-taken"));
        var wrong = LineListRules.CoolingWater with { OutsideDiameter = Measure.Of(159, "mm"), Grade = "butter" };
        var fields = await Should.ThrowAsync<Refused>(() => scene.Ada.AddLine(new AddLine(scene.Site, "CW-1", wrong)));
        fields.Fields.Keys.ShouldBe(["details.outsideDiameter", "details.grade"], ignoreOrder: true);
    }

    [Fact]
    public async Task The_list_is_read_a_page_at_a_time_and_searched()
    {
        var scene = await Prepared();
        for (var i = 1; i <= 7; i++)
            await scene.Ada.AddLine(new AddLine(scene.Site, $"CW-150-90{i}0", LineListRules.CoolingWater));
        var numbers = new List<string>();
        string? after = null;
        do
        {
            var page = await scene.Mara.Lines(after: after, limit: 4);
            page.Rows.Count.ShouldBeLessThanOrEqualTo(4);
            numbers.AddRange(page.Rows.Select(l => l.Number));
            after = page.Next;
        } while (after is not null);
        numbers.Count.ShouldBe(10);
        numbers.Distinct().Count().ShouldBe(10);
        numbers.ShouldBe(numbers.Order(StringComparer.Ordinal));
        (await scene.Mara.Lines(search: "heating")).Rows.Single().Number.ShouldBe("HO-100-0450");
        (await scene.Mara.Lines(area: "Yard")).Rows.Single().Number.ShouldBe("FM-200-0012");
        var bad = await Should.ThrowAsync<Refused>(() => scene.Mara.Lines(after: "page 2"));
        (bad.Status, bad.Fields.Keys.Single()).ShouldBe((400, "after"));
    }

    [Fact]
    public async Task Sizes_and_grades_come_from_the_tables()
    {
        var scene = await workshop.Scene();
        var six = (await scene.Tove.PipeSizes()).Single(s => s.Nps == "6");
        (six.Dn, six.OutsideDiameter).ShouldBe((150, 168.3));
        six.Walls.Single(w => w.Schedule == "40").Wall.ShouldBe(7.11);
        var grade = (await scene.Tove.PipeGrades()).Single(g => g.Name == "ASTM A106 B");
        (grade.YieldStrength, grade.TensileStrength, grade.Family).ShouldBe((240, 415, "carbon steel"));
    }

    internal async Task<Scene> Prepared()
    {
        var scene = await workshop.Scene();
        var site = await scene.Ada.Site(scene.Site);
        await scene.Ada.ChangeSite(scene.Site, await SitesOverHttp.WithLines(scene, "Board mill"), site.Version);
        return scene;
    }
}
