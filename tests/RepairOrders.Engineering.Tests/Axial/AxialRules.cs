using RepairOrders.Engineering.Axial;
using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.Axial;

public sealed class AxialRules
{
    private static readonly Pipe Dn150 = new(
        Mm(168.3),
        Mm(7.11),
        MetalFamily.CarbonSteel,
        Pressure.FromMegapascals(240),
        Pressure.FromMegapascals(415),
        Pressure.FromMegapascals(138),
        1
    );

    private static readonly Defect Pinhole = new(
        DefectKind.Pinhole,
        DefectSide.Internal,
        DefectCause.InternalCorrosion,
        ThroughWall: true,
        Mm(3),
        Mm(3),
        Mm(0),
        Mm(3),
        Mm(7.11),
        6,
        Growing: true
    );

    private static readonly AxialCase Line = new(
        Dn150,
        Pinhole,
        Pressure.FromMegapascals(2),
        Pressure.Zero,
        Mm(168.3),
        Force.Zero,
        Torque.Zero,
        Unrestrained: false,
        ConditionUnknown: false,
        RepairCarriesAxialLoad: false
    );

    [Fact]
    public void A_pinhole_in_sound_wall_needs_no_restraint()
    {
        var check = AxialLoad.Check(Line);
        check.Result.Thrust.Newtons.ShouldBe(44_492.6332, 0.00005);
        check.Result.EndLoad.ShouldBe(check.Result.Thrust);
        check.Result.Capacity.Kilonewtons.ShouldBe(496.9 * (1 - 2 * 3 / 168.3 / Math.PI), 0.05);
        check.Result.RestraintNeeded.ShouldBe(Force.Zero);
        check.Findings.ShouldAllBe(f => f.Severity == Severity.Pass);
        check.Cautions.ShouldBeEmpty();
    }

    [Fact]
    public void Capacity_is_exact_where_the_answer_is_known()
    {
        // Full section: S π (D − t) t, force over area. All round: what is left of it.
        var full = 138 * Math.PI * 161.19 * 7.11;
        Capacity(7.11, 0).ShouldBe(full, 1e-6 * full);
        Capacity(7.11 / 2, Math.PI * 168.3).ShouldBe(full / 2, 1e-6 * full);
        Capacity(0, Math.PI * 168.3).ShouldBe(0, 1e-6);
        // A slit through half the girth, θ = π/2: 1 − (π/2 + 2 asin ½)/π = 1/6, net-section collapse (from memory).
        Capacity(0, Math.PI * 168.3 / 2).ShouldBe(full / 6, 1e-6 * full);
    }

    [Fact]
    public void Example_of_the_end_load()
    {
        EndLoad.Capacity(Mm(168.3), Mm(7.11), Mm(7.11), Mm(0), Dn150.AllowableStress).Kilonewtons.ShouldBe(496.9, 0.05);
        EndLoad.OfBending(Torque.FromNewtonMeters(1000), Mm(161.19)).Newtons.ShouldBe(24_815, 0.5);
        EndLoad
            .Surge(
                Density.FromKilogramsPerCubicMeter(1000),
                Speed.FromMetersPerSecond(1200),
                Speed.FromMetersPerSecond(1.5)
            )
            .Megapascals.ShouldBe(1.8, 1e-12);
    }

    [Fact]
    public void A_wall_gone_nearly_all_round_needs_restraint()
    {
        var loss = Pinhole with
        {
            CircumferentialLength = Mm(480),
            HoleDiameter = Mm(0),
            ThroughWall = false,
            RemainingWall = Mm(0.3),
        };
        var check = AxialLoad.Check(Line with { Defect = loss });
        check.Result.AssumeFullThrust.ShouldBeTrue();
        check.Result.RestraintNeeded.ShouldBe(check.Result.EndLoad);
        check.Findings.ShouldContain(f => f.Code == "axial-capacity" && f.Blocks);
        check.Cautions.ShouldHaveSingleItem().ShouldContain("out of the line of the pipe");

        var held = AxialLoad.Check(Line with { Defect = loss, RepairCarriesAxialLoad = true });
        held.Result.RestraintNeeded.ShouldBe(held.Result.EndLoad);
        held.Findings.ShouldContain(f => f.Code == "axial-capacity" && f.Severity == Severity.Watch);
        held.Findings.ShouldNotContain(f => f.Severity == Severity.Fail);
    }

    public static TheoryData<string, AxialCase> FullThrust =>
        new()
        {
            { "full-thrust-deep-loss", Line with { Defect = Pinhole with { CircumferentialLength = Mm(133) } } },
            { "full-thrust-crack", Line with { Defect = Pinhole with { Kind = DefectKind.CrackLike } } },
            { "full-thrust-unknown", Line with { ConditionUnknown = true } },
            { "full-thrust-unrestrained", Line with { Unrestrained = true } },
            { "full-thrust-surge", Line with { SurgeRise = Pressure.FromMegapascals(0.5) } },
        };

    [Theory, MemberData(nameof(FullThrust), DisableDiscoveryEnumeration = true)]
    public void Full_thrust_is_assumed(string code, AxialCase axial)
    {
        var check = AxialLoad.Check(axial);
        check.Result.AssumeFullThrust.ShouldBeTrue();
        check
            .Findings.Where(f =>
                f.Code.StartsWith("full-thrust", StringComparison.Ordinal) && f.Severity == Severity.Watch
            )
            .Select(f => f.Code)
            .ShouldBe([code]);
        check.Findings.ShouldContain(f => f.Code == "full-thrust-restraint" && f.Blocks);
    }

    [Fact]
    public void Surge_is_in_the_thrust_and_judged_as_an_occasional_load()
    {
        var check = AxialLoad.Check(Line with { SurgeRise = Pressure.FromMegapascals(1) });
        check.Result.Thrust.Newtons.ShouldBe(66_738.9498, 0.00005);
        check.Findings.Single(f => f.Code == "occasional-stress").Limit!.Value.ShouldBe(1.33 * 138, 1e-9);
        check.Findings.Single(f => f.Code == "sustained-stress").Value!.Value.ShouldBe(10.357, 0.0005);
    }

    [Fact]
    public void The_seal_diameter_counts_and_may_not_be_less_than_the_pipe()
    {
        var wide = AxialLoad.Check(Line with { SealDiameter = Mm(200) });
        wide.Result.Thrust.Newtons.ShouldBe(2 * Math.PI / 4 * 200 * 200, 1e-6);
        Should
            .Throw<ImpossibleInputException>(() => AxialLoad.Check(Line with { SealDiameter = Mm(154) }))
            .Field.ShouldBe("sealDiameterMm");
    }

    [Fact]
    public void No_sound_wall_measured_bears_nothing()
    {
        var check = AxialLoad.Check(Line with { Defect = Pinhole with { SoundWallBeside = Mm(0) } });
        check.Result.Capacity.ShouldBe(Force.Zero);
        check.Findings.ShouldContain(f => f.Code == "axial-capacity" && f.Blocks);
    }

    private static double Capacity(double left, double round) =>
        EndLoad.Capacity(Mm(168.3), Mm(7.11), Mm(left), Mm(round), Dn150.AllowableStress).Newtons;

    private static Length Mm(double mm) => Length.FromMillimeters(mm);
}
