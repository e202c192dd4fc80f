using System.Text.RegularExpressions;
using RepairOrders.Contract;
using UglyToad.PdfPig;

namespace RepairOrders.Api.Tests.Papers;

/// <summary>The papers of one approved order, and what holds for all of them.</summary>
public sealed partial class PapersOverHttp(Workshop workshop)
{
    public static TheoryData<string, string> Kinds
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var kind in new[] { "job-sheet", "calculation-sheet", "tag", "pick-list" })
            foreach (var size in new[] { "a4", "letter" })
                data.Add(kind, size);
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task The_same_order_gives_the_same_text_and_the_same_picture(string kind, string size)
    {
        var scene = await workshop.Scene();
        var number = await Stocked(scene);
        var pdf = await scene.Tove.Paper(number, kind, size);
        Pages.Show(pdf, $"{kind}-{size}");
        var again = await scene.Tove.Paper(number, kind, size);
        (await Pages.Text(again)).ShouldBe(await Pages.Text(pdf));
        (await Pages.Picture(again)).ShouldBe(await Pages.Picture(pdf));
        if (size == "a4")
            await Stable(await Pages.Text(pdf)).ShouldBeApproved(Path.Combine("Papers", kind + ".approved.txt"));
    }

    [Theory]
    [InlineData("a4", 595, 842)]
    [InlineData("letter", 612, 792)]
    public async Task The_whole_job_is_on_one_sheet_of_two_sides(string size, int width, int height)
    {
        var scene = await workshop.Scene();
        using var pdf = PdfDocument.Open(await scene.Tove.Paper(await AnOrder.Approved(scene), "job-sheet", size));
        pdf.NumberOfPages.ShouldBe(2);
        pdf.GetPage(1).Width.ShouldBe(width, 1);
        pdf.GetPage(1).Height.ShouldBe(height, 1);
        var back = string.Join(' ', pdf.GetPage(2).GetWords().Select(w => w.Text));
        // Everything that is signed or written down at the pipe is on the back.
        foreach (
            var block in new[] { "Hold points", "Readings", "Clocks", "Test and tag", "Signatures", "At the work" }
        )
            back.ShouldContain(block);
    }

    [Fact]
    public async Task Properties_bookmarks_and_fonts_are_in_the_file()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        using var pdf = PdfDocument.Open(await scene.Tove.Paper(number, "job-sheet"));
        pdf.Information.Title.ShouldBe($"Job sheet {number}");
        pdf.Information.Author.ShouldBe("Board mill");
        pdf.TryGetBookmarks(out var bookmarks).ShouldBeTrue();
        bookmarks.GetNodes().Select(n => n.Title).ShouldContain("Signatures");
        pdf.GetPages()
            .SelectMany(p => p.Letters)
            .Select(l => l.FontName!)
            .Distinct()
            .ShouldAllBe(f => f.Contains("DejaVu"));
    }

    [Fact]
    public async Task Before_approval_the_sheet_says_that_nothing_may_be_fitted_by_it()
    {
        var scene = await workshop.Scene();
        (await Pages.Text(await scene.Tove.Paper(await AnOrder.Sized(scene), "job-sheet"))).ShouldContain(
            "NOT APPROVED"
        );
        (await Pages.Text(await scene.Tove.Paper(await AnOrder.Requested(scene), "job-sheet"))).ShouldContain(
            "NO DESIGN"
        );
        (await Pages.Text(await scene.Tove.Paper(await AnOrder.Approved(scene), "job-sheet"))).ShouldNotContain(
            "NOT APPROVED"
        );
        var night = await Pages.Text(await scene.Tove.Paper(await AnOrder.Consented(scene), "job-sheet"));
        night.ShouldContain("EMERGENCY FIT on two consents");
    }

    [Fact]
    public async Task What_was_signed_meanwhile_stands_on_the_sheet()
    {
        var scene = await workshop.Scene();
        var pdf = await scene.Tove.Paper(await AnOrder.InService(scene), "job-sheet");
        Pages.Show(pdf, "job-sheet-done");
        var text = await Pages.Text(pdf);
        foreach (
            var signed in new[]
            {
                "PTW 881",
                "IC 204",
                "Tove Aune, Anton Reyes",
                "PG-16",
                "T-118",
                "tight",
                "Pavel Horak",
                "page 2 of 2",
                // Readings as they were recorded, in their boxes.
                "St 3",
                "58, 62, 60",
                "82, 84, 83",
                "putty lot",
                "band lot",
                "20, 0",
                "Fitter: Tove Aune",
            }
        )
            text.ShouldContain(signed);
    }

    [Fact]
    public async Task The_tag_carries_number_line_end_date_and_whom_to_call()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Approved(scene);
        var end = (await scene.Mara.Order(number)).Title.EndDate!.Value;
        var text = await Pages.Text(await scene.Tove.Paper(number, "tag", address: "https://repairs.example"));
        foreach (var word in new[] { number, "CW-150-3104", $"{end:yyyy-MM-dd}", "Mara Lindqvist", "CLASS C" })
            Regex.Count(text, Regex.Escape(word)).ShouldBeGreaterThanOrEqualTo(2, word);
    }

    [Theory]
    [InlineData("javascript:alert(1)")]
    [InlineData("https://a@b.example")]
    [InlineData("https://b.example/path?x=1")]
    public async Task A_code_leads_to_a_plain_host_and_nowhere_else(string address)
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        var no = await Should.ThrowAsync<Refused>(() => scene.Tove.Paper(number, "tag", address: address));
        no.Status.ShouldBe(400);
        no.Fields.Keys.ShouldContain("address");
    }

    [Fact]
    public async Task Another_site_gets_no_paper_and_an_unknown_paper_is_named()
    {
        var scene = await workshop.Scene();
        var elsewhere = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        (await Should.ThrowAsync<Refused>(() => elsewhere.Rune.Paper(number, "job-sheet"))).Status.ShouldBe(404);
        var no = await Should.ThrowAsync<Refused>(() => scene.Rune.Paper(number, "poster"));
        no.Status.ShouldBe(404);
        no.Message.ShouldContain("job-sheet, calculation-sheet, tag, close-out, pick-list");
        (await Should.ThrowAsync<Refused>(() => scene.Rune.Paper(number, "tag", "a3"))).Status.ShouldBe(400);
        (await Should.ThrowAsync<Refused>(() => scene.Rune.Paper(number, "close-out"))).Code.ShouldBe(
            "certificate-before-close"
        );
        (await Should.ThrowAsync<Refused>(() => scene.Rune.Paper(number, "pick-list"))).Code.ShouldBe("no-bill");
    }

    [Fact]
    public async Task The_register_extract_holds_the_sites_own_orders_only()
    {
        var scene = await workshop.Scene();
        var elsewhere = await workshop.Scene();
        var mine = await AnOrder.Approved(scene);
        var theirs = await AnOrder.Requested(elsewhere);
        var pdf = await scene.Rune.RegisterPaper(new RegisterFilter());
        Pages.Show(pdf, "register");
        var text = await Pages.Text(pdf);
        text.ShouldContain(mine);
        text.ShouldNotContain(theirs + " ");
        (
            await Pages.Text(await scene.Rune.RegisterPaper(new RegisterFilter(Class: RiskClass.A), "letter"))
        ).ShouldContain("No order answers to this.");
    }

    [Fact]
    public async Task The_certificate_shows_the_check_list_once_the_order_is_closed()
    {
        var scene = await workshop.Scene();
        var number = await Closed(scene);
        var pdf = await scene.Rune.Paper(number, "close-out");
        Pages.Show(pdf, "close-out");
        var text = await Pages.Text(pdf);
        foreach (
            var evidence in new[]
            {
                "pitting under deposit",
                "spool 12 welded in",
                "DWG 77 rev D",
                "cert 5512",
                "Olaf Brekke",
            }
        )
            text.ShouldContain(evidence);
        await Stable(text).ShouldBeApproved(Path.Combine("Papers", "close-out.approved.txt"));
    }

    // Approved, with all it needs in the stores.
    private static async Task<string> Stocked(Scene scene)
    {
        var number = await AnOrder.Approved(scene);
        foreach (var line in (await scene.Signe.PickList(number)).Lines.Where(l => l.Wanting > 0))
            await Stores.Receive(scene, line.Code, line.Unit, (decimal)Math.Ceiling(line.Wanting));
        return number;
    }

    private static async Task<string> Closed(Scene scene)
    {
        var number = await AnOrder.InService(scene);
        await scene.Mara.OrderRemoval(
            number,
            new OrderRemoval("the new spool is here", scene.Clock.Today.AddDays(3), "spool 12"),
            await scene.Version(number)
        );
        await scene.Readied(number, ReadinessFor.Removal);
        var bare = await scene.Photograph(number, PhotoOf.Removal);
        await scene.Tove.RecordRemoval(
            number,
            new RecordRemoval(bare.Id, "pitting under deposit, no wider than drawn", TagBack: true),
            await scene.Version(number)
        );
        await scene.Vera.InspectRemoval(
            number,
            new InspectRemoval("pits to 7 mm round the hole", DefectCause.InternalCorrosion),
            await scene.Version(number)
        );
        await scene.Mara.RecordPermanentFix(
            number,
            new RecordPermanentFix(
                PermanentFixKind.Replacement,
                "spool 12 welded in, job 4411",
                scene.Clock.Today,
                "cert 5512",
                "W-31 and W-32, radiographed",
                "hydrotest 15 bar",
                "DWG 77 rev D, line list revised"
            ),
            await scene.Version(number)
        );
        await scene.Olaf.CloseOrder(
            number,
            new CloseOrder(DefectCause.InternalCorrosion, "deposits at a dead leg", null, TagBack: true),
            await scene.Version(number)
        );
        return number;
    }

    // Names of sites count up over a run, and keys are made anew.
    private static string Stable(string text)
    {
        var rows = Keys().Replace(SiteNames().Replace(text, "mill"), "<key>").ReplaceLineEndings("\n").Split('\n');
        return string.Join('\n', rows.Select(r => Spaces().Replace(r, " ").Trim()).Where(r => r.Length > 0));
    }

    [GeneratedRegex(@"mill\d+")]
    private static partial Regex SiteNames();

    [GeneratedRegex(@"\b(?:[0-9a-f]{64}|[0-9a-f]{16}|(?<=photograph )[0-9a-f]{8})\b")]
    private static partial Regex Keys();

    [GeneratedRegex(" +")]
    private static partial Regex Spaces();
}
