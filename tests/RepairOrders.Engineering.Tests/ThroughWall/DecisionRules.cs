using RepairOrders.Engineering.Damage;
using RepairOrders.Engineering.Methods;
using RepairOrders.Engineering.Pipework;
using RepairOrders.Engineering.ThroughWall;
using UnitsNet;

namespace RepairOrders.Engineering.Tests.ThroughWall;

public sealed class DecisionRules
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
        Mm(6.8),
        6,
        Growing: true
    );

    private static readonly Service CoolingWater = new(
        "cooling water",
        FluidState.Liquid,
        ServiceCategory.D,
        2,
        4,
        Flammable: false,
        Toxic: false,
        AboveAutoIgnition: false,
        Pressure.FromBars(6),
        Pressure.FromBars(8),
        Temperature.FromDegreesCelsius(30),
        Temperature.FromDegreesCelsius(60),
        SafetyCritical: false,
        Potable: false,
        Cyclic: false
    );

    private static readonly DecisionCase Water = new(Dn150, Pinhole, CoolingWater, Mm(2.8));

    private static readonly Service FuelGas = CoolingWater with
    {
        State = FluidState.Gas,
        Category = ServiceCategory.Normal,
        Flammable = true,
    };

    [Fact]
    public void A_pinhole_in_a_sound_water_line_is_routine()
    {
        var decision = TemporaryRepairDecision.Decide(Water);
        decision.Result.Verdict.ShouldBe(Verdict.Ok);
        decision.Findings.ShouldHaveSingleItem().Code.ShouldBe("routine");
    }

    // Every row of the table has a case here that meets it, and its verdict; the row's basis is printed with it.
    public static readonly Dictionary<string, (DecisionCase Case, Verdict Verdict)> Met = new()
    {
        ["crack-growing"] = (Water with { Defect = Pinhole with { Kind = DefectKind.CrackLike } }, Verdict.Stop),
        ["crack-proved"] = (
            Water with
            {
                Defect = Pinhole with { Kind = DefectKind.WeldDefect, Cause = DefectCause.Fatigue },
                GrowthExcluded = true,
            },
            Verdict.Engineer
        ),
        ["gray-iron"] = (Water with { Pipe = Dn150 with { Metal = MetalFamily.GrayIron } }, Verdict.Engineer),
        ["brittle-temperature"] = (Water with { BelowMinimumTemperature = true }, Verdict.Stop),
        ["hydrogen-damage"] = (Water with { HydrogenDamage = true }, Verdict.Stop),
        ["creep-range"] = (Water with { CreepRange = true }, Verdict.Stop),
        ["deep-loss-loose"] = (Water with { Defect = Pinhole with { HoleDiameter = Mm(8) } }, Verdict.Stop),
        ["deep-loss-held"] = (
            Water with
            {
                Defect = Pinhole with { HoleDiameter = Mm(8) },
                AxialStrengthSuffices = true,
            },
            Verdict.Engineer
        ),
        ["end-load-short"] = (Water with { AxialStrengthSuffices = false }, Verdict.Stop),
        ["end-load-restrained"] = (
            Water with
            {
                AxialStrengthSuffices = false,
                RestraintDesigned = true,
            },
            Verdict.Engineer
        ),
        ["hole-may-part"] = (
            Water with
            {
                Defect = Pinhole with { HoleDiameter = Mm(45) },
                RestraintDesigned = true,
            },
            Verdict.Engineer
        ),
        ["cause-unknown"] = (
            Water with
            {
                Defect = Pinhole with { Cause = DefectCause.Unknown },
                WallMappedEachSide = Mm(299),
            },
            Verdict.Stop
        ),
        ["safety-critical-hydrocarbon"] = (
            Water with
            {
                Service = FuelGas with { State = FluidState.Liquid, SafetyCritical = true },
            },
            Verdict.Engineer
        ),
        ["nuclear-no-relief"] = (Water with { NuclearClass = 3 }, Verdict.Stop),
        ["nuclear-relief"] = (Water with { NuclearClass = 3, WrittenRelief = true }, Verdict.Engineer),
        ["nuclear-flaw-size"] = (
            Water with
            {
                NuclearClass = 3,
                WrittenRelief = true,
                Defect = Pinhole with { AxialLength = Mm(77) },
            },
            Verdict.Stop
        ),
        ["marine-class-1"] = (Water with { MarineClass = 1 }, Verdict.Engineer),
        ["toxic"] = (Water with { Service = CoolingWater with { Toxic = true } }, Verdict.Engineer),
        ["flammable-gas"] = (Water with { Service = FuelGas }, Verdict.Engineer),
        ["steam-over-7-bar"] = (
            Water with
            {
                Service = CoolingWater with { State = FluidState.Steam, OperatingPressure = Pressure.FromBars(7.1) },
            },
            Verdict.Engineer
        ),
        ["soft-on-gas-or-flammable"] = (
            Water with
            {
                Service = FuelGas,
                Repair = RepairInMind.SoftPatch,
            },
            Verdict.Stop
        ),
        ["soft-over-10-bar"] = (
            Water with
            {
                Service = CoolingWater with { OperatingPressure = Pressure.FromBars(10.4) },
                Repair = RepairInMind.SoftPatch,
            },
            Verdict.Stop
        ),
        ["wrap-on-steam"] = (
            Water with
            {
                Service = CoolingWater with { State = FluidState.Steam },
                Repair = RepairInMind.Wrap,
            },
            Verdict.Stop
        ),
        ["patch-gas-transmission"] = (
            Water with
            {
                GasTransmission = true,
                Repair = RepairInMind.WeldedPatch,
            },
            Verdict.Stop
        ),
        ["patch-outside"] = (Water with { Repair = RepairInMind.WeldedPatch }, Verdict.Engineer),
        ["clamp-gas-transmission"] = (
            Water with
            {
                GasTransmission = true,
                Repair = RepairInMind.BoltedClamp,
                Defect = Pinhole with { Cause = DefectCause.MechanicalDamage },
            },
            Verdict.Stop
        ),
        ["not-straight-pipe"] = (Water with { Defect = Pinhole with { Kind = DefectKind.Joint } }, Verdict.Engineer),
        ["routine"] = (Water, Verdict.Ok),
    };

    public static TheoryData<string> Codes => [.. TemporaryRepairDecision.Rules.Select(r => r.Code)];

    [Theory, MemberData(nameof(Codes))]
    public void Row_is_met_and_sets_the_verdict(string code)
    {
        var (decision, verdict) = Met[code];
        var answer = TemporaryRepairDecision.Decide(decision);
        answer.Result.Reasons.ShouldContain(r => r.Code == code);
        answer.Result.Verdict.ShouldBe(verdict);
        var finding = answer.Findings.Single(f => f.Code == code);
        finding.Blocks.ShouldBe(TemporaryRepairDecision.Rules.Single(r => r.Code == code).Verdict == Verdict.Stop);
        finding.Source.Document.ShouldNotBeEmpty();
    }

    [Fact]
    public void A_welded_patch_within_the_law_is_no_reason_against()
    {
        var patch = Water with
        {
            Repair = RepairInMind.WeldedPatch,
            PatchThickness = Mm(7.11),
            PatchSize = Mm(84),
            PatchCornersRounded = true,
        };
        TemporaryRepairDecision.Decide(patch).Result.Verdict.ShouldBe(Verdict.Ok);
        TemporaryRepairDecision.Decide(patch with { GasTransmission = true }).Result.Verdict.ShouldBe(Verdict.Ok);
        TemporaryRepairDecision.Decide(patch with { PatchSize = Mm(85) }).Result.Verdict.ShouldBe(Verdict.Engineer);
    }

    [Fact]
    public void A_fire_rating_clears_the_soft_patch_but_not_the_engineer() =>
        TemporaryRepairDecision
            .Decide(Water with { Service = FuelGas, Repair = RepairInMind.Wrap, FireRated = true })
            .Result.Verdict.ShouldBe(Verdict.Engineer);

    [Fact]
    public void What_no_row_speaks_of_goes_to_an_engineer()
    {
        var hot = Water with { Service = CoolingWater with { Category = ServiceCategory.Normal } };
        var decision = TemporaryRepairDecision.Decide(hot);
        decision.Result.Verdict.ShouldBe(Verdict.Engineer);
        decision.Result.Reasons.ShouldHaveSingleItem().Code.ShouldBe("no-routine-row");
    }

    [Fact]
    public void Thin_wall_beside_the_hole_is_not_routine()
    {
        var decision = TemporaryRepairDecision.Decide(Water with { Defect = Pinhole with { SoundWallBeside = Mm(2) } });
        decision.Result.Verdict.ShouldBe(Verdict.Stop);
        decision.Result.Reasons[0].Code.ShouldBe("deep-loss-loose");
    }

    [Fact]
    public void Impossible_cases_are_refused() =>
        Should
            .Throw<ImpossibleInputException>(() => TemporaryRepairDecision.Decide(Water with { NuclearClass = 4 }))
            .Field.ShouldBe("nuclearClass");

    private static Length Mm(double mm) => Length.FromMillimeters(mm);
}
