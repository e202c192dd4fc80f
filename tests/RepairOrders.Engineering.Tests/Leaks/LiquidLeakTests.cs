using System.Globalization;
using CsCheck;
using RepairOrders.Engineering.Leaks;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Leaks;

public class LiquidLeakTests
{
    // Water of 20 °C.
    private static readonly Density Water = Density.FromKilogramsPerCubicMeter(998.206);

    [Theory]
    [InlineData("WAT02")]
    [InlineData("WAT03")]
    [InlineData("WAT04")]
    [InlineData("WAT05")]
    [InlineData("WAT06")]
    [InlineData("WAT08")]
    public void Published_check_of_water(string id)
    {
        var check = PublishedTable.Check("leak-checks.csv", id);
        check.ShouldBeMetBy(GallonsADay(check.Number("d_in"), check.Number("psi"), check.Number("cd")));
    }

    // Leaflets that print 60 psi imply coefficients of 0.61 to 0.63, the range of a sharp-edged hole, and round to 1 or 2 figures.
    [Fact]
    public void Leaflets_at_60_psi_imply_the_coefficient_of_a_sharp_edge()
    {
        var rows = PublishedTable.Rows("water-leak.csv").Where(r => r["pressure_psi"] == "60").ToList();
        rows.Count.ShouldBe(8);
        foreach (var row in rows)
        {
            var published = row.Number("published_us_gal_day");
            var implied = published / GallonsADay(Inches.Parse(row["hole_in"]), 60, 1);
            implied.ShouldBeInRange(0.61, 0.635, row["source"]);
        }
    }

    // No pressure is printed, so these may only be compared among themselves.
    [Theory]
    [InlineData("City of Escondido (USA)", "1/8")]
    [InlineData("Town of Kingsville (Canada)", "1/8")]
    public void Leaflets_without_a_pressure_go_as_the_square_of_the_diameter(string source, string reference)
    {
        var rows = PublishedTable.Rows("water-leak.csv").Where(r => r["source"] == source).ToList();
        var unit = rows.Single(r => r["hole_in"] == reference);
        foreach (var row in rows)
        {
            var ratio = row.Number("published_value") / unit.Number("published_value");
            ratio.ShouldBe(Math.Pow(Inches.Parse(row["hole_in"]) / Inches.Parse(reference), 2), ratio * 0.006);
        }
    }

    // 984 500 gallons in three months fit 60 psi and a sharp edge only as imperial gallons.
    [Fact]
    public void One_leaflet_counts_imperial_gallons()
    {
        var row = PublishedTable
            .Rows("water-leak.csv")
            .Single(r => r["source"].StartsWith("Town", StringComparison.Ordinal) && r["hole_in"] == "1/4");
        var imperial = Volume.FromImperialGallons(row.Number("published_value")).UsGallons / (365.25 / 4);
        var us = row.Number("published_value") / (365.25 / 4);
        (imperial / GallonsADay(0.25, 60, 1)).ShouldBeInRange(0.61, 0.635);
        (us / GallonsADay(0.25, 60, 1)).ShouldBeLessThan(0.53);
    }

    [Fact]
    public void Flow_goes_as_the_square_of_the_diameter()
    {
        var check = PublishedTable.Check("leak-checks.csv", "WAT07");
        check.ShouldBeMetBy(check.Number("a") / check.Number("b"));
        check.ShouldBeMetBy(GallonsADay(0.5, 60, 0.6) / GallonsADay(0.125, 60, 0.6));
    }

    // 30.394·A·√psi, US gallons a minute (from memory): 0.80 built in.
    [Fact]
    public void Formula_of_the_water_audit_manuals()
    {
        var check = PublishedTable.Check("leak-checks.csv", "WAT11");
        var flow = LiquidLeak.Flow(
            Area.FromSquareInches(check.Number("area_in2")),
            Pressure.FromPoundsForcePerSquareInch(check.Number("psi")),
            Water,
            0.80
        );
        check.ShouldBeMetBy((flow / Water).UsGallonsPerMinute);
    }

    [Theory]
    [InlineData("WAT12")]
    [InlineData("WAT13")]
    [InlineData("WAT14")]
    public void Leakage_exponent(string id)
    {
        var check = PublishedTable.Check("leak-checks.csv", id);
        check.ShouldBeMetBy(
            LiquidLeak.AtPressure(
                Pressure.FromBars(check.Number("p1")),
                Pressure.FromBars(check.Number("p2")),
                check.Number("n1")
            )
        );
    }

    // Computed from the formula, 10 mm, 20 bar, Cd 0.61.
    [Fact]
    public void Water_through_10_mm_at_20_bar() =>
        LiquidLeak
            .Flow(
                Hole.Round(Length.FromMillimeters(10)),
                Pressure.FromBars(20),
                Density.FromKilogramsPerCubicMeter(1000),
                0.61
            )
            .KilogramsPerSecond.ShouldBe(3.0300, 0.00005);

    // Worked example of a hydraulics text, printed 0.95 kg/s: 1.5 cm², 2 m head, g = 10, Cd 1.
    [Fact]
    public void Worked_example_of_a_tank() =>
        LiquidLeak
            .Flow(
                Area.FromSquareCentimeters(1.5),
                Pressure.FromPascals(20_000),
                Density.FromKilogramsPerCubicMeter(1000),
                1
            )
            .KilogramsPerSecond.ShouldBeAsPrinted("0.95");

    [Fact]
    public void More_pressure_never_leaks_less() =>
        Gen.Select(Gen.Double[-10, 400], Gen.Double[-10, 400])
            .Sample(
                (one, other) =>
                    GallonsADay(0.25, Math.Max(one, other), 0.6)
                        .ShouldBeGreaterThanOrEqualTo(GallonsADay(0.25, Math.Min(one, other), 0.6))
            );

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void A_hole_of_no_size_is_named(double millimetres) =>
        Should
            .Throw<ImpossibleInputException>(() => Hole.Round(Length.FromMillimeters(millimetres)))
            .Field.ShouldBe("holeDiameterMm");

    private static double GallonsADay(double inches, double psi, double Cd)
    {
        var flow = LiquidLeak.Flow(
            Hole.Round(Length.FromInches(inches)),
            Pressure.FromPoundsForcePerSquareInch(psi),
            Water,
            Cd
        );
        return (flow / Water).UsGallonsPerDay;
    }
}
