using RepairOrders.Engineering.Joints;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Joints;

/// <summary>Published and derived rows on bands, plates and putty; each row of the table names its source.</summary>
public class BandChecks
{
    private static PublishedCheck Row(string id) => PublishedTable.Check("joint-checks.csv", id);

    private static Length Mm(double value) => Length.FromMillimeters(value);

    private static Pressure Mpa(double value) => Pressure.FromMegapascals(value);

    private static Force N(double value) => Force.FromNewtons(value);

    private static Angle Rad(double value) => Angle.FromRadians(value);

    [Theory]
    [InlineData("BND01")]
    [InlineData("BND02")]
    [InlineData("BND04")]
    public void Capstan_ratio(string id)
    {
        var row = Row(id);
        row.ShouldBeMetBy(BandTension.CapstanRatio(row.Number("mu"), Rad(row.Number("beta"))));
    }

    // The width that is put round the pipe with nothing under it.
    [Fact]
    public void Girth()
    {
        var row = Row("BND05");
        row.ShouldBeMetBy(BandLength.FullCircle(Mm(row.Number("D")), Mm(1e-9), 1, Mm(0), Mm(0)).Millimeters);
    }

    [Theory]
    [InlineData("BND06")]
    [InlineData("BND07")]
    public void Cut_length_over_a_full_circle(string id)
    {
        var row = Row(id);
        row.ShouldBeMetBy(
            BandLength
                .FullCircle(
                    OverPlate(row),
                    Mm(row.Number("t_band")),
                    (int)row.Number("turns"),
                    Mm(row.Number("overlap")),
                    Mm(row.Number("tail"))
                )
                .Millimeters
        );
    }

    [Fact]
    public void Cut_length_over_an_arc()
    {
        var row = Row("BND31");
        row.ShouldBeMetBy(
            BandLength
                .ArcPlate(
                    Mm(row.Number("D")),
                    OverPlate(row),
                    Rad(row.Number("half_angle")),
                    Mm(row.Number("t_band")),
                    (int)row.Number("turns"),
                    Mm(row.Number("overlap")),
                    Mm(row.Number("tail"))
                )
                .Millimeters
        );
    }

    [Theory]
    [InlineData("BND08")]
    [InlineData("BND09")]
    public void Pieces_from_a_coil(string id)
    {
        var row = Row(id);
        row.ShouldBeMetBy(BandLength.Pieces(Mm(row.Number("L")), Mm(row.Number("coil")), Mm(row.Number("splice"))));
    }

    [Fact]
    public void A_coil_no_longer_than_the_overlap_is_refused() =>
        Should
            .Throw<ImpossibleInputException>(() => BandLength.Pieces(Mm(500), Mm(80), Mm(80)))
            .Field.ShouldBe("coilLengthMm");

    [Fact]
    public void Contact_pressure()
    {
        var row = Row("BND10");
        var p = BandTension.ContactPressure(N(row.Number("T")), Mm(row.Number("r")), Mm(row.Number("w")));
        row.ShouldBeMetBy(p.Megapascals);
    }

    [Fact]
    public void Allowable_tension()
    {
        var row = Row("BND11");
        row.ShouldBeMetBy(
            BandTension.Allowable(Mpa(row.Number("sy")), Mm(row.Number("w")), Mm(row.Number("t")), 1).Newtons
        );
    }

    [Theory]
    [InlineData("BND12")]
    [InlineData("BND13")]
    public void Bands_needed(string id)
    {
        var row = Row(id);
        row.ShouldBeMetBy(
            BandTension.BandsNeeded(
                Mpa(row.Number("p")),
                row.Number("m"),
                Mm(row.Number("r")),
                Mm(row.Number("w_plate")),
                N(row.Number("T_allow")),
                row.Number("mu"),
                Rad(row.Number("phi", 0))
            )
        );
    }

    [Theory]
    [InlineData("BND14")]
    [InlineData("BND34")]
    [InlineData("BND35")]
    public void Pressure_resisted(string id)
    {
        var row = Row(id);
        row.ShouldBeMetBy(
            BandTension
                .Resisted(
                    (int)row.Number("nb"),
                    N(row.Number("T0") * row.Number("eta", 1)),
                    row.Number("mu"),
                    Rad(row.Number("phi")),
                    row.Number("m"),
                    Mm(row.Number("r")),
                    Mm(row.Number("w_plate"))
                )
                .Megapascals
        );
    }

    [Fact]
    public void Bands_that_fit()
    {
        var row = Row("BND33");
        row.ShouldBeMetBy(
            BandTension.BandsThatFit(Mm(row.Number("w_plate")), Mm(row.Number("w")), Mm(row.Number("gap")))
        );
    }

    [Fact]
    public void Heat_slackening()
    {
        var row = Row("BND38");
        row.ShouldBeMetBy(
            BandTension
                .HeatSlackening(
                    Mpa(row.Number("E")),
                    row.Number("alpha_band"),
                    row.Number("alpha_pipe"),
                    TemperatureDelta.FromKelvins(row.Number("dT"))
                )
                .Megapascals
        );
    }

    [Fact]
    public void Edge_load()
    {
        var row = Row("BND39");
        row.ShouldBeMetBy(BandTension.EdgeLoad(N(row.Number("T")), Mm(row.Number("D")), Mm(row.Number("Ds"))).Newtons);
    }

