using RepairOrders.Api.Tests.Sites;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Lines;

public sealed class ImportOverHttp(Workshop workshop)
{
    private const string Heading =
        "number,area,section,nps,dn,outsideDiameter,nominalWall,grade,fluid,fluidState,fluidGroup,serviceCategory,inspectionClass,flammable,toxic,autoIgnition,designPressure,designTemperature,operatingPressure,operatingTemperature,lagged,potable,safetyCritical,yearInstalled";

    private const string Good =
        "CW-150-4001,Pump house 2,CW-N,6,150,168.3,7.11,ASTM A106 B,cooling water,liquid,2,d,4,no,no,,10,50,90 psi,18,no,no,no,2004";

    [Fact]
    public async Task A_good_file_is_taken_whole()
    {
        var scene = await Prepared();
        var file = $"{Heading}\n{Good}\n{Good.Replace("4001", "4002", StringComparison.Ordinal)}\n";
        var dry = await scene.Ada.ImportLines(scene.Site, file, dryRun: true);
        (dry.Rows, dry.Added, dry.Problems.Count).ShouldBe((2, 0, 0));
        (await scene.Mara.Lines(search: "400")).Rows.ShouldBeEmpty();
        var done = await scene.Ada.ImportLines(scene.Site, file, dryRun: false);
        (done.Rows, done.Added).ShouldBe((2, 2));
        var line = (await scene.Mara.Lines(search: "4001")).Rows.Single();
        line.Details.OperatingPressure.Value.ShouldBe(6.2053, 0.0001);
        (await scene.Ada.LineChanges(line.Id)).Single().Why.ShouldBe("import of lines");
        (await scene.Ada.VerifyChanges()).Broken.ShouldBeEmpty();
    }

    [Fact]
    public async Task The_same_key_imports_once()
    {
        var scene = await Prepared();
        var file = $"{Heading}\n{Good}\n";
        await scene.Ada.ImportLines(scene.Site, file, false, key: "import-1");
        (await scene.Ada.ImportLines(scene.Site, file, false, key: "import-1")).Added.ShouldBe(1);
        var other = file.Replace("4001", "4009", StringComparison.Ordinal);
        var no = await Should.ThrowAsync<Refused>(() =>
            scene.Ada.ImportLines(scene.Site, other, false, key: "import-1")
        );
        no.Status.ShouldBe(422);
    }

    [Fact]
    public async Task A_dry_run_lists_every_problem_by_row_and_column_and_nothing_is_half_imported()
    {
        var scene = await Prepared();
        var file = string.Join(
            '\n',
            Heading,
            Good,
            Good,
            "CW-150-3104,Pump house 2,CW-N,6,150,168.3,7.11,ASTM A106 B,cooling water,liquid,2,d,4,no,no,,10,50,6,18,no,no,no,2004",
            "CW-150-4003,Pump hose,CW-N,6,150,159,7.11,butter,cooling water,liquid,2,d,4,no,no,,10,50,6,18,no,no,no,2004",
            "CW-150-4004,Pump house 2,CW-N,6,150,wide,7.11,ASTM A106 B,,syrup,3,d,4,perhaps,no,,10,50,60,18,no,no,no,20o4",
            ",Pump house 2,CW-N,,,168.3,,ASTM A106 B,cooling water,liquid,2,normal,4,no,no,,10,50,6,18,no,no,no,"
        );
        var dry = await scene.Ada.ImportLines(scene.Site, file, dryRun: true);
        dry.Problems.Select(p => $"{p.Row} {p.Column}")
            .ShouldBe(
                [
                    "3 number",
                    "4 number",
                    "5 area",
                    "5 outsideDiameter",
                    "5 grade",
                    "6 outsideDiameter",
                    "6 fluid",
                    "6 fluidState",
                    "6 fluidGroup",
                    "6 flammable",
                    "6 yearInstalled",
                    "6 operatingPressure",
                    "7 number",
                    "7 nominalWall",
                ],
                ignoreOrder: true
            );
        dry.Problems.Single(p => p.Row == 3).Sentence.ShouldBe("number is CW-150-4001, which row 2 has already.");
        dry.Problems.Single(p => p is { Row: 6, Column: "outsideDiameter" })
            .Sentence.ShouldBe("outsideDiameter is \"wide\"; allowed is 5 to 3000 mm, with or without the unit.");
        dry.NewSections.ShouldBe(["Pump hose / CW-N"]);
        var no = await Should.ThrowAsync<Refused>(() => scene.Ada.ImportLines(scene.Site, file, dryRun: false));
        no.Status.ShouldBe(400);
        no.Fields["row 5, grade"].Single().ShouldStartWith("grade is \"butter\"");
        (await scene.Mara.Lines(search: "400")).Rows.ShouldBeEmpty();
    }

