using System.Globalization;
using CsCheck;
using RepairOrders.Engineering.Leaks;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Leaks;

public class GasLeakTests
{
    private static readonly Pressure Atmosphere = Pressure.FromPoundsForcePerSquareInch(14.7);
    private static readonly Temperature SeventyFahrenheit = Temperature.FromDegreesFahrenheit(70);

    public static TheoryData<string, double, string> TableA => Table("A");

    public static TheoryData<string, double, string> TableB => Table("B");

    // Table A is for a coefficient of 100 %. Its own constants differ from ours by up to 0.4 %, the same at every hole.
    [Theory]
    [MemberData(nameof(TableA))]
    public void Handbook_table_of_air_through_an_orifice(string inches, double psig, string printed) =>
        CubicFeet(inches, psig, 1).ShouldBeAsPrinted(printed, 0.004);

    // Table B (from memory) holds 0.97 and rounds irregularly: its check row allows 4 %.
    [Theory]
    [MemberData(nameof(TableB))]
    public void Leakage_table_of_a_tip_sheet(string inches, double psig, string printed) =>
        CubicFeet(inches, psig, 0.97)
            .ShouldBe(
                double.Parse(printed, CultureInfo.InvariantCulture),
                0.04 * double.Parse(printed, CultureInfo.InvariantCulture)
            );

    [Theory]
    [InlineData("AIR03")]
    [InlineData("AIR06")]
    [InlineData("AIR09")]
    public void Published_check_of_air(string id)
    {
        var check = PublishedTable.Check("leak-checks.csv", id);
        check.ShouldBeMetBy(CubicFeet(check.Number("d_in"), check.Number("psig"), 1));
    }

    [Fact]
    public void Critical_ratio_of_air()
    {
        var check = PublishedTable.Check("leak-checks.csv", "AIR17");
        check.ShouldBeMetBy(GasLeak.CriticalRatio(check.Number("k")));
    }

    [Fact]
    public void Hydrogen_from_a_100_mm_hole()
    {
        var check = PublishedTable.Check("leak-checks.csv", "AIR18");
        const double M = 2.01588e-3;
        var T = check.Number("p0") * M / (check.Number("rho0") * 8.314462618);
        var flow = GasLeak.Flow(
            Hole.Round(Length.FromMeters(check.Number("d_m"))),
            Pressure.FromPascals(check.Number("p0")),
            Pressure.FromPascals(101325),
            Temperature.FromKelvins(T),
            new("hydrogen", MolarMass.FromKilogramsPerMole(M), check.Number("k"), 1, Clause.CommonPractice),
            check.Number("cd")
        );
        check.ShouldBeMetBy(flow.KilogramsPerSecond);
    }

    [Fact]
    public void Inside_below_outside_nothing_flows_out()
    {
        var check = PublishedTable.Check("leak-checks.csv", "AIR19");
        var flow = GasLeak.Flow(
            Hole.Round(Length.FromMeters(check.Number("d_m"))),
            Pressure.FromPascals(check.Number("p0")),
            Pressure.FromPascals(check.Number("pb")),
            Temperature.FromKelvins(check.Number("T")),
            Fluids.Air,
            1
        );
        check.ShouldBeMetBy(flow.KilogramsPerSecond);
    }

    [Theory]
    [InlineData("AIR10")]
    [InlineData("AIR11")]
    [InlineData("AIR12")]
    public void Cost_of_compressed_air(string id)
    {
        var check = PublishedTable.Check("leak-checks.csv", id);
        var perCubicMetre = check.Number("kw_per_cfm") / VolumeFlow.FromCubicFeetPerMinute(1).CubicMetersPerMinute;
        check.ShouldBeMetBy(
            LeakCost.OfCompressedAir(
                check.Number("n"),
                VolumeFlow.FromCubicFeetPerMinute(check.Number("cfm")),
                check.Number("cd"),
                perCubicMetre,
                Duration.FromHours(check.Number("hours")),
                check.Number("price")
            )
        );
    }

