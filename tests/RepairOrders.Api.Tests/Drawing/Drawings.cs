using RepairOrders.Api.Drawing;

namespace RepairOrders.Api.Tests.Drawing;

/// <summary>Every method on every size: to scale, nothing clipped, every part of the bill to be found.</summary>
public sealed class Drawings
{
    [Theory]
    [MemberData(nameof(Subjects.All), MemberType = typeof(Subjects))]
    public void Every_method_has_a_drawing_that_stays_on_its_sheet(int dn, string method)
    {
        var picture = OrderPicture.Of(Subjects.Of(dn, method));
        Pictures.Show(picture, $"{method}-{dn}");
        foreach (var (what, box) in Pictures.Boxes(picture))
        {
            box.Left.ShouldBeGreaterThanOrEqualTo(-0.5, what);
            box.Top.ShouldBeGreaterThanOrEqualTo(-0.5, what);
            box.Right.ShouldBeLessThanOrEqualTo(picture.Width + 0.5, what);
            box.Bottom.ShouldBeLessThanOrEqualTo(picture.Height + 0.5, what);
        }
    }

    [Theory]
    [MemberData(nameof(Subjects.All), MemberType = typeof(Subjects))]
    public void No_two_texts_lie_on_each_other(int dn, string method)
    {
        var sized = Subjects.Of(dn, method);
        Keeps("as it is", sized);
        foreach (var hours in new[] { 12.0, 3, 5.5, 6, 6.7, 9 })
            Keeps(Board.Say($"{hours} o'clock"), sized with { Defect = sized.Defect! with { ClockHours = hours } });
        var entered = sized.Design! with { Entered = true, CalculationReference = "sheet 12 of the pump house" };
        Keeps("entered", sized with { Design = entered });

        static void Keeps(string what, Subject subject)
        {
            var picture = OrderPicture.Of(subject);
            Pictures.Show(picture, $"{subject.Design!.Method}-{subject.Number}, {what}");
            var texts = Pictures.Boxes(picture).Where(b => b.What.Length > 0).ToList();
            for (var i = 0; i < texts.Count; i++)
            for (var k = i + 1; k < texts.Count; k++)
                texts[i]
                    .Box.Overlaps(texts[k].Box)
                    .ShouldBeFalse($"{what}: \"{texts[i].What}\" and \"{texts[k].What}\"");
        }
    }

    [Fact]
    public void The_width_of_a_patch_is_told_between_arrows_where_both_its_edges_are_seen()
    {
        var picture = OrderPicture.Of(Subjects.Of(150, "welded-patch"));
        var told = picture.Marks.OfType<Label>().Single(l => l.Text == "50 round");
        var line = picture
            .Marks.OfType<Shape>()
            .Where(s => s.Pen == Pen.Dimension)
            .Select(Pictures.Box)
            .Single(b => Math.Abs(b.Left - (told.X + 0.9)) < 0.01 && b.Right - b.Left < 0.01);
        var patch = Pictures.Box(
            picture.Marks.OfType<Shape>().Last(s => s.Part == "patch" && Pictures.Box(s).Left > 82)
        );
        line.Top.ShouldBe(patch.Top, 1e-6);
        line.Bottom.ShouldBe(patch.Bottom, 1e-6);
    }

    [Fact]
    public void A_patch_that_goes_out_of_sight_is_told_by_its_angle_alone()
    {
        var small = Subjects.Of(50, "welded-patch");
        var wide = small with
        {
            Design = small.Design! with { Dimensions = [.. small.Design.Dimensions.Select(Wide)] },
        };
        Texts(OrderPicture.Of(wide)).ShouldNotContain(t => t.EndsWith(" round", StringComparison.Ordinal));

        static Contract.DimensionView Wide(Contract.DimensionView d) =>
            d.Code == "patchWidthMm" ? d with { Value = 120 } : d;
    }

    [Fact]
    public void An_entered_design_is_drawn_as_far_as_its_sizes_tell()
    {
        var sized = Subjects.Of(150, "bolted-clamp");
        var entered = sized with
        {
            Design = sized.Design! with
            {
                Entered = true,
                CalculationReference = "calc 12 <b>&",
                Dimensions = [.. sized.Design.Dimensions.Where(d => d.Code is "clampLengthMm" or "clampThicknessMm")],
            },
        };
        var picture = OrderPicture.Of(entered);
        Pictures.Show(picture, "entered");
        var texts = Texts(picture);
        string.Join(' ', texts)
            .ShouldContain("– Entered design, calculation calc 12 <b>&: drawn as far as its sizes tell.");
        texts.ShouldContain("clamp 141");
        texts.ShouldNotContain(t => t.StartsWith("between seals", StringComparison.Ordinal));
        picture.Svg().ShouldContain("calc 12 &lt;b&gt;&amp;:");
        Texts(OrderPicture.Of(entered with { Design = entered.Design! with { Dimensions = [] } }))
            .ShouldContain("– The design gives no sizes of the Bolted clamp to draw by.");
    }

    [Theory]
    [InlineData(50)]
    [InlineData(150)]
    [InlineData(600)]
    [InlineData(1200)]
    public void The_pipe_is_drawn_to_the_scale_it_states(int dn)
    {
        var subject = Subjects.Of(dn, "laminate-wrap");
        var picture = OrderPicture.Of(subject);
        var ring = picture.Marks.OfType<Shape>().First(s => s is { Part: "pipe", Fill: Fill.Wall });
        var radius = ring.Contours.Max(c => ((Arc)c.Legs[0]).Radius);
        var stated = Texts(picture)[1].Split(',', ' ');
        var scale = double.Parse(stated[0], Invariant) / double.Parse(stated[2], Invariant);
        (2 * radius).ShouldBe(subject.Outside * scale, 1e-6);
    }

    [Theory]
    [InlineData(12, 0, -1)]
    [InlineData(3, 1, 0)]
    [InlineData(6, 0, 1)]
    [InlineData(9, -1, 0)]
    public void The_defect_stands_at_its_hour(double hours, int right, int down)
    {
        var subject = Subjects.Of(150, "plug");
        var picture = OrderPicture.Of(subject with { Defect = subject.Defect! with { ClockHours = hours } });
        var hole = picture.Marks.OfType<Shape>().First(s => s is { Part: "defect", Fill: Fill.Alarm });
        var ring = picture.Marks.OfType<Shape>().First(s => s is { Part: "pipe", Fill: Fill.Wall });
        var centre = ((Arc)ring.Contours[0].Legs[0]).Centre;
        var box = Pictures.Box(hole);
        Math.Sign(Math.Round((box.Left + box.Right) / 2 - centre.X, 1)).ShouldBe(right);
        Math.Sign(Math.Round((box.Top + box.Bottom) / 2 - centre.Y, 1)).ShouldBe(down);
    }

    [Theory]
    [MemberData(nameof(Subjects.All), MemberType = typeof(Subjects))]
    public void Each_part_of_the_bill_is_in_the_drawing(int dn, string method)
    {
        var subject = Subjects.Of(dn, method);
        var parts = OrderPicture.Of(subject).Marks.Select(m => m.Part).ToHashSet();
        // Under a laminate the filler is seen only where the outside is eaten away.
        subject
            .Design!.Materials.Select(m => m.Part)
            .Where(p => p != "filler" || subject.Outer)
            .ShouldAllBe(p => parts.Contains(p));
    }

    private static readonly System.Globalization.CultureInfo Invariant = System
        .Globalization
        .CultureInfo
        .InvariantCulture;

    private static List<string> Texts(Picture picture) => [.. picture.Marks.OfType<Label>().Select(l => l.Text)];
}
