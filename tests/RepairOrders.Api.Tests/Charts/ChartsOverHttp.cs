using RepairOrders.Api.Charts;
using RepairOrders.Api.Drawing;
using RepairOrders.Api.Tests.Drawing;
using RepairOrders.Contract;

namespace RepairOrders.Api.Tests.Charts;

public sealed class ChartsOverHttp(Workshop workshop)
{
    [Fact]
    public async Task An_order_has_the_charts_it_has_the_data_for()
    {
        var scene = await workshop.Scene();
        (await scene.Tove.Charts(await AnOrder.Requested(scene))).ShouldBeEmpty();
        var charts = await scene.Tove.Charts(await AnOrder.Fitted(scene));
        foreach (var chart in charts)
            if (Environment.GetEnvironmentVariable("LOOK") is { Length: > 0 } folder)
                await File.WriteAllTextAsync(Path.Combine(folder, $"chart-{chart.Code}.svg"), chart.Svg);
        charts
            .Select(c => c.Code)
            .ShouldBe(["thickness-grid", "thickness-trend", "cure", "tension-round-the-arc"], ignoreOrder: true);
        var grid = charts.Single(c => c.Code == "thickness-grid");
        grid.Rows.ShouldBe([
            ["3", "6.4"],
            ["5", "6.6"],
        ]);
        var cure = charts.Single(c => c.Code == "cure").Rows;
        cure[0][2].ShouldBe("0");
        double.Parse(cure[^1][2], System.Globalization.CultureInfo.InvariantCulture).ShouldBeGreaterThan(0);
    }

    [Fact]
    public async Task Tension_and_pressure_round_the_arc_share_a_chart()
    {
        var scene = await workshop.Scene();
        var arc = (await scene.Tove.Charts(await AnOrder.Sized(scene))).Single(c => c.Code == "tension-round-the-arc");
        arc.Columns.ShouldBe(["angle from the fastener, °", "tension, N", "pressure, MPa"]);
        // Friction takes the same share of both.
        double At(int row, int column) =>
            double.Parse(arc.Rows[row][column], System.Globalization.CultureInfo.InvariantCulture);
        (At(36, 1) / At(0, 1)).ShouldBe(At(36, 2) / At(0, 2), 0.01);
        At(36, 1).ShouldBeLessThan(At(0, 1));
    }

    [Fact]
    public async Task Another_site_does_not_see_them()
    {
        var scene = await workshop.Scene();
        var elsewhere = await workshop.Scene();
        var number = await AnOrder.Sized(scene);
        (await Should.ThrowAsync<Refused>(() => elsewhere.Rune.Charts(number))).Status.ShouldBe(404);
    }

    // ASME B31G Level 2, the worked profile of the engine's own example: x by 28.9 mm, effective length 231.2 mm.
    [Fact]
    public void The_profile_frames_the_effective_length()
    {
        double[] depths = [0, 1.0, 1.1, 1.1, 1.1, 1.3, 1.8, 2.8, 2.8, 1.6, 0];
        var chart = Profiles.Of([.. depths.Select((_, i) => 28.9 * i)], depths, 611, 8.2);
        Pictures.Show(chart.Picture, "chart-river-bottom");
        chart.Picture.Marks.OfType<Label>().Select(l => l.Text).ShouldContain("length 231.2");
        chart.Rows.Count(r => r[2] == "yes").ShouldBe(9);
    }

    [Fact]
    public void The_grid_grows_darker_as_the_wall_grows_thinner_and_frames_what_is_too_thin()
    {
        double[] shares = [0.3, 0.5, 0.55, 0.65, 0.75, 0.85, 1];
        var tones = shares.Select(s => Inks.Area(ThicknessGrid.Shade(s)).Tone).ToList();
        tones.ShouldBe(tones.OrderDescending());
        var chart = ThicknessGrid.Of(
            ["up", "at"],
            [3, 6],
            [
                [7.1, 2.4],
                [6.0, null],
            ],
            7.11,
            2.8
        );
        Pictures.Show(chart.Picture, "chart-grid");
        chart.Picture.Marks.OfType<Label>().Single(l => l.Text == "2.4").Bold.ShouldBeTrue();
        chart.Picture.Marks.OfType<Label>().Where(l => l.Text == "6.0").ShouldAllBe(l => !l.Bold);
        chart.Rows[1].ShouldBe(["6", "6", "not read"]);
    }

    [Fact]
    public void Axes_carry_round_figures_and_hold_every_value()
    {
        foreach (var most in new[] { 0.07, 1, 3.3, 9.9, 41, 730, 12345 })
        {
            var axis = Axis.Round([0, most], fromZero: true);
            axis.Most.ShouldBeGreaterThanOrEqualTo(most * 0.9999);
            axis.Ticks.Count.ShouldBeInRange(3, 8);
            axis.Share(most).ShouldBeInRange(0.5, 1.0001);
        }
    }
}
