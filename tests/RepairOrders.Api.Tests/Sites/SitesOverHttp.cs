using RepairOrders.Api.Tests.People;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Sites;

public sealed class SitesOverHttp(Workshop workshop)
{
    [Fact]
    public async Task An_administrator_adds_a_site_and_sees_it()
    {
        var scene = await workshop.Scene();
        var name = $"{scene.Site}b";
        var added = await scene.Ada.AddSite(new AddSite(name, Yard));
        added.Details.Areas.Single().Sections.ShouldBe(["FM-E", "FM-W"]);
        (await scene.Ada.Sites()).Select(s => s.ShortName).ShouldBe([scene.Site, name]);
        (await scene.Mara.Sites()).Select(s => s.ShortName).ShouldBe([scene.Site]);
        (await scene.Ada.SiteChanges(name)).Single().What.ShouldBe("site added");
        (await scene.Ada.PersonChanges(scene.NameOf("ada")))[^1].Why.ShouldBe($"added site {name}");
        var no = await Should.ThrowAsync<Refused>(() => scene.Ada.AddSite(new AddSite(name, Yard)));
        (no.Status, no.Code).ShouldBe((409, "site-name-taken"));
    }

    [Fact]
    public async Task A_site_is_changed_with_the_version_seen()
    {
        var scene = await workshop.Scene();
        var site = await scene.Ada.Site(scene.Site);
        var changed = await scene.Ada.ChangeSite(scene.Site, await WithLines(scene, "Paper mill"), site.Version);
        changed.Details.Name.ShouldBe("Paper mill");
        var no = await Should.ThrowAsync<Refused>(() => scene.Ada.ChangeSite(scene.Site, Yard, site.Version));
        no.Status.ShouldBe(412);
    }

    [Fact]
    public async Task An_area_with_lines_in_it_stays()
    {
        var scene = await workshop.Scene();
        var site = await scene.Ada.Site(scene.Site);
        var no = await Should.ThrowAsync<Refused>(() => scene.Ada.ChangeSite(scene.Site, Yard, site.Version));
        (no.Status, no.Code).ShouldBe((409, "section-in-use"));
        no.Message.ShouldContain("Pump house 2 / CW-N");
    }

    [Fact]
    public async Task What_cannot_be_is_refused_by_field()
    {
        var scene = await workshop.Scene();
        var twice = new AreaDetails("Yard", ["FM-E", "fm-e"]);
        var ask = new AddSite($"{scene.Site}c", new SiteDetails("Mill", "Mars/Olympus", [twice, twice]));
        var no = await Should.ThrowAsync<Refused>(() => scene.Ada.AddSite(ask));
        no.Fields.Keys.ShouldBe(["details.timeZone", "details.areas"], ignoreOrder: true);
        no.Fields["details.timeZone"].Single().ShouldStartWith("timeZone is \"Mars/Olympus\"; allowed is");
        var shout = new AddSite("Mill 1", Yard);
        (await Should.ThrowAsync<Refused>(() => scene.Ada.AddSite(shout))).Fields.Keys.ShouldBe(["shortName"]);
    }

    [Fact]
    public async Task Another_sites_people_do_not_see_it()
    {
        var (here, there) = (await workshop.Scene(), await workshop.Scene());
        (await Should.ThrowAsync<Refused>(() => there.Ada.Site(here.Site))).Status.ShouldBe(404);
        var no = await Should.ThrowAsync<Refused>(() => there.Ada.ChangeSite(here.Site, Yard, "0"));
        no.Status.ShouldBe(404);
    }

    private static SiteDetails Yard => new("Yard", "Europe/Oslo", [new AreaDetails("Yard", ["FM-E", "FM-W"])]);

    /// <summary>The scene's site with the areas its lines lie in.</summary>
    internal static async Task<SiteDetails> WithLines(Scene scene, string name)
    {
        var lines = (await scene.Ada.Lines(site: scene.Site)).Rows;
        return new SiteDetails(
            name,
            "Europe/Oslo",
            [
                .. lines
                    .GroupBy(l => l.Details.Area, l => l.Details.Section)
                    .Select(area => new AreaDetails(area.Key, [.. area.Distinct()])),
            ]
        );
    }
}