    // US Navy NAVFAC MO-209, Tables 5-3/5-4: Q = 0.6214 P − 12.75, 47 cubic feet a minute at 96 psig, 12 350 USD a year.
    [Fact]
    public void Leak_test_of_a_naval_yard()
    {
        var check = PublishedTable.Check("leak-checks.csv", "AIR14");
        var line = PressureDecay.Line(check.Numbers("x"), check.Numbers("y"));
        check.ShouldBeMetBy(line.Intercept);
        line.Slope.ShouldBe(0.6214, 0.00005);
        (line.Intercept + line.Slope * 96).ShouldBe(47, 0.5);
        LeakCost
            .ByVolume(
                VolumeFlow.FromCubicFeetPerMinute(47),
                Duration.FromHours(8760),
                0.50 / Volume.FromCubicFeet(1000).CubicMeters
            )
            .ShouldBe(12_350, 5);
    }

    [Fact]
    public void Pressure_decay_of_a_closed_volume() =>
        PressureDecay
            .FreeGas(
                Volume.FromCubicMeters(10),
                Pressure.FromBars(7),
                Pressure.FromBars(6),
                Pressure.FromBars(1),
                Duration.FromMinutes(20)
            )
            .CubicMetersPerMinute.ShouldBe(0.5, 1e-12);

    [Fact]
    public void A_pressure_that_rises_is_named() =>
        Should
            .Throw<ImpossibleInputException>(() =>
                PressureDecay.FreeGas(
                    Volume.FromCubicMeters(10),
                    Pressure.FromBars(6),
                    Pressure.FromBars(7),
                    Pressure.FromBars(1),
                    Duration.FromMinutes(20)
                )
            )
            .Field.ShouldBe("endPressureBar");

    [Theory]
    [InlineData(new[] { 1.0 }, new[] { 1.0 }, "readings")]
    [InlineData(new[] { 1.0, 1.0 }, new[] { 1.0, 2.0 }, "pressures")]
    public void A_line_through_too_little_is_named(double[] x, double[] y, string field) =>
        Should.Throw<ImpossibleInputException>(() => PressureDecay.Line(x, y)).Field.ShouldBe(field);

    [Fact]
    public void Choked_and_unchoked_flow_meet_at_the_critical_ratio() =>
        Gen.Select(Gen.Double[1.05, 1.67], Gen.Double[1, 100])
            .Sample(
                (k, bar) =>
                {
                    var rc = GasLeak.CriticalRatio(k);
                    Flow(bar, bar * rc * (1 + 1e-9), k)
                        .ShouldBe(Flow(bar, bar * rc * (1 - 1e-9), k), Flow(bar, 0, k) * 1e-6);
                }
            );

    [Fact]
    public void More_pressure_never_leaks_less() =>
        Gen.Select(Gen.Double[0, 400], Gen.Double[0, 400], Gen.Double[0, 400], Gen.Double[1.05, 1.67])
            .Sample(
                (one, other, outside, k) =>
                    Flow(Math.Max(one, other), outside, k)
                        .ShouldBeGreaterThanOrEqualTo(Flow(Math.Min(one, other), outside, k) * (1 - 1e-12))
            );

    private static double Flow(double inside, double outside, double k) =>
        GasLeak
            .Flow(
                Hole.Round(Length.FromMillimeters(10)),
                Pressure.FromBars(inside),
                Pressure.FromBars(outside),
                Temperature.FromDegreesCelsius(20),
                Fluids.Air with
                {
                    HeatRatio = k,
                },
                1
            )
            .KilogramsPerSecond;

    private static TheoryData<string, double, string> Table(string table) =>
        [
            .. PublishedTable
                .Rows("air-leak.csv")
                .Where(r => r["table"] == table)
                .Select(r => new TheoryDataRow<string, double, string>(
                    r["orifice_in"],
                    r.Number("psig"),
                    r["published_cfm_free_air"]
                )),
        ];

    private static double CubicFeet(string inches, double psig, double Cd) => CubicFeet(Inches.Parse(inches), psig, Cd);

    private static double CubicFeet(double inches, double psig, double Cd)
    {
        var inside = Pressure.FromPoundsForcePerSquareInch(psig) + Atmosphere;
        var flow = GasLeak.Flow(
            Hole.Round(Length.FromInches(inches)),
            inside,
            Atmosphere,
            SeventyFahrenheit,
            Fluids.Air,
            Cd
        );
        return GasLeak.FreeVolume(flow, Fluids.Air, Atmosphere, SeventyFahrenheit).CubicFeetPerMinute;
    }
}
