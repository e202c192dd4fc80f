using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Register;

public sealed class RegisterOverHttp(Workshop workshop)
{
    [Fact]
    public async Task A_search_in_plain_words_finds_number_line_fluid_place_and_person()
    {
        var scene = await workshop.Scene();
        var cooling = await AnOrder.Requested(scene);
        var fire = await AnOrder.Requested(scene, Fire(scene));
        (await Found(scene, "fm-200")).ShouldBe([fire]);
        (await Found(scene, "FIRE water yard")).ShouldBe([fire]);
        (await Found(scene, "tove")).ShouldBe([fire, cooling]);
        (await Found(scene, "V-22")).ShouldBe([cooling]);
        (await Found(scene, cooling)).ShouldBe([cooling]);
        (await Found(scene, "brackish lindqvist")).ShouldBeEmpty();
        await scene.Ines.Assess(cooling, AnOrder.Judged(scene), await scene.Version(cooling));
        (await Found(scene, "duarte brackish")).ShouldBe([cooling]);
    }

    [Theory]
    [InlineData("%")]
    [InlineData("_")]
    [InlineData("\\")]
    [InlineData("'; DROP TABLE orders; --")]
    public async Task A_search_for_signs_is_a_search_for_signs(string search)
    {
        var scene = await workshop.Scene();
        await AnOrder.Requested(scene);
        (await Found(scene, search)).ShouldBeEmpty();
    }

    [Fact]
    public async Task Filters_narrow_by_site_stage_class_and_open_work()
    {
        var scene = await workshop.Scene();
        var requested = await AnOrder.Requested(scene);
        var assessed = await AnOrder.Assessed(scene);
        var sized = await AnOrder.Sized(scene);
        (await Filtered(scene, new(Stages: [Stage.Requested, Stage.Sized]))).ShouldBe([sized, requested]);
        (await Filtered(scene, new(Class: RiskClass.C))).ShouldBe([sized, assessed]);
        (await Filtered(scene, new(Site: scene.Site, Live: true))).ShouldBe([sized, assessed, requested]);
        (await Filtered(scene, new(Site: "elsewhere"))).ShouldBeEmpty();
    }

    [Theory]
    [InlineData(RegisterSort.Newest)]
    [InlineData(RegisterSort.EndDate)]
    [InlineData(RegisterSort.NextLook)]
    public async Task Pages_follow_one_another_without_gap_or_repeat(RegisterSort sort)
    {
        var scene = await workshop.Scene();
        for (var i = 0; i < 3; i++)
        {
            await AnOrder.Requested(scene);
            await AnOrder.Assessed(scene);
            scene.Clock.PassDays(1);
        }
        await AnOrder.Sized(scene);
        await AnOrder.Sized(scene);
        List<RegisterRow> rows = [];
        string? after = null;
        do
        {
            var page = await scene.Mara.Register(new RegisterFilter(Sort: sort), after, limit: 3, count: true);
            page.Count.ShouldBe(8);
            page.Rows.Count.ShouldBeLessThanOrEqualTo(3);
            rows.AddRange(page.Rows);
            after = page.Next;
        } while (after is not null);
        rows.Select(r => r.Number).Distinct().Count().ShouldBe(8);
        rows.Count.ShouldBe(8);
        if (sort == RegisterSort.EndDate)
            rows.Select(r => r.EndDate ?? DateOnly.MaxValue).ShouldBeInOrder();
        if (sort == RegisterSort.NextLook)
            rows.Select(r => r.NextLook ?? DateOnly.MaxValue).ShouldBeInOrder();
    }

    [Fact]
    public async Task A_row_says_what_the_sheet_says()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        var row = (await scene.Mara.Register(new RegisterFilter())).Rows.Single();
        var sheet = await scene.Mara.Order(number);
        row.Class.ShouldBe(sheet.Title.SignedClass);
        row.ClassToday.ShouldBe(sheet.Title.ClassToday);
        row.EndDate.ShouldBe(sheet.Title.EndDate);
        row.DaysLeft.ShouldBe(sheet.Title.DaysLeft);
        row.Owner.ShouldBe("Mara Lindqvist");
        row.Method.ShouldBe("Banded patch");
        row.PermanentFix.ShouldBe("job 4411");
        row.NextLook.ShouldBe(sheet.NextLook);
        row.Flags.ShouldBe(sheet.Flags);
    }

    [Fact]
    public async Task A_key_or_a_flag_that_is_none_is_refused_by_field()
    {
        var scene = await workshop.Scene();
        var key = await Should.ThrowAsync<Refused>(() => scene.Mara.Register(new RegisterFilter(), "17"));
        (key.Status, key.Fields.Keys.Single()).ShouldBe((400, "after"));
        var flag = await Should.ThrowAsync<Refused>(() => scene.Mara.Register(new RegisterFilter(Flag: "red")));
        (flag.Status, flag.Fields.Keys.Single()).ShouldBe((400, "flag"));
        flag.Message.ShouldContain(Flags.PastLife);
        var export = await Should.ThrowAsync<Refused>(() => scene.Mara.RegisterCsv(new RegisterFilter(Flag: "red")));
        export.Status.ShouldBe(400);
    }

    [Fact]
    public async Task The_export_has_every_row_and_no_cell_that_runs()
    {
        var scene = await workshop.Scene();
        await AnOrder.Requested(scene, Cast.Weep(scene.Site) with { Place = "=HYPERLINK(\"http://x\")" });
        await AnOrder.Requested(scene, Cast.Weep(scene.Site) with { Place = "say \"north\", then west" });
        var lines = (await Csv(scene, new RegisterFilter())).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        lines.Length.ShouldBe(3);
        lines[0].ShouldStartWith("\uFEFFNumber,Class,Class today,Line,Place");
        lines[2].ShouldContain("\"'=HYPERLINK(\"\"http://x\"\")\"");
        lines[1].ShouldContain("\"say \"\"north\"\", then west\"");
        (await Csv(scene, new RegisterFilter(Search: "nothing"))).Split("\r\n").Length.ShouldBe(2);
    }

    [Fact]
    public async Task The_export_shows_only_the_sites_of_the_caller()
    {
        var here = await workshop.Scene();
        var there = await workshop.Scene();
        await AnOrder.Requested(here);
        (await Csv(there, new RegisterFilter())).ShouldNotContain(here.Site + "-1");
    }

    private static async Task<string> Csv(Scene scene, RegisterFilter filter)
    {
        await using var stream = await scene.Rune.RegisterCsv(filter);
        using var bytes = new MemoryStream();
        await stream.CopyToAsync(bytes);
        return System.Text.Encoding.UTF8.GetString(bytes.ToArray());
    }

    private static Task<IEnumerable<string>> Found(Scene scene, string search) => Filtered(scene, new(Search: search));

    private static async Task<IEnumerable<string>> Filtered(Scene scene, RegisterFilter filter) =>
        (await scene.Mara.Register(filter)).Rows.Select(r => r.Number);

    private static RequestRepair Fire(Scene scene) =>
        Cast.Weep(scene.Site) with
        {
            Line = "FM-200-0012",
            Fluid = "fire water",
            Place = "Yard, hydrant 4",
        };
}
