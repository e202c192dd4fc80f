using System.Xml.Linq;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Drawing;

public sealed class DrawingOverHttp(Workshop workshop)
{
    [Fact]
    public async Task Each_line_of_the_bill_has_its_part_in_the_drawing()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Sized(scene);
        var svg = XDocument.Parse(await scene.Rune.Drawing(number));
        var parts = svg.Descendants().Select(e => e.Attribute("data-part")?.Value).OfType<string>().ToHashSet();
        var design = await scene.Design(number);
        design.Method.Materials.Select(m => m.Part).ShouldAllBe(p => parts.Contains(p));
        svg.Root!.Attribute("aria-label")!
            .Value.ShouldBe(
                $"Drawing of {number}: pipe 168.3 mm outside, wall 7.11 mm; defect through, Ø 4, at 4 o'clock; Banded patch."
            );
    }

    [Fact]
    public async Task Before_the_assessment_the_pipe_alone_is_drawn_and_said_so()
    {
        var scene = await workshop.Scene();
        var svg = await scene.Tove.Drawing(await AnOrder.Requested(scene));
        svg.ShouldContain("The defect has not been measured.");
        svg.ShouldContain("No design yet");
        svg.ShouldContain("Ø 168.3");
        svg.ShouldNotContain("data-part=\"plate\"");
    }

    [Fact]
    public async Task Of_an_unlisted_line_nobody_has_assessed_there_is_nothing_to_draw()
    {
        var scene = await workshop.Scene();
        var number = await AnOrder.Requested(scene, Cast.Weep(scene.Site) with { Line = null });
        var no = await Should.ThrowAsync<Refused>(() => scene.Tove.Drawing(number));
        no.Status.ShouldBe(404);
        no.Message.ShouldContain("nothing to draw");
    }

    [Fact]
    public async Task Another_site_does_not_see_it()
    {
        var scene = await workshop.Scene();
        var elsewhere = await workshop.Scene();
        var number = await AnOrder.Requested(scene);
        (await Should.ThrowAsync<Refused>(() => elsewhere.Rune.Drawing(number))).Status.ShouldBe(404);
    }
}
