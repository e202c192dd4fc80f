using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.OdeSolvers;
using MathNet.Numerics.RootFinding;
using MathNet.Numerics.Statistics;
using RepairOrders.Engineering.Axial;
using RepairOrders.Engineering.Curing;
using RepairOrders.Engineering.Joints;
using RepairOrders.Engineering.Leaks;
using RepairOrders.Engineering.Methods.LaminateWrap;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.Strength;
using RepairOrders.Engineering.Surface;
using RepairOrders.Engineering.Testing;
using RepairOrders.Engineering.ThroughWall;
using UnitsNet;

namespace RepairOrders.Engineering.Tests;

// The engine's own conversions against UnitsNet; its roots, integrals and statistics against MathNet.
public sealed class CrossChecks
{
    // Exact by definition (NIST SP 811): what UnitsNet must agree with before anything is checked against it.
    [Fact]
    public void The_library_of_units_has_the_exact_definitions()
    {
        Length.FromInches(1).Millimeters.ShouldBe(25.4, 1e-13);
        Mass.FromPounds(1).Kilograms.ShouldBe(0.45359237, 1e-15);
        Force.FromPoundsForce(1).Newtons.ShouldBe(4.4482216152605, 1e-12);
        Pressure.FromPoundsForcePerSquareInch(1).Pascals.ShouldBe(4.4482216152605 / (0.0254 * 0.0254), 1e-8);
        Pressure.FromBars(1).Pascals.ShouldBe(1e5);
        Pressure.FromAtmospheres(1).Pascals.ShouldBe(101_325);
        Temperature.FromDegreesFahrenheit(70).Kelvins.ShouldBe((70 - 32) / 1.8 + 273.15, 1e-12);
        Volume.FromUsGallons(1).CubicMeters.ShouldBe(231 * 0.0254 * 0.0254 * 0.0254, 1e-15);
        Volume.FromImperialGallons(1).Liters.ShouldBe(4.54609, 1e-12);
        VolumeFlow.FromCubicFeetPerMinute(1).LitersPerMinute.ShouldBe(Math.Pow(3.048, 3), 1e-9);
    }

    // Napier's rule is written in pounds, inches and hours. The library's pound an hour is good to seven digits.
    [Fact]
    public void Steam_in_pounds_and_inches_is_steam_in_kilograms_and_metres() =>
        SteamLeak
            .Flow(Area.FromSquareInches(1), Pressure.FromPoundsForcePerSquareInch(100), Pressure.FromBars(1), 1)
            .PoundsPerHour.ShouldBe(5143, 5143 * 2e-7);

    [Fact]
    public void The_working_of_a_steam_leak_converts_as_the_library_does()
    {
        var hole = Area.FromSquareMillimeters(50);
        var working = Leak.OfSteam(new(hole, Pressure.FromBars(7), LeakPurpose.Cost)).Working;
        double Of(string symbol) => working.First(s => s.Symbol == symbol).Value;
        Of("A'").ShouldBe(hole.SquareInches, 1e-12);
        Of("P").ShouldBe(Pressure.FromBars(8.01325).PoundsForcePerSquareInch, 1e-6);
        Of("m").ShouldBe(MassFlow.FromPoundsPerHour(Of("W")).KilogramsPerSecond, 1e-9);
    }

    // EN 10220 prints 0.0246615; the density it stands for is 7.85 kg/dm³.
    [Fact]
    public void Mass_of_pipe_is_its_ring_of_steel()
    {
        var (D, t) = (Length.FromMillimeters(168.3), Length.FromMillimeters(7.11));
        var ring = Area.FromSquareMillimeters(Math.PI * (168.3 - 7.11) * 7.11);
        var mass = ring * Length.FromMeters(1) * Density.FromGramsPerCubicCentimeter(7.85);
        PipeSizes.MassByLength(D, t).KilogramsPerMeter.ShouldBe(mass.Kilograms, 2e-6 * mass.Kilograms);
    }

    [Theory]
    [InlineData(2, 7.11)]
    [InlineData(8, 3.5)]
    [InlineData(12, 3.5)]
    [InlineData(0.4, 7.11)]
    public void Critical_length_is_the_root_of_its_bulging_factor(double P, double t)
    {
        var (D, wall, Sf) = (Mm(168.3), Mm(t), Mpa(309));
        var hoop = Mawp.HoopStress(Mpa(P), D, wall).Megapascals;
        var root = Brent.FindRoot(
            L => hoop - 309 / PipelineMetalLoss.BulgingModified(L * L / (168.3 * t)),
            1e-3,
            1e5,
            1e-9,
            1000
        );
        CriticalLength.Of(Mpa(P), D, wall, Sf)!.Value.Millimeters.ShouldBe(root, 1e-6 * root);
    }

    [Theory]
    [InlineData(1, 25)]
    [InlineData(0.5, 40)]
    [InlineData(2, 10)]
    public void Laminate_over_a_hole_is_the_root_of_its_pressure(double P, double d)
    {
        var bond = new LaminateBond(Mpa(12_000), Mpa(3000), 0.3, ForcePerLength.FromNewtonsPerMillimeter(0.2), 0.333);
        var round = Brent.FindRoot(t => LaminateOverHole.RoundHole(Mm(d), Mm(t), bond).Megapascals - P, 0.1, 100);
        LaminateOverHole.ForRoundHole(Mpa(P), Mm(d), bond)!.Value.Millimeters.ShouldBe(round, 1e-6);
        var slot = Brent.FindRoot(t => LaminateOverHole.Slot(Mm(d), Mm(t), bond).Megapascals - P, 0.1, 200);
        LaminateOverHole.ForSlot(Mpa(P), Mm(d), bond)!.Value.Millimeters.ShouldBe(slot, 1e-6);
    }

