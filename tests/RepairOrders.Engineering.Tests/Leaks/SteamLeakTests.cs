using CsCheck;
using RepairOrders.Engineering.Leaks;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Leaks;

public class SteamLeakTests
{
    private static readonly Pressure Atmosphere = Pressure.FromPoundsForcePerSquareInch(14.7);

    public static TheoryData<string, double, string> TipSheet =>
        [
            .. PublishedTable
                .Rows("steam-leak.csv")
                .Select(r => new TheoryDataRow<string, double, string>(
                    r["orifice_in"],
                    r.Number("psig"),
                    r["published_lb_h"]
                )),
        ];

    // The tip sheet is Napier's rule with 0.729 throughout.
    [Theory]
    [MemberData(nameof(TipSheet))]
    public void Discharge_table_of_a_tip_sheet(string inches, double psig, string printed) =>
        PoundsAnHour(Inches.Parse(inches), psig, 0.729).ShouldBeAsPrinted(printed, 0.001);

    // 1/32 in, 150 psig is printed 4.8 where the table's own rule gives 4.74: its check row allows 1.5 %.
    [Theory]
    [InlineData("STM01")]
    [InlineData("STM02")]
    [InlineData("STM03")]
    [InlineData("STM05")]
    [InlineData("STM06")]
    [InlineData("STM07")]
    [InlineData("STM08")]
    [InlineData("STM09")]
    [InlineData("STM10")]
    [InlineData("STM11")]
    public void Published_check_of_steam(string id)
    {
        var check = PublishedTable.Check("leak-checks.csv", id);
        check.ShouldBeMetBy(PoundsAnHour(check.Number("d_in"), check.Number("psig"), 0.729));
    }

    // Engineering chart, coefficient 0.60: 1/4 in, 50 psig, 98 lb/h.
    [Fact]
    public void Engineering_chart_at_a_quarter_inch() => PoundsAnHour(0.25, 50, 0.60).ShouldBeAsPrinted("98");

    // The often-copied W = 24.24·P·D² holds 0.60 already.
    [Fact]
    public void The_short_rule_holds_its_coefficient_already() =>
        PoundsAnHour(0.5, 100, 0.60).ShouldBe(24.24 * 114.7 * 0.25, 24.24 * 114.7 * 0.25 * 3e-4);

    [Fact]
    public void Cost_of_steam_at_10_dollars()
    {
        var check = PublishedTable.Check("leak-checks.csv", "STM14");
        check.ShouldBeMetBy(Cost(check.Number("lbh"), check.Number("hours"), check.Number("usd_per_klb")));
    }

    // Same tip sheet, edition with 4.50 USD for 1000 lb: 2988 USD a year.
    [Fact]
    public void Cost_of_steam_at_4_50_dollars() => Cost(75.8, 8760, 4.50).ShouldBe(2988, 0.5);

    [Fact]
    public void More_pressure_never_leaks_less() =>
        Gen.Select(Gen.Double[0, 3000], Gen.Double[0, 3000])
            .Sample(
                (one, other) =>
                    PoundsAnHour(0.25, Math.Max(one, other), 0.6)
                        .ShouldBeGreaterThanOrEqualTo(PoundsAnHour(0.25, Math.Min(one, other), 0.6))
            );

    private static double Cost(double poundsAnHour, double hours, double perThousandPounds) =>
        LeakCost.ByMass(
            MassFlow.FromPoundsPerHour(poundsAnHour),
            Duration.FromHours(hours),
            perThousandPounds / Mass.FromPounds(1000).Tonnes
        );

    private static double PoundsAnHour(double inches, double psig, double Cd) =>
        SteamLeak
            .Flow(
                Hole.Round(Length.FromInches(inches)),
                Pressure.FromPoundsForcePerSquareInch(psig) + Atmosphere,
                Atmosphere,
                Cd
            )
            .PoundsPerHour;
}