    [Fact]
    public async Task New_sections_are_taken_from_the_file_when_asked()
    {
        var scene = await Prepared();
        var file = $"{Heading}\n{Good.Replace("CW-N", "CW-S", StringComparison.Ordinal)}\n";
        (await scene.Ada.ImportLines(scene.Site, file, dryRun: true)).Problems.Single().Column.ShouldBe("section");
        var done = await scene.Ada.ImportLines(scene.Site, file, false, newSections: true);
        done.NewSections.ShouldBe(["Pump house 2 / CW-S"]);
        var pumps = (await scene.Ada.Site(scene.Site)).Details.Areas.Single(a => a.Name == "Pump house 2");
        pumps.Sections.ShouldBe(["CW-N", "CW-S"]);
        (await scene.Ada.SiteChanges(scene.Site))[^1].Why.ShouldBe("import of lines");
    }

    [Fact]
    public async Task A_spreadsheet_of_another_country_is_read_too()
    {
        var scene = await Prepared();
        var row = Good.Replace(',', ';').Replace("168.3", "168,3", StringComparison.Ordinal);
        var file = $"\uFEFF{Heading.Replace(',', ';')}\r\n{row}\r\n";
        (await scene.Ada.ImportLines(scene.Site, file, dryRun: true)).Problems.ShouldBeEmpty();
    }

    [Fact]
    public async Task The_template_is_a_file_of_no_lines_and_no_problems()
    {
        var scene = await Prepared();
        var template = await scene.Ada.LineTemplate();
        template.ShouldStartWith(Heading);
        var dry = await scene.Ada.ImportLines(scene.Site, template, dryRun: true);
        (dry.Rows, dry.Problems.Count).ShouldBe((0, 0));
        var example = template
            .Replace("# ", "", StringComparison.Ordinal)
            .Replace("3104", "4001", StringComparison.Ordinal);
        (await scene.Ada.ImportLines(scene.Site, example, dryRun: true)).Problems.ShouldBeEmpty();
    }

    [Theory]
    [InlineData("", "The file is empty")]
    [InlineData("number,colour\nCW-1,red\n", "\"colour\" is no column of this file")]
    [InlineData("number,number\nCW-1,CW-1\n", "The column number is there twice.")]
    public async Task A_wrong_heading_is_told_at_once(string file, string sentence)
    {
        var scene = await Prepared();
        var dry = await scene.Ada.ImportLines(scene.Site, file, dryRun: true);
        dry.Problems.ShouldContain(p => p.Row == 1 && p.Sentence.StartsWith(sentence, StringComparison.Ordinal));
    }

    [Fact]
    public async Task An_open_quotation_mark_is_told_by_its_row()
    {
        var scene = await Prepared();
        var file = $"{Heading}\n{Good}\n\"CW-150-4002{Good[11..]}\n";
        (await scene.Ada.ImportLines(scene.Site, file, dryRun: true)).Problems.ShouldNotBeEmpty();
    }

    private async Task<Scene> Prepared()
    {
        var scene = await workshop.Scene();
        var site = await scene.Ada.Site(scene.Site);
        await scene.Ada.ChangeSite(scene.Site, await SitesOverHttp.WithLines(scene, "Board mill"), site.Version);
        return scene;
    }
}
