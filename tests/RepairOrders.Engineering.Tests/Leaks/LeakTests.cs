using CsCheck;
using RepairOrders.Engineering.Leaks;
using RepairOrders.Engineering.Methods;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Leaks;

public class LeakTests
{
    private static readonly Area TenMillimetres = Hole.Round(Length.FromMillimeters(10));

    [Fact]
    public void A_liquid_leak_with_its_loss_a_year()
    {
        var leak = Leak.OfLiquid(
            new(
                TenMillimetres,
                Pressure.FromBars(20),
                LeakPurpose.Cost,
                DischargeCoefficient: 0.61,
                HoursAYear: Duration.FromHours(1000),
                Price: new(2, PricedBy.Tonne)
            ),
            new("water", Density.FromKilogramsPerCubicMeter(1000), null, null, Clause.CommonPractice)
        );
        leak.Result.MassFlow.KilogramsPerSecond.ShouldBe(3.0300, 0.00005);
        leak.Result.MassAYear.Tonnes.ShouldBe(3.0300 * 3600, 0.2);
        leak.Result.CostAYear!.Value.ShouldBe(leak.Result.MassAYear.Tonnes * 2, 1e-9);
        leak.Findings.ShouldContain(f => f.Code == "flashing-not-tested");
    }

    [Fact]
    public void Hot_water_flashes_and_the_rate_is_an_upper_bound()
    {
        var hot = Fluids.FreshWater(Temperature.FromDegreesCelsius(120));
        var leak = Leak.OfLiquid(new(TenMillimetres, Pressure.FromBars(5), LeakPurpose.Exposure), hot);
        leak.Findings.ShouldContain(f => f.Code == "flashes" && f.Severity == Severity.Watch);
        leak.Result.DischargeCoefficient.ShouldBe(0.8);
    }

    [Fact]
    public void Cold_water_does_not_flash()
    {
        var cold = Fluids.FreshWater(Temperature.FromDegreesCelsius(20));
        Leak.OfLiquid(new(TenMillimetres, Pressure.FromBars(5), LeakPurpose.Cost), cold)
            .Findings.ShouldContain(f => f.Code == "does-not-flash");
    }

    [Fact]
    public void A_fine_crack_is_flagged_by_its_Reynolds_number()
    {
        var cold = Fluids.FreshWater(Temperature.FromDegreesCelsius(20));
        var pin = Hole.Round(Length.FromMillimeters(0.2));
        Leak.OfLiquid(new(pin, Pressure.FromBars(5), LeakPurpose.Cost), cold)
            .Findings.ShouldContain(f => f.Code == "reynolds-low");
    }

    [Fact]
    public void Air_as_the_handbook_table_prints_it()
    {
        var leak = Leak.OfGas(
            new(
                Hole.Round(Length.FromInches(0.25)),
                Pressure.FromPoundsForcePerSquareInch(100),
                LeakPurpose.Exposure,
                AtmosphereAbs: Pressure.FromPoundsForcePerSquareInch(14.7)
            ),
            Temperature.FromDegreesFahrenheit(70),
            Fluids.Air
        );
        leak.Result.VolumeFlow.CubicFeetPerMinute.ShouldBeAsPrinted("104");
        leak.Result.Choked.ShouldBeTrue();
    }

    [Fact]
    public void Steam_as_the_tip_sheet_prints_it()
    {
        var leak = Leak.OfSteam(
            new(
                Hole.Round(Length.FromInches(0.125)),
                Pressure.FromPoundsForcePerSquareInch(150),
                LeakPurpose.Cost,
                AtmosphereAbs: Pressure.FromPoundsForcePerSquareInch(14.7),
                DischargeCoefficient: 0.729
            )
        );
        leak.Result.MassFlow.PoundsPerHour.ShouldBeAsPrinted("75.8");
        leak.Findings.ShouldContain(f => f.Code == "choked");
        leak.Working.Single(s => s.Symbol == "W").Value.ShouldBe(75.8, 0.05);
    }

    [Fact]
    public void Low_pressure_steam_is_an_upper_bound() =>
        Leak.OfSteam(new(TenMillimetres, Pressure.FromBars(0.3), LeakPurpose.Cost))
            .Findings.ShouldContain(f => f.Code == "below-critical-pressure");

    [Theory]
    [InlineData(LeakPurpose.Exposure)]
    [InlineData(LeakPurpose.Cost)]
    public void Defaults_are_findings(LeakPurpose purpose)
    {
        var leak = Leak.OfGas(
            new(TenMillimetres, Pressure.FromBars(30), purpose),
            Temperature.FromDegreesCelsius(20),
            Fluids.Air
        );
        string[] codes = ["discharge-coefficient-default", "hours-default", "ideal-gas-at-pressure"];
        leak.Findings.Select(f => f.Code).ShouldBe(codes, ignoreOrder: true);
    }

    [Fact]
    public void Nothing_runs_out_of_a_line_under_vacuum()
    {
        var leak = Leak.OfGas(
            new(TenMillimetres, Pressure.FromBars(-0.5), LeakPurpose.Cost),
            Temperature.FromDegreesCelsius(20),
            Fluids.Air
        );
        leak.Result.MassFlow.KilogramsPerSecond.ShouldBe(0);
        leak.Findings.ShouldContain(f => f.Code == "no-outflow");
    }

    [Theory]
    [InlineData(9000, 1, "hoursAYear")]
    [InlineData(100, 1.2, "dischargeCoefficient")]
    public void Impossible_conditions_are_named(double hours, double Cd, string field) =>
        Should
            .Throw<ImpossibleInputException>(() =>
                Leak.OfSteam(
                    new(
                        TenMillimetres,
                        Pressure.FromBars(5),
                        LeakPurpose.Cost,
                        DischargeCoefficient: Cd,
                        HoursAYear: Duration.FromHours(hours)
                    )
                )
            )
            .Field.ShouldBe(field);

    [Fact]
    public void For_exposure_the_rate_is_never_below_the_one_for_cost() =>
        Gen.Select(Gen.Double[-1, 200], Gen.Double[0.1, 100])
            .Sample(
                (bar, millimetres) =>
                {
                    var hole = Hole.Round(Length.FromMillimeters(millimetres));
                    var water = Fluids.FreshWater(Temperature.FromDegreesCelsius(20));
                    double Rate(LeakPurpose purpose) =>
                        Leak.OfLiquid(
                            new(hole, Pressure.FromBars(bar), purpose),
                            water
                        ).Result.MassFlow.KilogramsPerSecond;
                    Rate(LeakPurpose.Exposure).ShouldBeGreaterThanOrEqualTo(Rate(LeakPurpose.Cost));
                }
            );
}