    [Fact]
    public void Oval_yield_is_the_lesser_root_of_its_quadratic()
    {
        var (D, t, Sy, f) = (168.3, 3.0, 240.0, 0.02);
        var elastic = BandTension.RingCollapse(Mpa(203_000), 0.3, Mm(t), Mm(D)).Megapascals;
        var p_y = 2 * Sy * t / D;
        var (one, other) = FindRoots.Quadratic(p_y * elastic, -(p_y + (1 + 1.5 * f * D / t) * elastic), 1);
        Crushing
            .OvalYield(Mpa(elastic), Mpa(Sy), Mm(D), Mm(t), f)
            .Megapascals.ShouldBe(Math.Min(one.Real, other.Real), 1e-9);
    }

    [Theory]
    [InlineData(20, 50)]
    [InlineData(45, 90)]
    [InlineData(2, 60)]
    public void Dew_point_is_where_the_air_is_full(double T, double RH)
    {
        double Vapour(double t, double rh) =>
            DewPoint.VapourPressure(Temperature.FromDegreesCelsius(t), RelativeHumidity.FromPercent(rh)).Hectopascals;
        var root = Brent.FindRoot(t => Vapour(t, 100) - Vapour(T, RH), -80, 90, 1e-10, 1000);
        DewPoint
            .Of(Temperature.FromDegreesCelsius(T), RelativeHumidity.FromPercent(RH))
            .DegreesCelsius.ShouldBe(root, 1e-7);
    }

    [Fact]
    public void Autocatalytic_cure_is_what_a_solver_of_equations_gives()
    {
        var energy = MolarEnergy.FromKilojoulesPerMole(50);
        var (k1, k2) = (Frequency.FromHertz(0.05 / 3600), Frequency.FromHertz(0.6 / 3600));
        var at = Temperature.FromDegreesCelsius(25);
        var solved = RungeKutta.FourthOrder(
            0,
            0,
            8,
            20_001,
            (_, a) => (0.05 + 0.6 * Math.Pow(a, 0.8)) * Math.Pow(1 - a, 1.4)
        );
        DegreeOfCure
            .Autocatalytic([new(at, Duration.FromHours(8))], new(k1, energy, k2, energy, 0.8, 1.4), at)
            .ShouldBe(solved[^1], 1e-6);
    }

    // The gas of a test pressure does the work of an adiabatic expansion down to the atmosphere.
    [Fact]
    public void Stored_energy_is_the_work_of_the_expanding_gas()
    {
        var (Pt, Pa, k) = (1.1e6, 101_325.0, 1.4);
        var end = Math.Pow(Pt / Pa, 1 / k);
        var work = DoubleExponentialTransformation.Integrate(V => Pt * Math.Pow(V, -k), 1, end, 1e-10);
        StoredEnergy.Of(Pressure.FromPascals(Pt), Volume.FromCubicMeters(1)).Joules.ShouldBe(work, 1e-6 * work);
    }

    [Fact]
    public void Scatter_and_variation_are_those_of_a_library_of_statistics()
    {
        double[] x = [6.1, 5.8, 6.4, 5.9, 6.3, 6.0];
        GeneralMetalLoss.CoefficientOfVariation(x).ShouldBe(x.StandardDeviation() / x.Mean(), 1e-15);
        var forces = x.Select(v => Force.FromKilonewtons(v)).ToList();
        Preloads.Mean(forces).Kilonewtons.ShouldBe(x.Mean(), 1e-12);
        Preloads.Deviation(forces).Kilonewtons.ShouldBe(x.StandardDeviation(), 1e-12);
    }

    // The rate of the outliving model is lognormal with the mean and the deviation that were asked.
    [Fact]
    public void Lognormal_rate_has_the_mean_and_deviation_asked()
    {
        var (r, s) = (0.2, 0.08);
        var library = LogNormal.WithMeanVariance(r, s * s);
        var sigma = Math.Sqrt(Math.Log(1 + s / r * (s / r)));
        library.Sigma.ShouldBe(sigma, 1e-12);
        library.Mu.ShouldBe(Math.Log(r) - sigma * sigma / 2, 1e-12);
        Engineering.Life.Outliving.Before(Asked(r, s)).Working.First(w => w.Symbol == "σ").Value.ShouldBe(sigma, 1e-12);
        Engineering
            .Life.Outliving.Before(Asked(r, s))
            .Working.First(w => w.Symbol == "μ")
            .Value.ShouldBe(library.Mu, 1e-12);
    }

    [Fact]
    public void Lost_area_is_the_integral_of_the_profile()
    {
        double[] x = [0, 10, 25, 40, 70];
        double[] d = [0, 1.5, 3.2, 2.1, 0.4];
        var line = Interpolate.Linear(x, d);
        EffectiveArea.LostArea(x, d).ShouldBe(line.Integrate(0, 70), 1e-12);
    }

    private static Engineering.Life.OutlivingAsk Asked(double rate, double spread) =>
        new(
            new(2026, 1, 1),
            new(2027, 1, 1),
            Mm(6),
            Mm(0.2),
            Engineering.Life.CorrosionRate.FromMillimetresPerYear(rate),
            Engineering.Life.CorrosionRate.FromMillimetresPerYear(spread),
            Mm(4),
            null,
            0.001,
            Samples: 1000
        );

    private static Length Mm(double value) => Length.FromMillimeters(value);

    private static Pressure Mpa(double value) => Pressure.FromMegapascals(value);
}