    [Fact]
    public void Collapse_of_a_ring()
    {
        var row = Row("BND40");
        row.ShouldBeMetBy(
            BandTension
                .RingCollapse(Mpa(row.Number("E")), row.Number("nu"), Mm(row.Number("t")), Mm(row.Number("D")))
                .Megapascals
        );
    }

    [Fact]
    public void Plate_along_the_pipe()
    {
        var row = Row("BND17");
        row.ShouldBeMetBy(PatchPlate.BlankLength(Mm(row.Number("defect_axial"))).Millimeters);
    }

    [Fact]
    public void Plate_round_the_pipe()
    {
        var row = Row("BND32");
        row.ShouldBeMetBy(
            PatchPlate
                .BlankArc(
                    Mm(row.Number("defect_arc")),
                    Mm(row.Number("D")),
                    Mm(row.Number("t_putty")),
                    Mm(row.Number("t_plate"))
                )
                .Millimeters
        );
    }

    [Fact]
    public void Plate_between_lines()
    {
        var row = Row("BND18");
        row.ShouldBeMetBy(
            PatchPlate
                .StressBetweenLines(Mpa(row.Number("p")), Mm(row.Number("pitch")), Mm(row.Number("t")))
                .Megapascals
        );
    }

    [Fact]
    public void Plate_between_bands()
    {
        var row = Row("BND36");
        var gap = row.Number("pitch") - row.Number("w");
        row.ShouldBeMetBy(
            PatchPlate
                .StressBetweenBands(Mpa(row.Number("p")), Mm(row.Number("w")), Mm(gap), Mm(row.Number("t")))
                .Megapascals
        );
    }

    [Fact]
    public void Plate_beyond_the_last_band()
    {
        var row = Row("BND37");
        row.ShouldBeMetBy(
            PatchPlate
                .StressOfOverhang(Mpa(row.Number("p")), Mm(row.Number("overhang")), Mm(row.Number("t")))
                .Megapascals
        );
    }

    [Fact]
    public void Putty_volume()
    {
        var row = Row("BND19");
        row.ShouldBeMetBy(
            PatchPlate
                .PuttyVolume(
                    Mm(row.Number("d_def")),
                    Mm(row.Number("t_wall")),
                    Mm(row.Number("L")),
                    Mm(row.Number("W")),
                    Mm(row.Number("t_layer")),
                    row.Number("waste")
                )
                .CubicMillimeters
        );
    }

    [Fact]
    public void Sticks_of_putty()
    {
        var row = Row("BND20");
        var grams = row.Number("vol_mm3") / 1000 * row.Number("rho_gcc");
        row.ShouldBeMetBy(PatchPlate.Sticks(Mass.FromGrams(grams), Mass.FromGrams(row.Number("stick_g"))));
    }

    // The hull of circle and arc as a polygon of 20 000 corners: the slow way, which knows nothing of tangents.
    [Theory]
    [InlineData(0.2)]
    [InlineData(0.99388)]
    [InlineData(2.0)]
    [InlineData(2.9)]
    public void Arc_length_agrees_with_the_hull_of_a_polygon(double halfAngle)
    {
        var formula = BandLength.ArcPlate(Mm(114.3), Mm(123.3), Rad(halfAngle), Mm(1e-9), 1, Mm(0), Mm(0)).Millimeters;
        formula.ShouldBe(HullLength(57.15, 61.65, halfAngle), 0.01);
    }

    [Fact]
    public void Mean_share_is_the_integral_of_the_tension()
    {
        var series = BandTension.RoundTheArc(N(1000), 0.3, Rad(Math.PI), Mm(60), Mm(20), 10_000);
        var mean = series.Zip(series.Skip(1), (a, b) => (a.Tension.Newtons + b.Tension.Newtons) / 2).Average() / 1000;
        BandTension.MeanShare(0.3, Rad(Math.PI)).ShouldBe(mean, 1e-6);
        BandTension.MeanShare(0.3, Rad(0)).ShouldBe(1);
    }

    private static Length OverPlate(PublishedCheck row) =>
        Mm(row.Number("D") + 2 * (row.Number("t_putty") + row.Number("t_plate")));

    private static double HullLength(double inner, double outer, double halfAngle)
    {
        var points = Enumerable
            .Range(0, 20_000)
            .Select(i => i * 2 * Math.PI / 20_000 - Math.PI)
            .Select(a => (Angle: a, Radius: Math.Abs(a) <= halfAngle ? outer : inner))
            .Select(p => (X: p.Radius * Math.Cos(p.Angle), Y: p.Radius * Math.Sin(p.Angle)))
            .OrderBy(p => p.X)
            .ThenBy(p => p.Y)
            .ToList();
        var hull = Chain(points).Concat(Chain(Enumerable.Reverse(points))).ToList();
        return hull.Zip(hull.Skip(1).Append(hull[0]), (a, b) => Math.Sqrt(Square(a.X - b.X) + Square(a.Y - b.Y))).Sum();
    }

    private static List<(double X, double Y)> Chain(IEnumerable<(double X, double Y)> points)
    {
        var chain = new List<(double X, double Y)>();
        foreach (var p in points)
        {
            while (chain.Count >= 2 && Cross(chain[^2], chain[^1], p) <= 0)
                chain.RemoveAt(chain.Count - 1);
            chain.Add(p);
        }
        return chain[..^1];
    }

    private static double Cross((double X, double Y) o, (double X, double Y) a, (double X, double Y) b) =>
        (a.X - o.X) * (b.Y - o.Y) - (a.Y - o.Y) * (b.X - o.X);

    private static double Square(double x) => x * x;
}
